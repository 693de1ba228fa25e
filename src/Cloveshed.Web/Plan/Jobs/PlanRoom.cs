using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;
using Cloveshed.Core.Planning;
using Cloveshed.Ledger;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Shared;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>
/// Where plans are made: jobs that the ledger holds as asked and not ended, one at a time, in the order in which they were asked, on
/// a thread that gives way to the pages. A job ends by a fact; until then nothing of it counts, so that a process may die at any
/// moment and the next one takes the job up again from its beginning.
/// </summary>
public sealed partial class PlanRoom : IHostedService, IDisposable
{
    /// <summary>How often it looks for jobs that came from elsewhere: another process, or the interface for programs.</summary>
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1);

    /// <summary>How long it waits before it offers a result again that the ledger could not take: a disk may be full for a while.</summary>
    private static readonly TimeSpan OfferAgain = TimeSpan.FromSeconds(5);

    /// <summary>What one process of a shed has at a time: two of them do not make the same plan.</summary>
    private const string Held = "planning";

    /// <summary>Tracks of ended jobs that are still at hand for a page that shows how they went.</summary>
    private const int TracksKept = 32;

    /// <summary>More threads gain little and each takes memory; one processor is left to the pages where there are more.</summary>
    private const int MostThreads = 8;

    private readonly ShedLedger ledger;
    private readonly ShedSignals signals;
    private readonly ILogger log;
    private readonly PlanMeans means;
    private readonly ConcurrentDictionary<Guid, JobTrack> tracks = new();
    private readonly ConcurrentQueue<Guid> ended = new();
    private readonly SemaphoreSlim wake = new(0);
    private readonly TaskCompletionSource left = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile bool leaving;
    private volatile bool elsewhere;
    private DateTimeOffset here;

    public PlanRoom(ShedLedger ledger, ILinearSolver solver, ShedSignals signals, TimeProvider clock, ShedOptions options, ILoggerFactory logs)
    {
        (this.ledger, this.signals, log) = (ledger, signals, logs.CreateLogger("Cloveshed.Web.Plan"));
        means = new PlanMeans(solver, options.Version, options.Elapsed, Math.Clamp(Environment.ProcessorCount - 1, 1, MostThreads), clock);
    }

    /// <summary>When this process began to take up jobs: what was asked for before is begun again here.</summary>
    public DateTimeOffset Here => here;

    /// <summary>Jobs wait here because another process of this shed plans.</summary>
    public bool Elsewhere => elsewhere;

    public Task StartAsync(CancellationToken cancellationToken)
    {
        here = means.Clock.GetUtcNow();
        QuietThread.Start("plan room", Work);
        return Task.CompletedTask;
    }

    /// <summary>
    /// Lets go of the job that is worked on, which stays asked. The planner looks up between two steps of its own; where the host has
    /// no time to wait for that, the thread dies with the process, as it may at any moment.
    /// </summary>
    public async Task StopAsync(CancellationToken cancellationToken)
    {
        leaving = true;
        wake.Release();
        foreach (JobTrack track in tracks.Values.Where(track => track.Sight.Stage == JobStage.Working))
        {
            track.Stop();
        }

        await Task.WhenAny(left.Task, Task.Delay(Timeout.Infinite, cancellationToken));
    }

    /// <summary>There is a new job, or one to stop: it need not wait for the next look.</summary>
    public void Wake() => wake.Release();

    /// <summary>How a job is going; null where this process has not seen it.</summary>
    public JobTrack? Track(Guid job) => tracks.GetValueOrDefault(job);

    /// <summary>Asks a job to end: with what it has, or, where it has not begun, with nothing.</summary>
    public void Stop(Guid job)
    {
        Found(job).Stop();
        Wake();
    }

    public void Dispose()
    {
        // A host that could not start (its port is taken) is disposed of without being stopped.
        leaving = true;
        wake.Dispose();
        foreach (JobTrack track in tracks.Values)
        {
            track.Dispose();
        }
    }

    private void Work()
    {
        try
        {
            while (!leaving)
            {
                if (!OneTurn())
                {
                    wake.Wait(Look);
                }
            }
        }
        catch (ObjectDisposedException) when (leaving)
        {
            // The host had no time to wait: the ledger is closed, and the job stays asked.
        }
        catch (LedgerFault) when (leaving)
        {
            // The same, where it was being read or written just then. Nobody is told: the log may be closed as well.
        }
        finally
        {
            left.TrySetResult();
        }
    }

    /// <summary>Does one job where there is one and no other process plans; false where there is nothing to do here.</summary>
    private bool OneTurn()
    {
        if (Next() is null)
        {
            return elsewhere = false;
        }

        using IDisposable? turn = ledger.TryHold(Held);
        elsewhere = turn is null;
        // Asked again: another process may have ended it between the two.
        if (turn is null || Next() is not { } job)
        {
            return false;
        }

        Do(job);
        return true;
    }

    /// <summary>The first job in the ledger's order; one that was stopped before it began goes first, since it takes no time.</summary>
    private PlanJob? Next()
    {
        try
        {
            IReadOnlyList<PlanJob> jobs = ledger.Now().Jobs;
            foreach (PlanJob job in jobs)
            {
                Found(job.Fact);
            }

            return jobs.FirstOrDefault(job => Found(job.Fact).Stopped.IsCancellationRequested) ?? (jobs.Count > 0 ? jobs[0] : null);
        }
        catch (LedgerFault fault) when (!leaving)
        {
            LedgerAway(log, fault.Message);
            return null;
        }
    }

    [SuppressMessage("Reliability", "CA2000:Dispose objects before losing scope", Justification = "Kept until the room is disposed of.")]
    private JobTrack Found(Guid job) => tracks.GetOrAdd(job, id => new JobTrack(id, means.Elapsed));

    private void Do(PlanJob job)
    {
        JobTrack track = Found(job.Fact);
        track.Now(JobStage.Working);
        Began(log, job.Fact, job.Basis);
        try
        {
            ShedState shed = ledger.Upto(job.Basis);
            Beliefs beliefs = shed.Season is null ? Beliefs.Default : Beliefs.Default with { Clocks = ClockShelf.Upto(ledger, shed, job.Basis, means.Clock.LocalTimeZone).Clocks };
            PlanOutcome? outcome = null;
            signals.Plan(() => outcome = PlanMaking.Make(job, shed, beliefs, track, means), made => leaving ? "left" : made.Outcome);
            track.Now(JobStage.Keeping);
            if (!leaving)
            {
                Keep(job, outcome!);
            }
        }
        catch (LedgerFault fault) when (!leaving)
        {
            // The job is still asked: it is begun again when the ledger can be read.
            LedgerAway(log, fault.Message);
            track.Now(JobStage.Waiting);
            wake.Wait(OfferAgain);
            return;
        }

        track.Now(JobStage.Ended);
        Forget(job.Fact);
    }

    /// <summary>Hands the result to the ledger until it is taken: a minute's work is not lost because a disk is full.</summary>
    private void Keep(PlanJob job, PlanOutcome outcome)
    {
        while (!leaving)
        {
            try
            {
                if (signals.Append(ledger, [outcome.Fact], documents: outcome.Documents) is Appended.Refused { Refusals: [var why, ..] })
                {
                    // Another process ended it first; or the ledger will not have it, and then the job must not come up again.
                    if (ledger.Now().Jobs.Any(still => still.Fact == job.Fact))
                    {
                        signals.Append(ledger, [PlanMaking.Refused(job, means, why.Message).Fact]);
                    }

                    Ended(log, job.Fact, why.Rule);
                    return;
                }

                Ended(log, job.Fact, outcome.Outcome);
                return;
            }
            catch (LedgerFault fault) when (!leaving)
            {
                LedgerAway(log, fault.Message);
                wake.Wait(OfferAgain);
            }
        }
    }

    private void Forget(Guid job)
    {
        ended.Enqueue(job);
        while (ended.Count > TracksKept && ended.TryDequeue(out Guid oldest))
        {
            tracks.TryRemove(oldest, out _);
        }
    }

    [LoggerMessage(20, LogLevel.Information, "Plan {Job} is begun, from fact {Basis}")]
    private static partial void Began(ILogger log, Guid job, long basis);

    [LoggerMessage(21, LogLevel.Information, "Plan {Job} has ended: {Outcome}")]
    private static partial void Ended(ILogger log, Guid job, string outcome);

    [LoggerMessage(22, LogLevel.Error, "The plan room waits for the ledger: {Fault}")]
    private static partial void LedgerAway(ILogger log, string fault);
}
