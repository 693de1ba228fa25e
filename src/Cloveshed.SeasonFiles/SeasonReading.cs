using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles;

/// <summary>What reading a season's files came to.</summary>
/// <param name="Season">Null when there is any fault.</param>
/// <param name="Faults">In the order of the files and lines; at most 200 of each file.</param>
/// <param name="FaultCount">All faults, also those beyond the 200.</param>
/// <param name="InputDigest">SHA-256 over names and bytes of the files read, in lower-case hexadecimal.</param>
public sealed record SeasonReading(
    Season? Season, IReadOnlyList<Fault> Faults, int FaultCount, IReadOnlyList<SeasonWarning> Warnings, string InputDigest);
