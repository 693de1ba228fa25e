using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Seasons.Tests.Demo;

/// <summary>The season reader takes the demo as it is: no fault, no warning, nothing left out.</summary>
public sealed class ReadingTests
{
    private static readonly SeasonReading Reading = SeasonReader.Read(Path.Combine(Committed.Data, "demo-season"));

    [Fact]
    public void It_reads_without_a_fault_or_a_warning()
    {
        Assert.Equal([], Reading.Faults.Select(f => f.ToString()));
        Assert.Equal([], Reading.Warnings.Select(w => w.ToString()));
        Assert.NotNull(Reading.Season);
    }

    [Fact]
    public void Every_row_of_every_file_is_in_the_season()
    {
        Season season = Assert.IsType<Season>(Reading.Season);
        (string File, int Count)[] read =
        [
            ("sizes", season.Sizes.Count), ("varieties", season.Varieties.Count), ("places", season.Places.Count), ("place-weeks", season.PlaceWeeks.Count),
            ("lots", season.Lots.Count), ("samples", season.Samples.Count), ("yields", season.Yields.Count), ("lines", season.Lines.Count),
            ("line-weeks", season.LineWeeks.Count), ("people", season.People.Count), ("products", season.Products.Count),
            ("clove-grades", season.CloveGrades.Count), ("stock", season.Stock.Count), ("rooms", season.SealedRooms.Count), ("orders", season.Orders.Count),
            ("market", season.Market.Count), ("seed-needs", season.SeedNeeds.Count), ("sell-as-is", season.AsIsPrices.Count), ("setups", season.Setups.Count),
            ("shifts", season.Shifts.Count),
        ];
        Assert.All(read, r => Assert.Equal(Committed.Rows($"demo-season/{r.File}.csv").Count, r.Count));
        Assert.Equal(Directory.GetFiles(Path.Combine(Committed.Data, "demo-season")).Length, read.Length + 1);
    }

    [Fact]
    public void It_is_the_season_of_the_scenario()
    {
        Season season = Assert.IsType<Season>(Reading.Season);
        Assert.Equal(Cloveshed.DemoSeason.Scenario.FirstWeek, season.Settings.FirstWeek);
        Assert.Equal(Cloveshed.DemoSeason.Scenario.Weeks, season.Settings.Weeks);
        Assert.Equal(0, season.Settings.AsOfWeek);
        Assert.Equal(MassUnit.Pound, season.Settings.MassUnit);
        Assert.Equal("USD", season.Settings.Currency);
        Assert.Equal(6, season.Lots.Count(l => l.Harvested.Year == 2025));
        Assert.Equal(1, season.Lots.Count(l => l.Hold));
        Assert.Equal(7, season.Lots.Count(l => l.Organic));
        // A treated lot may be neither organic nor serve as seed; two carry a class all the same.
        Assert.DoesNotContain(season.Lots, l => l.Organic && l.Inhibitor);
        Assert.Equal(2, season.Lots.Count(l => l.Inhibitor && l.SeedClass is not null));
        Assert.All(season.Lots.Where(l => l.Cured == false), l => Assert.True(l.Ready > l.Harvested));
    }
}
