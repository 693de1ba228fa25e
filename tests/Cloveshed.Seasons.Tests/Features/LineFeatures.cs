using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>Hours, overtime, set-ups, least runs, people.</summary>
internal static class LineFeatures
{
    /// <summary>100 lb an hour at 10 an hour: 25 cartons take 833.33 lb.</summary>
    private static Season Packs(params LotRow[] lots) => Shed(1, lots).Asked(Order("o", "M30", 25) with { ShortCost = 0 }) with { Lines = [Paid(Pack)] };

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("overtime", Packs(Lot("A", 1000)) with { Lines = [Paid(Pack) with { HoursPerWeek = 5, OvertimeHours = 5, OvertimeCostPerHour = 15 }] },
            400, "8.3333 h: 5 x 10 + 3.3333 x 15 = 100; 500 - 100"),
        Exactly("overtime that does not pay", Packs(Lot("A", 1000)) with { Lines = [Paid(Pack) with { HoursPerWeek = 5.01, OvertimeHours = 5, OvertimeCostPerHour = 70 }] },
            250, "an overtime hour packs 3 cartons, 60, for 70; 15 cartons in 5 h: 300 - 50; the 16th takes 0.3233 h of overtime, 22.6"),
        Exactly("the cheaper line first", Packs(Lot("A", 1000)) with { Lines = [Paid(Pack) with { HoursPerWeek = 5 }, Paid(Pack) with { Id = new("dear"), CostPerHour = 20 }] },
            383.3333, "5 x 10 + 3.3333 x 20 = 116.667"),
        Exactly("a set-up for each lot", Packs(Lot("A", 500), Lot("B", 500)) with { Lines = [Paid(Pack) with { SetupHours = 0.5 }] },
            406.6667, "both lots are needed: 8.3333 + 2 x 0.5 = 9.3333 h x 10; 500 - 93.333"),
        Exactly("no second set-up for a few cartons", Packs(Lot("A", 500), Lot("B", 500)) with
        {
            Lines = [Paid(Pack) with { SetupHours = 3 }], Orders = [Order("o", "M30", 16) with { ShortCost = 0 }],
            Lots = [Lot("A", 510), Lot("B", 510)],
        }, 220, "15 cartons of one lot: 5 + 3 h, 300 - 80; the 16th would cost 0.33 h and another 3 h, 33 for 20"),
        Exactly("one set-up for two products of a lot", Packs(Lot("A", 1000)) with
        {
            Lines = [Paid(Pack) with { SetupHours = 0.5 }], Products = [Carton("M"), Carton("M", 5)],
            Orders = [Order("o", "M30", 10), Order("p", "M5", 10, price: 4)],
        }, 196.1111, "350 / 0.9 = 388.89 lb, 3.8889 + 0.5 h: 240 - 43.889"),
        Exactly("one set-up for a lot in two places", TwoRows(new OrderLine[] { Order("o", "M30", 20) }, 0.5), 301.6667,
            "yard 500 x 0.81 = 405 lb, cold 195 / 0.45 = 433.33 lb: 9.3333 + 0.5 h; 400 - 98.333"),
        Exactly("a set-up that leaves no hours", Packs(Lot("A", 1000)) with { Lines = [Pack with { HoursPerWeek = 1, SetupHours = 1 }] }, 0, "nothing can be run"),

        Between("a least run", Shed(1, Lot("A", 1000)).Asked(Order("o", "M30", 3, price: 200)) with
        {
            Settings = Shed(1).Settings with { EndPrice = 1 }, Lines = [Pack with { RatePerHour = 100, CostPerHour = 1, MinRun = 500 }],
        }, 1070, 1094.75, "500 lb are run for 3 cartons, 500 lb stand at the end x 1 less 0.05 to 5%: 600 - 5 + 475 to 499.75; "
            + "finishing the lot by discarding 900 lb would give 599, not running 999.5"),
        Exactly("the run that finishes a lot may be small", Shed(1, Lot("A", 100)).Asked(Order("o", "M30", 2)) with { Lines = [Pack with { MinRun = 500 }] },
            40, "all 100 lb are run: 2 x 20"),

        Exactly("people", Packs(Lot("A", 1000)) with { Lines = [Pack with { RatePerHour = 100, Heads = 4 }], People = [new(0, 20.4)] },
            300, "20.4 / 4 = 5.1 h = 510 lb = 15.3 cartons; 15 x 20"),
        Exactly("people for two lines", Shed(1, Lot("A", 1000), Lot("B", 1000)) with
        {
            Lines = [Pack with { RatePerHour = 100, Heads = 4 }, Crack with { RatePerHour = 100, Heads = 2 }], People = [new(0, 20.4)],
            Orders = [Order("o", "M30", 25) with { ShortCost = 0 }, Order("c", "g2 10", 50, price: 8) with { ShortCost = 0 }],
        }, 512, "a person-hour makes 2 boxes and a half more of cloves per 25 lb (32) than cartons (15), yet 6 cartons (8 h) and 49 boxes (12.25 h) use up what 50 and 5 leave: 120 + 392"),
        Exactly("a week without a row of people has no limit", Shed(2, Lot("A", 1000)).Asked(Order("o", "M30", 25, 1)) with
        {
            Lines = [Pack with { RatePerHour = 100, Heads = 4 }], People = [new(0, 0)],
        }, 500, "week 0 has nobody, week 1 everybody: 25 x 20"),
        Exactly("a set-up takes people too", Packs(Lot("A", 1000)) with { Lines = [Pack with { RatePerHour = 100, Heads = 4, SetupHours = 1 }], People = [new(0, 20.4)] },
            240, "5.1 - 1 h = 410 lb = 12.3 cartons; 12 x 20"),

        Exactly("a shut week has no overtime", Shed(2, Lot("A", 1000)).Asked(Order("o", "M30", 10) with { LateCost = 2 }) with
        {
            Lines = [Pack with { OvertimeHours = 20, OvertimeCostPerHour = 0 }], LineWeeks = [new(Pack.Id, 0, 0, null)],
        }, 180, "overtime defaults to 0 where hours is 0, so a week late: 10 x (20 - 2)"),
        Exactly("a short week keeps its overtime", Packs(Lot("A", 1000)) with
        {
            Lines = [Paid(Pack) with { OvertimeHours = 2, OvertimeCostPerHour = 15 }], LineWeeks = [new(Pack.Id, 0, 3.1, null)],
        }, 240.5, "3.1 + 2 h = 510 lb; 15 cartons take 5 h: 300 - 3.1 x 10 - 1.9 x 15"),
        Exactly("a week of overtime alone", Packs(Lot("A", 1000)) with
        {
            Lines = [Paid(Pack) with { OvertimeCostPerHour = 15 }], LineWeeks = [new(Pack.Id, 0, 0, 5.1)],
        }, 225, "15 cartons take 5 h x 15: 300 - 75"),
    ];

    /// <summary>500 lb in the yard of which 0.9 is fit, 500 lb of the same lot in the cold of which 0.5 is.</summary>
    internal static Season TwoRows(OrderLine[] orders, double setup) => Shed(1,
        Lot("A", 500) with { FreshShare = 0.9 }, Lot("A", 500) with { FreshShare = 0.5, Place = Cold.Id }) with
    {
        Places = [Yard, Cold], Lines = [Paid(Pack) with { SetupHours = setup }], Orders = orders,
    };
}
