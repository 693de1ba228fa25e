using Cloveshed.Core;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Tests.Today;

namespace Cloveshed.Web.Tests.Keep;

/// <summary>A lot's clock in its place and in others, and bins by place, against sums made apart.</summary>
public sealed class ClockTests
{
    private static readonly Season Season = HandDay.Season;

    /// <summary>L2 keeps long, has an inhibitor, and is dug in week 2 (from 21 September).</summary>
    private static readonly KeepingTraits Long = new(KeepClass.Long, true, true);

    [Fact]
    public void A_lot_that_stays_ends_where_its_weeks_of_life_sum_to_one()
    {
        LotClock clock = LotClock.Of(Season, Season.Lots[2]);
        // In the yard it is 20 °C and 60% all year, so that every week uses the same.
        double week = KeepingLaw.LifeUsed(KeepingParameters.Default, Long, Air(20, 60));
        Assert.Equal((2, 0.0), (clock.Starts, clock.LifeAtStart));
        Assert.Equal(2 + 1 / week, clock.Here.LastGood!.Value, 9);
        Assert.Equal(2 + 0.5 / week, clock.Reaches(Season, 0.5) ?? double.NaN, 9);
        Assert.Equal(HandDay.Yard, clock.Here.Place.Id);
    }

    [Fact]
    public void A_lot_that_stood_before_has_used_life_and_one_past_it_ends_now()
    {
        LotClock clock = LotClock.Of(Season, Season.Lots[0]);
        // Dug on Monday 20 July, seven weeks before; a variety that keeps short is past its life by then.
        Assert.Equal(7 * KeepingLaw.LifeUsed(KeepingParameters.Default, new KeepingTraits(KeepClass.Short, false, true), Air(20, 60)), clock.LifeAtStart, 12);
        Assert.True(clock.LifeAtStart > 1);
        Assert.All(clock.Places, place => Assert.Equal(0, place.LastGood));
    }

    [Fact]
    public void A_move_buys_the_difference_of_the_two_ends()
    {
        LotClock clock = LotClock.Of(Season, Season.Lots[2]);
        double yard = KeepingLaw.LifeUsed(KeepingParameters.Default, Long, Air(20, 60)), cold = KeepingLaw.LifeUsed(KeepingParameters.Default, Long, Air(0, 65));
        PlaceClock there = clock.Places.Single(place => place.Place.Id == HandDay.Cold);
        // Dug in week 2, it may move in week 3.
        Assert.Equal(3 + (1 - yard) / cold, there.LastGood!.Value, 9);
        Assert.Equal(there.LastGood.Value - clock.Here.LastGood!.Value, there.Bought!.Value, 9);
        Assert.Equal(cold, there.LifeAWeek, 12);
        PlaceClock room = clock.Places.Single(place => place.Place.Id == HandDay.Room);
        Assert.True(room.Atmosphere);
        Assert.True((room.LastGood ?? double.MaxValue) > there.LastGood);
    }

    [Fact]
    public void The_chart_without_a_plan_has_every_lot_first_to_expire_on_top()
    {
        KeepingFacts facts = StandingLots.Of(Season);
        Assert.Equal(["L1", "L2"], facts.Bars.Select(bar => bar.Lot.Text).Order());
        Assert.True((facts.Bars[0].LastGood ?? double.MaxValue) <= (facts.Bars[1].LastGood ?? double.MaxValue));
        Assert.Equal(90_000, facts.Bars.Single(bar => bar.Lot == HandDay.L1).Net);
        Assert.All(facts.Bars, bar => Assert.Empty(bar.Runs));
    }

    [Fact]
    public void Places_hold_what_has_been_dug_and_what_the_plan_keeps()
    {
        IReadOnlyList<PlaceUse> uses = PlaceUse.All(Season, HandDay.Book);
        // L2 is dug in week 2 and does not stand yet.
        Assert.Equal([(60, 54_000), (40, 36_000), (0, 0)], uses.Select(use => (use.Now, use.NowMass)));
        Assert.Equal([60, 60, 38, 38], uses[0].ByWeek.Take(4));
        Assert.Equal((1, 6, 9), (uses[2].Room!.Sealed, uses[2].Room!.Opened, uses[2].Room!.EmptyBy));
        // At the end of week 1: 36,000 lb at start, of which 0.99 is left when week 2 begins.
        Assert.Equal([new StandingBins(HandDay.L1, 40, 36_000 * 0.99)], PlaceUse.At(HandDay.Book, HandDay.Room, 1));
        Assert.All(PlaceUse.All(Season, null), use => Assert.Empty(use.ByWeek));
    }

    [Fact]
    public void Lots_are_found_by_place_variety_and_name_and_paged()
    {
        KeepingBar bar = HandDay.Book.Keeping.Bars[0];
        KeepingFacts many = HandDay.Book.Keeping with { Bars = [.. Enumerable.Range(0, 150).Select(at => bar with { Lot = new LotId($"{(at == 7 ? "Seven" : "Lot")} {at}"), Net = at })] };
        LotsFound all = LotsFound.Of(Season, many, null, new LotsAsked(null, null, null, "mass", 65));
        Assert.Equal((150, LotsFound.PageSize, "Lot 89"), (all.Count, all.Page.Bars.Count, all.Page.Bars[0].Lot.Text));
        Assert.Equal("Seven 7", Assert.Single(LotsFound.Of(Season, many, null, new LotsAsked(null, null, "sEVEN", null, 0)).Page.Bars).Lot.Text);
        Assert.Equal(0, LotsFound.Of(Season, many, null, new LotsAsked("Room 1", null, null, null, 0)).Count);
        Assert.Equal(1, LotsFound.Of(Season, HandDay.Book.Keeping, HandDay.Book, new LotsAsked("Room 1", null, null, null, 0)).Count);
        Assert.Equal(0, LotsFound.Of(Season, many, null, new LotsAsked(null, "Late Sorrel", null, null, 0)).Count);
    }

    private static Climate Air(double tempC, double rh) => new(tempC, rh, KeepingLaw.AirO2, KeepingLaw.AirCo2);
}
