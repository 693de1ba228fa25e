using Cloveshed.Core;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Odd;
using static Cloveshed.Seasons.Tests.Planning.Standing;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// What a standing plan says of a new order is what the direct model (every sequence of places and every way out, from scratch) comes to when the
/// order is among the season's own.
/// </summary>
public sealed class PromiseTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 40)];

    [Theory, MemberData(nameof(Seeds))]
    public void An_order_costs_what_the_season_loses_by_it(int seed)
    {
        if (Drawn(seed) is not var (season, rooms, product, units)) return;
        int due = season.Settings.Weeks - 1;
        using StandingPlan plan = Prepared(season, rooms);
        PromiseAnswer answer = plan.Ask(Question(season, product, units, null, due), 20)!;
        PlanningInstance without = SmallSeasons.Instance(season);
        // Short at 0.8 of what a missed pin pays: the same price as the probe's, so that both give up at the same point.
        double shortCost = 0.8 * RunWishes.MissedPin * without.MoneyScale / without.MassScale * product.Net;
        PlanningInstance with = SmallSeasons.Instance(With(season, product, units, 0, shortCost, due));
        Assert.Equal(without.MoneyScale, with.MoneyScale);
        double before = FromScratch(without, rooms), after = FromScratch(with, rooms);
        LinePromise line = Assert.Single(answer.Lines);
        // The direct value counts what is still missed at the short cost; units are whole here and a part of one is not told.
        double least = before - after - shortCost * (units - line.ByDue), most = least + shortCost;
        double slack = 1e-5 * (Math.Abs(before) + shortCost * units);
        Assert.InRange(answer.Cost, least - slack, most + slack);
        if (line.ByDue == units) Assert.InRange(answer.Cost, least - slack, least + slack);
        if (line is { CostLow: { } low, Cost: { } each }) Assert.True(each >= low - slack, $"a unit at {each}, on the margin {low}");
    }

    [Theory, MemberData(nameof(Seeds))]
    public void What_pays_at_a_price_is_what_the_season_would_fill_at_it(int seed)
    {
        if (Drawn(seed) is not var (season, rooms, product, units)) return;
        int due = season.Settings.Weeks - 1;
        using StandingPlan plan = Prepared(season, rooms);
        double low = plan.Ask(Question(season, product, units, null, due), 20)!.Lines[0].CostLow ?? 1;
        decimal price = decimal.Round((decimal)(low * 1.2) + 0.01m, 2);
        PromiseAnswer answer = plan.Ask(Question(season, product, units, price, due), 20)!;
        double gained = FromScratch(SmallSeasons.Instance(With(season, product, units, price, 0, due)), rooms) - FromScratch(SmallSeasons.Instance(season), rooms);
        // Each whole unit that pays adds no less than nothing, and all of them together no more than their price less the least cost.
        int worth = answer.Lines[0].Worth!.Value;
        double slack = 1e-5 * (double)price * units + 1e-6 * Math.Abs(plan.Value);
        Assert.InRange(worth, 0, answer.Lines[0].ByDue);
        Assert.True(gained >= -slack);
        if (worth == 0) Assert.True(gained <= (double)price + slack, $"nothing pays, and yet the season gains {gained}");
        Assert.True(gained <= (worth + 1) * Math.Max(0, (double)price - low) + slack, $"{worth} units at {price} against {low} cannot gain {gained}");
    }

    /// <summary>Below the first unit's cost, a little over it, about the middle and far above: each is begun from another place.</summary>
    [Theory, MemberData(nameof(Seeds))]
    public void What_pays_of_two_lines_gains_all_that_the_direct_model_gains_by_them(int seed)
    {
        if (Drawn(seed) is not var (season, rooms, product, units)) return;
        int due = season.Settings.Weeks - 1;
        Product[] both = [product, season.Products.FirstOrDefault(p => p.Id != product.Id) ?? product];
        using StandingPlan plan = Prepared(season, rooms);
        double[] low = [.. both.Select(p => plan.Ask(Question(season, p, units, null, due), 20)!.Lines[0].CostLow ?? 1)];
        double none = FromScratch(SmallSeasons.Instance(season), rooms);
        foreach (double over in new[] { 0.9, 1.02, 1.3, 2.5 })
        {
            decimal[] prices = [.. low.Select(one => decimal.Round((decimal)(one * over), 2))];
            PromiseAnswer answer = plan.Ask(Asked(season, [.. both.Select((p, k) => new PromiseLine(p.Id, units, prices[k], false))], due), 20)!;
            Season with = season with { Orders = [.. season.Orders, .. both.Select((p, k) => Probe(season, p, units, prices[k], 0, due) with { Number = $"{k + 1}" })] };
            double gained = FromScratch(SmallSeasons.Instance(with), rooms) - none;
            int[] worth = [.. answer.Lines.Select(line => line.Worth!.Value)];
            double paid = worth.Zip(prices).Sum(one => one.First * (double)one.Second);
            PromiseLine[] pays = [.. both.Select((p, k) => new PromiseLine(p.Id, worth[k], null, false)).Where(line => line.Units > 0)];
            double cost = pays.Length == 0 ? 0 : plan.Ask(Asked(season, pays, due), 20)!.Cost;
            // Whole units are told: of each line a part of one may be missing, which gains its price at most. The solver is as sure as the season is large.
            double slack = 1e-5 * (Math.Abs(none) + (double)prices.Sum() * units);
            Assert.InRange(paid - cost, gained - (double)prices.Sum() - slack, gained + slack);
            if (over < 1) Assert.All(worth, one => Assert.Equal(0, one));
        }
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Asking_leaves_the_plan_as_it_was_and_asked_again_it_says_the_same(int seed)
    {
        if (Drawn(seed) is not var (season, rooms, product, units)) return;
        using StandingPlan plan = Prepared(season, rooms);
        double value = plan.Value;
        PromiseQuestion question = Question(season, product, units, null, 0);
        Assert.Throws<OperationCanceledException>(() => plan.Ask(question, 20, () => true));
        PromiseAnswer first = plan.Ask(question, 20)!, again = plan.Ask(question, 20)!;
        double slack = 1e-6 * Math.Max(1, Math.Abs(value));
        Assert.InRange(plan.Value, value - slack, value + slack);
        Assert.Equal((first.Verdict, first.Lines[0].ByDue, first.Lines[0].AllFrom), (again.Verdict, again.Lines[0].ByDue, again.Lines[0].AllFrom));
        Assert.Equal(first.Cost, again.Cost, slack);
        // From the week named all can be had by its end, and by the end of the week before they cannot.
        if (first.Lines[0].AllFrom is not { } day) return;
        int week = season.Settings.WeekOf(day);
        Assert.Equal(units, plan.Ask(Question(season, product, units, null, week), 20)!.Lines[0].ByDue);
        if (week > 0) Assert.True(plan.Ask(Question(season, product, units, null, week - 1), 20)!.Lines[0].ByDue < units);
    }

    [Fact]
    public void A_product_that_the_season_does_not_have_has_no_answer()
    {
        (Season season, RoomChoice rooms, Product product, int _) = Enumerable.Range(1, 40).Select(Drawn).First(drawn => drawn is not null)!.Value;
        using StandingPlan plan = Prepared(season, rooms);
        Assert.Null(plan.Ask(Question(season, product with { Id = new("no such product") }, 1, null, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.Ask(new PromiseQuestion([], season.Settings.FirstWeek, season.Settings.FirstWeek)));
    }

    private static (Season, RoomChoice, Product, int)? Drawn(int seed)
    {
        Pcg pcg = new((ulong)seed, 21);
        Season season = SmallSeasons.Draw((ulong)seed, 8, 6, [PlaceMix.YardOnly, PlaceMix.YardAndCold]);
        if (season.Products.Count == 0 || season.Lines.Count == 0 || season.Lots.Count == 0) return null;
        PlanningInstance instance = SmallSeasons.Instance(season);
        Product product = pcg.Pick(season.Products.ToArray());
        int units = Math.Max(1, (int)(season.Lots.Sum(l => l.Net) / product.Net * pcg.Between(0.02, 0.4)));
        return (season, SmallSeasons.Rooms(instance, pcg), product, Math.Min(units, 500));
    }

    private static PromiseQuestion Question(Season season, Product product, int units, decimal? price, int due) =>
        Asked(season, [new PromiseLine(product.Id, units, price, false)], due);

    private static PromiseQuestion Asked(Season season, IReadOnlyList<PromiseLine> lines, int due) => new(lines, season.Settings.FirstWeek, season.Settings.Monday(due));

    private static Season With(Season season, Product product, int units, decimal price, double shortCost, int due) => season with
    {
        Orders = [.. season.Orders, Probe(season, product, units, price, shortCost, due)],
    };

    private static OrderLine Probe(Season season, Product product, int units, decimal price, double shortCost, int due) => new(
        new("asked for"), "1", "asked", product.Id, season.Settings.FirstWeek, season.Settings.Monday(due), units, price, shortCost > 0, 1_000_000m, (decimal)shortCost, false, false);
}
