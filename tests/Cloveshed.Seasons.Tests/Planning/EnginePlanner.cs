using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>The shipped planner, stopped by rounds and gap so that a test repeats exactly.</summary>
internal sealed class EnginePlanner : IPlansSeasons
{
    public PlanAnswer Plan(Season season, PlanEffort effort) =>
        new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(season, Beliefs.Default, 1e6, effort.Gap, 1, 1,
            season.Lots.Count <= 4 ? SearchDepth.Exact : SearchDepth.Fine, () => 0, "test", "test", [],
            RoundsAtMost: season.Lots.Count switch { <= 4 => 30, <= 12 => 15, <= 100 => 4, _ => 2 }, RoomTrialsAtMost: season.Lots.Count switch { <= 4 => 12, <= 12 => 4, _ => 0 },
            // Branch and bound is stopped by nodes; on more lots even the first node takes seconds, so it is left to the tests of the tiny seasons.
            PolishNodesAtMost: season.Lots.Count <= 4 ? 2000 : 0));
}
