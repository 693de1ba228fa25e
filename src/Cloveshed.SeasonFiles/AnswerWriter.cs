using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Answers;

namespace Cloveshed.SeasonFiles;

/// <summary>
/// Writes an answer as files: every file, also one with no rows. Numbers are written with the digits that read back to the same
/// number, so that a value recomputed from the files is the one that was planned.
/// </summary>
public static class AnswerWriter
{
    /// <summary>The files by name in the order in which they are put, summary.json last; pure.</summary>
    public static IReadOnlyList<(string Name, byte[] Bytes)> Render(PlanAnswer answer, Season season)
    {
        SeasonSettings settings = season.Settings;
        return
        [
            (StandingFiles.Paths.Name, StandingFiles.Paths.Write(answer.Paths, settings)),
            (StandingFiles.Shares.Name, StandingFiles.Shares.Write(answer.Shares, settings)),
            (RunFiles.Runs.Name, RunFiles.Runs.Write(answer.Runs, settings)),
            (RunFiles.Sorted.Name, RunFiles.Sorted.Write(answer.Sorted, settings)),
            (RunFiles.Made.Name, RunFiles.Made.Write(answer.Made, settings)),
            (RunFiles.Fills.Name, RunFiles.Fills.Write(answer.Fills, settings)),
            (RunFiles.Sales.Name, RunFiles.Sales.Write(answer.Sales, settings)),
            (StandingFiles.AsIs.Name, StandingFiles.AsIs.Write(answer.AsIs, settings)),
            (RunFiles.Shorts.Name, RunFiles.Shorts.Write(answer.Shorts, settings)),
            (StandingFiles.Keeps.Name, StandingFiles.Keeps.Write(answer.Keeps, settings)),
            (StandingFiles.Moves.Name, StandingFiles.Moves.Write(answer.Moves, settings)),
            (StandingFiles.Rooms.Name, StandingFiles.Rooms.Write(answer.Rooms, settings)),
            (RunFiles.Seed.Name, RunFiles.Seed.Write(answer.Seed, settings)),
            (StandingFiles.Worths.Name, StandingFiles.Worths.Write(answer.Worths, settings)),
            (SummaryFile.FileName, SummaryFile.Write(answer.Summary)),
        ];
    }

    /// <summary>
    /// Into a folder, all files or none; files of other names in it stay. While files are being replaced there is no summary.json,
    /// so that a set with one is whole.
    /// </summary>
    /// <param name="alongside">Files to put in the same step, such as report.html.</param>
    public static void Write(PlanAnswer answer, Season season, string folder, IReadOnlyList<(string Name, byte[] Bytes)>? alongside = null) =>
        FolderSwap.Put(folder, [.. alongside ?? [], .. Render(answer, season)]);
}
