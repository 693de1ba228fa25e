using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>Runs that a person pinned or barred, in whole plans: they are in it or not in it, it passes the check, and the bound is above it.</summary>
public sealed class WishesTests
{
    private const int Drawn = 16;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, Drawn)];

    // Planned without wishes once for both tests.
    private static readonly Dictionary<int, Lazy<(Season Season, PlanAnswer Plan)>> Free = Enumerable.Range(1, Drawn).ToDictionary(seed => seed, seed => new Lazy<(Season, PlanAnswer)>(() =>
    {
        Season season = SmallSeasons.Draw((ulong)seed, 6, 6, [PlaceMix.YardOnly, PlaceMix.YardAndCold]);
        return (season, Plan(season, RunWishes.None));
    }));

    [Theory, MemberData(nameof(Seeds))]
    public void A_barred_run_is_not_made_and_costs_no_more_than_the_bound_allows(int seed)
    {
        (Season season, PlanAnswer free) = Free[seed].Value;
        if (Largest(free) is not { } run) return;
        var bar = new BarredRun(run.Lot, run.Line, run.Week);
        PlanAnswer barred = Plan(season, new RunWishes([], [bar]));
        Assert.DoesNotContain(barred.Runs, r => r.Path is not null && (r.Lot, r.Line, r.Week) == (run.Lot, run.Line, run.Week));
        Assert.True(barred.Summary.Value <= free.Summary.Bound + Slack(free), $"{barred.Summary.Value} above {free.Summary.Bound}");
    }

    [Theory, MemberData(nameof(Seeds))]
    public void A_pinned_run_is_made_as_far_as_hours_and_pounds_let_it(int seed)
    {
        (Season season, PlanAnswer free) = Free[seed].Value;
        if (Largest(free) is not { } run) return;
        // What the plan does anyway, pinned: it is still done, in full.
        double mass = free.Runs.Where(r => r.Path is not null && (r.Lot, r.Line, r.Week) == (run.Lot, run.Line, run.Week)).Sum(r => r.MassIn);
        PlanAnswer pinned = Plan(season, new RunWishes([new PinnedRun(run.Lot, run.Line, run.Week, mass)], []));
        double made = pinned.Runs.Where(r => r.Path is not null && (r.Lot, r.Line, r.Week) == (run.Lot, run.Line, run.Week)).Sum(r => r.MassIn);
        Assert.True(made >= mass * (1 - 1e-6), $"{made} of {mass} pinned");
        Assert.True(pinned.Summary.Value <= free.Summary.Bound + Slack(free));
        Assert.True(pinned.Summary.Bound >= free.Summary.Value - Slack(free), "what was done before can be done with the pin, so the bound is above it");
    }

    [Fact]
    public void A_pin_that_cannot_be_kept_leaves_a_plan_that_stands()
    {
        Season season = Feature.All.First(f => f.Season.Lots.Count > 0 && f.Season.Lines.Count > 0).Season;
        LotRow lot = season.Lots[0];
        var closed = season with { LineWeeks = [.. season.Lines.Select(l => new LineWeek(l.Id, season.Settings.AsOfWeek, 0, 0))] };
        PlanAnswer plan = Plan(closed, new RunWishes([new PinnedRun(lot.Lot, season.Lines[0].Id, season.Settings.AsOfWeek, lot.Net), new PinnedRun(new("no such lot"), season.Lines[0].Id, 0, 1)], []));
        Assert.DoesNotContain(plan.Runs, r => r.Week == season.Settings.AsOfWeek);
        Assert.True(plan.Summary.Bound >= plan.Summary.Value);
    }

    private static double Slack(PlanAnswer plan) => 0.01 + 2e-6 * (Math.Abs(plan.Summary.Bound) + plan.Summary.Revenue);

    private static RunRow? Largest(PlanAnswer plan) => plan.Runs.Where(r => r.Path is not null).OrderByDescending(r => r.MassIn).FirstOrDefault();

    private static PlanAnswer Plan(Season season, RunWishes wishes)
    {
        PlanAnswer answer = new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(season, Beliefs.Default, 1e6, 1e-6, 1, 1, SearchDepth.Exact, () => 0, "test", "test", [],
            RoundsAtMost: 30, RoomTrialsAtMost: 4, PolishNodesAtMost: 500, PolishWindowsAtMost: 0, Wishes: wishes));
        Judge.Holds(season, answer);
        return answer;
    }
}
