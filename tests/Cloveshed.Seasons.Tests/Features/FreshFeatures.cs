using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>What comes off the fresh line.</summary>
internal static class FreshFeatures
{
    /// <summary>A chart cut at the lot's median width by mass, so that half of its mass is above: cv 0.1, 50 g, law of Tiny.</summary>
    private static readonly SizeClass[] Halves = Cut();

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("an order is packed", Shed(1, Lot("A", 1000)) with
        {
            Products = [Carton("M") with { UnitCost = 1 }], Orders = [Order("o", "M30", 25)],
        }, 475, "25 cartons take 833.3 of 1000 lb; 25 x (20 - 1). Packing the other 5 would only cost"),

        Exactly("line hours cost", Shed(1, Lot("A", 1000)).Asked(Order("o", "M30", 25)) with { Lines = [Pack with { RatePerHour = 100, CostPerHour = 12 }] },
            400, "25 x 30 / 0.9 = 833.33 lb = 8.3333 h x 12 = 100; 500 - 100"),

        Exactly("kilograms", Shed(1, Lot("A", 1000)) with
        {
            Settings = Shed(1).Settings with { MassUnit = MassUnit.Kilogram },
            Products = [Carton("M") with { UnitCost = 1 }], Orders = [Order("o", "M30", 25)],
        }, 475, "as in pounds: the files' unit is the only one"),

        Exactly("what is not fit is waste", Shed(1, Lot("A", 1000) with { FreshShare = 0.61 }).Asked(Order("o", "M30", 25)),
            346, "1000 x 0.61 x 0.9 = 549 lb = 18.3 cartons, 18 whole; 18 x 20 - 7 short x 2"),

        Exactly("each bulb falls into its class", Shed(1, Lot("A", 1000) with { Cv = 0.1 }) with
        {
            Sizes = Halves, Products = [Carton("low"), Carton("high") with { UnitCost = 1 }], Lines = [Paid(Pack)], Orders = [Order("o", "high30", 10)],
        }, 123.3333, "half of the mass is high: 10 x 30 / 0.45 = 666.67 lb = 6.6667 h = 66.667; 200 - 10 - 66.667"),

        Exactly("two classes of one run", Shed(1, Lot("A", 1000) with { Cv = 0.1 }) with
        {
            Sizes = Halves, Products = [Carton("low"), Carton("high")], Lines = [Paid(Pack)],
            Orders = [Order("o", "high30", 10), Order("p", "low30", 10, price: 12)],
        }, 253.3333, "one 666.67 lb run makes both: 10 x 20 + 10 x 12 - 66.667"),

        Exactly("no bulb reaches the class", Shed(1, Lot("A", 1000)).Asked(Order("o", "L30", 10)), -20, "10 short x 2"),

        Exactly("two packs of one class share its pounds", Shed(1, Lot("A", 396)) with
        {
            Products = [Carton("M"), Carton("M", 5)], Orders = [Order("o", "M30", 10) with { ShortCost = 0 }, Order("p", "M5", 40, price: 4) with { ShortCost = 0 }],
        }, 260, "356.4 lb: 40 bags (0.80 a lb) and 5 cartons (0.67 a lb) are 350 lb, 160 + 100; 6 and 35 are worth the same, 7 and 29 less"),

        Exactly("the dearer order first", Shed(1, Lot("A", 410)).Asked(
            Order("o", "M30", 10) with { ShortCost = 0 }, Order("p", "M30", 10, price: 25) with { ShortCost = 0 }),
            290, "369 lb = 12.3 cartons: 10 x 25 + 2 x 20"),

        Exactly("the order whose shortage costs more first", Shed(1, Lot("A", 410)).Asked(
            Order("o", "M30", 10) with { ShortCost = 0 }, Order("p", "M30", 10, price: 18) with { ShortCost = 5 }),
            220, "a unit of p is worth 18 + 5 against 20: 10 x 18 + 2 x 20"),

        Exactly("sold as is at the variety's own price", Shed(1, Lot("A", 1000)) with { AsIsPrices = [new(null, 0.10m, null), new(new("plain"), 0.05m, null)] },
            50, "1000 lb x 0.05, though any variety would fetch 0.10"),

        Exactly("sold as is up to the limit", Shed(1, Lot("A", 1000)) with { AsIsPrices = [new(null, 0.10m, 400)] }, 40, "400 lb x 0.10"),

        Exactly("sold as is, sound or not", Shed(1, Lot("A", 1000) with { FreshShare = 0, CrackShare = 0 }) with { AsIsPrices = [new(null, 0.10m, null)] },
            100, "1000 lb x 0.10"),

        Exactly("the rest is sold as is", Shed(1, Lot("A", 1000)).Asked(Order("o", "M30", 15)) with { AsIsPrices = [new(null, 0.10m, null)] },
            350, "15 cartons take 500 lb, 300; the other 500 lb x 0.10"),
    ];

    private static SizeClass[] Cut()
    {
        // By mass, ln g has mean ln 50 - v/2 + v with v = ln(1 + 0.1^2); ln mm = (ln g + 7) / 2.8.
        double median = Math.Exp((Math.Log(50) + Math.Log(1.01) / 2 + 7) / 2.8);
        return [new(new("low"), null, 20, median), new(new("high"), null, median, null)];
    }
}
