using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// What rounding decided, decided anew by branch and bound, on drawn seasons in which least runs and whole orders bind. That every plan keeps the rules is checked wherever
/// plans are made, and that none passes what the season as one program allows is in the tests of that program.
/// </summary>
public sealed class PolishTests
{
    /// <summary>Few, so that not all is decided at once.</summary>
    private const int Nodes = 5, Windows = 6;

    [Fact]
    public void Deciding_anew_gains_and_windows_gain_more_and_both_repeat()
    {
        Season season = TightSeason.Draw(5, 2, 5, room: false);
        PlanSummary rounded = Plan(season, 0, 0), atOnce = Plan(season, 0, Nodes), polished = Plan(season, Windows, Nodes);
        Assert.True(atOnce.Value > rounded.Value + (0.01 * rounded.Revenue), $"at once {atOnce.Value}, rounded {rounded.Value}");
        Assert.True(polished.Value > atOnce.Value + (0.01 * rounded.Revenue), $"in windows {polished.Value}, at once {atOnce.Value}");
        Assert.True(polished.Value <= polished.Bound);
        Assert.Equal(polished.Value, Plan(season, Windows, Nodes).Value);
    }

    /// <summary>Branch and bound to the end over every way of a tiny season, beside the season written from the contract as one program.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5)]
    public void A_tiny_season_is_worth_what_it_is_as_one_program(int seed)
    {
        Season season = TightSeason.Draw((ulong)seed, 2, 5, room: false);
        PlanningInstance instance = SmallSeasons.Instance(season);
        DirectResult direct = DirectModel.Solve(new DirectQuestion(instance, null, Mixed: true), 120);
        Assert.Equal(LinearStatus.Optimal, direct.Status);
        PlanSummary plan = Plan(season, 0, int.MaxValue);
        Assert.Equal(direct.Value * instance.MoneyScale, plan.Value, 0.01 + (2e-6 * plan.Revenue));
    }

    private static PlanSummary Plan(Season season, int windows, int nodes) =>
        new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(season, Beliefs.Default, 1e6, 1e-6, 1, 2, SearchDepth.Fine, () => 0, "test", "test", [],
            RoundsAtMost: 20, RoomTrialsAtMost: 0, PolishNodesAtMost: nodes, PolishWindowsAtMost: windows)).Summary;
}
