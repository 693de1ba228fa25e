using Cloveshed.Check;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Pictures;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>What came of a job, ready for the ledger.</summary>
/// <param name="Outcome">made, refused or stopped, as the metrics name it.</param>
/// <param name="Document">The answer's files, where there are any.</param>
internal sealed record PlanOutcome(string Outcome, NewFact Fact, PlanDocument? Document = null)
{
    public IReadOnlyDictionary<string, byte[]> Documents =>
        Document is null ? new Dictionary<string, byte[]>() : new Dictionary<string, byte[]> { [Document.Sha256] = Document.Bytes };
}

/// <summary>What a plan is made with that is the same for every job of a process.</summary>
internal sealed record PlanMeans(ILinearSolver Solver, string Version, Func<double> Elapsed, int Threads, TimeProvider Clock);

/// <summary>One job from the shed as it was asked of, to the fact that ends it. Reads and writes no ledger.</summary>
internal static class PlanMaking
{
    /// <summary>Who says so: the planner, not a person.</summary>
    private const string By = "planner", Place = "plan";

    /// <summary>Breaches in the fact; the answer that has them is kept whole beside it.</summary>
    private const int BreachesTold = 100;

    /// <param name="shed">The shed by the facts up to the job's basis.</param>
    /// <param name="beliefs">What the planner believes beyond the season's rows, by the same facts.</param>
    public static PlanOutcome Make(PlanJob job, ShedState shed, Beliefs beliefs, JobTrack track, PlanMeans means)
    {
        if (shed.Season is not { } season)
        {
            return Refused(job, means, Words.Of<PlanWord>(Tongue(job))[PlanWord.FaultNoSeason]);
        }

        if (track.Stopped.IsCancellationRequested)
        {
            return new PlanOutcome("stopped", Origin(means).PlanStopped(job.Fact));
        }

        PlanAnswer answer;
        try
        {
            answer = new SeasonPlanner(means.Solver).Plan(Question(job, shed, season, beliefs, track, means));
        }
        catch (OperationCanceledException)
        {
            return new PlanOutcome("stopped", Origin(means).PlanStopped(job.Fact));
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            return Refused(job, means, Words.Of<PlanWord>(Tongue(job)).Say(PlanWord.FaultPlanner, problem.Message.ReplaceLineEndings(" ")));
        }

        track.Now(JobStage.Checking);
        PlanDocument document = PlanDocument.Of(answer, season);
        return Judged(job, document, answer.Summary, PlanTrial.Of(shed.Files(), PlanDocument.Files(document.Bytes)), means);
    }

    /// <summary>Made when the check lets it pass, else refused with why; either way its files are kept.</summary>
    internal static PlanOutcome Judged(PlanJob job, PlanDocument document, PlanSummary plan, CheckResult check, PlanMeans means)
    {
        FactOrigin origin = Origin(means);
        if (check.Holds)
        {
            return new PlanOutcome("made", origin.PlanMade(job.Fact, document.Sha256, plan.Value, plan.Bound, plan.Gap, Status(plan.Status), job.Basis), document);
        }

        string[] told = [.. check.Breaches.Take(BreachesTold).Select(breach => $"{breach.Rule}, {breach.Where}: {breach.Found}; {breach.Allowed}")];
        return new PlanOutcome("refused", origin.PlanRefused(job.Fact, null, told, document.Sha256), document);
    }

    private static PlanRequest Question(PlanJob job, ShedState shed, Season season, Beliefs beliefs, JobTrack track, PlanMeans means) => new(
        season, beliefs, job.Seconds, job.Gap, job.Seed ?? season.Settings.Seed ?? 1, means.Threads, SearchDepth.Fine, means.Elapsed, means.Version,
        shed.InputDigest, [.. shed.Warnings.Select(warning => warning.ToString())], Wishes: HoldWishes.Of(shed.Holds, season.Settings),
        Progress: track.Tell, Cancel: track.Stopped);

    /// <summary>As summary.json names it.</summary>
    private static string Status(PlanStatus status) => status switch { PlanStatus.GapReached => "gap", PlanStatus.TimeReached => "time", _ => "cancelled" };

    /// <summary>No plan came of it, and why, as a sentence.</summary>
    internal static PlanOutcome Refused(PlanJob job, PlanMeans means, string fault) => new("refused", Origin(means).PlanRefused(job.Fact, fault, []));

    private static FactOrigin Origin(PlanMeans means) => FactOrigin.Now(means.Clock, By, "", Place);

    private static Language Tongue(PlanJob job) => job.Language == "es" ? Language.Es : Language.En;
}
