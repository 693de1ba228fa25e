using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>A small season's plan standing ready with room weeks held, and the direct model of the same.</summary>
internal static class Standing
{
    internal static StandingPlan Prepared(Season season, RoomChoice rooms)
    {
        RoomRow[] rows = [.. season.Places.Select((place, p) => (place, rooms.OfPlace[p])).Where(one => one.Item2?.Sealed is not null).Select(one => new RoomRow(one.place.Id, one.Item2!.Value.Sealed!.Value, one.Item2.Value.Opened))];
        return StandingPlan.Prepare(new StandingRequest(season, Beliefs.Default, RunWishes.None, rows, 1e6, SearchDepth.Exact, 1, () => 0, 400, 1e-8), new HighsSolver());
    }

    /// <summary>In the season's currency.</summary>
    internal static double FromScratch(PlanningInstance instance, RoomChoice rooms) =>
        DirectModel.Solve(new DirectQuestion(instance, rooms, Mixed: false)).Value * instance.MoneyScale;
}
