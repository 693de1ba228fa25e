namespace Cloveshed.Check.Tests;

/// <summary>Single sentences of the contract that no scenario needs by itself, each with the value worked out by hand.</summary>
public class DetailTests
{
    private static void Holds(Folders folders, double value)
    {
        CheckResult result = folders.Summary(value).Check();
        Assert.Equal([], result.Breaches);
        Assert.Equal(value, result.Value!.Value, 6);
    }

    /// <summary>Shipped a week before it is due, which earns nothing and costs nothing: 480 - 291.</summary>
    [Fact]
    public void Shipping_before_the_due_week_is_not_negative_lateness() => Holds(
        Scenarios.FreshMade().Season("orders.csv", "o1,1,Buyer,L-30,@0,@2,12,40,,1.5,4,,").Answer("fills.csv", "o1,1,@1,L-30,12"), 189);

    /// <summary>An order due after the season, short of 3 of 12: 9 x 40 - 3 x 4 - 291.</summary>
    [Fact]
    public void An_order_due_after_the_season_is_short_where_not_filled() => Holds(
        Scenarios.FreshMade().Season("orders.csv", "o1,1,Buyer,L-30,@0,@9,12,40,,1.5,4,,").Answer("fills.csv", "o1,1,@1,L-30,9")
            .Answer("shorts.csv", "o1,1,3,"),
        57);

    /// <summary>611.52 cloves for a need of 600: nothing short and nothing for the rest. -354 - 10.</summary>
    [Fact]
    public void More_seed_than_needed_earns_nothing() => Holds(Scenarios.SeedRun().ChangeSeason("seed-needs.csv", "Ridge,700", "Ridge,600"), -364);

    /// <summary>396 at 0.5 in place of 0.3: 198 + 43.68 - 12.5. The limit of the row for any does not bind it.</summary>
    [Fact]
    public void A_varietys_own_price_goes_before_the_price_for_any() => Holds(
        Scenarios.AsIs().ChangeSeason("sell-as-is.csv", ",0.3,500", ",0.3,10\nRidge,0.5,"), 229.18);

    /// <summary>The cracker's overtime has no price of its own: 1 of 4.25 hours as overtime changes nothing.</summary>
    [Fact]
    public void Overtime_without_a_price_costs_what_an_hour_costs() => Holds(
        Scenarios.CrackLot().ChangeSeason("lines.csv", "cracker,crack,250,40,,", "cracker,crack,250,40,1,").Change("runs.csv", ",4.25,0,", ",3.25,1,"), 715.1);

    /// <summary>Without heads a line needs one person: 5.9 hours of the drill in a week with 5.9 person-hours.</summary>
    [Fact]
    public void A_line_without_heads_needs_one_person() => Holds(Scenarios.SeedRun().Season("people.csv", "@2,5.9"), -806.4);

    /// <summary>A room that nobody opens keeps what stands in it: 4 x 10 x 1.5, and 1000 x 0.96 x 0.91 x 0.1 = 87.36 at the end.</summary>
    [Fact]
    public void A_room_may_stay_closed_to_the_end() => Holds(
        Scenarios.AlreadySealed().Settings(endPrice: "0.1").Change("rooms.csv", "@-2,@2", "@-2,").Drop("runs.csv", "r1,")
            .Answer("keeps.csv", "@2,L1,p1,room,10,1000", "@3,L1,p1,room,10,1000"),
        27.36);

    /// <summary>
    /// A lot in two places: 60 in the cold finish that row in week 0, though the yard still holds 1000. 60/500 + 0.5 = 0.62 hours; the rest
    /// is discarded in week 1 after a week of 10 bins: -62 - 5.
    /// </summary>
    [Fact]
    public void A_run_that_finishes_one_row_of_a_lot_may_be_small() => Holds(
        Shed.Bare().WithLot().WithLot(place: "cold", bins: 1, net: 60, shares: false).InYard().WithPath("p2", "cold", 0, "cold", "cold", "cold", "cold")
            .Answer("runs.csv", "r1,@0,pack,fresh,lot,L1,p2,cold,60,60,0.62,0,")
            .Answer("keeps.csv", "@0,L1,p1,yard,10,1000").Answer("as-is.csv", "discarded,@1,L1,p1,yard,990,1000"),
        -67);

    /// <summary>Small runs of sorted-out bulbs are no breach: 90 of them, 90/250 + 0.25 = 0.61 hours: -291 - 48.8 - 9.18 made and wasted.</summary>
    [Fact]
    public void Sorted_out_bulbs_know_no_minimum_run() => Holds(
        Scenarios.FreshMade().Answer("runs.csv", "r2,@1,cracker,crack,sorted,L1,,,90,0,0.61,0,").Answer("made.csv", "r2,@1,C-5,L1,9.18,45.9"), -348.98);

    /// <summary>
    /// In the week of sealing the room is still a cold place: 500 are run out of it in week 1 (495 in, 1.49 hours), the rest when it opens in week 3
    /// (485 in, 1.47 hours). -149 - 147 - 10 x 1.5 - 2 x 5 x 1.5 - 40.
    /// </summary>
    [Fact]
    public void A_room_is_open_in_the_week_in_which_it_is_sealed() => Holds(
        Scenarios.SealedRoom().WithText("runs.csv", Folders.AnswerColumns["runs.csv"] + "\n").WithText("keeps.csv", Folders.AnswerColumns["keeps.csv"] + "\n")
            .Answer("runs.csv", "r1,@1,pack,fresh,lot,L1,p1,room,495,500,1.49,0,", "r2,@3,pack,fresh,lot,L1,p1,room,485,500,1.47,0,")
            .Answer("keeps.csv", "@0,L1,p1,room,10,1000", "@1,L1,p1,room,5,500", "@2,L1,p1,room,5,500"),
        -366);

    /// <summary>lots.csv may leave the shares open, but then one row still has one start.</summary>
    [Theory]
    [InlineData("0.80,0.15", true)]
    [InlineData("0.81,0.15", false)]
    [InlineData("0.80,0.16", false)]
    public void Paths_of_a_row_with_open_shares_start_alike(string shares, bool alike)
    {
        Folders folders = Scenarios.Move().ChangeSeason("lots.csv", ",0.8,0.15,", ",,,").Change("paths.csv", "p2,L1,yard,@0,yard,1.00,0.80,0.15", $"p2,L1,yard,@0,yard,1.00,{shares}");
        Assert.Equal(alike ? [] : ["path-start"], folders.Check().Breaches.Select(breach => breach.Rule));
    }

    /// <summary>Figures that are each finite and together are not must not pass as within a limit without end.</summary>
    [Fact]
    public void Nothing_endless_is_within_a_tolerance()
    {
        Assert.False(Tolerance.AtMost(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity));
        Assert.False(Tolerance.AtMost(double.NaN, 1, 1));
        Assert.False(Tolerance.AtMost(1, 1, double.PositiveInfinity));
        Assert.False(Tolerance.Same(double.PositiveInfinity, 1));
        Assert.False(Tolerance.Same(1, double.PositiveInfinity));
        Assert.False(Tolerance.Same(double.NaN, double.NaN));
        Assert.Contains(
            Scenarios.FreshRun().Change("runs.csv", "990,1000", "1.7e308,1.7e308").Answer("runs.csv", "r8,@1,pack,fresh,lot,L1,p1,yard,1.7e308,1.7e308,0,0,").Check().Breaches,
            breach => breach.Rule == "lot-balance");
    }

    /// <summary>A ten-thousandth of a bin in the cold in week 0: the plan may count that week's 20 or not.</summary>
    [Theory]
    [InlineData(300)]
    [InlineData(280)]
    public void A_place_that_holds_a_crumb_may_be_called_empty(double value)
    {
        Folders folders = Scenarios.Stock().Season("lots.csv", "L5,cold,Ridge,F5,2026-07-20,0.0001,0.001,0.8,0.15,,,,,,,")
            .WithPathOf("L5", "p5", "cold", 0, "cold", "cold", "cold", "cold").Answer("keeps.csv", "@0,L5,p5,cold,0.0001,0.001")
            .Answer("as-is.csv", "discarded,@1,L5,p5,cold,0.00099,0.001").Summary(value);
        CheckResult result = folders.Check();
        Assert.Equal([], result.Breaches);
        Assert.Equal(value, result.Value!.Value, 3);
    }
}
