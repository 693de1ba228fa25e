using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Answers;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles;

/// <summary>What reading an answer's files came to.</summary>
/// <param name="Answer">Null when there is any fault.</param>
/// <param name="FaultCount">All faults; of each file the first 200 are listed.</param>
public sealed record AnswerReading(PlanAnswer? Answer, IReadOnlyList<Fault> Faults, int FaultCount);

/// <summary>Reads an answer's files back: as cells and rows only. Whether the answer is right is the independent check's matter.</summary>
public static class AnswerReader
{
    private static readonly IReadOnlyList<string> Names =
    [
        SummaryFile.FileName, StandingFiles.Paths.Name, StandingFiles.Shares.Name, RunFiles.Runs.Name, RunFiles.Sorted.Name,
        RunFiles.Made.Name, RunFiles.Fills.Name, RunFiles.Sales.Name, StandingFiles.AsIs.Name, RunFiles.Shorts.Name, StandingFiles.Keeps.Name,
        StandingFiles.Moves.Name, StandingFiles.Rooms.Name, RunFiles.Seed.Name, StandingFiles.Worths.Name,
    ];

    /// <summary>Reads a folder.</summary>
    public static AnswerReading Read(string folder, Season season, TextLanguage language = TextLanguage.English)
    {
        FaultList faults = new(language);
        Dictionary<string, ReadOnlyMemory<byte>> files = [];
        if (!Directory.Exists(folder))
        {
            faults.Add(FaultRule.FolderMissing, folder, null, null, null);
            return new AnswerReading(null, faults.InOrder(Names), faults.Count);
        }
        foreach (string name in Names)
            if (File.Exists(Path.Combine(folder, name)))
                files[name] = File.ReadAllBytes(Path.Combine(folder, name));
        return Parse(files, season, language);
    }

    /// <summary>Parses files by name; pure.</summary>
    public static AnswerReading Parse(
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, Season season, TextLanguage language = TextLanguage.English) =>
        Parse(files, season.Settings, language);

    /// <summary>Parses files by name, of a season of which the settings are at hand; pure.</summary>
    public static AnswerReading Parse(
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, SeasonSettings settings, TextLanguage language = TextLanguage.English)
    {
        FaultList faults = new(language);
        SeasonFrame frame = new(settings.FirstWeek, settings.Weeks, settings.AsOf, settings);
        PlanSummary? summary = null;
        if (files.TryGetValue(SummaryFile.FileName, out ReadOnlyMemory<byte> bytes))
            summary = SummaryFile.Read(bytes, faults);
        else
            faults.Add(FaultRule.FileMissing, SummaryFile.FileName, null, null, null, "");
        PlanAnswer answer = new(
            summary!, StandingFiles.Paths.Read(files, frame, faults), StandingFiles.Shares.Read(files, frame, faults),
            RunFiles.Runs.Read(files, frame, faults), RunFiles.Sorted.Read(files, frame, faults), RunFiles.Made.Read(files, frame, faults),
            RunFiles.Fills.Read(files, frame, faults), RunFiles.Sales.Read(files, frame, faults), StandingFiles.AsIs.Read(files, frame, faults),
            RunFiles.Shorts.Read(files, frame, faults), StandingFiles.Keeps.Read(files, frame, faults), StandingFiles.Moves.Read(files, frame, faults),
            StandingFiles.Rooms.Read(files, frame, faults), RunFiles.Seed.Read(files, frame, faults), StandingFiles.Worths.Read(files, frame, faults));
        return new AnswerReading(faults.Count == 0 ? answer : null, faults.InOrder(Names), faults.Count);
    }
}
