using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>
/// With room weeks held, what column generation comes to is what the direct model comes to, which has every sequence of places
/// and every way out of it from the start.
/// </summary>
public sealed class LinearValueTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 120)];
    public static TheoryData<string> Features => FeatureTests.Names;

    [Theory, MemberData(nameof(Seeds))]
    public void Column_generation_comes_to_the_direct_value(int seed) =>
        Same(SmallSeasons.Draw((ulong)seed, 20, 6, Enum.GetValues<PlaceMix>()), (ulong)seed);

    [Theory, MemberData(nameof(Seeds))]
    public void Column_generation_comes_to_the_direct_value_where_all_hangs_on_a_room(int seed) => Same(RoomSeasons.Draw((ulong)seed), (ulong)seed);

    [Theory, MemberData(nameof(Features))]
    public void Column_generation_comes_to_the_direct_value_of_every_feature(string name) =>
        Same(Feature.All.Single(f => f.Name == name).Season, 1);

    [Theory, MemberData(nameof(Seeds))]
    public void Column_generation_comes_to_the_direct_value_with_runs_pinned_and_barred(int seed)
    {
        Season season = SmallSeasons.Draw((ulong)seed, 20, 6, Enum.GetValues<PlaceMix>());
        if (season.Lines.Count > 0) Same(season, (ulong)seed, SmallSeasons.Wishes(season, new Pcg((ulong)seed, 13)));
    }

    private static void Same(Season season, ulong seed, RunWishes? wishes = null)
    {
        PlanningInstance instance = SmallSeasons.Instance(season, wishes);
        RoomChoice rooms = SmallSeasons.Rooms(instance, new Pcg(seed, 12));
        DirectResult direct = DirectModel.Solve(new DirectQuestion(instance, rooms, Mixed: false));
        Assert.Equal(LinearStatus.Optimal, direct.Status);
        GenerationResult engine = Generate(instance, rooms, SearchDepth.Exact);
        double slack = 1e-6 * Math.Max(1, Math.Abs(direct.Value));
        Assert.True(Math.Abs(engine.Value - direct.Value) <= slack, $"planner {engine.Value}, direct {direct.Value}, bound {engine.Bound}");
        // No column that would pay more than its own tolerance is added, so the bound closes a little less than the value.
        Assert.InRange(engine.Bound, direct.Value - slack, direct.Value + 10 * slack);
    }

    internal static GenerationResult Generate(PlanningInstance instance, RoomChoice rooms, SearchDepth depth)
    {
        var limits = new GenerationLimits(1e-7, 1e9, 400, depth, () => 0, 1, default);
        using Master master = new RoomSearch(instance, new HighsSolver()).NewMaster(rooms, RunCharges.ForBound(instance), []);
        return ColumnGeneration.Run(master, limits);
    }
}
