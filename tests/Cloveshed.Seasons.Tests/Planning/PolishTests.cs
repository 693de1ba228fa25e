using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// What rounding decided, decided anew by branch and bound, on drawn seasons in which least runs and whole orders bind. That every plan keeps the rules is checked wherever
/// plans are made, and that none passes what the season as one program allows is in the tests of that program.
/// </summary>
public sealed class PolishTests
{
    /// <summary>Few, so that it is done in windows and not at once.</summary>
    private const int Nodes = 40;

    [Theory, InlineData(3)]
    public void It_gains_and_repeats(int seed)
    {
        Season season = TightSeason.Draw((ulong)seed, 3, 6, room: false);
        PlanSummary rounded = Plan(season, 0), polished = Plan(season, Nodes);
        TestContext.Current.SendDiagnosticMessage($"rounded {rounded.Value}, polished {polished.Value}, bound {polished.Bound}");
        Assert.True(polished.Value > rounded.Value + (0.01 * rounded.Revenue), $"polished {polished.Value}, rounded {rounded.Value}");
        Assert.True(polished.Value <= polished.Bound);
        Assert.Equal(polished.Value, Plan(season, Nodes).Value);
    }

    private static PlanSummary Plan(Season season, int nodes) =>
        new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(season, Beliefs.Default, 1e6, 1e-6, 1, 2, SearchDepth.Fine, () => 0, "test", "test", [],
            RoundsAtMost: 20, RoomTrialsAtMost: 0, PolishNodesAtMost: nodes)).Summary;
}
