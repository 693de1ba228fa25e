using System.Net;
using Cloveshed.Core;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Air;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Release;
using Cloveshed.Web.Rooms;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Tests.Setup;
using Cloveshed.Web.Today;

namespace Cloveshed.Web.Tests.Rooms;

/// <summary>The order of release, the reach plan and what an alarm costs, against sums made apart.</summary>
public sealed class ReleasePageTests(DemoShed demo) : IClassFixture<DemoShed>
{
    private PlanBook Book => new(demo.Shed.Ledger.Now().Season!, demo.Shed.Part<PlanShelf>().Of(demo.Shed.Ledger.Now().Adopted!));

    private Season Season => demo.Shed.Ledger.Now().Season!;

    private int Week => Season.Settings.WeekOf(new NodaTime.LocalDate(2026, 9, 2));

    [Fact]
    public void The_planned_weeks_are_given_out_in_the_order_of_the_last_good_days()
    {
        ReleaseBook release = ReleaseBook.Of(Season, StandingLots.Of(Season), Book, Week);
        ReleasePart[] planned = [.. release.Parts.Where(part => part.Row.PlannedWeek is not null)];
        Assert.True(planned.Length > 20);
        Assert.Equal(release.Parts.Select(part => part.Row.RunBy).Order(), release.Parts.Select(part => part.Row.RunBy));
        Assert.Equal(planned.Select(part => part.Row.PlannedWeek).Order(), planned.Select(part => part.Row.FirstToExpireWeek));
        Assert.Equal((double)release.CostOfDiffering.Amount, planned.Sum(part => (double)part.Row.CostOfDiffering.Amount), 0.01 * planned.Length);
        // All that the plan runs or sells from now on is there, and nothing twice.
        double leaves = Book.Answer.Runs.Where(run => run.Path is not null && run.Week >= Week).Sum(run => run.MassAtStart) + Book.Answer.AsIs.Where(row => row.Week >= Week).Sum(row => row.MassAtStart);
        Assert.Equal(leaves, planned.Sum(part => part.Mass), leaves * 1e-6);
        // A part that runs sooner than its order would have lost less by then: differing gains, and the other way round.
        Assert.All(planned.Where(part => part.Row.Differs && Book.WorthOf(part.Row.Lot) > 0), part => Assert.True(Math.Sign(part.Row.CostOfDiffering.Amount) * Math.Sign(part.Row.PlannedWeek!.Value - part.Row.FirstToExpireWeek!.Value) >= 0));
    }

    [Theory]
    [InlineData("Cold 1")]
    [InlineData("Sealed A")]
    [InlineData("Open yard")]
    public void A_reach_plan_holds_every_bin_once_and_digs_less_than_filling_as_dug(string name)
    {
        Place place = Season.Places.First(one => one.Id.Text == name);
        ReachPlan plan = ReachPlan.Of(Season, place, RoomFigures.None, StandingLots.Of(Season), Book);
        double standing = Season.Lots.Where(row => row.Place == place.Id && PlaceUse.Stands(Season.Settings, row)).Sum(row => row.Bins);
        Assert.Equal(standing, plan.Bins, 1e-6);
        Assert.Equal(standing, plan.Lanes.SelectMany(lane => lane).Sum(stack => stack.Bins) + plan.NotPlaced, 1e-6);
        Assert.All(plan.Lanes, lane => Assert.True(lane.Count <= plan.Deep));
        Assert.All(plan.Lanes.SelectMany(lane => lane), stack => Assert.True(stack.Bins <= plan.High + 1e-9));
        Assert.True(plan.Digs <= plan.DigsAsCame);
        Assert.Equal(plan.Digs, plan.Lots.Sum(lot => lot.Digs), 1e-6);
        Assert.Equal(plan.DigsAsCame, plan.Lots.Sum(lot => lot.DigsAsCame), 1e-6);
        // A slower twin of what stands before a lot's nearest stack.
        Assert.All(plan.Lots, lot => Assert.Equal(Before(plan, lot.Lot), lot.ToFirst, 1e-9));
    }

    /// <summary>In one lane all that is needed sooner stands before a lot: 199.7 m of 1.2 m bins, one across, four high by the rule.</summary>
    [Fact]
    public void In_a_single_lane_a_later_lot_stands_behind_all_that_is_needed_sooner()
    {
        RoomFigures lane = new(
            new Dictionary<RoomFigure, double>
            {
                [RoomFigure.LengthM] = 200, [RoomFigure.WidthM] = 1.6, [RoomFigure.HeightM] = 9, [RoomFigure.BinLengthM] = 1.2, [RoomFigure.BinWidthM] = 1.2, [RoomFigure.BinHeightM] = 0.75,
                [RoomFigure.MostHigh] = 4,
            }, []);
        ReachPlan plan = ReachPlan.Of(Season, Season.Places.First(one => one.Id == RoomDays.Cold1), lane, StandingLots.Of(Season), Book);
        Assert.Equal((166, 4, true, 1, 0.0), (plan.Deep, plan.High, plan.Described, plan.Lanes.Count, plan.Digs));
        Assert.Equal(plan.Lanes[0].Select(stack => stack.Week).OrderDescending(), plan.Lanes[0].Select(stack => stack.Week));
        Assert.All(plan.Lots, lot => Assert.Equal(Before(plan, lot.Lot), lot.ToFirst, 1e-9));
        Assert.Contains(plan.Lots, lot => lot.ToFirst > 0);
    }

    /// <summary>What is recorded is of lots.csv, what the plan has is of its keeps.csv; heat and cost go by the record, and by the plan only where nothing is recorded.</summary>
    [Fact]
    public async Task A_room_tells_what_is_recorded_from_what_the_plan_has_there()
    {
        RoomSight[] rooms = [.. RoomSight.All(Season, PlaceLog.Empty, new NodaTime.LocalDateTime(2026, 9, 2, 10, 30), Book)];
        foreach (RoomSight room in rooms)
        {
            double planned = Book.Answer.Keeps.Where(keep => keep.Place == room.Place.Id && keep.Week == Week).Sum(keep => keep.Bins), recorded = Season.Lots.Where(row => row.Place == room.Place.Id && PlaceUse.Stands(Season.Settings, row)).Sum(row => row.Bins);
            Assert.Equal(recorded, room.Bins, 1e-5);
            Assert.Equal(planned, room.Planned.Sum(row => row.Bins), 1e-5);
            Assert.Equal(recorded > 0 ? recorded : planned, room.CountedBins, 1e-5);
            Assert.Equal(room.CountedMass * 0.45359237 / 1000, RoomLoads.Of(room, Season, Book).Tonnes, 1e-6);
            ReachPlan reach = ReachPlan.Of(Season, room.Place, RoomFigures.None, StandingLots.Of(Season), Book, Week);
            Assert.Equal(planned, reach.Bins, 1e-5);
            Assert.All(reach.Lots, lot => Assert.True(lot.Week > Week));
        }

        RoomSight filled = rooms.First(room => room.CountedByPlan), held = rooms.First(room => room.Standing.Count > 0);
        using Visitor visitor = demo.Shed.Visitor();
        string there = (await visitor.Get(Paths.Room(filled.Place.Id))).Read(), here = (await visitor.Get(Paths.Room(held.Place.Id))).Read();
        Assert.Contains("No lot is recorded here. By the plan, at the end of the week of 31 Aug 2026:", there, StringComparison.Ordinal);
        Assert.Contains("Nothing is recorded here. Heat, gas, cost and the price of alarms go by what the plan has here this week.", there, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing is recorded here.", here, StringComparison.Ordinal);
        Assert.Contains("Bins, recorded", here, StringComparison.Ordinal);
        // The demo's yard in the first days of September is warm enough that its dew point lies over a cold room's bulbs.
        SweatAnswer sweat = RoomLoads.Of(held, Season, Book).Sweat;
        Climate yard = PlaceClimate.Of(Season, Season.Places.First(one => one.Kind == PlaceKind.Open), Week, false, ClimateDefaults.Default);
        Assert.Equal((SweatRisk.Sweats, MoistAir.Of(yard.TempC, yard.Rh).DewPointC), (sweat.Risk, sweat.DewPointC));
        Assert.Contains("Taken out this week its bulbs sweat:", here, StringComparison.Ordinal);
    }

    /// <summary>The twin keeps each lot a week in either air, by the law alone.</summary>
    [Fact]
    public void An_alarm_costs_what_a_week_in_the_air_that_was_read_takes()
    {
        Place place = Season.Places.First(one => one.Id == RoomDays.Cold1);
        AlarmDecision Warm(double temp) => Assert.Single(Rooms(RoomDays.Air(RoomDays.Last, place.Id, temp, null)).Alarms, alarm => alarm.Alarm.Kind == RoomAlarmKind.TooWarm);
        AlarmDecision alarm = Warm(6);
        LotRow[] standing = [.. Season.Lots.Where(row => row.Place == place.Id && PlaceUse.Stands(Season.Settings, row))];
        Assert.Equal(standing.Select(row => row.Lot.Text).Order(StringComparer.Ordinal), alarm.Parts.Select(part => part.Subject).Order(StringComparer.Ordinal));
        foreach (LotRow row in standing)
        {
            CostPart part = alarm.Parts.Single(one => one.Subject == row.Lot.Text);
            double Left(double temp)
            {
                Climate air = PlaceClimate.Of(Season, place, Week, false, ClimateDefaults.Default) with { TempC = temp };
                WeekOfKeeping week = KeepingLaw.Week(KeepingParameters.Default, LotTraits.Of(Season, row), air, 50);
                return (1 - week.WeightLoss) * KeepingLaw.SoundShare(KeepingParameters.Default, LifeAtStart.Of(Season, place, row, KeepingParameters.Default, ClimateDefaults.Default) + week.LifeUsed);
            }

            Assert.Equal(row.Net * Book.WorthOf(row.Lot)!.Value, part.Amount * part.Rate, 1e-6 * row.Net);
            Assert.Equal(1 - Left(6) / Left(0), part.Share, 0.35 * part.Share);
        }

        Assert.True(Warm(3).CostOfWaiting < alarm.CostOfWaiting && Warm(3).CostOfWaiting > 0);
    }

    [Fact]
    public void Air_that_harms_people_stands_first_whatever_the_others_cost()
    {
        RoomsToday rooms = Rooms(RoomDays.Air(RoomDays.Last, RoomDays.Cold1, -9, 50), RoomDays.Air(RoomDays.Last, new PlaceId("Cold 3"), 1, 68, 19.4));
        Assert.Equal((RoomAlarmKind.DeadlyAir, "Cold 3", true), (rooms.Alarms[0].Alarm.Kind, rooms.Alarms[0].Place.Text, rooms.Alarms[0].PeopleFirst));
        // Freezing can take all of it.
        AlarmDecision cold = rooms.Alarms.First(alarm => alarm.Alarm.Kind == RoomAlarmKind.TooCold);
        Assert.Equal(Season.Lots.Where(row => row.Place == RoomDays.Cold1 && PlaceUse.Stands(Season.Settings, row)).Sum(row => row.Net * Book.WorthOf(row.Lot)!.Value), cold.CostOfWaiting, 1.0);
        Assert.Equal(rooms.Alarms.Skip(1).Select(alarm => alarm.CostOfWaiting).OrderDescending(), rooms.Alarms.Skip(1).Select(alarm => alarm.CostOfWaiting));
    }

    private RoomsToday Rooms(params NewFact[] facts)
    {
        PlaceLog log = new([.. facts.Select((fact, at) => new RoomRecord(fact.Id, at + 1, fact.HappenedAt, fact.HappenedAt, fact.By, fact.Device, null, Said(fact.Body), ""))], demo.Shed.Clock.LocalTimeZone);
        return RoomsToday.Of(Season, log, new NodaTime.LocalDateTime(2026, 9, 2, 10, 30), Book);
    }

    private static AirSaid Said(System.Text.Json.JsonElement body)
    {
        double? Number(string key) => body.TryGetProperty(key, out var value) && value.ValueKind == System.Text.Json.JsonValueKind.Number ? value.GetDouble() : null;
        return new AirSaid(new PlaceId(body.GetProperty("place").GetString()!), Number("temp_c"), Number("rh"), Number("o2"), Number("co2"), ReadingSource.Device, "probe", "");
    }

    [Fact]
    public async Task Both_pages_show_the_numbers_and_say_what_they_are_not()
    {
        using Visitor visitor = demo.Shed.Visitor();
        ReleaseBook release = ReleaseBook.Of(Season, StandingLots.Of(Season), Book, Week);
        string order = (await visitor.Get("/keep/release/order")).Read();
        Assert.Contains($"Parts out of that order {release.Parts.Count(part => part.Row.Differs)} ", order, StringComparison.Ordinal);
        Assert.Contains("a difference is no fault", order, StringComparison.Ordinal);
        string reach = (await visitor.Get("/keep/reach/Cold%201")).Read();
        Assert.Contains("this is a plan of where to put them", reach, StringComparison.Ordinal);
        Assert.Contains("Stacked bins crush", reach, StringComparison.Ordinal);
        Got none = await visitor.Get("/keep/reach/Attic");
        Assert.Equal((HttpStatusCode.NotFound, true), (none.Status, none.Text.Contains("There is no such place", StringComparison.Ordinal)));
    }

    private static double Before(ReachPlan plan, LotId lot)
    {
        double least = double.PositiveInfinity;
        foreach (IReadOnlyList<LotStack> lane in plan.Lanes)
        {
            double before = 0;
            for (int at = lane.Count - 1; at >= 0; at--)
            {
                if (lane[at].Lot == lot)
                {
                    least = Math.Min(least, before);
                }

                before += lane[at].Bins;
            }
        }

        return double.IsFinite(least) ? least : 0;
    }
}
