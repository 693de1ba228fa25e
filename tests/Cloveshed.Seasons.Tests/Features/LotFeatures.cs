using Cloveshed.Core.Seasons;
using NodaTime;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>When and where a lot is, and whether it may be run.</summary>
internal static class LotFeatures
{
    /// <summary>Four weeks, described as of the Wednesday of the third; the yard costs 7 while it holds anything.</summary>
    private static Season AsOf(params LotRow[] lots) => Shed(4, lots) with
    {
        Settings = Shed(4).Settings with { AsOf = Monday.PlusDays(16) }, Places = [Yard with { CostPerWeek = 7 }],
    };

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("as of the third week", AsOf(Lot("A", 1000)).Asked(Order("o", "M30", 10, 2)), 200, "net is as of week 2; run then, nothing stands at its end"),
        Exactly("what was due before as_of ships late", AsOf(Lot("A", 1000)).Asked(Order("o", "M30", 10, 1) with { LateCost = 1 }), 190, "10 x (20 - 1 week)"),
        Exactly("dug after as_of", AsOf(Lot("A", 1000) with { Harvested = Monday.PlusDays(24) }).Asked(Order("o", "M30", 10, 3)), 200, "starts in week 3, run then"),
        Exactly("stock as of the third week", AsOf(Lot("A", 1)).Asked(Order("o", "M30", 10, 2)) with { Stock = [new(new("M30"), 2, 10, null)] }, 200, "10 x 20 of stock made in week 2"),
        Exactly("dug after the season", Shed(1, Lot("A", 1000) with { Harvested = Monday.PlusDays(7) }).Asked(Order("o", "M30", 10)), -20, "10 short x 2"),
        Exactly("on hold", Shed(1, Lot("A", 1000) with { Hold = true }).Asked(Order("o", "M30", 10)) with { AsIsPrices = [new(null, 1, null)] }, -20,
            "neither run nor sold: 10 short x 2"),
        Exactly("on hold, but discarded", Shed(2, Lot("A", 1000) with { Hold = true }) with { Places = [Yard with { CostPerBinWeek = 5 }] }, 0, "discarding is not barred"),
        Exactly("ready a week later", Shed(2, Lot("A", 1000) with { Ready = Monday.PlusDays(7) }).Asked(Order("o", "M30", 10) with { LateCost = 1 }), 190,
            "10 x (20 - 1 week)"),
        Exactly("ready after the season", Shed(2, Lot("A", 1000) with { Ready = Monday.PlusDays(14) }).Asked(Order("o", "M30", 10)), -20, "10 short x 2"),
        Exactly("the better part of a lot first", LineFeatures.TwoRows([Order("o", "M30", 10)], 0), 162.963,
            "300 / 0.81 = 370.37 lb of the yard's: 200 - 37.037"),
        Exactly("both parts of a lot", LineFeatures.TwoRows([Order("o", "M30", 20)], 0), 306.6667,
            "yard 500 lb (405 packed), cold 195 / 0.45 = 433.33 lb: 400 - 93.333"),
        Exactly("the lot that fits the order", Shed(1, Lot("A", 1000, Small), Lot("B", 1000), Lot("C", 1000, Large)).Asked(
            Order("o", "S30", 25, price: 10), Order("p", "M30", 25), Order("q", "L30", 25, price: 30)), 1500, "25 x (10 + 20 + 30), each of its lot"),
        Exactly("the lot of which more is fit first", Shed(1, Lot("A", 1000) with { FreshShare = 0.5 }, Lot("B", 1000)).Asked(Order("o", "M30", 25)) with
        {
            Lines = [Paid(Pack)],
        }, 416.6667, "833.33 lb of B: 500 - 83.333"),
    ];
}
