using System.Collections.Concurrent;
using Cloveshed.Core.Shift;
using Cloveshed.Web.Plan.Jobs;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Plan.Week;

/// <summary>How the search for a week's order goes.</summary>
/// <param name="Answer">Null while it runs, or where it failed.</param>
/// <param name="Fault">Why it failed; null otherwise.</param>
public sealed record WeekSearch(double Seconds, ShiftAnswer? Answer, string? Fault);

/// <summary>
/// Where weeks are put in order, each on a thread that gives way to the pages. A search goes on when its page is closed and is found again by
/// whoever opens the week. It is short, so that it is not kept over a restart: what is worked by is the order that was taken, a fact.
/// </summary>
public sealed partial class WeekRoom(ShedOptions options, ILoggerFactory logs) : IDisposable
{
    /// <summary>Of the clock, for one search.</summary>
    public const double MostSeconds = 20;

    /// <summary>Ended searches that are still at hand.</summary>
    private const int Kept = 32;

    private readonly ILogger log = logs.CreateLogger("Cloveshed.Web.Plan");
    private readonly ConcurrentDictionary<string, Track> tracks = new(StringComparer.Ordinal);

    /// <summary>Whether there is a scheduler; without one a hand puts weeks in order.</summary>
    public bool CanSearch => options.Shifts is not null;

    /// <summary>Begins a search where none runs for this week.</summary>
    public void Begin(WeekSight week)
    {
        Track mine = new(options.Elapsed());
        Track track = tracks.AddOrUpdate(week.Key, mine, (_, old) => old.Ended ? mine : old);
        if (track != mine)
        {
            mine.Dispose();
            return;
        }

        foreach (string old in tracks.Where(pair => pair.Value.Ended).OrderBy(pair => pair.Value.Began).Select(pair => pair.Key).Take(Math.Max(0, tracks.Count - Kept)))
        {
            tracks.TryRemove(old, out _);
        }

        QuietThread.Start("week room", () => Search(week, mine));
    }

    /// <summary>Ends it with the best so far.</summary>
    public void Stop(WeekSight week)
    {
        if (tracks.TryGetValue(week.Key, out Track? track) && !track.Ended)
        {
            track.Stop();
        }
    }

    /// <summary>Null where none was begun.</summary>
    public WeekSearch? Of(WeekSight week) =>
        tracks.TryGetValue(week.Key, out Track? track) ? new WeekSearch((track.Answer is null ? options.Elapsed() : track.End) - track.Began, track.Answer, track.Fault) : null;

    public void Dispose()
    {
        foreach (Track track in tracks.Values)
        {
            track.Stop();
        }
    }

    private void Search(WeekSight week, Track track)
    {
        try
        {
            track.Answer = options.Shifts!.Schedule(week.Question, new ShiftSearch(MostSeconds, Threads: 1, Cancel: track.Token));
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            Failed(log, problem);
            track.Fault = problem.Message.ReplaceLineEndings(" ");
        }

        track.End = options.Elapsed();
    }

    [LoggerMessage(23, LogLevel.Error, "A week could not be put in order")]
    private static partial void Failed(ILogger log, Exception problem);

    private sealed class Track(double began) : IDisposable
    {
        private readonly CancellationTokenSource stop = new();

        public double Began => began;

        public double End { get; set; }

        public volatile ShiftAnswer? Answer;

        public volatile string? Fault;

        public bool Ended => Answer is not null || Fault is not null;

        public CancellationToken Token => stop.Token;

        public void Stop() => stop.Cancel();

        public void Dispose() => stop.Dispose();
    }
}
