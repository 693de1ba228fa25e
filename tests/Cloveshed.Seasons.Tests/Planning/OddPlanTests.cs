using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// Seasons that the planner's author did not draw: they plan, pass the check, are worth no less than doing nothing, and the
/// bound of an easier season is no less than the value of the harder one.
/// </summary>
public sealed class OddPlanTests
{
    private static readonly PlanEffort Short = new(3, 1e-3);

    public static TheoryData<string> Small => [.. Oddity.All.Where(o => !o.Large).Select(o => o.Name)];
    public static TheoryData<string> Large => [.. Oddity.All.Where(o => o.Large).Select(o => o.Name)];
    public static TheoryData<string> Easings => [.. Easing.All.Select(e => e.Name)];

    [Theory, MemberData(nameof(Small))]
    public void An_odd_season_plans_and_passes_the_check(string name) => Sound(OddSeasons.Make(Oddity.All.Single(o => o.Name == name), 1), Short);

    [Theory, MemberData(nameof(Large))]
    public void A_large_odd_season_plans_and_passes_the_check(string name) => Sound(OddSeasons.Make(Oddity.All.Single(o => o.Name == name), 1), new(30, 1e-2));

    [Fact]
    public void Seasons_at_large_plan_and_pass_the_check()
    {
        Long();
        OddSeasons.Any.Sample(season => { Sound(season, Short); }, iter: 20, threads: 1);
    }

    [Theory, MemberData(nameof(Easings))]
    public void An_easier_season_is_bounded_by_no_less(string name)
    {
        Long();
        Easing easing = Easing.All.Single(e => e.Name == name);
        for (ulong seed = 1; seed <= 4; seed++)
        {
            Season season = OddSeasons.Make(Oddity.All[0], seed);
            double value = Planner.Checked(season, Short).Summary.Value;
            double bound = Planner.Checked(easing.Ease(season), Short).Summary.Bound;
            Assert.True(bound >= value - 0.01 - 1e-6 * Math.Abs(value), $"seed {seed}: bound {bound} after easing, value {value} before");
        }
    }

    /// <summary>These plan hundreds of seasons: minutes of work, so they run where they are asked for.</summary>
    private static void Long() => Assert.SkipUnless(Environment.GetEnvironmentVariable("CLOVESHED_LONG") == "1", "long: set CLOVESHED_LONG=1 to plan the odd seasons");

    private static void Sound(Season season, PlanEffort effort)
    {
        Long();
        PlanSummary summary = Planner.Checked(season, effort).Summary;
        double slack = 0.01 + 1e-6 * Math.Max(Math.Abs(summary.Value), summary.Revenue);
        Assert.True(double.IsFinite(summary.Value) && double.IsFinite(summary.Bound), $"value {summary.Value}, bound {summary.Bound}");
        Assert.True(summary.Bound >= summary.Value - slack, $"bound {summary.Bound} below value {summary.Value}");
        Assert.True(summary.Value >= Idle.Value(season) - slack, $"value {summary.Value} below doing nothing, {Idle.Value(season)}");
    }
}
