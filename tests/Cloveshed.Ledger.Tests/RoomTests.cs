using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Ledger.Yard;
using NodaTime;

namespace Cloveshed.Ledger.Tests;

/// <summary>What is read and done in places: taken, refused, corrected, and read as of a day.</summary>
public sealed class RoomTests : IDisposable
{
    private static readonly PlaceId Yard = new("yard"), Cellar = new("cellar"), Vault = new("vault");

    private readonly Shed shed = new();

    public RoomTests() => Assert.True(SeasonImport.Import(
        shed.Ledger, SmallSeason.With(("places.csv", "place,kind,capacity_bins,temp_c,rh\nyard,open,100,15,60\ncellar,cold,50,0,65\nvault,sealed,50,-0.5,65\n")), shed.Here).Taken);

    public void Dispose() => shed.Dispose();

    private FactOrigin At(double hours) => shed.Here with { HappenedAt = shed.Here.HappenedAt.AddHours(hours) };

    private NewFact Air(PlaceId place, double? t = null, double? rh = null, double? o2 = null, double? co2 = null, double hours = 0, Guid? corrects = null) =>
        RoomBodies.Made(At(hours), new AirSaid(place, t, rh, o2, co2, ReadingSource.Hand, "K7", "probe 3"), corrects);

    private PlaceLog Log(AsOf? when = null) => new(shed.Ledger.RoomRecords(), shed.Clock.LocalTimeZone, when);

    private DoorSaid Door(double oxygen = 20.9, double flammable = 0, double co2 = 0.04, string who = "K7", string attendant = "B2", bool locked = true) => new(
        [new(TestedGas.Oxygen, oxygen, who, "meter 1", At(-0.2).HappenedAt), new(TestedGas.Flammable, flammable, who, "meter 1", At(-0.1).HappenedAt), new(TestedGas.CarbonDioxide, co2, who, "meter 2", At(0).HappenedAt)], attendant, locked);

    private NewFact Step(RoomStep step, DoorSaid? door = null, double hours = 0) => RoomBodies.Made(At(hours), new StepSaid(Vault, step, "K7", "", door));

    [Fact]
    public void Readings_come_back_in_the_order_of_time_whatever_the_order_they_came_in()
    {
        shed.Take(Air(Vault, o2: 1.1, co2: 9.5, hours: -1), Air(Vault, t: -0.4, rh: 66, hours: -3), Air(Yard, t: 21, hours: -2));
        Assert.Equal([-0.4, null], Log().ReadingsOf(Vault).Select(one => one.TempC));
        Assert.Equal(new LocalDateTime(2030, 7, 1, 7, 0), Log().ReadingsOf(Vault)[0].At); // 15:00 UTC less three hours, five hours west
        Assert.Equal((66.0, "probe 3"), (Log().AirOf(Vault)[0].Said.Rh!.Value, Log().AirOf(Vault)[0].Said.Instrument));
        Assert.Equal([Vault, Yard], Log().PlacesRead.OrderBy(place => place.Text, StringComparer.Ordinal));
        // Only one with temperature and humidity drives a clock.
        Assert.Single(Log().ClimateOf(Vault));
    }

    [Fact]
    public void They_stand_apart_from_the_shed_and_the_ledger_holds()
    {
        ShedState before = shed.Ledger.Now();
        shed.Take(Air(Cellar, t: 1), Step(RoomStep.LoadingBegan));
        ShedState after = shed.Ledger.Now();
        Assert.Equal((before.InputDigest, before.Holds.Count, before.Jobs.Count), (after.InputDigest, after.Holds.Count, after.Jobs.Count));
        Assert.True(shed.Ledger.Verify().Ok);
        Assert.True(shed.Ledger.Rebuild().Ok);
        shed.Reopen();
        Assert.Single(Log().AirOf(Cellar));
    }

    [Fact]
    public void A_correction_takes_the_place_of_what_it_names_and_only_once()
    {
        NewFact wrong = Air(Cellar, t: 31);
        shed.Take(wrong);
        NewFact right = Air(Cellar, t: 3.1, corrects: wrong.Id);
        shed.Take(right);
        Assert.Equal([3.1], Log().ReadingsOf(Cellar).Select(one => one.TempC));
        Assert.Equal("record-moved", shed.Refuse(Air(Cellar, t: 5, corrects: wrong.Id)).Rule);
        Assert.Equal("record-moved", shed.Refuse(Air(Cellar, t: 5, corrects: right.Id), Air(Cellar, t: 6, corrects: right.Id)).Rule);
        shed.Take(RoomBodies.Withdrawn(shed.Here, right.Id, "the probe lay in the sun"));
        Assert.Empty(Log().AirOf(Cellar));
        Assert.Equal("record-moved", shed.Refuse(RoomBodies.Withdrawn(shed.Here, right.Id, "again")).Rule);
    }

    [Fact]
    public void A_correction_is_of_the_same_kind_and_place()
    {
        NewFact air = Air(Cellar, t: 1);
        shed.Take(air, shed.Here.Note("x"));
        Guid note = shed.Ledger.Read(kind: FactKinds.Note).Single().Id;
        Assert.Equal("record-other", shed.Refuse(Air(Vault, t: 1, corrects: air.Id)).Rule);
        Assert.Equal("record-other", shed.Refuse(Step(RoomStep.LoadingBegan) with { Corrects = air.Id }).Rule);
        Assert.Equal("record-other", shed.Refuse(RoomBodies.Withdrawn(shed.Here, note, "no record of a room")).Rule);
        Assert.Equal("corrects-missing", shed.Refuse(RoomBodies.Withdrawn(shed.Here, note, "x") with { Corrects = null }).Rule);
        Assert.Equal("corrects-unknown", shed.Refuse(Air(Cellar, t: 1, corrects: Guid.CreateVersion7())).Rule);
    }

    [Fact]
    public void As_of_a_day_only_what_was_known_then_counts()
    {
        NewFact wrong = Air(Cellar, t: 31, hours: -30);
        shed.Take(wrong);
        shed.Clock.At = shed.Clock.At.AddDays(2);
        shed.Take(Air(Cellar, t: 3.1, hours: -78, corrects: wrong.Id));
        LocalDate day = new(2030, 7, 1);
        Assert.Equal([31], Log(new AsOf(day, Knowledge.AsKnownThen)).ReadingsOf(Cellar).Select(one => one.TempC));
        Assert.Equal([3.1], Log(new AsOf(day, Knowledge.AsKnownNow)).ReadingsOf(Cellar).Select(one => one.TempC));
        Assert.Empty(Log(new AsOf(day.PlusDays(-3), Knowledge.AsKnownNow)).ReadingsOf(Cellar));
    }

    /// <summary>A probe that writes UTC: by its own calendar both moments are of the second, by the shed's the first is a second before midnight of the first.</summary>
    [Theory]
    [InlineData("2030-07-02T04:59:59Z", true)]
    [InlineData("2030-07-02T05:00:00Z", false)]
    public void Readings_looks_and_rows_of_one_moment_are_of_one_day_by_the_sheds_clock(string moment, bool first)
    {
        shed.Clock.At = new DateTimeOffset(2030, 7, 2, 6, 0, 0, TimeSpan.Zero);
        FactOrigin probe = shed.Here with { HappenedAt = DateTimeOffset.Parse(moment, System.Globalization.CultureInfo.InvariantCulture) };
        LotId lot = shed.Ledger.Now().Season!.Lots[0].Lot;
        SeasonRow row = shed.Ledger.Now().Rows!.Of("lots.csv").First();
        shed.Take(
            RoomBodies.Made(probe, new AirSaid(Cellar, 1, null, null, null, ReadingSource.Device, "probe 7", ""), null), YardBodies.Made(probe, new LookSaid(lot, Yard, 50, 1, 0, null, "K7", ""), null),
            probe.RowChanged(row, new Dictionary<string, string>(row.Cells) { ["field"] = "moved" }));
        foreach ((int day, bool counts) in new[] { (1, first), (2, true) })
        {
            AsOf when = new(new LocalDate(2030, 7, day));
            Assert.Equal(
                (counts, counts, counts),
                (Log(when).ReadingsOf(Cellar).Count == 1, new YardLog(shed.Ledger.YardRecords(), shed.Clock.LocalTimeZone, when).LooksOf(lot).Count == 1, shed.Ledger.AsOf(when).Season!.Lots[0].Field == "moved"));
        }
    }

    [Theory]
    [InlineData("air-empty", null, null, null, null)]
    [InlineData("air-range", 75.0, null, null, null)]
    [InlineData("air-range", null, 101.0, null, null)]
    [InlineData("air-range", null, null, -0.1, null)]
    [InlineData("air-range", null, null, null, 40_000.0)]
    public void A_reading_reads_something_that_an_instrument_can(string rule, double? t, double? rh, double? o2, double? co2) =>
        Assert.Equal(rule, shed.Refuse(Air(Cellar, t, rh, o2, co2)).Rule);

    [Fact]
    public void Places_are_the_seasons_and_steps_are_of_rooms()
    {
        Assert.Equal("hold-unknown", shed.Refuse(Air(new PlaceId("attic"), t: 1)).Rule);
        Assert.Equal("room-kind", shed.Refuse(RoomBodies.Made(shed.Here, new StepSaid(Yard, RoomStep.LoadingBegan, "K7", "", null))).Rule);
        Assert.Equal("room-kind", shed.Refuse(RoomBodies.Made(shed.Here, new RoomIs(Yard, RoomFigures.None))).Rule);
        using Shed empty = new();
        Assert.Equal("season-none", empty.Refuse(RoomBodies.Made(empty.Here, new AirSaid(Cellar, 1, null, null, null, ReadingSource.Hand, "K7", ""))).Rule);
    }

    [Theory]
    [InlineData(FactKinds.AirRead, """{"place":"cellar","temp_c":1}""")]
    [InlineData(FactKinds.AirRead, """{"place":"cellar","temp_c":1,"who":" "}""")]
    [InlineData(FactKinds.AirRead, """{"place":"cellar","temp_c":"1","who":"K7"}""")]
    [InlineData(FactKinds.AirRead, """{"place":"cellar","temp_c":1,"who":"K7","source":"rumour"}""")]
    [InlineData(FactKinds.RoomStepped, """{"place":"vault","step":"opened","who":"K7"}""")]
    [InlineData(FactKinds.RoomStepped, """{"place":"vault","step":"sealed"}""")]
    [InlineData(FactKinds.RoomTested, """{"place":"vault","who":"K7"}""")]
    [InlineData(FactKinds.RoomTested, """{"place":"vault","who":"K7","door":{"tests":[{"gas":"oxygen","value":20.9,"at":"noon"}],"locked_and_tagged":true}}""")]
    [InlineData(FactKinds.RoomDescribed, """{"place":"vault","figures":{"length":12}}""")]
    [InlineData(FactKinds.RecordWithdrawn, "{}")]
    public void A_body_that_is_not_of_its_kinds_form(string kind, string body) =>
        Assert.Equal("body-form", shed.Refuse(shed.Here.Note("x") with { Kind = kind, Body = JsonElement.Parse(body) }).Rule);

    /// <summary>Limits of OSHA 29 CFR 1910.146(b) and 1910.1000, table Z-1; see docs/formulas/rooms.md.</summary>
    [Fact]
    public void A_room_is_turned_over_only_with_a_signed_test_of_each_gas_within_its_limit()
    {
        Assert.Equal("step-untested", shed.Refuse(Step(RoomStep.TurnedOver)).Rule);
        Assert.Equal("step-untested", shed.Refuse(Step(RoomStep.TurnedOver, Door() with { Tests = [.. Door().Tests.Skip(1)] })).Rule);
        Assert.Equal("step-untested", shed.Refuse(Step(RoomStep.TurnedOver, Door(who: " "))).Rule);
        Assert.Equal("step-untested", shed.Refuse(Step(RoomStep.TurnedOver, Door(attendant: ""))).Rule);
        Assert.Equal("step-untested", shed.Refuse(Step(RoomStep.TurnedOver, Door(locked: false))).Rule);
        Assert.Equal("step-over-limit", shed.Refuse(Step(RoomStep.TurnedOver, Door(oxygen: 19.4))).Rule);
        Assert.Equal("step-over-limit", shed.Refuse(Step(RoomStep.TurnedOver, Door(oxygen: 23.6))).Rule);
        Assert.Equal("step-over-limit", shed.Refuse(Step(RoomStep.TurnedOver, Door(flammable: 10.5))).Rule);
        Assert.Equal("step-over-limit", shed.Refuse(Step(RoomStep.TurnedOver, Door(co2: 0.51))).Rule);
        shed.Take(Step(RoomStep.TurnedOver, Door(oxygen: 19.5, flammable: 10, co2: 0.5)));
        DoorSaid kept = Log().StepsOf(Vault).Single().Said.Door!;
        Assert.Equal(Door(oxygen: 19.5, flammable: 10, co2: 0.5).Tests, kept.Tests);
        Assert.Equal(("B2", true), (kept.Attendant, kept.LockedAndTagged));
    }

    [Fact]
    public void A_step_that_does_not_fit_is_taken_and_seen()
    {
        shed.Take(Step(RoomStep.LoadingBegan, hours: -9), Step(RoomStep.DoorsSealed, hours: -8), Step(RoomStep.Emptied, hours: -7));
        RoomStanding standing = RoomStates.Of([.. Log().StepsOf(Vault).Select(one => new RoomFact(one.Said.Step, one.At, one.Said.Who))]);
        Assert.Equal(RoomState.Sealed, standing.State);
        Assert.Equal(RoomStep.Emptied, Assert.Single(standing.Missteps).Fact.Step);
    }

    [Fact]
    public void The_last_description_counts_whole_and_its_figures_have_bounds()
    {
        RoomFigures Figures(params (RoomFigure Figure, double Value)[] given) => new(given.ToDictionary(one => one.Figure, one => one.Value), [Neighbour.KeptHumid]);
        Assert.All(RoomFigures.Forms, form => Assert.Equal("room-figure", shed.Refuse(RoomBodies.Made(shed.Here, new RoomIs(Vault, Figures((form.Figure, form.Most * 2 + 1))))).Rule));
        Assert.Equal(Enum.GetValues<RoomFigure>(), RoomFigures.Forms.Select(form => form.Figure));
        shed.Take(RoomBodies.Made(shed.Here, new RoomIs(Vault, Figures((RoomFigure.LengthM, 12), (RoomFigure.WarmestC, 2)))));
        shed.Take(RoomBodies.Made(shed.Here, new RoomIs(Vault, Figures((RoomFigure.LengthM, 14)))));
        RoomFigures figures = Log().FiguresOf(Vault);
        Assert.Equal((14.0, null, new RoomLimits()), (figures[RoomFigure.LengthM]!.Value, figures[RoomFigure.WarmestC], figures.Limits));
        Assert.Equal([Neighbour.KeptHumid], figures.Neighbours);
    }
}
