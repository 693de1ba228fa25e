using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>The cracker, and what the fresh line sorts out for it.</summary>
internal static class CrackFeatures
{
    /// <summary>0.6 makes grade, 0.3 is for the cracker, 0.1 is waste.</summary>
    private static LotRow Mixed(string id, double net) => Lot(id, net) with { FreshShare = 0.6, CrackShare = 0.3 };

    private static readonly OrderLine FifteenBoxes = Order("c", "g2 10", 15, price: 8);

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("a lot is cracked", Shed(1, Mixed("A", 1000)) with
        {
            Lines = [Crack], Products = [Cloves("g2") with { UnitCost = 0.5m }], Orders = [Order("c", "g2 10", 50, price: 8)],
        }, 375, "1000 x 0.9 x 0.8 = 720 lb of cloves would do for 72 boxes; 50 x (8 - 0.50)"),

        Exactly("cloves fall into their grades", Shed(1, Lot("A", 1000), Lot("B", 1000, Small)) with
        {
            Lines = [Paid(Crack)], Orders = [Order("c", "g1 10", 40, price: 8)],
        }, 270, "only B has small cloves: 400 / 0.8 = 500 lb = 5 h = 50; 320 - 50"),

        Exactly("cloves of no grade are waste", Shed(1, Lot("A", 1000)) with
        {
            Lines = [Crack], CloveGrades = [new(new("g9"), 60, null)], Products = [Cloves("g9")], Orders = [Order("c", "g9 10", 10, price: 8)],
        }, -20, "no clove is 60 mm wide: 10 short x 2"),

        Exactly("sorted out to the cracker", Shed(1, Mixed("A", 1000)) with { Lines = [Pack, Crack], Orders = [Order("o", "M30", 15), FifteenBoxes] },
            420, "15 cartons take 833.3 lb and sort out 250, which give 200 lb of cloves for 15 boxes (the 166.7 lb left would give 120): 300 + 120"),

        Exactly("a class that is not packed is sorted out", HalfPacked(), 440,
            "14 cartons of high take 420 / 0.45 = 933.3 lb; 420 lb of low go to the cracker, 336 lb of cloves: 14 x 20 + 20 x 8"),

        Exactly("sorted-out bulbs wait two weeks", Shed(3, Mixed("A", 1000)) with
        {
            Lines = [Pack, Crack], LineWeeks = [.. Only(Pack, 0, 3), .. Only(Crack, 2, 3)],
            Orders = [Order("o", "M30", 15), Order("c", "g2 10", 15, 2, 8)],
        }, 420, "as without the wait: they lose nothing while they wait"),

        Exactly("sorted-out bulbs do not wait three weeks", Shed(4, Mixed("A", 1000)) with
        {
            Lines = [Pack, Crack], LineWeeks = [.. Only(Pack, 0, 4), .. Only(Crack, 3, 4)], Products = [Carton("M"), Cloves("g2", 50)],
            Orders = [Order("o", "M30", 17), Order("c", "g2 50", 3, 3, 1) with { ShortCost = 0 }],
        }, 340, "17 cartons take 944.4 lb; the 55.6 lb left give under 40 lb of cloves, not one box of 50, and a box is worth 1 only: 17 x 20"),

        Exactly("sorted-out bulbs of a week run with one set-up", Shed(1, Mixed("A", 500), Mixed("B", 500)) with
        {
            Lines = [Pack, Paid(Crack) with { SetupHours = 1 }], Orders = [Order("o", "M30", 16), FifteenBoxes],
        }, 411.25, "16 cartons take 888.9 lb of both lots and sort out 266.7; 15 boxes take 187.5 lb, 1.875 h + 1 h at 10 = 28.75; 320 + 120 - 28.75"),

        Exactly("sorted-out bulbs need no least run", Shed(1, Mixed("A", 1000)) with
        {
            Lines = [Pack, Crack with { MinRun = 500 }], Orders = [Order("o", "M30", 15), FifteenBoxes],
        }, 420, "187.5 lb of sorted-out bulbs run though 500 is the least of a lot"),

        Exactly("too small for the chart goes to the cracker", Shed(1, Lot("A", 1000, Small)) with
        {
            // What a fresh run puts under the smallest class still can be cracked; a carton of it cannot be had.
            Sizes = [new(new("M"), null, 42, 56), new(new("L"), null, 56, null)], Products = [Carton("M"), Cloves("g1")],
            Lines = [Pack, Crack], Orders = [Order("o", "M30", 10), Order("c", "g1 10", 50, price: 8)],
        }, 380, "50 x 8 - 10 cartons short x 2"),
    ];

    private static Season HalfPacked()
    {
        Season halves = FreshFeatures.All.First(f => f.Name == "each bulb falls into its class").Season;
        return halves with
        {
            Products = [Carton("high"), Cloves("g2")], Lines = [Pack, Crack], Orders = [Order("o", "high30", 14), Order("c", "g2 10", 20, price: 8)],
        };
    }
}
