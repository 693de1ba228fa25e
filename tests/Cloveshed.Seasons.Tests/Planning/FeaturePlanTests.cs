using Cloveshed.Core.Answers;
using Cloveshed.Seasons.Tests.Features;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>The engine reaches the optimum that was worked out by hand, and its bound is not below it.</summary>
public sealed class FeaturePlanTests
{
    public static TheoryData<string> Names => FeatureTests.Names;

    [Theory, MemberData(nameof(Names))]
    public void The_plan_is_worth_what_the_hand_says(string name)
    {
        Feature feature = Feature.All.Single(f => f.Name == name);
        PlanSummary summary = Planner.Checked(feature.Season, new(20, 1e-9)).Summary;
        Assert.InRange(summary.Value, feature.Low - feature.Slack, feature.High + feature.Slack);
        Assert.True(summary.Bound >= Math.Max(summary.Value, feature.Low) - feature.Slack, $"bound {summary.Bound} below {summary.Value} or {feature.Low}");
    }
}
