using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Lots.Trials;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Shared;
using Microsoft.Extensions.Hosting;

namespace Cloveshed.Web.Setup;

/// <summary>How the bands of a season's size curves did in trials.</summary>
/// <param name="Half">Every second bulb of each lot held out; null where no lot has bulbs enough.</param>
/// <param name="Whole">Whole lots held out; likewise.</param>
/// <param name="MadeUp">Seasons made up around this one, a score for each of <see cref="Bulbs"/>.</param>
public sealed record SureFound(BandScore? Half, BandScore? Whole, IReadOnlyList<BandScore> MadeUp)
{
    /// <summary>Bulbs of a sample that made-up lots are tried with.</summary>
    public static IReadOnlyList<int> Bulbs { get; } = [30, 60, 120];

    /// <summary>All trials that could be made.</summary>
    public IReadOnlyList<BandScore> All { get; } = [.. new[] { Half, Whole }.Concat(MadeUp).OfType<BandScore>()];
}

/// <summary>A season's size curves being tried, and what came of it.</summary>
public sealed class SureJob(Season season, LotsKnown known)
{
    private readonly SimulatedQuestion madeUp = new(season, known, SureFound.Bulbs);
    private volatile bool stopped;
    private volatile SureFound? found;
    private volatile ExceptionDispatchInfo? failed;
    private int done;

    /// <summary>How often lots are known anew, in all trials together.</summary>
    public int Knowings => HeldOutBulbs.Knowings + madeUp.Knowings;

    /// <summary>How often they were, so far.</summary>
    public int Done => Volatile.Read(ref done);

    /// <summary>Null until all trials are made. What failed on the way is thrown here, for the page that asks.</summary>
    public SureFound? Found
    {
        get
        {
            failed?.Throw();
            return found;
        }
    }

    /// <summary>Stopped by a hand: nothing was found.</summary>
    public bool Stopped => stopped && found is null;

    public bool Ended => found is not null || failed is not null || stopped;

    /// <summary>Ends the trials when lots are next known.</summary>
    public void Stop() => stopped = true;

    internal void Run()
    {
        try
        {
            Step(0);
            found = new(HeldOutBulbs.HalfOfEachLot(season, () => Step(1)), HeldOutBulbs.WholeLots(season, () => Step(1)), SimulatedSeasons.Scores(madeUp, () => Step(1)));
        }
        catch (OperationCanceledException)
        {
            // It was stopped, and says so.
        }
#pragma warning disable CA1031 // whatever it is, it is thrown again where it can be told: to the page
        catch (Exception problem)
        {
            failed = ExceptionDispatchInfo.Capture(problem);
        }
#pragma warning restore CA1031
    }

    private void Step(int by)
    {
        Interlocked.Add(ref done, by);
        if (stopped)
        {
            throw new OperationCanceledException();
        }
    }
}

/// <summary>
/// Tries the size curves of a season apart from the page that asked, once for each state of its rows: it knows its lots over and over and takes
/// seconds, with a machine under load many. Closing the page does not stop it.
/// </summary>
public sealed class SureRoom : IHostedService
{
    private const int Room = 4;

    private readonly Shelf<SureJob> jobs = new(Room);
    private readonly QuietQueue<SureJob> waiting = new("size curves tried", job => job.Run());
    private readonly ConcurrentDictionary<string, int> again = new(StringComparer.Ordinal);

    /// <summary>The trials of what a page sees; begun if nobody asked before.</summary>
    public SureJob Of(ShedReading shed)
    {
        string digest = shed.State.KnowledgeDigest;
        return jobs.Of($"{digest} {again.GetValueOrDefault(digest)}", () =>
        {
            SureJob job = new(shed.SeasonOpen, shed.Lots);
            waiting.Add(job);
            return job;
        });
    }

    /// <summary>Begins anew what was stopped.</summary>
    public void Again(ShedReading shed)
    {
        if (Of(shed).Stopped)
        {
            again.AddOrUpdate(shed.State.KnowledgeDigest, 1, (_, times) => times + 1);
        }
    }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        waiting.Start();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        waiting.End();
        return Task.CompletedTask;
    }
}
