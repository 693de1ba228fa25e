using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>Market, stock, shelf life and organic twins.</summary>
internal static class SupplyFeatures
{
    private static readonly Season Medium = Shed(1, Lot("A", 1000));
    private static readonly ProductId M = new("M30");
    private static readonly Product Organic = Carton("M") with { Id = new("M30 org"), Organic = true };

    /// <summary>Packed in week 0 only; due in week 2.</summary>
    private static Season Shelf(int weeks) => Shed(3, Lot("A", 1000)) with
    {
        LineWeeks = [.. Only(Pack, 0, 3)], Products = [Carton("M") with { ShelfWeeks = weeks }], Orders = [Order("o", "M30", 10, 2)],
    };

    /// <summary>No garlic to speak of, 20 cartons of stock made so many weeks before, due in week 1.</summary>
    private static Season Stock(int made, int shelf) => Shed(2, Lot("A", 1)) with
    {
        Products = [Carton("M") with { ShelfWeeks = shelf, UnitCost = 9 }], Stock = [new(M, made, 20, null)], Orders = [Order("o", "M30", 10, 1)],
    };

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("the market takes whole units", Medium with { Market = [new(M, 0, 15, 5, 12.5, 30)] }, 180, "12 of 12.5 x 15"),
        Exactly("a market of less than one unit", Medium with { Market = [new(M, 0, 15, 0, 0.7, 2)] }, 0, "no whole unit"),
        Exactly("half units of two weeks make none", Shed(2, Lot("A", 1000)) with { Market = [new(M, 0, 15, null, 0.5, null), new(M, 1, 15, null, 0.5, null)] },
            0, "each week sells whole units of its own"),
        Exactly("a better market goes before an order that is not firm", (Shed(1, Lot("A", 510)) with { Market = [new(M, 0, 30, null, 10, null)] })
            .Asked(Order("o", "M30", 10) with { Firm = false }), 400, "459 lb = 15.3 cartons: 10 x 30 + 5 x 20"),
        Exactly("the market waits for the better week", Shed(2, Lot("A", 525)) with { Market = [new(M, 0, 15, null, 10, null), new(M, 1, 30, null, 10, null)] },
            375, "10 x 30 in week 1; the 5 that are left in week 0 x 15: 358.3 lb stand over, 333.3 are needed, and a week takes less than 5%"),

        Exactly("shelf life reaches", Shelf(2), 200, "made in week 0, shipped in week 2"),
        Exactly("shelf life is a week short", Shelf(1), -20, "10 short x 2"),
        Exactly("stock in its last week", Stock(-1, 2), 200, "made in week -1, ships up to week 1; its making is paid"),
        Exactly("stock past its last week", Stock(-2, 2), -20, "ships up to week 0 only: 10 short x 2"),
        Exactly("stock and packing together", Stock(0, 1) with { Lots = [Lot("A", 200)], Orders = [Order("o", "M30", 25, 1)] }, 455,
            "20 from stock, 5 of 6 that A could make at 9 each: 25 x 20 - 5 x 9"),

        Exactly("organic is made of organic lots only", Medium.Asked(Order("o", "M30 org", 10)) with { Products = [Organic] }, -20, "10 short x 2"),
        Exactly("organic of an organic lot", Shed(1, Lot("A", 1000) with { Organic = true }).Asked(Order("o", "M30 org", 10)) with { Products = [Organic] }, 200, "10 x 20"),
        Exactly("an organic carton stands in for its twin", Shed(1, Lot("A", 1)).Asked(Order("o", "M30", 10)) with
        {
            Products = [Carton("M"), Organic], Stock = [new(Organic.Id, 0, 10, null)],
        }, 200, "10 organic in stock, 10 x 20"),
        Exactly("a conventional carton does not stand in for organic", Shed(1, Lot("A", 1)).Asked(Order("o", "M30 org", 10)) with
        {
            Products = [Carton("M"), Organic], Stock = [new(M, 0, 10, null)],
        }, -20, "10 short x 2"),
        Exactly("an organic lot may be packed as conventional", Shed(1, Lot("A", 1000) with { Organic = true }).Asked(Order("o", "M30", 10)) with
        {
            Products = [Carton("M") with { UnitCost = 1 }, Organic with { UnitCost = 3 }],
        }, 190, "nothing bars the cheaper pack: 10 x (20 - 1)"),
        Exactly("an organic lot for the dear order, and what was packed before for the cheap one", Shed(2, Lot("A", 1000), Lot("B", 1000) with { Organic = true, Harvested = Monday.PlusWeeks(1) })
            .Asked(Order("cheap", "M30", 30) with { LateCost = 5 }, Order("dear", "M30", 30, 1, 30)) with
        {
            Lines = [Pack with { HoursPerWeek = 1 }], Products = [Carton("M") with { ShelfWeeks = 1 }, Carton("L") with { Organic = true }],
        }, 1500, "1000 lb a week make 30 cartons: 30 x 20 in week 0, 30 x 30 in week 1"),
        Exactly("what was packed last is carried on, and what was packed first ships", Shed(3, Lot("A", 1000), Lot("B", 1000) with { Harvested = Monday.PlusWeeks(1) })
            .Asked(Order("cheap", "M30", 30) with { LateCost = 5 }, Order("dear", "M30", 30, 2, 30)) with
        {
            Lines = [Pack with { HoursPerWeek = 1 }], LineWeeks = [new(Pack.Id, 2, 0, null)], Products = [Carton("M") with { ShelfWeeks = 9 }],
        }, 1500, "1000 lb a week make 30 cartons in weeks 0 and 1: 30 x 20 in week 0, 30 x 30 in week 2"),
    ];
}
