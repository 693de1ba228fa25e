using Cloveshed.Check;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Seasons.Tests.Planning;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Scenarios;

/// <summary>
/// Replays of odd seasons. Where nothing is unsure the plan's own value comes back; where everything is, what was done stands up to the
/// independent check against a season that is written as it truly was, to the value, and no pound is lost.
/// </summary>
public sealed class ReplayTests
{
    /// <summary>Each has something that a replay has to do otherwise; all small oddities were tried when this was written, and hold.</summary>
    public static TheoryData<string> Chosen => ["plain", "one class", "seed of every class at once", "rooms only", "two lines of each", "as of the middle", "a tiny and a huge lot"];

    [Theory, MemberData(nameof(Chosen))]
    public void What_is_sure_comes_out_as_planned_and_what_is_not_stands_up_to_the_check(string name)
    {
        Season season = OddSeasons.Make(Oddity.All.Single(o => o.Name == name), 1);
        Played played = Played.Of(season);
        ReplayOutcome sure = Replay.Of(played.Shed, played.Draw(ScenarioAssumptions.Sure, 0), rows: true);
        Assert.Equal(played.Plan.Summary.Value + played.MovedInVain(), sure.Value, Slack(sure));
        Holds(season, sure);
        Closes(season, sure);
        for (int number = 0; number < 3; number++)
        {
            Scenario scenario = played.Draw(ScenarioAssumptions.Default, number);
            ReplayOutcome outcome = Replay.Of(played.Shed, scenario, rows: true);
            Closes(season, outcome);
            Holds(TrueSeason.Of(played.Instance, scenario), outcome);
        }
    }

    [Fact]
    public void Seasons_at_large_close_and_hold() => OddSeasons.Any.Sample(IsPlayedOut, iter: 4, threads: 1);

    /// <summary>A line planned of several products whose units, each scaled to what was really ordered, round to one more than the line.</summary>
    [Fact]
    public void Parts_of_a_line_that_round_up_together_never_ship_more_than_was_ordered() => OddSeasons.Any.Sample(IsPlayedOut, seed: "8kaUW7L1rSn3", iter: 1, threads: 1);

    /// <summary>A lot that a small run is to finish, with hours that cut another of its runs: the small one would finish nothing.</summary>
    [Fact]
    public void A_run_under_the_least_that_finishes_no_row_after_all_is_not_made() => OddSeasons.Any.Sample(IsPlayedOut, seed: "bRtyW9hJAxG1", iter: 1, threads: 1);

    /// <summary>A lot that comes in after the season's end in one of the seasons drawn: what is written of that season does not name it.</summary>
    [Fact]
    public void A_lot_that_never_comes_has_no_shares() => OddSeasons.Any.Sample(season => { for (int number = 11; number < 19; number++) IsPlayedOut(season, number); }, seed: "74r1ZAfq-yV1", iter: 1, threads: 1);

    private static void IsPlayedOut(Season season) => IsPlayedOut(season, 11);

    private static void IsPlayedOut(Season season, int number)
    {
        Played played = Played.Of(season);
        Scenario scenario = played.Draw(ScenarioAssumptions.Default, number);
        ReplayOutcome outcome = Replay.Of(played.Shed, scenario, rows: true);
        Closes(season, outcome);
        Holds(TrueSeason.Of(played.Instance, scenario), outcome);
    }

    private static void Closes(Season season, ReplayOutcome outcome) => Assert.Equal(0, outcome.Closing, 1e-9 * season.Lots.Sum(l => l.Net) + 1e-9);

    private static double Slack(ReplayOutcome outcome) => 0.02 + 2e-6 * Math.Max(Math.Abs(outcome.Value), outcome.Revenue);

    private static void Holds(Season season, ReplayOutcome outcome)
    {
        PlanValue value = Valuation.Of(season, outcome.Answer!);
        CheckResult check = Judge.Of(season, outcome.Answer! with { Summary = outcome.Answer!.Summary with { Value = value.Value, Bound = value.Value, Revenue = value.Revenue, Revenues = value.Revenues, Costs = value.Costs } });
        Assert.Empty(check.Breaches);
        Assert.True(Math.Abs(check.Value!.Value - outcome.Value) < Slack(outcome), $"check {check.Value} replay {outcome.Value} rows {value.Value}");
    }
}
