using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>The shipped planner, stopped by rounds and gap so that a test repeats exactly.</summary>
internal sealed class EnginePlanner : IPlansSeasons
{
    /// <summary>Every sequence of places, but no more half-built ones than a test has time for: with many places and weeks they have no end.</summary>
    private static readonly SearchDepth Bounded = SearchDepth.Exact with { HalfBuiltAtMost = 40 };

    public PlanAnswer Plan(Season season, PlanEffort effort) =>
        new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(season, Beliefs.Default, 1e6, effort.Gap, 1, 1,
            season.Lots.Count <= 4 ? Bounded : SearchDepth.Fine, () => 0, "test", "test", [],
            RoundsAtMost: season.Lots.Count switch { <= 4 => 30, <= 12 => 8, <= 100 => 3, _ => 1 }, RoomTrialsAtMost: season.Lots.Count switch { <= 4 => 12, <= 12 => 4, _ => 0 },
            // Branch and bound is stopped by nodes; on more lots even the first node takes seconds, so it is left to the tests of the tiny seasons.
            PolishNodesAtMost: season.Lots.Count <= 4 ? 2000 : 0, PolishWindowsAtMost: 0));
}
