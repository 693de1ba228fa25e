using Cloveshed.Check.Answer;
using Cloveshed.Check.Rules;
using Cloveshed.Check.Season;

namespace Cloveshed.Check;

/// <summary>
/// The independent check of a plan, written without the planner: from the season's files and the answer's files alone it recomputes
/// what the contract of both says must hold, and the value. It shares no code with what plans.
/// </summary>
public static class PlanCheck
{
    /// <summary>
    /// Checks the answer in one folder against the season in another. Nothing in either makes it throw: what cannot be read is a breach.
    /// A season that cannot be read ends the check there.
    /// </summary>
    public static CheckResult Check(string seasonFolder, string answerFolder)
    {
        var findings = new Findings();
        if (SeasonReading.Read(seasonFolder, findings) is not SeasonData season)
        {
            return new CheckResult(findings.All, null);
        }

        AnswerData answer = AnswerReading.Read(answerFolder, season, findings);
        PathTracks tracks = PathTracks.Follow(season, answer);
        RunSums runs = RunSums.Of(season, answer, tracks);

        PathRules.Check(season, answer, tracks, findings);
        StandingRules.Check(season, answer, tracks, findings);
        PlaceRules.Check(season, answer, tracks, findings);
        RoomRules.Check(season, answer, tracks, findings);
        ShareRules shares = ShareRules.Check(season, answer, findings);
        RunRules.Check(season, answer, findings);
        HoursRules.Check(season, answer, tracks, findings);
        MadeRules.Check(season, answer, runs, shares, findings);
        SortedRules.Check(season, answer, runs, findings);
        SeedRules.Check(season, answer, runs, findings);
        StockRules.Check(season, answer, findings);
        OrderRules.Check(season, answer, findings);
        AsIsRules.Check(season, answer, findings);
        double? value = ValueRules.Check(season, answer, tracks, findings);
        return new CheckResult(findings.All, value);
    }
}
