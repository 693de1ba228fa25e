using Cloveshed.Core.Seasons;
using CsCheck;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>A season written and read back is the same season, whatever is in it.</summary>
public sealed class RoundTripTests
{
    [Fact]
    public void Any_season_reads_back_as_it_was_written() =>
        Gen.Int.Sample(seed =>
        {
            Season season = new DrawnSeason(seed).Draw();

            SeasonReading reading = SeasonReader.Parse(SeasonWriter.Render(season));

            Assert.Empty(reading.Faults);
            // Hours above 168 are warned about, and promotions that no row comes under.
            Assert.DoesNotContain(reading.Warnings, warning => warning.File is not ("lines.csv" or "promotions.csv"));
            AssertSame(season, reading.Season!);
        }, iter: 500);

    [Fact]
    public void Through_a_folder_too()
    {
        using TemporaryFolder folder = new();
        Season season = new SmallSeason().Read().Season!;

        SeasonWriter.Write(season, folder["season"]);
        SeasonReading reading = SeasonReader.Read(folder["season"]);

        Assert.Equal(21, Directory.GetFiles(folder["season"]).Length);
        AssertSame(season, reading.Season!);
        Assert.Equal(SeasonReader.Parse(SeasonWriter.Render(season)).InputDigest, reading.InputDigest);
    }

    internal static void AssertSame(Season one, Season other)
    {
        Assert.Equal(one.Settings, other.Settings);
        Assert.Equal(one.Sizes, other.Sizes);
        Assert.Equal(one.Varieties, other.Varieties);
        Assert.Equal(one.Places, other.Places);
        Assert.Equal(one.PlaceWeeks, other.PlaceWeeks);
        Assert.Equal(one.Lots, other.Lots);
        Assert.Equal(one.Samples, other.Samples);
        Assert.Equal(one.Yields, other.Yields);
        Assert.Equal(one.Lines, other.Lines);
        Assert.Equal(one.LineWeeks, other.LineWeeks);
        Assert.Equal(one.People, other.People);
        Assert.Equal(one.Products, other.Products);
        Assert.Equal(one.CloveGrades, other.CloveGrades);
        Assert.Equal(one.Stock, other.Stock);
        Assert.Equal(one.SealedRooms, other.SealedRooms);
        Assert.Equal(one.Orders, other.Orders);
        Assert.Equal(one.Market, other.Market);
        Assert.Equal(one.SeedNeeds, other.SeedNeeds);
        Assert.Equal(one.AsIsPrices, other.AsIsPrices);
        Assert.Equal(one.Terms is null, other.Terms is null);
        if (one.Terms is { } terms && other.Terms is { } read)
        {
            Assert.Equal(terms.Orders, read.Orders);
            Assert.Equal(terms.PriceLists, read.PriceLists);
            Assert.Equal(terms.Programs, read.Programs);
            Assert.Equal(terms.Promotions, read.Promotions);
            Assert.Equal(terms.Freight, read.Freight);
        }

        Assert.Equal(one.Setups, other.Setups);
        Assert.Equal(one.Shifts, other.Shifts);
    }
}
