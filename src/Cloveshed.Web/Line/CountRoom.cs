using System.Collections.Concurrent;
using Cloveshed.Core;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Shared;
using Microsoft.Extensions.Hosting;

namespace Cloveshed.Web.Line;

/// <summary>Where a sizer's file is: being read, or how it ended.</summary>
public enum CountStage { Reading, Taken, Faulty, Refused, Stopped, Failed }

/// <summary>A sizer's file being read, and what came of it.</summary>
/// <param name="Fact">The id of the fact that it becomes, brought by the form: it names the job.</param>
/// <param name="Bytes">Of the file.</param>
public sealed class CountJob(Guid fact, LotId lot, string file, int bins, long bytes, FactOrigin origin, TextLanguage language)
{
    private volatile bool stopped;

    public Guid Fact => fact;

    public LotId Lot => lot;

    public string File => file;

    public int Bins => bins;

    public long Bytes => bytes;

    public FactOrigin Origin => origin;

    public TextLanguage Language => language;

    public CountReader Reader { get; } = new();

    public long BytesRead { get; private set; }

    public long Bulbs { get; private set; }

    public CountStage Stage { get; internal set; }

    /// <summary>The ledger's last fact when the job's own was in; nothing before.</summary>
    public long TakenBy { get; internal set; }

    /// <summary>What the ledger said, or what failed.</summary>
    public string Why { get; internal set; } = "";

    /// <summary>
    /// Where the file is as a page of that state tells it: a page that read the state just before the fact came in does not say that it is taken
    /// and then show nothing of it; it asks again.
    /// </summary>
    public CountStage StageIn(ShedState state) => Stage == CountStage.Taken && state.Head.Seq < TakenBy ? CountStage.Reading : Stage;

    /// <summary>Ends the reading before its next part.</summary>
    public void Stop() => stopped = true;

    internal void Reached(long bytes, long bulbs)
    {
        (BytesRead, Bulbs) = (bytes, bulbs);
        if (stopped)
        {
            throw new OperationCanceledException();
        }
    }
}

/// <summary>
/// Reads sizers' files one after the other, apart from the requests that brought them: closing the page does not stop it. A file becomes one fact
/// or none. What waits here is gone with the program: the file is then sent again.
/// </summary>
public sealed class CountRoom : IHostedService, IDisposable
{
    /// <summary>Ended jobs that are remembered.</summary>
    private const int Remembered = 20;

    private readonly ConcurrentDictionary<Guid, CountJob> jobs = new();
    private readonly ShedLedger ledger;
    private readonly ShedSignals signals;
    private readonly QuietQueue<(CountJob Job, string Path)> waiting;
    private string? folder;

    public CountRoom(ShedLedger ledger, ShedSignals signals)
    {
        (this.ledger, this.signals) = (ledger, signals);
        waiting = new("sizer counts", piece => Read(piece.Job, piece.Path));
    }

    public CountJob? Find(Guid fact) => jobs.GetValueOrDefault(fact);

    /// <summary>Takes a file that lies on the disk, to be read and then removed. The same id again is the same job.</summary>
    public CountJob Take(CountJob job, string path)
    {
        CountJob known = jobs.GetOrAdd(job.Fact, job);
        if (known != job)
        {
            File.Delete(path);
            return known;
        }

        foreach (CountJob old in jobs.Values.Where(one => one.Stage != CountStage.Reading).OrderBy(one => one.Fact).Take(Math.Max(0, jobs.Count - Remembered)))
        {
            jobs.TryRemove(old.Fact, out _);
        }

        waiting.Add((job, path));
        return job;
    }

    /// <summary>Where a file may be laid until it is read.</summary>
    public string NewPath()
    {
        folder ??= Directory.CreateTempSubdirectory("cloveshed-counts-").FullName;
        return Path.Combine(folder, Guid.NewGuid().ToString("N"));
    }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        waiting.Start();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        waiting.End();
        foreach (CountJob job in jobs.Values)
        {
            job.Stop();
        }

        return Task.CompletedTask;
    }

    public void Dispose()
    {
        if (folder is not null && Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private void Read(CountJob job, string path)
    {
        try
        {
            using (FileStream file = File.OpenRead(path))
            {
                job.Reader.Read(file, job.Reached, CancellationToken.None).GetAwaiter().GetResult();
            }

            if (job.Reader.Faults > 0)
            {
                job.Stage = CountStage.Faulty;
                return;
            }

            job.Reached(job.BytesRead, job.Reader.Bulbs);
            Appended appended = signals.Append(ledger, [job.Origin.SizerCounted(job.Lot, job.File, job.Bins, job.Reader.Histogram, job.Fact)], job.Language);
            job.Why = appended is Appended.Refused refused ? string.Join(" ", refused.Refusals.Select(one => $"{one.Message} {one.Remedy}")) : "";
            job.TakenBy = ledger.Head().Seq;
            job.Stage = appended is Appended.Refused ? CountStage.Refused : CountStage.Taken;
        }
        catch (OperationCanceledException)
        {
            job.Stage = CountStage.Stopped;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or LedgerFault)
        {
            // Told on the job's page; the program goes on.
            job.Why = problem is LedgerFault fault ? fault.Say(job.Language) : problem.Message.ReplaceLineEndings(" ");
            job.Stage = CountStage.Failed;
        }
        finally
        {
            File.Delete(path);
        }
    }
}
