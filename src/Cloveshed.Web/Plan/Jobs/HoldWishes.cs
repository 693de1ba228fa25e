using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>The holds of a shed as the planner's wishes: weeks by their number in the season, masses in the season's unit.</summary>
public static class HoldWishes
{
    /// <summary>A hold of a week outside the season is of no plan of it, and left out.</summary>
    public static RunWishes Of(IReadOnlyList<RunHold> holds, SeasonSettings season)
    {
        ILookup<bool, (RunHold Hold, int Week)> byKind = holds.Select(hold => (hold, season.WeekOf(hold.Week))).Where(one => one.Item2 >= 0 && one.Item2 < season.Weeks)
            .ToLookup(one => one.hold.Pinned);
        return new RunWishes(
            [.. byKind[true].Select(one => new PinnedRun(one.Hold.Lot, one.Hold.Line, one.Week, one.Hold.MassIn(season.MassUnit)))],
            [.. byKind[false].Select(one => new BarredRun(one.Hold.Lot, one.Hold.Line, one.Week))]);
    }
}
