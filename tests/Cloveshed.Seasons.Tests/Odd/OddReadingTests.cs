using System.Text;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Features;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// The season reader and writer against seasons and files made by other code: what is sound by the contract is read, and is what it was.
/// </summary>
public sealed class OddReadingTests
{
    public static TheoryData<string> Names => [.. Oddity.All.Select(oddity => oddity.Name)];

    [Theory, MemberData(nameof(Names))]
    public void An_odd_season_is_read_as_it_was_drawn(string name)
    {
        Oddity oddity = Oddity.All.Single(it => it.Name == name);
        for (ulong seed = 1; seed <= 3; seed++)
            AssertRead(OddSeasons.Make(oddity, seed), new Pcg(seed, 7));
    }

    [Fact]
    public void Seasons_at_large_are_read_as_they_were_drawn() =>
        Gen.ULong.Sample(seed => AssertRead(OddSeasons.Mixed(seed), new Pcg(seed, 7)), iter: 100);

    [Fact]
    public void The_tiny_seasons_are_read_as_they_are() => Assert.All(Feature.All, feature => AssertRead(feature.Season, null));

    private static void AssertRead(Season season, Pcg? odd)
    {
        SeasonReading byOthers = SeasonReader.Parse(
            OddFolder.Files(season, odd).ToDictionary(file => file.Key, file => new ReadOnlyMemory<byte>(Encoding.UTF8.GetBytes(file.Value))));
        SeasonReading byUs = SeasonReader.Parse(SeasonWriter.Render(season));

        string expected = OddFolder.Text(WithoutLateRows(season));
        Assert.Empty(byOthers.Faults);
        Assert.Equal(expected, OddFolder.Text(byOthers.Season!));
        Assert.Empty(byUs.Faults);
        Assert.Equal(expected, OddFolder.Text(byUs.Season!));
    }

    /// <summary>Rows that are dug after the season's last day are left out, and samples of lots of which then no row is left.</summary>
    private static Season WithoutLateRows(Season season)
    {
        LotRow[] rows = [.. season.Lots.Where(row => row.Harvested < season.Settings.Monday(season.Settings.Weeks))];
        return rows.Length == season.Lots.Count
            ? season
            : season with { Lots = rows, Samples = [.. season.Samples.Where(bulb => rows.Any(row => row.Lot == bulb.Lot))] };
    }
}
