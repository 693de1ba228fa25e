using Cloveshed.Core.Seasons;
using NodaTime;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>What an order may be filled with, when, and what it costs not to.</summary>
internal static class OrderFeatures
{
    private static readonly Season Medium = Shed(1, Lot("A", 1000));
    private static readonly Season Big = Shed(1, Lot("A", 1000, Large));

    /// <summary>Two weeks, no hours in the first, when the order is due.</summary>
    private static readonly Season Shut = Shed(2, Lot("A", 1000)) with { LineWeeks = [.. Only(Pack, 1, 2)] };

    private static OrderLine[] Pair(bool whole) =>
        [Order("o", "M30", 10) with { Whole = whole, ShortCost = 1 }, Order("o", "L30", 10, price: 25) with { Number = "2", ShortCost = 1 }];

    /// <summary>A line that packs 10.5 cartons a week, two weeks, a lot of each size.</summary>
    private static readonly Season Slow = Shed(2, Lot("A", 500), Lot("B", 500, Large)) with { Lines = [Pack with { RatePerHour = 350, HoursPerWeek = 1 }] };

    private static OrderLine Due(int week, int from) => Order("o", "M30", 10) with
    {
        Due = Monday.PlusWeeks(week).PlusDays(2), ShipFrom = Monday.PlusWeeks(from), LateCost = 1,
    };

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("larger will do", Big.Asked(Order("o", "M30", 10) with { LargerOk = true }) with { Products = [Carton("M"), Carton("L") with { UnitCost = 1.5m }] },
            185, "at the order's price and the larger product's cost: 10 x (20 - 1.50)"),
        Exactly("larger only where it is allowed", Big.Asked(Order("o", "M30", 10)), -20, "10 short x 2"),
        Exactly("two classes larger will not do", Big.Asked(Order("o", "S30", 10) with { LargerOk = true }), -20, "10 short x 2"),
        Exactly("larger of another pack will not do", Big.Asked(Order("o", "M30", 10) with { LargerOk = true }) with { Products = [Carton("M"), Carton("L", 5)] },
            -20, "10 short x 2"),
        Exactly("smaller will not do", Medium.Asked(Order("o", "L30", 10) with { LargerOk = true }), -20, "10 short x 2"),

        Exactly("a whole order that lacks a line ships nothing", Medium.Asked(Pair(true)), -20, "20 short x 1, though 10 M could be packed"),
        Exactly("an order that need not be whole ships what there is", Medium.Asked(Pair(false)), 190, "10 x 20 - 10 short x 1"),
        Exactly("a whole order that can be met", Shed(1, Lot("A", 1000), Lot("B", 1000, Large)).Asked(Pair(true)), 450, "10 x 20 + 10 x 25"),
        Exactly("a whole order that no one week can make", Slow.Asked(Pair(true)), -20, "21 x 0.5 cartons a week, none keep: 20 short x 1"),
        Exactly("lines of an order in different weeks", Slow.Asked(Pair(false)), 450, "one line in each week; late costs nothing here"),
        Exactly("a whole order gathered on the shelf", Slow.Asked([.. Pair(true).Select(o => o with { LateCost = 0.5m })]) with
        {
            Products = [Carton("M") with { ShelfWeeks = 1 }, Carton("L") with { ShelfWeeks = 1 }],
        }, 440, "one line packed in week 0, both shipped in week 1, 20 units a week late x 0.50"),

        Exactly("late", Shut.Asked(Order("o", "M30", 10) with { LateCost = 2 }), 180, "10 x (20 - 2 x 1 week)"),
        Exactly("too late to be worth it", Shut.Asked(Order("o", "M30", 10) with { LateCost = 30, ShortCost = 5 }), -50, "10 short x 5; shipping would give 10 x (20 - 30)"),
        Exactly("late, because short costs more", Shut.Asked(Order("o", "M30", 10) with { LateCost = 30, ShortCost = 15 }), -100, "10 x (20 - 30); short would cost 150"),
        Exactly("due before the season", Medium.Asked(Due(-2, -2)), 180, "shipped in week 0, 2 weeks late: 10 x (20 - 2)"),
        Exactly("due after the season, shippable within", Shed(3, Lot("A", 1000)).Asked(Due(5, 1)), 200, "shipped in week 1 or 2, on time"),
        Exactly("shippable only after the season", Medium.Asked(Due(5, 4)), -20, "10 short x 2"),
        Exactly("shipped ahead", (Shed(3, Lot("A", 1000)) with { LineWeeks = [.. Only(Pack, 0, 3)] }).Asked(Due(2, 0)), 200, "packed and shipped in week 0"),
        Exactly("not shipped ahead of ship_from", (Shed(3, Lot("A", 1000)) with { LineWeeks = [.. Only(Pack, 0, 3)] }).Asked(Due(2, 2)), -20,
            "packed in week 0 it does not keep to week 2: 10 short x 2"),
        Exactly("ship_from within a week opens that week", Medium.Asked(Order("o", "M30", 10) with { ShipFrom = Monday.PlusDays(3) }), 200, "not before the week of ship_from"),

        Exactly("an order that is not firm costs nothing short", Big.Asked(Order("o", "M30", 10) with { Firm = false }), 0, "10 short, none firm"),
        Exactly("a loss not taken", (Medium with { Products = [Carton("M") with { UnitCost = 25 }] }).Asked(Order("o", "M30", 10) with { ShortCost = 0 }), 0, "20 - 25 a carton"),
        Exactly("a loss taken, because short costs more", (Medium with { Products = [Carton("M") with { UnitCost = 25 }] }).Asked(Order("o", "M30", 10) with { ShortCost = 10 }),
            -50, "10 x (20 - 25); short would cost 100"),
        Exactly("nothing asked", Medium, 0, "nothing to sell, nothing to pay"),
    ];
}
