using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Web.Plan;

/// <summary>
/// A run as people speak of it: one lot on one line in one week, though its rows may come from several paths or places. Sorted-out
/// bulbs of a lot are a run of their own.
/// </summary>
/// <param name="Id">The first of its rows' numbers in runs.csv, by which a page names it.</param>
public sealed record PlanRun(string Id, int Week, LineId Line, LineMode Mode, LotId Lot, bool FromSorted, IReadOnlyList<RunRow> Rows)
{
    /// <summary>In, as weighed that week.</summary>
    public double Mass => Rows.Sum(row => row.MassIn);

    public double Hours => Rows.Sum(row => row.Hours + row.OvertimeHours);

    public double OvertimeHours => Rows.Sum(row => row.OvertimeHours);

    public IEnumerable<PlaceId> Places => Rows.Select(row => row.Place).OfType<PlaceId>().Distinct();

    /// <summary>The planner's remarks, each once.</summary>
    public string Reason => string.Join("; ", Rows.SelectMany(row => row.Reason.Split("; ")).Where(reason => reason.Length > 0).Distinct());
}

/// <summary>A plan's runs by what they are asked by.</summary>
public sealed class RunBook
{
    private readonly Dictionary<string, PlanRun> byId;
    private readonly Dictionary<(LotId, LineId, int, bool), PlanRun> byKey;
    private readonly ILookup<int, PlanRun> byWeek;
    private readonly ILookup<LotId, PlanRun> byLot;

    private RunBook(IReadOnlyList<PlanRun> runs)
    {
        All = runs;
        byId = runs.SelectMany(run => run.Rows.Select(row => row.Run).Distinct().Select(id => (id, run))).ToDictionary(one => one.id, one => one.run, StringComparer.Ordinal);
        byKey = runs.ToDictionary(run => (run.Lot, run.Line, run.Week, run.FromSorted));
        byWeek = runs.ToLookup(run => run.Week);
        byLot = runs.ToLookup(run => run.Lot);
    }

    /// <summary>By week, then line, then the largest first.</summary>
    public IReadOnlyList<PlanRun> All { get; }

    public static RunBook Of(PlanAnswer answer) => new(
        [.. answer.Runs.GroupBy(row => (row.Week, row.Line, row.Mode, row.Lot, row.FromSorted))
            .Select(rows => new PlanRun(rows.First().Run, rows.Key.Week, rows.Key.Line, rows.Key.Mode, rows.Key.Lot, rows.Key.FromSorted, [.. rows]))
            .OrderBy(run => run.Week).ThenBy(run => run.Line.Text, StringComparer.Ordinal).ThenByDescending(run => run.Mass)]);

    public PlanRun? Find(string? id) => id is null ? null : byId.GetValueOrDefault(id);

    public PlanRun? Find(LotId lot, LineId line, int week, bool fromSorted = false) => byKey.GetValueOrDefault((lot, line, week, fromSorted));

    public IEnumerable<PlanRun> In(int week) => byWeek[week];

    public IEnumerable<PlanRun> Of(LotId lot) => byLot[lot];
}
