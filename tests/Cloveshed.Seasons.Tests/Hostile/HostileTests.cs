using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>The reader against broken files: each fault at its file, line and column, all in one go, and no season out of it.</summary>
public sealed class HostileTests
{
    public static TheoryData<string> Names => [.. HostileCase.All.Select(c => c.Name)];
    public static TheoryData<string> FineNames => [.. HostileFiles.Fine.Keys];

    [Theory, MemberData(nameof(Names))]
    public void A_broken_season_is_refused_where_it_is_broken(string name)
    {
        HostileCase broken = HostileCase.All.Single(c => c.Name == name);
        SeasonReading reading = SeasonReader.Parse(broken.Folder.Files);
        Assert.Null(reading.Season);
        foreach (FaultAt at in broken.Faults)
        {
            Assert.True(reading.Faults.Any(f => Matches(f, at)), $"nothing at {at}; found: {string.Join(" | ", reading.Faults)}");
        }
        Assert.All(reading.Faults, f => Assert.False(string.IsNullOrWhiteSpace(f.Expected), $"{f} does not say what was expected"));
    }

    [Theory, MemberData(nameof(FineNames))]
    public void An_unusual_but_sound_season_is_read(string name)
    {
        SeasonReading reading = SeasonReader.Parse(HostileFiles.Fine[name].Files);
        Assert.Empty(reading.Faults);
        Assert.NotNull(reading.Season);
    }

    /// <summary>A fault of a key may name all of the key's columns.</summary>
    private static bool Matches(Fault fault, FaultAt at) =>
        fault.File == at.File
        && (at.Line is null || fault.Line == at.Line)
        && (at.Column is null || (fault.Column ?? "").Split(',', StringSplitOptions.TrimEntries).Contains(at.Column));
}
