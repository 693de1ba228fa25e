using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>The bound of an easier season is no less than the value of the harder one.</summary>
public sealed class EasingPlanTests
{
    private static readonly PlanEffort Short = new(3, 1e-3);

    public static TheoryData<string> Easings => [.. Easing.All.Select(e => e.Name)];

    [Theory, MemberData(nameof(Easings))]
    public void An_easier_season_is_bounded_by_no_less(string name)
    {
        Easing easing = Easing.All.Single(e => e.Name == name);
        for (ulong seed = 1; seed <= 4; seed++)
        {
            Season season = OddSeasons.Make(Oddity.All[0], seed);
            double value = Planner.Checked(season, Short).Summary.Value;
            double bound = Planner.Checked(easing.Ease(season), Short).Summary.Bound;
            Assert.True(bound >= value - 0.01 - 1e-6 * Math.Abs(value), $"seed {seed}: bound {bound} after easing, value {value} before");
        }
    }
}
