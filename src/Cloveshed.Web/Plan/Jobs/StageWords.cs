using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>What is being done to a job, in words.</summary>
internal static class StageWords
{
    public static string Of(JobSight sight, Words<PlanWord> words) => sight.Stage switch
    {
        JobStage.Waiting => words[PlanWord.StageWaiting],
        JobStage.Checking => words[PlanWord.StageChecking],
        JobStage.Keeping => words[PlanWord.StageKeeping],
        JobStage.Ended => words[PlanWord.StageEnded],
        _ => Planner(sight.At, words),
    };

    /// <summary>The planner's stages by their names in PlanProgress; one without words shows as it is.</summary>
    public static string Planner(string stage, Words<PlanWord> words) => stage switch
    {
        "" => words[PlanWord.StageBegun],
        "all room weeks" => words[PlanWord.StageAllRoomWeeks],
        "room weeks found" => words[PlanWord.StageRoomWeeksFound],
        "room weeks improved" => words[PlanWord.StageRoomWeeksImproved],
        "given room weeks" => words[PlanWord.StageGivenRoomWeeks],
        "runs decided" => words[PlanWord.StageRunsDecided],
        _ => stage,
    };
}
