using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>
/// Standing, moving, rooms. Bounds take it that a well cured long keeper loses, of weight and fitness together, no less than the
/// contract's 0.05% a week and no more than 15% in two weeks or 5% in one: common practice is a tenth of that.
/// 10 cartons in week 2 take 333.33 lb then, so between 333.67 and 392.2 lb at the start: 3.3367 to 3.922 bins.
/// </summary>
internal static class KeepFeatures
{
    /// <summary>10 cartons due in week 2 of three, when alone the line runs.</summary>
    private static Season Wait(LotRow lot, params Place[] places) => Shed(3, lot) with
    {
        Places = places, LineWeeks = [.. Only(Pack, 2, 3)], Orders = [Order("o", "M30", 10, 2)],
    };

    private static LotRow InRoom(double net) => Lot("A", net) with { Place = Room.Id, Harvested = Monday.PlusDays(-40) };

    /// <summary>1000 lb in a room sealed three weeks ago; 10 cartons due in week 1 (late 1 a week) and 10 in week 2.</summary>
    private static Season Closed(int? runOut) => Shed(3, InRoom(1000)) with
    {
        Places = [Room with { RunOutWeeks = runOut }], SealedRooms = [new(Room.Id, Monday.PlusDays(-20))],
        Orders = [Order("o", "M30", 10, 1) with { LateCost = 1 }, Order("p", "M30", 10, 2)],
    };

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("a place costs while it holds anything", Wait(Lot("A", 1000), Yard with { CostPerWeek = 7 }), 186,
            "it holds something at the ends of weeks 0 and 1, nothing at that of week 2: 200 - 2 x 7"),
        Between("bins cost by the week", Wait(Lot("A", 1000), Yard with { CostPerBinWeek = 1 }), 192.15, 193.33,
            "2 week ends x 3.3367 to 3.922 bins, the rest discarded in week 0: 200 - 7.844 to 200 - 6.673"),
        Exactly("what nobody asks for is discarded", Shed(2, Lot("A", 1000)) with { Places = [Yard with { CostPerBinWeek = 5, CostPerWeek = 7 }] },
            0, "discarded in week 0, before any week's end"),
        Between("a move", Wait(Lot("A", 1000), Yard with { CostPerWeek = 50 }, Cold with { CostPerWeek = 10, MoveInCost = 2 }), 172.15, 173.33,
            "moved at the start of week 0, since it stood before: 2 x 10 and 2 a bin for 3.3367 to 3.922 bins; staying costs 100"),
        Between("no move in the week of the harvest", Wait(Lot("A", 1000) with { Harvested = Monday.PlusDays(1) },
            Yard with { CostPerWeek = 50 }, Cold with { CostPerWeek = 10, MoveInCost = 2 }), 132.15, 133.33,
            "50 at the end of week 0, moved at the start of week 1, then 10, and 2 a bin; staying costs 100"),
        Exactly("no move into a full place", Wait(Lot("A", 1000), Yard with { CostPerWeek = 50 }, Cold with { CapacityBins = 1 }), 100,
            "the cold place holds 1 bin of the 3.3 needed, so the yard is paid twice anyway: 200 - 100"),
        Between("more than the yard holds is discarded", Shed(2, Lot("A", 500), Lot("B", 500) with { Harvested = Monday.PlusDays(9) }) with
        {
            Settings = Shed(2).Settings with { EndPrice = 1 }, Places = [Yard with { CapacityBins = 6 }],
        }, 540, 599.7, "6 of 10 bins, at most 600 lb less one week's 0.05% (B) at the end, x 1"),
        Between("keeping pays more than packing", Shed(1, Lot("A", 1000)).Asked(Order("o", "M30", 10) with { ShortCost = 0 }) with
        {
            Settings = Shed(1).Settings with { EndPrice = 5 },
        }, 4750, 4997.5, "1000 lb x 5 less one week's loss of 0.05 to 5%; a carton gives 20 and takes 33.3 lb"),
        Exactly("an unsealed room is a cold place", Shed(3, InRoom(1000)) with
        {
            Places = [Room with { RunOutWeeks = 1 }], Orders = [Order("o", "M30", 5), Order("p", "M30", 5, 1), Order("q", "M30", 5, 2)],
        }, 300, "15 x 20: nothing need be sealed, so nothing runs out"),
        Exactly("a sealed room must be empty after one week", Closed(1), 390,
            "opened in week 2 it serves both, one late: 400 - 10 x 1; opened in week 1 it is empty in week 2: 200 - 20 short"),
        Exactly("a sealed room may be emptied over two weeks", Closed(2), 400, "opened in week 1, run in weeks 1 and 2"),
        Exactly("a sealed room without an end", Closed(null), 400, "opened in week 1 or before"),
        Exactly("a sealed room that is opened may be moved out", Closed(1) with { Places = [Room with { RunOutWeeks = 1 }, Cold] }, 400,
            "opened in week 1; what week 2 needs moves to the cold place at the start of week 1"),
        Exactly("a room kept for thirty weeks", Shed(31, InRoom(3000)) with
        {
            Places = [Room], LineWeeks = [.. Only(Pack, 30, 31)], Orders = [Order("o", "M30", 10, 30)],
        }, 200, "10 cartons take a ninth of the lot; seven months near 0 °C are within its storage life (USDA Agriculture Handbook 66, Garlic; from memory)"),
    ];
}
