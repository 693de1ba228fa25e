using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Bench;

/// <summary>
/// A scenario lived through with a new plan every few weeks: from the rows of what was done so far the season is written as it then stands, as
/// far as it is known by then, planned, and played on. What waits for the cracker at a new plan is a lot of its own that only cracks; it may wait for longer than sorted-out bulbs may.
/// A room that was opened takes nothing new but need not be empty in time. Both make planning anew look a little better than it is.
/// </summary>
internal sealed class PlannedAnew(Season season, Func<Season, Beliefs, PlanAnswer> plan, int every)
{
    /// <summary>What the bulbs of a lot that wait for the cracker are called by.</summary>
    private const string Apart = "-out";

    /// <summary>Bins that they take up: none.</summary>
    private const double Bit = 1e-3;

    private readonly Dictionary<(OrderId, string), int> filled = [];
    private readonly Dictionary<(VarietyId, NodaTime.LocalDate, SeedClass), double> cloves = [];
    private double soFar;

    /// <summary>The value of the whole season.</summary>
    public double Live(PlanningInstance first, Scenario truth, PlanAnswer firstPlan)
    {
        Season now = season, truly = TrueSeason.Of(first, truth);
        (PlanningInstance instance, Scenario scenario, PlanAnswer current) = (first, truth, firstPlan);
        for (int from = first.AsOf; ; from += every)
        {
            ReplayOutcome outcome = Replay.Of(new ReplayShed(instance, PlanPolicy.Of("now", instance, current)), scenario, rows: true);
            int to = from + every;
            if (to >= first.Weeks) return soFar + outcome.Value;
            soFar += outcome.Cumulative[to - 1] - (from > 0 ? outcome.Cumulative[from - 1] : 0);
            Take(outcome.Answer!, from, to);
            Beliefs beliefs;
            (now, beliefs) = StandsAt(to, now, truly, first, truth, outcome.Answer!);
            current = plan(now, beliefs);
            instance = InstanceBuilding.Build(now, LotKnowing.Know(now), beliefs);
            scenario = Rest(instance, first, truth, to);
        }
    }

    private void Take(PlanAnswer done, int from, int to)
    {
        foreach (FillRow f in done.Fills.Where(f => f.Week >= from && f.Week < to)) filled[(f.Order, f.Line)] = filled.GetValueOrDefault((f.Order, f.Line)) + f.Units;
        foreach (SeedRow s in done.Seed.Where(s => s.Week >= from && s.Week < to)) cloves[(s.Variety, s.By, s.NeedClass)] = cloves.GetValueOrDefault((s.Variety, s.By, s.NeedClass)) + s.Cloves;
    }

    private (Season, Beliefs) StandsAt(int week, Season before, Season truly, PlanningInstance first, Scenario truth, PlanAnswer done)
    {
        var states = done.Paths.Where(p => p.Week == week).ToDictionary(p => p.Path);
        var clocks = new Dictionary<(LotId, PlaceId), SeenClock>();
        var waits = new SortedDictionary<LotId, double>(Comparer<LotId>.Create((a, b) => string.CompareOrdinal(a.Text, b.Text)));
        var rows = new List<LotRow>();
        var seen = done.Runs.Where(r => r.Week < week && r.Mode == LineMode.Fresh).Select(r => r.Lot).ToHashSet();
        // At the end of the week before, with the state of this week's start.
        foreach (var here in done.Keeps.Where(k => k.Week == week - 1).GroupBy(k => (k.Lot, k.Place)))
        {
            double net = here.Sum(k => k.MassAtStart * states[k.Path].MassRatio);
            if (net < 1) continue;
            if (Parent(here.Key.Lot) is var of && of != here.Key.Lot)
            {
                if (every < FreshRuns.WeeksToCrack) waits[of] = waits.GetValueOrDefault(of) + net;
                continue;
            }
            double Mean(Func<PathWeek, double> figure) => here.Sum(k => k.MassAtStart * states[k.Path].MassRatio * figure(states[k.Path])) / net;
            LotRow row = truly.Lots.First(r => r.Lot == here.Key.Lot), written = season.Lots.First(r => r.Lot == here.Key.Lot);
            rows.Add(row with
            {
                Place = here.Key.Place, Net = net, Bins = here.Sum(k => k.Bins), State = LotState.Weighed, FreshShare = Mean(p => p.FreshShare), CrackShare = Mean(p => p.CrackShare),
                MeanG = seen.Contains(row.Lot) ? row.MeanG : written.MeanG,
            });
            clocks[here.Key] = new SeenClock(1, 1, 1, Mean(p => p.LifeUsed), 1, null);
        }
        foreach (LotRow row in season.Lots)
        {
            LotRow? real = truly.Lots.FirstOrDefault(r => r.Lot == row.Lot && r.Place == row.Place);
            int comes = real is null ? season.Settings.Weeks : season.Settings.StartWeekOf(real);
            // Not dug yet: believed as written, or for the coming week.
            if (comes >= week) rows.Add(season.Settings.StartWeekOf(row) >= week ? row : row with { Harvested = season.Settings.Monday(week) });
        }
        foreach ((LotId lot, double mass) in Waiting(week, done)) waits[Parent(lot)] = waits.GetValueOrDefault(Parent(lot)) + mass;
        foreach ((LotId lot, double mass) in waits)
        {
            LotRow row = truly.Lots.First(r => r.Lot == lot);
            LotId name = new(lot.Text + Apart);
            rows.Add(row with { Lot = name, Net = mass, Bins = Bit, State = LotState.Weighed, FreshShare = 0, CrackShare = 1, SeedClass = null });
            clocks[(name, row.Place)] = new SeenClock(1, 1, 1, 0, 1, null);
        }
        // A lot that is there and still to come in another place has the cells of one lot.
        rows = [.. rows.GroupBy(r => r.Lot).SelectMany(g => g.Select(r => r with { State = g.First().State, MeanG = g.First().MeanG }))];
        Dictionary<PlaceId, double> bins = done.Keeps.Where(k => k.Week == week - 1).GroupBy(k => k.Place).ToDictionary(g => g.Key, g => g.Sum(k => k.Bins));
        HashSet<PlaceId> opened = [.. done.Rooms.Where(r => r.Opened < week).Select(r => r.Place), .. before.Places.Where(p => p.Kind == PlaceKind.Cold && season.Places.First(o => o.Id == p.Id).Kind == PlaceKind.Sealed).Select(p => p.Id)];
        return (before with
        {
            Settings = season.Settings with { AsOf = season.Settings.Monday(week) },
            Lots = rows, Stock = Stock(week, before, done), SealedRooms = [.. done.Rooms.Where(r => r.Sealed < week && !(r.Opened < week)).Select(r => new SealedRoom(r.Place, season.Settings.Monday(r.Sealed)))],
            Places = [.. before.Places.Select(p => opened.Contains(p.Id) ? p with { Kind = PlaceKind.Cold, CapacityBins = bins.GetValueOrDefault(p.Id), RunOutWeeks = null } : p)],
            Orders = [.. season.Orders.Select(o => o with { Units = Ordered(o, first, truth, week) - filled.GetValueOrDefault((o.Order, o.Number)) }).Where(o => o.Units > 0)],
            SeedNeeds = [.. season.SeedNeeds.Select(n => n with { Net = Math.Max(0, n.Net - cloves.GetValueOrDefault((n.Variety, n.By, n.Class))) })],
            Market = [.. season.Market.Where(m => m.Week >= week)],
        }, Beliefs.Default with { Clocks = clocks });
    }

    /// <summary>Sorted out in the last weeks and not cracked yet, by lot: what came first is cracked first.</summary>
    private static IEnumerable<(LotId Lot, double Mass)> Waiting(int week, PlanAnswer done)
    {
        foreach (var of in done.Sorted.Where(s => s.Week < week).GroupBy(s => s.Lot))
        {
            (int Week, double Mass)[] heaps = [.. of.GroupBy(s => s.Week).OrderBy(g => g.Key).Select(g => (g.Key, g.Sum(s => s.Mass)))];
            foreach (RunRow run in done.Runs.Where(r => r.FromSorted && r.Lot == of.Key && r.Week < week).OrderBy(r => r.Week))
            {
                double left = run.MassIn;
                for (int k = 0; k < heaps.Length; k++)
                {
                    if (heaps[k].Week > run.Week || heaps[k].Week + FreshRuns.WeeksToCrack < run.Week) continue;
                    double taken = Math.Min(left, heaps[k].Mass);
                    heaps[k].Mass -= taken;
                    left -= taken;
                }
            }
            double waits = heaps.Where(h => h.Week + FreshRuns.WeeksToCrack >= week).Sum(h => h.Mass);
            if (waits >= 1) yield return (of.Key, waits);
        }
    }

    private static LotId Parent(LotId lot) => lot.Text.EndsWith(Apart, StringComparison.Ordinal) ? new LotId(lot.Text[..^Apart.Length]) : lot;

    // As written until it may ship.
    private int Ordered(OrderLine o, PlanningInstance first, Scenario truth, int week) =>
        season.Settings.WeekOf(o.ShipFrom) > week ? o.Units : truth.OrderUnits[Array.FindIndex(first.OrderLines, l => l.Line.Order == o.Order && l.Line.Number == o.Number)];

    private static List<StockRow> Stock(int week, Season before, PlanAnswer done)
    {
        var left = new List<StockRow>();
        foreach (Product product in before.Products)
        {
            StockRow[] made = [.. before.Stock.Where(s => s.Product == product.Id).Concat(done.Made.Where(m => m.Product == product.Id && m.Week < week).Select(m => new StockRow(product.Id, m.Week, m.Units, null))).OrderBy(s => s.Made)];
            double[] units = [.. made.Select(m => m.Units)];
            for (int t = before.Settings.AsOfWeek; t < week; t++)
            {
                double taken = done.Fills.Where(f => f.Product == product.Id && f.Week == t).Sum(f => f.Units) + done.Sales.Where(s => s.Product == product.Id && s.Week == t).Sum(s => s.Units);
                for (int k = 0; k < made.Length; k++)
                {
                    if (made[k].Made > t || made[k].Made + product.ShelfWeeks < t) continue;
                    double some = Math.Min(taken, units[k]);
                    units[k] -= some;
                    taken -= some;
                }
            }
            left.AddRange(made.Select((m, k) => m with { Units = units[k] }).Where(m => m.Units > 1e-6 && m.Made + product.ShelfWeeks >= week).GroupBy(m => m.Made).Select(g => new StockRow(product.Id, g.Key, g.Sum(m => m.Units), null)));
        }
        return left;
    }

    // The truth in the indices of the season as it stands.
    private Scenario Rest(PlanningInstance now, PlanningInstance first, Scenario truth, int week)
    {
        var lot = first.Lots.Index().ToDictionary(l => l.Item.Id, l => l.Index);
        int Row(InstanceRow r) => Array.FindIndex(first.Rows, o => first.Lots[o.Lot].Id == Parent(now.Lots[r.Lot].Id) && first.Places[o.Place].Id == now.Places[r.Place].Id);
        bool Stands(InstanceRow r) => now.Clocks.ContainsKey((now.Lots[r.Lot].Id, now.Places[r.Place].Id));
        int[] at = [.. now.Lots.Select(l => lot[Parent(l.Id)])];
        // A lot has one factor of mass: one that is partly there is known.
        bool[] known = [.. now.Lots.Select(l => l.Rows.Any(r => Stands(now.Rows[r])))];
        int[] orders = [.. now.OrderLines.Select(l => Array.FindIndex(first.OrderLines, o => o.Line.Order == l.Line.Order && o.Line.Number == l.Line.Number))];
        int[] market = [.. now.Market.Select(m => Array.FindIndex(first.Market, o => o.Product == m.Product && o.Week == m.Week))];
        return new Scenario(
            truth.Number, [.. at.Select((l, i) => known[i] ? 1 : truth.NetFactor[l])], [.. now.Rows.Select(r => known[r.Lot] ? 1 : truth.BinsFactor[Row(r)])],
            [.. now.Rows.Select(r => Stands(r) ? week : Math.Max(week, truth.StartWeek[Row(r)]))], [.. at.Select(l => truth.LossPower[l])], [.. at.Select(l => truth.LifeFactor[l])], [.. at.Select(l => truth.MeanShift[l])],
            [.. at.Select(l => truth.Sorts[l])], [.. at.Select(l => truth.Under[l])],
            [.. now.Rows.Select(r => Stands(r) ? r.Fresh : truth.Fresh[Row(r)])], [.. now.Rows.Select(r => Stands(r) ? r.Crack : truth.Crack[Row(r)])],
            [.. orders.Select((o, i) => Math.Max(0, truth.OrderUnits[o] - filled.GetValueOrDefault((now.OrderLines[i].Line.Order, now.OrderLines[i].Line.Number))))],
            [.. market.Select(m => truth.MarketUnits[m])], truth.HoursLost);
    }
}
