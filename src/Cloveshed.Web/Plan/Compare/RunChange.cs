using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Web.Plan.Compare;

/// <summary>A run that two plans do not make alike: masses in the season's unit, 0 where a plan does not make it.</summary>
/// <param name="Week">Its Monday, since two plans may begin in different weeks.</param>
public sealed record RunChange(LocalDate Week, LineId Line, LineMode Mode, LotId Lot, bool FromSorted, double Before, double After)
{
    /// <summary>Smaller differences than a thousandth of the larger mass are what rounding leaves, and no other run.</summary>
    private const double Alike = 1e-3;

    /// <summary>By week, line and lot.</summary>
    public static IReadOnlyList<RunChange> Between(PlanSight before, PlanSight after)
    {
        Dictionary<(LocalDate, LineId, LineMode, LotId, bool), double> Masses(PlanSight plan) =>
            plan.Runs.All.ToDictionary(run => (plan.Season.Settings.Monday(run.Week), run.Line, run.Mode, run.Lot, run.FromSorted), run => run.Mass);
        (var first, var second) = (Masses(before), Masses(after));
        return [.. first.Keys.Union(second.Keys)
            .Select(key => new RunChange(key.Item1, key.Item2, key.Item3, key.Item4, key.Item5, first.GetValueOrDefault(key), second.GetValueOrDefault(key)))
            .Where(change => Math.Abs(change.After - change.Before) > Alike * Math.Max(change.After, change.Before))
            .OrderBy(change => change.Week).ThenBy(change => change.Line.Text, StringComparer.Ordinal).ThenBy(change => change.Lot.Text, StringComparer.Ordinal).ThenBy(change => change.FromSorted)];
    }
}
