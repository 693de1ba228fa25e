using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>What a fifth in a default changes, against planning again with it: where the plan stays the same the two must agree.</summary>
public sealed class SensitivityTests
{
    [Theory]
    [InlineData("loss_base")]
    [InlineData("loss_per_kpa")]
    [InlineData("decay_at_zero")]
    [InlineData("shape")]
    public void A_fifth_in_a_default_is_what_planning_again_says(string dial)
    {
        Season season = Feature.All.Single(f => f.Name == "keeping pays more than packing").Season;
        PlanAnswer plan = Plan(season, KeepingParameters.Default);
        DefaultUsed said = plan.Summary.Defaults.Single(d => d.Name == "keeping: " + dial);
        double more = Plan(season, KeepingParameters.Default.With(dial, 1.2)).Summary.Value - plan.Summary.Value;
        double less = Plan(season, KeepingParameters.Default.With(dial, 0.8)).Summary.Value - plan.Summary.Value;
        Assert.Equal(more, said.PlusFifth!.Value, 2);
        Assert.Equal(less, said.MinusFifth!.Value, 2);
        Assert.True(Math.Abs(more) > 1e-6 || dial is "decay_at_zero" or "shape", "the default must matter for the comparison to mean anything");
    }

    [Fact]
    public void Each_keeping_coefficient_is_listed_with_both_changes()
    {
        PlanAnswer plan = Plan(Feature.All.Single(f => f.Name == "keeping pays more than packing").Season, KeepingParameters.Default);
        foreach (string name in KeepingParameters.Names)
            Assert.True(plan.Summary.Defaults.Single(d => d.Name == "keeping: " + name) is { PlusFifth: not null, MinusFifth: not null }, name);
    }

    private static PlanAnswer Plan(Season season, KeepingParameters keeping) =>
        new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(season, Beliefs.Default with { Keeping = keeping }, 1e6, 1e-9, 1, 1, SearchDepth.Exact, () => 0, "test", "test", [], RoundsAtMost: 30, PolishWindowsAtMost: 0));
}
