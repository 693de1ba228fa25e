using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Web.Plan.Compare;

/// <summary>A part of a lot that the second plan runs in another week, or over another line of the same kind, than the first.</summary>
/// <param name="Mass">In the season's unit, as weighed: the smaller of what is gone there and what is new here.</param>
public sealed record RunMove(LotId Lot, LineMode Mode, bool FromSorted, double Mass, LocalDate FromWeek, LineId FromLine, LocalDate ToWeek, LineId ToLine)
{
    /// <summary>Negative: earlier.</summary>
    public int WeeksLater => (int)(Period.Between(FromWeek, ToWeek, PeriodUnits.Days).Days / 7);

    /// <summary>Less than this of a mass unit is what rounding leaves.</summary>
    private const double Unseen = 1;

    /// <summary>
    /// What is gone of a lot somewhere is matched with what is new of it elsewhere, nearest weeks first: of all ways to say it the one with the shortest moves is what a person
    /// would call the same run moved. What has no match is run more or less, and no move.
    /// </summary>
    /// <returns>Largest first.</returns>
    public static IReadOnlyList<RunMove> Of(IReadOnlyList<RunChange> changes) =>
        [.. changes.GroupBy(change => (change.Lot, change.Mode, change.FromSorted)).SelectMany(Of).OrderByDescending(move => move.Mass).ThenBy(move => move.Lot.Text, StringComparer.Ordinal).ThenBy(move => move.FromWeek)];

    private static IEnumerable<RunMove> Of(IGrouping<(LotId Lot, LineMode Mode, bool FromSorted), RunChange> lot)
    {
        List<(RunChange At, double Left)> gone = [.. lot.Where(change => change.After < change.Before).Select(change => (change, change.Before - change.After))];
        List<(RunChange At, double Left)> come = [.. lot.Where(change => change.After > change.Before).Select(change => (change, change.After - change.Before))];
        while (gone.Count > 0 && come.Count > 0)
        {
            (int g, int c) = Enumerable.Range(0, gone.Count).SelectMany(one => Enumerable.Range(0, come.Count).Select(other => (one, other)))
                .MinBy(pair => Math.Abs(Period.Between(gone[pair.one].At.Week, come[pair.other].At.Week, PeriodUnits.Days).Days));
            double mass = Math.Min(gone[g].Left, come[c].Left);
            if (mass >= Unseen)
            {
                yield return new RunMove(lot.Key.Lot, lot.Key.Mode, lot.Key.FromSorted, mass, gone[g].At.Week, gone[g].At.Line, come[c].At.Week, come[c].At.Line);
            }

            Take(gone, g, mass);
            Take(come, c, mass);
        }
    }

    private static void Take(List<(RunChange At, double Left)> list, int at, double mass)
    {
        if (list[at].Left - mass < Unseen)
        {
            list.RemoveAt(at);
        }
        else
        {
            list[at] = list[at] with { Left = list[at].Left - mass };
        }
    }
}
