using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>The bound of an easier season is no less than the value of the harder one.</summary>
public sealed class EasingPlanTests
{
    private static readonly PlanEffort Short = new(3, 1e-3);

    // Planned once for all easings.
    private static readonly Dictionary<ulong, Lazy<(Season, double)>> Harder = Enumerable.Range(1, 2).ToDictionary(seed => (ulong)seed, seed => new Lazy<(Season, double)>(() =>
    {
        Season season = OddSeasons.Make(Oddity.All[0], (ulong)seed);
        return (season, Planner.Checked(season, Short).Summary.Value);
    }));

    public static TheoryData<string> Easings => [.. Easing.All.Select(e => e.Name)];

    [Theory, MemberData(nameof(Easings))]
    public void An_easier_season_is_bounded_by_no_less(string name)
    {
        Easing easing = Easing.All.Single(e => e.Name == name);
        foreach (ulong seed in Harder.Keys)
        {
            (Season season, double value) = Harder[seed].Value;
            double bound = Planner.Checked(easing.Ease(season), Short).Summary.Bound;
            Assert.True(bound >= value - 0.01 - 1e-6 * Math.Abs(value), $"seed {seed}: bound {bound} after easing, value {value} before");
        }
    }
}
