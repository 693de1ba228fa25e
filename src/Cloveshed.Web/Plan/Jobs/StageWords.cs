using Cloveshed.Core.Planning;
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

    public static string Planner(PlanStage stage, Words<PlanWord> words) => stage switch
    {
        PlanStage.Begun => words[PlanWord.StageBegun],
        PlanStage.AllRoomWeeks => words[PlanWord.StageAllRoomWeeks],
        PlanStage.RoomWeeksFound => words[PlanWord.StageRoomWeeksFound],
        PlanStage.RoomWeeksImproved => words[PlanWord.StageRoomWeeksImproved],
        PlanStage.GivenRoomWeeks => words[PlanWord.StageGivenRoomWeeks],
        PlanStage.RunsDecided => words[PlanWord.StageRunsDecided],
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };
}
