using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// Seasons that the planner's author did not draw: they plan, pass the check and are worth
/// no less than doing nothing.
/// </summary>
public sealed class OddPlanTests
{
    private static readonly PlanEffort Short = new(3, 1e-3);

    public static TheoryData<string> Small => [.. Oddity.All.Where(o => !o.Large).Select(o => o.Name)];

    [Theory, MemberData(nameof(Small))]
    public void An_odd_season_plans_and_passes_the_check(string name) => Sound(OddSeasons.Make(Oddity.All.Single(o => o.Name == name), 1), Short);

    [Fact]
    public void Seasons_at_large_plan_and_pass_the_check()
    {
        OddSeasons.Any.Sample(season => { Sound(season, Short); }, iter: 12, threads: 1);
    }

    /// <summary>A season in which runs held at their least mass were once made although no whole unit came of them.</summary>
    [Fact]
    public void A_run_that_nothing_is_shipped_from_is_not_made() =>
        OddSeasons.Any.Sample(season => { Sound(season, Short); }, iter: 1, threads: 1, seed: "0lzJ1FRugoU3");

    internal static void Sound(Season season, PlanEffort effort)
    {
        PlanSummary summary = Planner.Checked(season, effort).Summary;
        double slack = 0.01 + 1e-6 * Math.Max(Math.Abs(summary.Value), summary.Revenue);
        Assert.True(double.IsFinite(summary.Value) && double.IsFinite(summary.Bound), $"value {summary.Value}, bound {summary.Bound}");
        Assert.True(summary.Bound >= summary.Value - slack, $"bound {summary.Bound} below value {summary.Value}");
        Assert.True(summary.Value >= Idle.Value(season) - slack, $"value {summary.Value} below doing nothing, {Idle.Value(season)}");
    }
}
