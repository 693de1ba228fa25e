using System.Net;
using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Ledger.Yard;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Solver.Highs;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Tests.Setup;
using NodaTime;

namespace Cloveshed.Web.Tests.Looks;

/// <summary>Looking at a lot: the form, what the lot's page and a plan then say.</summary>
public sealed class LookTests
{
    private static readonly (string, string)[] Bad = [("looked", "200"), ("sprouted", "90"), ("decayed", "10"), ("who", "K7")];

    [Fact]
    public async Task A_look_is_one_fact_however_often_it_is_sent_and_the_lots_clock_knows_it()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got lot = await visitor.Get("/keep/L1");
        Assert.Contains("Nobody has looked at it yet.", lot.Read(), StringComparison.Ordinal);
        Assert.Contains("the prior alone: our default, no published value", lot.Read(), StringComparison.Ordinal);
        Got page = await visitor.Get("/keep/L1/look");
        Got answer = await visitor.Fill(page, "/keep-looks/look", Bad);
        shed.Clock.Pass(TimeSpan.FromMinutes(2));
        await visitor.Fill(page, "/keep-looks/look", Bad);
        Assert.Equal((HttpStatusCode.SeeOther, "/keep/L1#clock"), (answer.Status, answer.Header("Location")));
        LookSaid said = Assert.IsType<LookSaid>(Assert.Single(shed.Ledger.YardRecords()).Said);
        Assert.Equal((200, 90, 10, "K7", null), (said.Looked, said.Sprouted, said.Decayed, said.Who, said.Weighed));
        string after = (await visitor.Get("/keep/L1")).Read();
        Assert.Contains("1 inspection, 200 bulbs in all.", after, StringComparison.Ordinal);
        Assert.Contains("inspections and the prior", after, StringComparison.Ordinal);
        Assert.DoesNotContain("inspections and the prior", lot.Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_wrong_is_told_at_its_field_and_nothing_typed_is_lost()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor("es");
        Got answer = await visitor.Fill(await visitor.Get("/keep/L1/look"), "/keep-looks/look", ("looked", "10"), ("sprouted", "8"), ("decayed", "3"), ("who", ""), ("now", "880"), ("then", ""), ("day", "2031-01-01"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains("8 brotados y 3 podridos son más que los 10 revisados.", answer.Read(), StringComparison.Ordinal);
        Assert.Equal(4, answer.Text.Split("<a href=\"#").Length - 1 - (await visitor.Get("/keep/L1/look")).Text.Split("<a href=\"#").Length + 1);
        Assert.Contains("value=\"880\"", answer.Text, StringComparison.Ordinal);
        Assert.Empty(shed.Ledger.YardRecords());
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/keep/L9/look")).Status);
    }

    [Fact]
    public async Task An_earlier_day_with_weights_counts_then_and_can_be_taken_back()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Fill(await visitor.Get("/keep/L1/look"), "/keep-looks/look", [.. Bad, ("now", "880"), ("then", "900"), ("since", "2026-08-20"), ("day", "2026-08-30")]);
        YardRecord record = Assert.Single(shed.Ledger.YardRecords());
        Assert.Equal(new DateTime(2026, 8, 30, 12, 0, 0), record.At.DateTime);
        Assert.Equal(new WeighedAgain(880, 900, new LocalDate(2026, 8, 20), MassUnit.Pound), ((LookSaid)record.Said!).Weighed);
        await visitor.Fill(await visitor.Get("/keep/L1"), "/keep-looks/take-back", ("reason", "of another lot"));
        Assert.Contains("Nobody has looked at it yet.", (await visitor.Get("/keep/L1")).Read(), StringComparison.Ordinal);
    }

    private static ClockBook Book(ServedShed shed) => new ClockShelf(shed.Ledger, shed.Clock).Of(
        shed.Ledger.Now(), new YardLog(shed.Ledger.YardRecords(), shed.Clock.LocalTimeZone), new PlaceLog(shed.Ledger.RoomRecords(), shed.Clock.LocalTimeZone));

    /// <summary>
    /// Where nobody looked and nothing was read, a row goes by the law; a warm room, or one whose air was taken down, is seen by its readings alone. The twin adds up the
    /// hours: 48 readings, the last of which holds for six hours more, and the place's own air in all the others.
    /// </summary>
    [Theory]
    [InlineData(14.0, 80.0, null, null)]
    [InlineData(0.0, 65.0, 1.0, 10.0)]
    public async Task Readings_of_a_room_count_by_the_hour_for_what_stands_in_it(double tempC, double rh, double? o2, double? co2)
    {
        await using ServedShed shed = await SmallShed.Open();
        Assert.Empty(Book(shed).Clocks);
        Season season = shed.Ledger.Now().Season!;
        LotRow cold = season.Lots.First(row => row.Place.Text == "Cold 1" && row.Harvested < season.Settings.AsOf.PlusDays(-10));
        FactOrigin origin = SmallShed.Origin;
        shed.Ledger.Append([.. Enumerable.Range(1, 48).Select(hour => RoomBodies.Made(
            origin with { HappenedAt = origin.HappenedAt.AddDays(-9).AddHours(hour) }, new AirSaid(cold.Place, tempC, rh, o2, co2, Core.Keep.Rooms.ReadingSource.File, "K7", "")))]);
        SeenClock seen = Book(shed).Of(cold)!;
        double law = LifeAtStart.Of(season, season.Places.First(place => place.Id == cold.Place), cold, KeepingParameters.Default, ClimateDefaults.Default);
        Assert.Equal((0, 1.0, 1.0), (seen.Looks, seen.Sprout, seen.Decay));
        Assert.True(o2 is null ? seen.LifeAtStart > law * 1.05 : seen.LifeAtStart < law, $"{seen.LifeAtStart} after {law}");
        Place place = season.Places.First(one => one.Id == cold.Place);
        LocalDateTime first = LocalDateTime.FromDateTime(TimeZoneInfo.ConvertTime(origin.HappenedAt.AddDays(-9).AddHours(1), shed.Clock.LocalTimeZone).DateTime);
        double twin = 0;
        for (LocalDateTime at = cold.Harvested.AtMidnight(); at < season.Settings.Monday(season.Settings.AsOfWeek).AtMidnight(); at = at.PlusHours(1))
        {
            LocalDateTime middle = at.PlusMinutes(30);
            bool read = middle >= first && middle <= first.PlusHours(47 + 6);
            Climate own = PlaceClimate.Of(season, place, season.Settings.WeekOf(at.Date), false, ClimateDefaults.Default);
            twin += KeepingLaw.LifeUsed(KeepingParameters.Default, LotTraits.Of(season, cold), read ? new Climate(tempC, rh, o2 ?? own.O2, co2 ?? own.Co2) : own) / 168;
        }

        Assert.Equal(twin, seen.LifeAtStart, 1e-9);
    }

    /// <summary>The plan goes by the inspected clock, says so, and the independent check lets it pass.</summary>
    [Fact]
    public async Task A_plan_takes_the_clock_that_was_inspected_says_so_and_holds()
    {
        await using ServedShed shed = await ServedShed.Open(ledger => Assert.True(SeasonImport.Import(ledger, new SmallSeason().Replace("lots.csv", "2026-09-21", "2026-08-01").Files, SmallShed.Origin).Taken));
        Season season = shed.Ledger.Now().Season!;
        LotId lot = new("L1");
        PlanAnswer Plan() => new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(
            season, Beliefs.Default with { Clocks = Book(shed).Clocks }, 3, 0.01, 1, 1, SearchDepth.Fine, () => 0, "test", shed.Ledger.Now().InputDigest, [], PolishWindowsAtMost: 0));
        PlanAnswer before = Plan();
        shed.Ledger.Append([.. season.Lots.DistinctBy(row => row.Lot).Select(row => YardBodies.Made(SmallShed.Origin, new LookSaid(row.Lot, row.Place, 400, 4, 2, null, "K7", "")))]);
        PlanAnswer after = Plan();
        double Used(PlanAnswer plan) => plan.Paths.Where(path => path.Lot == lot).Max(path => path.LifeUsed);
        // By the law some 18 bulbs in 400 would be lost: its clock is slow.
        Assert.True(Used(after) < Used(before), $"{Used(after)} after {Used(before)}");
        Assert.Contains(after.Summary.Defaults, one => one.Name.StartsWith("inspected clock: L1", StringComparison.Ordinal) && one.Why.Contains("1 inspections", StringComparison.Ordinal));
        Assert.DoesNotContain(before.Summary.Defaults, one => one.Name.StartsWith("inspected clock", StringComparison.Ordinal));
        Assert.All(after.Runs.Where(run => run.Path is not null), run => Assert.Contains("clock by inspections (1, the last on 1 Sep 2026)", run.Reason, StringComparison.Ordinal));
        Assert.Contains(after.Runs, run => run.Path is not null);
        Assert.Empty(PlanTrial.Of(shed.Ledger.Now().Files(), PlanDocument.Files(PlanDocument.Of(after, season).Bytes)).Breaches);
    }
}
