using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Seasons.Tests.Planning;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>
/// The whole problem, with set-ups, least runs, whole units, whole orders and room weeks decided by branching: it reaches what
/// was worked out by hand, no plan is worth more than it allows, and the planner's bound is never below what it found.
/// </summary>
public sealed class MixedValueTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 30)];
    public static TheoryData<string> Features => FeatureTests.Names;

    [Theory, MemberData(nameof(Features))]
    public void The_direct_model_reaches_what_the_hand_says(string name)
    {
        Feature feature = Feature.All.Single(f => f.Name == name);
        (double value, double bound) = Money(feature.Season, 60);
        Assert.InRange(value, feature.Low - feature.Slack, feature.High + feature.Slack);
        Assert.InRange(bound, value - feature.Slack, feature.High + feature.Slack);
    }

    [Theory, MemberData(nameof(Seeds))]
    public void A_plan_and_its_bound_stand_on_either_side_of_the_direct_value(int seed) =>
        Between(SmallSeasons.Draw((ulong)seed, 3, 4, [PlaceMix.YardOnly, PlaceMix.YardAndCold, PlaceMix.YardAndRooms, PlaceMix.RoomsOnly]));

    [Theory, MemberData(nameof(Seeds))]
    public void So_they_do_where_all_hangs_on_a_room(int seed) => Between(RoomSeasons.Draw((ulong)seed));

    private static void Between(Season season)
    {
        (double value, double bound) = Money(season, 4);
        PlanSummary plan = Planner.Checked(season, new(3, 1e-6)).Summary;
        double slack = 0.01 + 2e-6 * (Math.Abs(bound) + plan.Revenue);
        Assert.True(plan.Value <= bound + slack, $"plan {plan.Value} above what can be had, {bound}");
        Assert.True(value <= plan.Bound + slack, $"bound {plan.Bound} below what can be had, {value}");
    }

    /// <summary>What the direct model found and what it proved, in the season's currency.</summary>
    private static (double Value, double Bound) Money(Season season, double seconds)
    {
        PlanningInstance instance = SmallSeasons.Instance(season);
        DirectResult direct = DirectModel.Solve(new DirectQuestion(instance, null, Mixed: true), seconds);
        Assert.True(direct.Status is LinearStatus.Optimal or LinearStatus.TimeLimit, $"{direct.Status}");
        return (direct.Value * instance.MoneyScale, direct.Bound * instance.MoneyScale);
    }
}
