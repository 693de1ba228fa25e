using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Pictures.Paths;
using Cloveshed.Pictures.Sections;
using Cloveshed.Web.Dock;
using Cloveshed.Web.Keep;

namespace Cloveshed.Web.Shared;

/// <summary>
/// What pages read off a plan for a season, each thing made once, when it is first asked for. The season may have changed since the
/// plan was made: whatever the plan names that is no longer there is left out where it is looked up.
/// </summary>
public sealed class PlanBook
{
    private readonly Lazy<PathBook> paths;
    private readonly Lazy<IReadOnlyList<OrderOutcome>> orders;
    private readonly Lazy<FillTrace> trace;
    private readonly Lazy<KeepingFacts> keeping;
    private readonly Dictionary<LotId, double> lotWorths = [];
    private readonly Dictionary<(LineId, int), double> hourWorths = [];
    private Dictionary<string, LineId>? lineOfRun;

    public PlanBook(Season season, PlanAnswer answer)
    {
        Season = season;
        Answer = answer;
        paths = new(() => new PathBook(season, answer));
        orders = new(() => OrderOutcome.All(season, answer));
        trace = new(() => FillTrace.Of(season, answer));
        keeping = new(() => KeepingFacts.From(season, answer));
        foreach (WorthRow worth in answer.Worths)
        {
            switch (worth)
            {
                case { Kind: "lot" }: lotWorths[new LotId(worth.Name)] = worth.Value; break;
                case { Kind: "line", Week: { } week }: hourWorths[(new LineId(worth.Name), week)] = worth.Value; break;
                default: break;
            }
        }

        Runs = answer.Runs.ToLookup(run => run.Week);
        RunsOf = answer.Runs.ToLookup(run => run.Lot);
        Made = answer.Made.ToLookup(row => (row.Run, row.Lot));
        Seed = answer.Seed.ToLookup(row => (row.Run, row.Lot));
    }

    public Season Season { get; }

    public PlanAnswer Answer { get; }

    public PathBook Paths => paths.Value;

    /// <summary>What becomes of each order line, in the season's order.</summary>
    public IReadOnlyList<OrderOutcome> Orders => orders.Value;

    public FillTrace Trace => trace.Value;

    public KeepingFacts Keeping => keeping.Value;

    /// <summary>By week.</summary>
    public ILookup<int, RunRow> Runs { get; }

    /// <summary>By lot; of sorted-out bulbs too.</summary>
    public ILookup<LotId, RunRow> RunsOf { get; }

    public ILookup<(string Run, LotId Lot), MadeRow> Made { get; }

    public ILookup<(string Run, LotId Lot), SeedRow> Seed { get; }

    /// <summary>The line that a run is on.</summary>
    public LineId? LineOf(string run) => (lineOfRun ??= Answer.Runs.GroupBy(row => row.Run).ToDictionary(rows => rows.Key, rows => rows.First().Line)).TryGetValue(run, out LineId line) ? line : null;

    /// <summary>What one more mass unit of the lot, as at its start, would add; null where the plan names no worth of it.</summary>
    public double? WorthOf(LotId lot) => lotWorths.TryGetValue(lot, out double worth) ? worth : null;

    /// <summary>What one more hour of the line in the week would add; 0 where the plan names none.</summary>
    public double HourWorth(LineId line, int week) => hourWorths.GetValueOrDefault((line, week));
}

/// <summary>Books of the last few plans, by plan and season.</summary>
public sealed class BookShelf
{
    /// <summary>A little more than a season's plans that are looked at in turn, and two by the clocks of today.</summary>
    private const int Room = 6;

    private readonly Shelf<PlanBook> shelf = new(Room);

    public PlanBook Of(string document, string digest, Season season, PlanAnswer answer) => shelf.Of(document + digest, () => new PlanBook(season, answer));

    /// <summary>The same plan with its paths by the clocks of what they rest on, which the key names.</summary>
    public PlanBook Seen(string key, PlanBook book, ClockBook clocks) => shelf.Of("seen " + key, () => new PlanBook(book.Season, SeenPaths.Of(book.Season, book.Answer, clocks.Of)));
}
