using System.Text;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Reading;

/// <summary>Odd seasons through files: written in ways of our own and by the program's writer, they read back as they were.</summary>
public sealed class OddReadingTests
{
    public static TheoryData<string> Names => [.. Oddity.All.Select(o => o.Name)];

    [Theory, MemberData(nameof(Names))]
    public void An_odd_season_in_odd_files_reads_back(string name)
    {
        Oddity oddity = Oddity.All.Single(o => o.Name == name);
        for (ulong seed = 1; seed <= (oddity.Large ? 1UL : 3UL); seed++) ReadsBack(OddSeasons.Make(oddity, seed), new(seed, 3));
    }

    [Fact]
    public void Seasons_at_large_read_back() =>
        Gen.ULong.Sample(seed => { ReadsBack(OddSeasons.Mixed(seed), new(seed, 3)); }, iter: 60);

    [Fact]
    public void Features_read_back() => Assert.All(Feature.All, f => ReadsBack(f.Season, null));

    private static void ReadsBack(Season season, Pcg? odd)
    {
        Same(season, OddFolder.Files(season, odd).ToDictionary(f => f.Key, f => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(f.Value), StringComparer.Ordinal));
        Same(season, SeasonWriter.Render(season));
    }

    private static void Same(Season season, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files)
    {
        SeasonReading reading = SeasonReader.Parse(files);
        Assert.Empty(reading.Faults);
        // Rows that start after the season are left out on the way in, and with a lot's last row its samples.
        LotRow[] lots = [.. season.Lots.Where(l => OddSeasons.StartWeek(season.Settings, l) < season.Settings.Weeks)];
        Season kept = season with { Lots = lots, Samples = [.. season.Samples.Where(b => lots.Any(l => l.Lot == b.Lot))] };
        Assert.Equal(OddFolder.Text(kept), OddFolder.Text(reading.Season!));
    }
}
