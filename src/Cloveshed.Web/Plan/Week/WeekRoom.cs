using System.Collections.Concurrent;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using Cloveshed.Ledger;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Shared;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime.Text;

namespace Cloveshed.Web.Plan.Week;

/// <summary>How the search for a week's order goes.</summary>
/// <param name="Seconds">Since it began here; 0 while it waits for its turn.</param>
/// <param name="Answer">Null while it runs, or where it failed.</param>
/// <param name="Fault">Why it failed; null otherwise.</param>
/// <param name="Again">When the program was started again since it was asked for; null where it was not, or it has ended.</param>
public sealed record WeekSearch(double Seconds, ShiftAnswer? Answer, string? Fault, DateTimeOffset? Again);

/// <summary>
/// Where weeks are put in order: what the ledger holds as asked and not ended, one after another on a thread that gives way to the pages. As with
/// plans nothing is stored between asking and ending, so that a process may die at any moment and the next one searches from the beginning; what was
/// found is a fact, and is found again by whoever opens the week.
/// </summary>
public sealed partial class WeekRoom : IHostedService, IDisposable
{
    /// <summary>Of the clock, for one search.</summary>
    public const double MostSeconds = 20;

    /// <summary>What one process of a shed does at a time.</summary>
    private const string Held = "week-order";

    /// <summary>How often it looks for searches that came from elsewhere, or that another process left.</summary>
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(10);

    /// <summary>How long it waits before it offers a result again that the ledger could not take.</summary>
    private static readonly TimeSpan OfferAgain = TimeSpan.FromSeconds(5);

    private readonly ShedLedger ledger;
    private readonly ShedSignals signals;
    private readonly WeekShelf weeks;
    private readonly ShedOptions options;
    private readonly TimeProvider clock;
    private readonly ILogger log;
    private readonly WeekAsks asks;
    private readonly ConcurrentDictionary<Guid, Track> tracks = new();
    private readonly SemaphoreSlim wake = new(0);
    private readonly TaskCompletionSource left = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile bool leaving;
    private DateTimeOffset here;

    public WeekRoom(ShedLedger ledger, ShedSignals signals, WeekShelf weeks, ShedOptions options, TimeProvider clock, ILoggerFactory logs) =>
        (this.ledger, this.signals, this.weeks, this.options, this.clock, log, asks) = (ledger, signals, weeks, options, clock, logs.CreateLogger("Cloveshed.Web.Plan"), new WeekAsks(ledger));

    /// <summary>Whether there is a scheduler; without one a hand puts weeks in order.</summary>
    public bool CanSearch => options.Shifts is not null;

    public Task StartAsync(CancellationToken cancellationToken)
    {
        here = clock.GetUtcNow();
        if (CanSearch)
        {
            QuietThread.Start("week room", Work);
        }
        else
        {
            left.TrySetResult();
        }

        return Task.CompletedTask;
    }

    /// <summary>Lets go of the search, which stays asked.</summary>
    public async Task StopAsync(CancellationToken cancellationToken)
    {
        leaving = true;
        wake.Release();
        foreach (Track track in tracks.Values)
        {
            track.Stop.Cancel();
        }

        await Task.WhenAny(left.Task, Task.Delay(Timeout.Infinite, cancellationToken));
    }

    /// <summary>There is a new search: it need not wait for the next look.</summary>
    public void Wake() => wake.Release();

    /// <summary>Whether a search for this week goes on or waits for its turn.</summary>
    public bool Runs(WeekSight week) => asks.Last(week.Key) is { Found: null };

    /// <summary>Ends it with the best so far.</summary>
    public void Stop(WeekSight week)
    {
        if (asks.Last(week.Key) is { Found: null } ask)
        {
            tracks.GetOrAdd(ask.Fact, _ => new Track()).Stop.Cancel();
            Wake();
        }
    }

    /// <summary>The last one for this week; null where none was asked for.</summary>
    public WeekSearch? Of(WeekSight week) => asks.Last(week.Key) switch
    {
        null => null,
        { Found: null } open => new WeekSearch(tracks.GetValueOrDefault(open.Fact)?.Began is { } began ? options.Elapsed() - began : 0, null, null, open.At < here ? here : null),
        { Found: { } found } => WeekFinds.Read(found, week),
    };

    public void Dispose()
    {
        leaving = true;
        wake.Dispose();
        foreach (Track track in tracks.Values)
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
            // The host had no time to wait: the search stays asked.
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

    /// <summary>Does one search where there is one and no other process is at it; false where there is nothing to do here.</summary>
    private bool OneTurn()
    {
        try
        {
            if (!asks.All().Any(ask => ask.Found is null))
            {
                return false;
            }

            using IDisposable? turn = ledger.TryHold(Held);
            if (turn is null || asks.All().FirstOrDefault(ask => ask.Found is null) is not { } next)
            {
                return false;
            }

            NewFact found = Search(next);
            if (!leaving && signals.Append(ledger, [found]) is Appended.Refused refused)
            {
                throw new LedgerFault(LedgerFaultKind.Refused, refused.Refusals[0].Message);
            }

            if (tracks.TryRemove(next.Fact, out Track? done))
            {
                done.Dispose();
            }

            return true;
        }
        catch (LedgerFault fault) when (!leaving)
        {
            // It stays asked: it is begun again when the ledger can be read and written.
            LedgerAway(log, fault.Message);
            wake.Wait(OfferAgain);
            return false;
        }
    }

    private NewFact Search(WeekAsk ask)
    {
        FactOrigin origin = FactOrigin.Now(clock, "planner", "", "plan");
        Track track = tracks.GetOrAdd(ask.Fact, _ => new Track());
        track.Began = options.Elapsed();
        try
        {
            // By set-ups and shifts as they were when it was asked for, whenever its turn comes.
            ShedState shed = ledger.Upto(ask.Basis);
            PlanEntry plan = ledger.Now().Plans.First(one => one.Fact == ask.Plan);
            Season season = shed.Season ?? throw new InvalidOperationException("No season was open.");
            WeekSight week = weeks.Of(plan, season, shed.InputDigest, season.Settings.WeekOf(LocalDatePattern.Iso.Parse(ask.Monday).Value));
            ShiftAnswer answer = options.Shifts!.Schedule(week.Question, new ShiftSearch(ask.Seconds, Threads: 1, Cancel: track.Stop.Token));
            return WeekFinds.Told(origin, ask.Fact, answer, week);
        }
        catch (Exception problem) when (problem is not (OutOfMemoryException or LedgerFault or ObjectDisposedException))
        {
            Failed(log, problem);
            return origin.WeekNotFound(ask.Fact, options.Elapsed() - track.Began.Value, problem.Message.ReplaceLineEndings(" "));
        }
    }

    [LoggerMessage(23, LogLevel.Error, "A week could not be put in order")]
    private static partial void Failed(ILogger log, Exception problem);

    [LoggerMessage(24, LogLevel.Error, "The week room waits for the ledger: {Fault}")]
    private static partial void LedgerAway(ILogger log, string fault);

    /// <summary>A search in this process.</summary>
    private sealed class Track : IDisposable
    {
        public CancellationTokenSource Stop { get; } = new();

        /// <summary>By the program's clock; null while it waits.</summary>
        public double? Began { get; set; }

        public void Dispose() => Stop.Dispose();
    }
}
