using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Check;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.App.Plans;

/// <summary>What is to be planned, for how long, and where the answer goes.</summary>
/// <param name="Seed">Wins over the season's own; null: that one, or else 1.</param>
/// <param name="ShowIn">The unit of mass in the summary and the report; null: the season's.</param>
public sealed record PlanQuestion(string Folder, string Out, double Seconds, double Gap, int? Seed, MassUnit? ShowIn);

/// <summary>What came of it.</summary>
public abstract record PlanOutcome
{
    private PlanOutcome()
    {
    }

    /// <summary>The answer is in OUT and the check holds.</summary>
    public sealed record Written(Season Season, PlanAnswer Answer, CheckResult Check) : PlanOutcome;

    /// <summary>The season's files are at fault.</summary>
    public sealed record Faulty(IReadOnlyList<Fault> Faults, int Count) : PlanOutcome;

    /// <summary>OUT cannot take the answer; the reason is a whole sentence.</summary>
    public sealed record NoPlace(string Reason) : PlanOutcome;

    /// <summary>A plan was made that the check does not let pass; it is in a folder beside OUT.</summary>
    public sealed record NotHolding(CheckResult Check, string KeptIn) : PlanOutcome;
}

/// <summary>Reads, plans, checks, writes. OUT changes only in the last step, and only for an answer that the check lets pass.</summary>
internal static class PlanMaking
{
    /// <summary>More threads gain little and each takes memory.</summary>
    private const int MostThreads = 8;

    /// <summary>That a season's model is solved on.</summary>
    internal static int Threads => Math.Clamp(Environment.ProcessorCount, 1, MostThreads);

    public static PlanOutcome Make(PlanQuestion question, World world, Phrasebook phrases)
    {
        SeasonReading reading = SeasonReader.Read(question.Folder, phrases.FileLanguage);
        foreach (SeasonWarning warning in reading.Warnings)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, warning));
        }

        if (reading.Season is not { } season)
        {
            return new PlanOutcome.Faulty(reading.Faults, reading.FaultCount);
        }

        if (AnswerFolder.Obstacle(question.Out, phrases) is { } obstacle)
        {
            return new PlanOutcome.NoPlace(obstacle);
        }

        PlanAnswer answer = Plan(question, season, reading, world, phrases);
        ReportOptions shown = new(phrases.Language, question.ShowIn ?? season.Settings.MassUnit);
        CheckResult check = AnswerFolder.Deliver(answer, season, PlanReport.Render(season, answer, shown), question, phrases);
        return check.Holds ? new PlanOutcome.Written(season, answer, check) : new PlanOutcome.NotHolding(check, AnswerFolder.FailedName(question.Out));
    }

    private static PlanAnswer Plan(PlanQuestion question, Season season, SeasonReading reading, World world, Phrasebook phrases)
    {
        using CancellationTokenSource stop = new();
        using IDisposable stopping = world.OnStop(() =>
        {
            stop.Cancel();
            world.Error.WriteLine((world.ErrorIsTerminal ? "\n" : "") + phrases[Phrase.Stopping]);
        });
        using ProgressLine progress = new(world, season.Settings, phrases);
        PlanRequest request = new(
            season, Beliefs.Default, question.Seconds, question.Gap, question.Seed ?? season.Settings.Seed ?? 1, Threads,
            SearchDepth.Fine, world.Elapsed, CommandTree.Version, reading.InputDigest, Warnings(question, reading, phrases),
            Progress: progress.Show, Cancel: stop.Token);
        return new SeasonPlanner(world.Solver).Plan(request);
    }

    /// <summary>A plan's own words are English whatever the reader's language, since the report marks them so.</summary>
    private static IReadOnlyList<string> Warnings(PlanQuestion question, SeasonReading reading, Phrasebook phrases) =>
        [.. (phrases.Language == Language.En || reading.Warnings.Count == 0 ? reading : SeasonReader.Read(question.Folder)).Warnings.Select(warning => warning.ToString())];
}
