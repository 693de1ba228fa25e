using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.SeasonFiles.Tests;

public sealed class ReadingTests
{
    [Fact]
    public void A_sound_season_is_read_whole()
    {
        SeasonReading reading = new SmallSeason().Read();

        Assert.Empty(reading.Faults);
        Assert.Empty(reading.Warnings);
        Season season = reading.Season!;
        Assert.Equal(new LocalDate(2026, 9, 7), season.Settings.FirstWeek);
        Assert.Equal(3, season.Sizes.Count);
        Assert.Null(season.Sizes[2].MaxMm);
        Assert.Equal(new LotRow(
            new LotId("L2"), new PlaceId("Yard"), new VarietyId("Late Sorrel"), "F2", new LocalDate(2026, 9, 21), 100, 90000,
            LotState.Estimated, 80000, 99000, true, null, true, null, null, null, null, null, new LocalDate(2026, 10, 5), false), season.Lots[2]);
        Assert.Equal(5, season.LineWeeks[0].Week);
        Assert.Equal(-1, season.Stock[0].Made);
        Assert.Equal(Defect.Mold, season.Samples[1].Defect);
        Assert.Null(season.AsIsPrices[0].Variety);
    }

    [Fact]
    public void Defaults_are_those_of_the_contract()
    {
        Season season = new SmallSeason().Read().Season!;

        Assert.Equal(season.Settings.FirstWeek, season.Settings.AsOf);
        Assert.Equal(0m, season.Settings.EndPrice);
        Assert.Null(season.Settings.Seed);
        OrderLine order = season.Orders[0];
        Assert.Equal(new LocalDate(2026, 9, 21), order.ShipFrom); // the Monday of the week of Thursday, 24 September 2026
        Assert.True(order.Firm);
        Assert.False(order.Whole);
        Line cracker = season.Lines[1];
        Assert.Equal((0.0, null, 1.0, 0.0, 0.0), (cracker.OvertimeHours, cracker.OvertimeCostPerHour, cracker.Heads, cracker.MinRun, cracker.SetupHours));
        Assert.Null(season.LineWeeks[0].OvertimeHours);
        Assert.Equal(0, season.Products[2].ShelfWeeks);
        Assert.Equal(0m, season.Places[0].CostPerWeek);
        Assert.False(season.Lots[0].Hold);
    }
}
