using Cloveshed.Core.Planning;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>Where a job is in this process; what became of it for good is in the ledger.</summary>
public enum JobStage { Waiting, Working, Checking, Keeping, Ended }

/// <summary>A job as it is at one moment.</summary>
/// <param name="Series">All that the planner has told so far, oldest first.</param>
/// <param name="Seconds">Since work on it began; 0 while it waits.</param>
/// <param name="Stopping">Somebody asked for it to stop.</param>
public sealed record JobSight(JobStage Stage, IReadOnlyList<PlanProgress> Series, double Seconds, bool Stopping)
{
    /// <summary>The last value and bound that were told, which may be of different moments.</summary>
    public double? Value => Last(progress => progress.Value);

    /// <summary>The closest bound.</summary>
    public double? Bound => Last(progress => progress.Bound);

    /// <summary>What the planner is at.</summary>
    public PlanStage At => Series.Count == 0 ? PlanStage.Begun : Series[^1].Stage;

    private double? Last(Func<PlanProgress, double?> figure)
    {
        for (int at = Series.Count - 1; at >= 0; at--)
        {
            if (figure(Series[at]) is { } found && double.IsFinite(found))
            {
                return found;
            }
        }

        return null;
    }
}

/// <summary>
/// The progress of one job: every event that the planner told, so that a page opened late draws the whole of it, and a signal for
/// those who wait for the next. Written by the plan room's thread, read by any.
/// </summary>
public sealed class JobTrack(Guid job, Func<double> elapsed) : IDisposable
{
    /// <summary>More points than a picture has pixels; then every second one goes. A day's planning tells fewer.</summary>
    private const int MostPoints = 4000;

    private readonly Lock writing = new();
    private readonly CancellationTokenSource stop = new();
    private List<PlanProgress> series = [];
    private JobStage stage = JobStage.Waiting;
    private TaskCompletionSource changed = Signal();
    private double began;

    public Guid Job => job;

    /// <summary>Cancelled when the plan is to be ended with what there is.</summary>
    public CancellationToken Stopped => stop.Token;

    public JobSight Sight
    {
        get
        {
            lock (writing)
            {
                return new JobSight(stage, [.. series], stage == JobStage.Waiting ? 0 : elapsed() - began, stop.IsCancellationRequested);
            }
        }
    }

    /// <summary>Completes at the next change after this call.</summary>
    public Task Changed
    {
        get
        {
            lock (writing)
            {
                return changed.Task;
            }
        }
    }

    public void Tell(PlanProgress progress) => Change(() =>
    {
        if (series.Count >= MostPoints)
        {
            series = [.. series.Where((_, at) => at % 2 == 0)];
        }

        series.Add(progress);
    });

    public void Now(JobStage now) => Change(() =>
    {
        if (stage == JobStage.Waiting && now != JobStage.Waiting)
        {
            began = elapsed();
        }

        stage = now;
    });

    /// <summary>Asks for an end with what there is.</summary>
    public void Stop() => Change(stop.Cancel);

    public void Dispose() => stop.Dispose();

    private void Change(Action change)
    {
        TaskCompletionSource told;
        lock (writing)
        {
            change();
            (told, changed) = (changed, Signal());
        }

        told.TrySetResult();
    }

    private static TaskCompletionSource Signal() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
