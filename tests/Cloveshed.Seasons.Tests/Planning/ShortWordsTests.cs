using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>Why a line is short says what there is too little of. Two orders ask for more than can be had; the poorer is short.</summary>
public sealed class ShortWordsTests
{
    /// <summary>1000 lb make 30 cartons; 20 at 20 and 20 at 15 are asked for, 2 a unit short.</summary>
    private static readonly Season Asked = Shed(1, Lot("A", 1000)).Asked(Order("rich", "M30", 20), Order("poor", "M30", 20, price: 15));

    private static readonly Season Plenty = Asked with { Lots = [Lot("A", 10_000)] };

    [Fact]
    public void Of_garlic() => Says(Asked, "in its best week, that of 1 Jul 2030, the next unit of M30 costs 17.00 and this line gives 17.00; M bulbs are scarce");

    [Fact]
    public void Of_line_hours() => Says(Plenty with { Lines = [Pack with { RatePerHour = 100, HoursPerWeek = 10 }] }, "hours of pack are scarce in the week of 1 Jul 2030, one more is worth 51.00");

    /// <summary>An hour of the line packs 90 lb, 3 cartons at 17, and takes 4 hands: 12.75 each.</summary>
    [Fact]
    public void Of_hands() => Says(Plenty with { Lines = [Pack with { RatePerHour = 100, Heads = 4 }], People = [new(0, 40)] }, "hands are scarce in the week of 1 Jul 2030, one more hour is worth 12.75");

    [Fact]
    public void Of_money() => Says(Plenty with { Products = [Carton("M") with { UnitCost = 18 }] }, "packing it and its line hours alone cost 18.00");

    [Fact]
    public void Of_the_size() => Assert.Equal("nothing in the season can make it", Why(Plenty.Asked(Order("poor", "L30", 10))));

    [Fact]
    public void Of_time() => Assert.Equal("it may not ship before the season ends", Why(Plenty.Asked(Order("poor", "M30", 10) with { ShipFrom = Monday.PlusWeeks(4), Due = Monday.PlusWeeks(5) })));

    /// <summary>Its other line can't be had.</summary>
    [Fact]
    public void Of_a_line_of_a_whole_order() => Says(
        Plenty.Asked(Order("poor", "M30", 10) with { Whole = true }, Order("poor", "L30", 10) with { Number = "2" }),
        "the order ships whole or not at all; in its best week, that of 1 Jul 2030, the next unit of M30 costs 0.00 and this line gives 22.00");

    /// <summary>The only week in which it can be packed is after the due week, and a week late costs more than the unit gives.</summary>
    [Fact]
    public void Of_a_week() => Says((Shed(2, Lot("A", 1000)) with { LineWeeks = [.. Only(Pack, 1, 2)] }).Asked(Order("poor", "M30", 10) with { LateCost = 30 }), "this line gives -8.00; it would then be late");

    private static void Says(Season season, string words) => Assert.Contains(words, Why(season), StringComparison.Ordinal);

    private static string Why(Season season) => Planner.Checked(season, new(20, 1e-9)).Shorts.First(s => s.Order.Text == "poor").Why;
}
