using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>The best path of a row at any prices: by search, by table, and by trying all.</summary>
public sealed class PathBoundTests
{
    private sealed record Drawn(PlanningInstance Instance, RoomChoice Rooms, Spot[] Spots, Prices Prices, PricedExit[][][] Exits);

    private static Drawn Draw(ulong seed, bool held)
    {
        PlanningInstance instance = SmallSeasons.Instance(SmallSeasons.Draw(seed, 6, 6, Enum.GetValues<PlaceMix>()));
        Pcg pcg = new(seed, 14);
        RoomChoice rooms = held ? SmallSeasons.Rooms(instance, pcg) : RoomChoice.Free(instance);
        Spot[] spots = Spots.Of(instance, rooms);
        Prices prices = DrawnPrices.AtLarge(instance, spots, pcg);
        RunCharges charges = RunCharges.ForBound(instance);
        return new Drawn(instance, rooms, spots, prices,
            [.. instance.Lots.Select((_, l) => Enumerable.Range(0, instance.Weeks).Select(t => Exits.Of(instance, charges, prices, l, t)).ToArray())]);
    }

    [Fact]
    public void The_search_finds_the_best_of_every_sequence_of_places() =>
        Gen.ULong.Sample(seed =>
        {
            Drawn at = Draw(seed, held: true);
            PlanningInstance instance = at.Instance;
            RoomPlan[][] plans = [.. instance.Places.Select((_, p) => new[] { RoomPlan.Held(instance, at.Rooms, p) })];
            var search = new PathSearch(instance, at.Spots);
            for (int row = 0; row < instance.Rows.Length; row++)
            {
                InstanceRow r = instance.Rows[row];
                double best = Way.Of(instance, plans, row, null).Max(way => Worth(at, r, way));
                RowSearch found = search.Best(row, at.Exits[r.Lot], at.Prices, SearchDepth.Exact, 1, double.NegativeInfinity);
                Assert.Equal(best, found.Bound, 1e-9 * (1 + Math.Abs(best)));
                Assert.Equal(best, found.Paths[0].Value, 1e-9 * (1 + Math.Abs(best)));
            }
        }, iter: 150);

    /// <summary>
    /// Within half a percent of what the row is worth or of a typical price, whichever is more, and the table's own allowance for what it interpolates: each week
    /// a hundred-thousandth of the dearest way out ahead, which counts where that is thousands of times what the row can come to; and what the table charges
    /// too little for standing and moving: it takes these, which are of the mass at the start, as if no more were lost by then than where least is lost.
    /// </summary>
    [Fact]
    public void The_table_is_never_below_the_search_and_hardly_above_it() =>
        Gen.Select(Gen.ULong, Gen.Bool).Sample((seed, held) =>
        {
            Drawn at = Draw(seed, held);
            var search = new PathSearch(at.Instance, at.Spots);
            var table = new PathTable(at.Instance, at.Spots);
            for (int row = 0; row < at.Instance.Rows.Length; row++)
            {
                InstanceRow r = at.Instance.Rows[row];
                double exact = search.Best(row, at.Exits[r.Lot], at.Prices, SearchDepth.Exact, 0, 0).Bound;
                (double bound, PricedPath? path) = table.Best(row, at.Exits[r.Lot], at.Prices);
                Assert.InRange(bound, exact - 1e-9 * (1 + Math.Abs(exact)), exact + 0.005 * (1 + Math.Abs(exact)) + 1e-5 * at.Instance.Weeks * Dearest(at, r) + Undercharged(at, r));
                if (path is { } real) Assert.True(real.Value <= exact + 1e-9 * (1 + Math.Abs(exact)), $"the table's path is worth {real.Value}, the best {exact}");
            }
        }, iter: 300);

    [Fact]
    public void With_what_it_leaves_in_question_tried_the_table_is_the_search() =>
        Gen.Select(Gen.ULong, Gen.Bool).Sample((seed, held) =>
        {
            Drawn at = Draw(seed, held);
            var search = new PathSearch(at.Instance, at.Spots);
            var table = new PathTable(at.Instance, at.Spots);
            // One sheet for all rows, as the planner has it: what a row leaves on it must not be read by the next.
            var sheet = new TableSheet(at.Instance.Weeks, at.Spots.Length);
            for (int row = 0; row < at.Instance.Rows.Length; row++)
            {
                PricedExit[][] exits = at.Exits[at.Instance.Rows[row].Lot];
                double exact = search.Best(row, exits, at.Prices, SearchDepth.Exact, 0, 0).Bound, slack = 1e-9 * (1 + Math.Abs(exact));
                (double bound, PricedPath? path) = table.Exact(row, exits, at.Prices, sheet);
                Assert.InRange(bound, exact - slack, exact + 1.1e-5 * Math.Max(1e-3, Math.Abs(exact)) + slack);
                if (path is { } real) Assert.InRange(real.Value, exact - 1.1e-5 * Math.Max(1e-3, Math.Abs(exact)) - slack, exact + slack);
            }
        }, iter: 300);

    [Fact]
    public void Paths_with_one_move_are_priced_as_the_search_prices_them() =>
        Gen.Select(Gen.ULong, Gen.Bool).Sample((seed, held) =>
        {
            Drawn at = Draw(seed, held);
            var search = new PathSearch(at.Instance, at.Spots);
            var oneMove = new OneMoveSearch(at.Instance, at.Spots);
            var charges = new StandingCharges(at.Instance, at.Spots, at.Prices);
            for (int row = 0; row < at.Instance.Rows.Length; row++)
            {
                InstanceRow r = at.Instance.Rows[row];
                RowSearch slow = search.Best(row, at.Exits[r.Lot], at.Prices, SearchDepth.Exact with { MovesAtMost = 1 }, 4, double.NegativeInfinity);
                RowSearch quick = oneMove.Best(row, at.Exits[r.Lot], at.Prices, charges, 4, double.NegativeInfinity);
                // Sound shares are read between the points of a grid.
                double near = 1e-5 * (1 + Dearest(at, r) + Math.Abs(slow.Bound));
                Assert.Equal(slow.Bound, quick.Bound, near);
                Assert.Equal(slow.Paths.Count, quick.Paths.Count);
                for (int k = 0; k < slow.Paths.Count; k++) Assert.Equal(slow.Paths[k].Value, quick.Paths[k].Value, near);
            }
        }, iter: 300);

    [Fact]
    public void The_best_ways_out_are_kept_and_no_others_are_worth_more() =>
        Gen.Select(Gen.ULong, Gen.Double[0, 1]).Sample((seed, sound) =>
        {
            Drawn at = Draw(seed, held: false);
            foreach (InstanceRow r in at.Instance.Rows)
                foreach (PricedExit[] week in at.Exits[r.Lot])
                {
                    double best = week.Select(x => x.PerMass + sound * (r.Fresh * x.PerFresh + r.Crack * x.PerCrack)).Append(0).Max(), kept = double.NegativeInfinity;
                    foreach ((double level, double slope, _) in ExitHull.Of(r, week).Lines) kept = Math.Max(kept, level + slope * sound);
                    Assert.Equal(best, kept, 1e-12 * (1 + best));
                }
        }, iter: 100);

    private static double Undercharged(Drawn at, InstanceRow r)
    {
        (double[,][] keep, _) = PathStates.Weekly(at.Instance, at.Spots);
        double least = 1, most = 1, under = 0;
        for (int t = r.Start; t < at.Instance.Weeks; t++)
        {
            double charged = Enumerable.Range(0, at.Spots.Length).Max(s => at.Prices.Stand[s, t] + at.Prices.Out[s, t] + at.Instance.Places[at.Spots[s].Place].MoveInCost);
            under += r.BinsPerMass * charged * (1 - least / most);
            least *= Enumerable.Range(0, at.Spots.Length).Min(s => keep[r.Table, s][t]);
            most *= Enumerable.Range(0, at.Spots.Length).Max(s => keep[r.Table, s][t]);
        }
        return under;
    }

    private static double Dearest(Drawn at, InstanceRow r) =>
        at.Exits[r.Lot].Skip(r.Start).SelectMany(week => week).Select(x => (r.Fresh * x.PerFresh) + (r.Crack * x.PerCrack)).DefaultIfEmpty(0).Max();

    /// <summary>What a way and the best way out of it are worth at the prices, exits tried one by one.</summary>
    private static double Worth(Drawn at, InstanceRow r, Way way)
    {
        PlanningInstance instance = at.Instance;
        double money = -way.MoveCost, sound = way.Sound(instance);
        for (int t = r.Start; t < way.Week; t++) money -= r.BinsPerMass * at.Prices.Stand[way.Stood[t - r.Start], t];
        if (way.Week == instance.Weeks) return money + instance.EndPrice * way.Mass * sound * (r.Fresh + r.Crack);
        if (!way.MayLeave) return double.NegativeInfinity;
        return money + way.Mass * WaysOut.Best(instance, at.Prices, r.Lot, way.Week, r.Fresh * sound, r.Crack * sound);
    }
}
