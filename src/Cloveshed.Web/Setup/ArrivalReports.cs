using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>What an arrival reads as, and what it would change.</summary>
/// <param name="Settings">Null where there is any fault.</param>
/// <param name="Differences">None where there is any fault.</param>
/// <param name="Digest">Of the files that were read.</param>
public sealed record ArrivalReport(
    SeasonSettings? Settings, IReadOnlyList<Fault> Faults, int FaultCount, IReadOnlyList<SeasonWarning> Warnings, IReadOnlyList<ListDifference> Differences, string Digest)
{
    public bool Sound => FaultCount == 0;

    /// <summary>Nothing would change.</summary>
    public bool Same => Sound && !Differences.Any(list => list.Any);
}

/// <summary>Reads arrivals, each once for a state of the shed and a language; the season itself is let go again.</summary>
public sealed class ArrivalReports
{
    private const int Room = 4;

    private readonly Shelf<ArrivalReport> shelf = new(Room);

    public ArrivalReport Of(Arrival arrival, ShedState state, TextLanguage language) => shelf.Of($"{arrival.Token} {state.Head.Hash} {language}", () =>
    {
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files = arrival.Files();
        SeasonReading reading = SeasonReader.Parse(files, language);
        return new ArrivalReport(
            reading.Season?.Settings, reading.Faults, reading.FaultCount, reading.Warnings, reading.Season is null ? [] : SeasonDifference.Of(state.Rows, files), reading.InputDigest);
    });
}
