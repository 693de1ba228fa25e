using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Yard;
using Cloveshed.Ledger.Yard;
using NodaTime;

namespace Cloveshed.Ledger.Tests;

/// <summary>Weather, sacks and looks at lots: taken, refused, corrected, and read as of a day.</summary>
public sealed class YardTests : IDisposable
{
    private static readonly PlaceId Yard = new("yard");

    private readonly Shed shed = new();
    private readonly LotId lot;

    public YardTests()
    {
        Assert.True(SeasonImport.Import(shed.Ledger, SmallSeason.With(("places.csv", "place,kind,capacity_bins,temp_c,rh\nyard,open,100,15,60\ncellar,cold,50,0,65\n")), shed.Here).Taken);
        lot = shed.Ledger.Now().Season!.Lots[0].Lot;
    }

    public void Dispose() => shed.Dispose();

    private FactOrigin At(double hours) => shed.Here with { HappenedAt = shed.Here.HappenedAt.AddHours(hours) };

    private static LocalDateTime Hour(int hour) => new(2030, 7, 2, hour, 0);

    private NewFact Weather(double hours, params WeatherRow[] rows) => YardBodies.Made(At(hours), new WeatherSaid(Yard, rows, "hand", "K7"));

    private NewFact Look(int looked, int sprouted, int decayed, double hours = 0, WeighedAgain? weighed = null, Guid? corrects = null) =>
        YardBodies.Made(At(hours), new LookSaid(lot, Yard, looked, sprouted, decayed, weighed, "K7", ""), corrects);

    private YardLog Log(AsOf? when = null) => new(shed.Ledger.YardRecords(), shed.Clock.LocalTimeZone, when);

    [Fact]
    public void What_was_said_of_an_hour_last_counts_and_hours_come_in_the_order_of_time()
    {
        shed.Take(Weather(-2, new(Hour(14), 30, 40), new(Hour(13), 29, 45, 0.4, 1.5, 40)), Weather(-1, new WeatherRow(Hour(14), 27, 60, 2)));
        Assert.Equal([new(Hour(13), 29, 45, 0.4, 1.5, 40), new(Hour(14), 27, 60, 2)], Log().WeatherOf(Yard));
        Assert.Empty(Log().WeatherOf(new PlaceId("cellar")));
    }

    [Fact]
    public void The_last_description_of_a_yard_counts_whole()
    {
        shed.Take(YardBodies.Made(At(-2), new YardIs(Yard, new TypicalDay(15, 32, 30, 85), true, 40, "K7")), YardBodies.Made(At(-1), new YardIs(Yard, null, false, null, "B2")));
        Assert.Equal(new YardIs(Yard, null, false, null, "B2"), Log().YardOf(Yard));
    }

    [Fact]
    public void Looks_and_weighings_come_back_as_they_were_said_apart_from_the_shed()
    {
        ShedState before = shed.Ledger.Now();
        WeighedAgain weighed = new(880, 900, new LocalDate(2030, 6, 20), MassUnit.Pound);
        shed.Take(Look(100, 4, 2, -1, weighed), YardBodies.Made(At(-3), new SackSaid(lot, "S1", 31.2, MassUnit.Pound, "K7")), YardBodies.Made(At(-9), new SackSaid(lot, "S1", 33, MassUnit.Pound, "K7")));
        Assert.Equal(new LookSaid(lot, Yard, 100, 4, 2, weighed, "K7", ""), Log().LooksOf(lot).Single().Said);
        Assert.Equal([33, 31.2], Log().SacksOf(lot).Select(sack => sack.Said.Weight));
        Assert.Same(before.Season, shed.Ledger.Now().Season);
        Assert.True(shed.Ledger.Verify().Ok);
    }

    [Fact]
    public void A_slip_is_corrected_or_taken_back_once_and_stays_in_the_ledger()
    {
        NewFact wrong = Look(100, 40, 2, -5);
        shed.Take(wrong);
        NewFact right = Look(100, 4, 2, -5, corrects: wrong.Id);
        shed.Take(right);
        Assert.Equal(4, Log().LooksOf(lot).Single().Said.Sprouted);
        Assert.Equal("record-moved", shed.Refuse(Look(100, 5, 2, corrects: wrong.Id)).Rule);
        Assert.Equal("record-other", shed.Refuse(Weather(0, new WeatherRow(Hour(1), 1, 1)) with { Corrects = right.Id }).Rule);
        shed.Take(YardBodies.Withdrawn(At(0), right.Id, "of another lot"));
        Assert.Empty(Log().LooksOf(lot));
        Assert.Equal(3, shed.Ledger.YardRecords().Count);
        Assert.Empty(Log(new AsOf(new LocalDate(2030, 6, 1))).LotsLooked);
    }

    [Fact]
    public void Numbers_have_bounds_and_names_are_the_seasons()
    {
        Assert.Equal("look-counts", shed.Refuse(Look(10, 6, 5)).Rule);
        Assert.Equal("yard-number", shed.Refuse(Look(0, 0, 0)).Rule);
        shed.Take(Look(0, 0, 0, weighed: new WeighedAgain(10, 11, new LocalDate(2030, 6, 1), MassUnit.Kilogram)));
        Assert.Equal("yard-number", shed.Refuse(Weather(0, new WeatherRow(Hour(1), 86, 40))).Rule);
        Assert.Equal("yard-number", shed.Refuse(Weather(0, new WeatherRow(Hour(1), 20, 40, -1))).Rule);
        Assert.Equal("yard-number", shed.Refuse(YardBodies.Made(shed.Here, new YardIs(Yard, new TypicalDay(30, 20, 40, 80), false, null, "K7"))).Rule);
        Assert.Equal("hold-unknown", shed.Refuse(YardBodies.Made(shed.Here, new SackSaid(new LotId("none"), "S", 1, MassUnit.Pound, "K7"))).Rule);
        Assert.Equal("hold-unknown", shed.Refuse(YardBodies.Made(shed.Here, new YardIs(new PlaceId("attic"), null, false, null, "K7"))).Rule);
    }

    [Theory]
    [InlineData(FactKinds.WeatherTold, """{"place":"yard","who":"K7","rows":[]}""")]
    [InlineData(FactKinds.WeatherTold, """{"place":"yard","who":"K7","rows":[{"at":"noon","temp_c":1,"rh":2}]}""")]
    [InlineData(FactKinds.SackWeighed, """{"lot":"L1","sack":"","weight":1,"who":"K7"}""")]
    [InlineData(FactKinds.LotInspected, """{"lot":"L1","place":"yard","looked":10,"sprouted":1,"decayed":0}""")]
    [InlineData(FactKinds.YardDescribed, """{"place":"yard","who":"K7"}""")]
    [InlineData(FactKinds.YardRecordWithdrawn, "{}")]
    public void A_body_that_is_not_of_its_kinds_form(string kind, string body) =>
        Assert.Equal("body-form", shed.Refuse(shed.Here.Note("x") with { Kind = kind, Body = JsonElement.Parse(body) }).Rule);
}
