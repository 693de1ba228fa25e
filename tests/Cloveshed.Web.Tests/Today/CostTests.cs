using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Today;

namespace Cloveshed.Web.Tests.Today;

/// <summary>What a week's wait costs, worked by hand from the plan's rows.</summary>
public sealed class CostTests
{
    private static DecisionList Week(int week, PlanBook? book = null) => DecisionList.Of(book ?? HandDay.Book, week, _ => false);

    private static double Money(Decision decision, Loss loss) => decision.Parts.Where(part => part.Loss == loss).Sum(part => part.Money);

    [Fact]
    public void A_run_that_waits_loses_what_keeping_takes_late_charges_and_hours_of_the_next_week()
    {
        RunDecision run = Assert.Single(Week(2).Runs);
        // 20,000 lb at 0.50; sound is 0.97 x 0.86 at the start of week 2 and 0.95 x 0.84 at that of week 3.
        Assert.Equal(20_000 * 0.5 * (1 - 0.95 * 0.84 / (0.97 * 0.86)), Money(run, Loss.Keeping), 9);
        // 70 units of M30 leave in the week in which O1/1 is due, at a late cost of 2; O1/2 has none.
        Assert.Equal(70 * 2, Money(run, Loss.Late), 9);
        // 4 hours, worth 20 each in week 3.
        Assert.Equal(80, Money(run, Loss.Hours), 9);
        // The seed is wanted in week 4 and not in week 2.
        Assert.Equal(0, Money(run, Loss.SeedLate));
        Assert.Equal(run.CostOfWaiting, run.Parts.Sum(part => part.Amount * part.Rate * part.Share), 9);
    }

    [Fact]
    public void An_order_short_in_its_week_loses_price_and_charge_and_before_that_only_has_them_at_stake()
    {
        // 30 short at 45.50 + 10 (firm), 5 short at 52 (a forecast, so no charge); nothing for late: O1/2 has no late cost.
        const double Short = 30 * 55.5 + 5 * 52;
        OrderDecision due = Assert.Single(Week(2).All.OfType<OrderDecision>()), before = Assert.Single(Week(0).All.OfType<OrderDecision>());
        Assert.Equal((Short, 0), (due.CostOfWaiting, due.AtStake));
        Assert.Equal((0, Short), (before.CostOfWaiting, before.AtStake));
        Assert.Equal((35, 15), (due.Short, due.Late));
    }

    [Fact]
    public void A_move_that_waits_loses_the_difference_of_the_two_airs_at_the_day_of_the_run()
    {
        MoveDecision move = Assert.Single(Week(1).All.OfType<MoveDecision>());
        // The same garlic by the keeping law, asked apart: cold is 0 °C and 65% like the room before it is sealed, so only standing differs: 40 bins at 1.25 less 2.
        Assert.Equal(0, Money(move, Loss.Keeping), 9);
        Assert.Equal(40 * (1.25 - 2), move.CostOfWaiting, 9);
        Assert.Equal((HandDay.Cold, HandDay.Room, 40), (move.From, move.To, move.Bins));
    }

    [Fact]
    public void A_room_that_is_sealed_a_week_later_loses_what_its_own_air_would_have_saved()
    {
        SealDecision room = Assert.Single(Week(1).All.OfType<SealDecision>());
        LotRow row = HandDay.Season.Lots.First(lot => lot.Place == HandDay.Cold);
        Place place = HandDay.Season.Places.First(one => one.Id == HandDay.Room);
        WeekOfKeeping open = Law(place, false), shut = Law(place, true);
        double then = 0.2 + 0.01 * 6;
        double lost = 1 - (1 - (open.WeightLoss - shut.WeightLoss)) * KeepingLaw.SoundShare(KeepingParameters.Default, then + open.LifeUsed - shut.LifeUsed) / KeepingLaw.SoundShare(KeepingParameters.Default, then);
        Assert.Equal(36_000 * 0.5 * lost, room.CostOfWaiting, 9);
        Assert.True(room.CostOfWaiting > 1);
        Assert.Equal((40, 1, 6), (room.Bins, room.Lots, room.Opened));

        WeekOfKeeping Law(Place at, bool atmosphere) => KeepingLaw.Week(
            KeepingParameters.Default, LotTraits.Of(HandDay.Season, row), PlaceClimate.Of(HandDay.Season, at, 2, atmosphere, ClimateDefaults.Default), 2 - HandDay.Season.Settings.WeekOf(row.Harvested));
    }

    [Fact]
    public void A_lot_that_is_run_past_its_life_is_named_with_what_stands_and_when_it_ends()
    {
        ClockDecision clock = Assert.Single(Week(2).All.OfType<ClockDecision>());
        // Life goes from 0.8 to 1.05 in week 3: it ends a fifth before the end of that week, and 34,000 lb are run in week 4.
        Assert.Equal((HandDay.L1, 34_000, 4), (clock.Lot, clock.Past, clock.Next));
        Assert.Equal(3.8, clock.Ends, 9);
        Assert.Equal(34_000 * 0.97, clock.Standing, 6);
        Assert.Equal(34_000 * 0.5, clock.AtStake, 6);
        Assert.Equal(34_000 * 0.5 * (1 - 0.95 * 0.84 / (0.97 * 0.86)), clock.CostOfWaiting, 6);
        Assert.Equal(HandDay.L1, Assert.Single(Week(0).All.OfType<ClockDecision>()).Lot);
    }

    [Fact]
    public void Seed_missing_is_at_stake_until_its_week_and_then_lost()
    {
        // 4,000 lb wanted by 5 October, the Monday of week 4; 3,000 kept; 1.50 a pound.
        SeedDecision before = Assert.Single(Week(2).All.OfType<SeedDecision>()), due = Assert.Single(Week(4).All.OfType<SeedDecision>());
        Assert.Equal((0, 1500), (before.CostOfWaiting, before.AtStake));
        Assert.Equal((1500, 0), (due.CostOfWaiting, due.AtStake));
        Assert.Empty(Week(5).All.OfType<SeedDecision>());
    }

    [Fact]
    public void Opening_a_room_costs_what_the_runs_out_of_it_cost()
    {
        DecisionList week = Week(6);
        OpenDecision room = Assert.Single(week.All.OfType<OpenDecision>());
        Assert.Equal(Assert.Single(week.Runs).CostOfWaiting, room.CostOfWaiting, 9);
        Assert.Equal((40, 9), (room.Bins, room.EmptyBy));
    }

    [Fact]
    public void What_is_already_late_costs_a_week_of_its_charge()
    {
        Season dear = HandDay.Season with { Orders = [.. HandDay.Season.Orders.Select(line => line.Number == "2" ? line with { LateCost = 3 } : line)] };
        DecisionList week = DecisionList.Of(new PlanBook(dear, HandDay.Answer()), 3, _ => false);
        // 15 units of O1/2, due in week 2, ship in week 4: in week 3 they wait one week more.
        Assert.Equal(15 * 3, Assert.Single(week.All.OfType<OrderDecision>()).CostOfWaiting, 9);
        Assert.Empty(DecisionList.Of(new PlanBook(dear, HandDay.Answer()), 4, _ => false).All.OfType<OrderDecision>());
    }

    [Fact]
    public void A_line_changed_since_the_plan_is_said_to_be()
    {
        DecisionList week = DecisionList.Of(HandDay.Book, 2, line => line.Number == "2");
        Assert.True(Assert.Single(week.All.OfType<OrderDecision>()).Unplanned);
        Assert.False(Assert.Single(Week(2).All.OfType<OrderDecision>()).Unplanned);
    }
}
