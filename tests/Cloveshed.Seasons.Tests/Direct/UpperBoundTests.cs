using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>Any prices give a bound: it is never below what the direct model found, whatever is put on it.</summary>
public sealed class UpperBoundTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1001, 30)];

    [Theory, MemberData(nameof(Seeds))]
    public void Any_prices_bound_the_season(int seed)
    {
        PlanningInstance instance = SmallSeasons.Instance(SmallSeasons.Draw((ulong)seed, 3, 4, Few));
        Bounds(instance, null, RoomChoice.Free(instance), (ulong)seed);
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Any_prices_bound_the_season_with_its_rooms_held(int seed)
    {
        PlanningInstance instance = SmallSeasons.Instance(SmallSeasons.Draw((ulong)seed + 500, 4, 4, Few));
        RoomChoice rooms = SmallSeasons.Rooms(instance, new Pcg((ulong)seed, 12));
        Bounds(instance, rooms, rooms, (ulong)seed);
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Any_prices_bound_a_season_that_hangs_on_a_room(int seed)
    {
        PlanningInstance instance = SmallSeasons.Instance(RoomSeasons.Draw((ulong)seed));
        Bounds(instance, null, RoomChoice.Free(instance), (ulong)seed);
    }

    private static PlaceMix[] Few => [PlaceMix.YardOnly, PlaceMix.YardAndCold, PlaceMix.YardAndRooms, PlaceMix.RoomsOnly];

    private static void Bounds(PlanningInstance instance, RoomChoice? held, RoomChoice spots, ulong seed)
    {
        double best = DirectModel.Solve(new DirectQuestion(instance, held, Mixed: true), 1.5).Value;
        double slack = 1e-6 * Math.Max(1, Math.Abs(best));
        var limits = new GenerationLimits(1e-6, 1e9, 200, SearchDepth.Exact, () => 0, 1, default);
        using Master master = new RoomSearch(instance, new HighsSolver()).NewMaster(spots, RunCharges.ForBound(instance), []);
        GenerationResult found = ColumnGeneration.Run(master, limits);
        Assert.True(found.Bound >= best - slack, $"the bound found, {found.Bound}, is below {best}");
        Pcg pcg = new(seed, 13);
        for (int turn = 0; turn < 24; turn++)
        {
            Prices prices = turn % 6 == 0 ? DrawnPrices.AtLarge(instance, master.SpotsHere, pcg)
                : DrawnPrices.Near(found.Prices, instance, master.SpotsHere, Math.Pow(10, -turn % 6), pcg);
            UpperBound.Repair(instance, prices);
            double exact = Pricing.At(master, prices, limits, 0).Bound;
            double table = Pricing.At(master, prices, limits with { Depth = SearchDepth.Fine }, 0).Bound;
            Assert.True(exact >= best - slack, $"turn {turn}: {exact} by search is below {best}");
            Assert.True(table >= exact - slack, $"turn {turn}: {table} by table is below {exact} by search");
        }
    }
}
