using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Web.Plan.Board;

/// <summary>What a run makes of a product; an expectation, so units may be fractional.</summary>
public sealed record RunMakes(ProductId Product, double Units, double Mass);

/// <summary>
/// A run that explains itself. Masses in the season's unit; worths in its currency, of one more hour, bin place or mass unit in the
/// run's week; null where the plan names none.
/// </summary>
/// <param name="LifeUsed">The most used of what is run, at the start of the week; null for sorted-out bulbs.</param>
/// <param name="LastGoodWeek">The last week in which all that is run would still be good; null: beyond the season, or past already.</param>
public sealed record ChosenRun(
    PlanRun Run, IReadOnlyList<RunMakes> Makes, double SeedCloves, double SortedOut, double? LifeUsed, int? LastGoodWeek,
    double? HourWorth, IReadOnlyList<(PlaceId Place, double Worth)> PlaceWorths, double? LotWorth)
{
    public static ChosenRun Of(PlanRun run, PlanAnswer answer, SeasonSettings season)
    {
        HashSet<string> ids = [.. run.Rows.Select(row => row.Run)];
        HashSet<string> paths = [.. run.Rows.Select(row => row.Path).OfType<string>()];
        double? Worth(string kind, string name, int? week) => answer.Worths.FirstOrDefault(worth => worth.Kind == kind && worth.Name == name && worth.Week == week)?.Value;
        PathWeek[] states = [.. answer.Paths.Where(state => paths.Contains(state.Path))];
        double? life = states.Where(state => state.Week == run.Week).Select(state => (double?)state.LifeUsed).Max();
        return new ChosenRun(
            run,
            [.. answer.Made.Where(made => made.Lot == run.Lot && ids.Contains(made.Run)).GroupBy(made => made.Product)
                .Select(made => new RunMakes(made.Key, made.Sum(row => row.Units), made.Sum(row => row.Mass))).OrderByDescending(makes => makes.Mass)],
            answer.Seed.Where(seed => seed.Lot == run.Lot && ids.Contains(seed.Run)).Sum(seed => seed.Cloves),
            answer.Sorted.Where(sorted => sorted.Lot == run.Lot && ids.Contains(sorted.Run)).Sum(sorted => sorted.Mass),
            life, life < 1 ? LastGood(states, run.Week, season.Weeks) : null,
            Worth("line", run.Line.Text, run.Week),
            [.. run.Places.Select(place => (place, Worth("place", place.Text, run.Week) ?? 0))],
            Worth("lot", run.Lot.Text, null));
    }

    /// <summary>A week is good while the life used at its end is under 1.</summary>
    private static int? LastGood(PathWeek[] states, int from, int weeks)
    {
        int[] past = [.. states.Where(state => state.Week > from && state.LifeUsed >= 1).Select(state => state.Week)];
        return past.Length == 0 || past.Min() > weeks ? null : past.Min() - 1;
    }
}
