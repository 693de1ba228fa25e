namespace Cloveshed.Core.Planning;

/// <summary>
/// Why each run is where it is: the orders that what it makes goes to (first made, first shipped), the clock it beats, the
/// capacity that binds in its week, and what the next best choice would have cost.
/// </summary>
internal sealed class RunReasons
{
    /// <summary>Of money: less is no reason to choose.</summary>
    private const double Alike = 0.5;

    /// <summary>
    /// Of a run's worth: prices are of the linear model as far as the search came, which knows neither whole runs nor their set-ups. A choice that they make better by less
    /// than this is as good; one that is better by more is told without its amount, which would be good for a few pounds only. Our own figure: about the gap that plans of
    /// many lots are left with after a minute.
    /// </summary>
    private const double Whole = 0.05;

    private readonly AnswerBuilding _building;
    private readonly PlanningInstance _instance;
    private readonly Master _master;
    private readonly Prices _prices;
    private readonly Dictionary<int, List<string>> _served = [];

    // Of each row that is run: what its lot could end in, and its best path to each week.
    private readonly Dictionary<int, (PricedExit[][] Exits, IReadOnlyList<PricedPath> Found)> _ways = [];
    private readonly Dictionary<int, HashSet<(int Week, int Line)>> _taken = [];
    private readonly RunCharges _charges;
    private readonly Prices _paid;

    internal RunReasons(AnswerBuilding building, PlanningInstance instance, Master master, Prices prices)
    {
        (_building, _instance, _master, _prices, _charges) = (building, instance, master, prices, RunCharges.ForBound(instance));
        _paid = PaidPrices.Of(instance, master.SpotsHere, prices);
        Serve();
    }

    /// <summary>Ships what is made first first, within shelf life, and notes which runs an order line drew on.</summary>
    private void Serve()
    {
        for (int q = 0; q < _instance.Products.Length; q++)
        {
            var made = _building.Runs.SelectMany(r => r.Sources.Where(s => s.MadeByProduct.ContainsKey(q)).Select(s => (r.Number, r.Week, Mass: s.MadeByProduct[q]))).OrderBy(m => m.Week).ToList();
            var shipped = _building.Filled.Fills.Where(f => f.Product == q).Select(f => (f.Week, f.Units, Name: _instance.OrderLines[f.Line].Line.Order.Text))
                .Concat(_building.Filled.Sales.Where(s => _instance.Market[s.Market].Product == q).Select(s => (_instance.Market[s.Market].Week, s.Units, Name: ""))).OrderBy(s => s.Item1).ToList();
            int first = 0;
            double[] left = [.. made.Select(m => m.Mass)];
            foreach ((int week, int units, string name) in shipped)
            {
                double need = units * _instance.Products[q].Net;
                while (first < made.Count && (left[first] <= 1e-12 || made[first].Week + _instance.Products[q].Shelf < week)) first++;
                for (int k = first; k < made.Count && need > 1e-12 && made[k].Week <= week; k++)
                {
                    double taken = Math.Min(left[k], need);
                    if (taken <= 0) continue;
                    left[k] -= taken;
                    need -= taken;
                    if (!_served.TryGetValue(made[k].Number, out List<string>? names)) _served[made[k].Number] = names = [];
                    if (!names.Contains(name)) names.Add(name);
                }
            }
        }
    }

    internal string Of(PlannedRun run)
    {
        var said = new List<string>();
        List<string> names = _served.GetValueOrDefault(run.Number) ?? [];
        string[] orders = [.. names.Where(n => n.Length > 0)];
        foreach (int need in run.SeedCloves.Keys)
            said.Add(Remarks.Say(Remark.SeedFor, _instance.SeedNeeds[need].Need.Variety.Text, _instance.SeedNeeds[need].Need.By));
        if (orders.Length > 0)
        {
            string some = string.Join(", ", orders.Take(3));
            said.Add(orders.Length > 3 ? Remarks.Say(Remark.ServesAndMore, some, orders.Length - 3) : Remarks.Say(Remark.Serves, some));
        }
        if (names.Contains("")) said.Add(Remarks.Say(orders.Length > 0 ? Remark.AlsoMarket : Remark.OnlyMarket));
        if (said.Count == 0) said.Add(Remarks.Say(run.Path is null ? Remark.CracksSorted : Remark.ForCloves));
        if (run.Path is { } path)
        {
            said.Add(Life(path, run.Week));
            InstanceRow row = _instance.Rows[path.Row];
            if (_instance.Clocks.GetValueOrDefault((_instance.Lots[row.Lot].Id, _instance.Places[row.Place].Id)) is { Looks: > 0, LastLook: { } last } seen)
                said.Add(Remarks.Say(Remark.LookedAt, seen.Looks, last));
        }
        InstanceLine line = _instance.Lines[run.Line];
        double people = double.IsInfinity(_instance.People[run.Week]) ? 0 : line.Heads * _prices.People[run.Week];
        if (people > 1e-6 * Math.Max(1, line.Cost)) said.Add(Remarks.Say(Remark.HandsShort));
        else if (_prices.Hour[run.Line, run.Week] - line.Cost - people > 1e-6 * Math.Max(1, line.Cost))
            said.Add(Remarks.Say(run.OvertimeHours > 0 ? Remark.LineFullWithOvertime : Remark.LineFull, line.Id.Text));
        if (run.Path is { } p)
        {
            int spot = p.SpotAt(run.Week);
            InstancePlace place = _instance.Places[_master.SpotsHere[spot].Place];
            if (_prices.Stand[spot, run.Week] > place.StandCost + 1e-6) said.Add(Remarks.Say(Remark.PlaceFull, place.Id.Text));
            if (_master.Choice.OfPlace[_master.SpotsHere[spot].Place] is { Opened: { } opened } && run.Week >= opened)
                said.Add(Remarks.Say(Remark.RoomOpened, place.Id.Text, _instance.Season.Settings.Monday(opened)));
        }
        if (run.Path is not null && Next(run) is { } next) said.Add(next);
        return string.Join(Remarks.Between, said);
    }

    /// <summary>The next best choice for all of the run, in the season's currency; less than half a unit of it is no difference.</summary>
    private string? Next(PlannedRun run)
    {
        PlannedPath path = run.Path!;
        int lot = _instance.Rows[path.Row].Lot;
        if (!_ways.TryGetValue(path.Row, out var ways))
        {
            PricedExit[][] exits = Exits.Of(_instance, _charges, _paid, lot);
            _ways[path.Row] = ways = (exits, _master.Search.Best(path.Row, exits, _paid, SearchDepth.Fine, _instance.Weeks + 1, double.NegativeInfinity).Paths);
        }
        if (path.Exits.Where(e => e.Exit.Week == run.Week && e.Exit.Line == run.Line && e.Mass > 0).OrderByDescending(e => e.Mass).FirstOrDefault() is not { } planned) return null;
        if (NextBest.Of(_instance, _master.SpotsHere, _paid, ways.Exits, ways.Found, path.Row, path.Stays, planned.Exit, Taken(path.Row)) is not { } next) return null;
        double money = run.StartMass * _instance.MoneyScale, cost = next.Cost * money, better = Math.Max(Alike, Whole * next.Worth * money);
        string line = next.Exit.Line >= 0 ? _instance.Lines[next.Exit.Line].Id.Text : "";
        NodaTime.LocalDate week = _instance.Season.Settings.Monday(next.Exit.Week);
        return (next.Exit.Kind, cost) switch
        {
            (ExitKind.Discard, _) => Remarks.Say(Remark.NextGone, Math.Max(0, cost)),
            (ExitKind.Stand, > Alike) => Remarks.Say(Remark.NextKept, cost),
            (ExitKind.Stand, _) when cost < -better => Remarks.Say(Remark.BetterKept),
            (ExitKind.Stand, _) => Remarks.Say(Remark.AlikeKept),
            (ExitKind.SoldAsIs, > Alike) => Remarks.Say(Remark.NextSold, week, cost),
            (ExitKind.SoldAsIs, _) when cost < -better => Remarks.Say(Remark.BetterSold, week),
            (ExitKind.SoldAsIs, _) => Remarks.Say(Remark.AlikeSold, week),
            (_, > Alike) => Remarks.Say(Remark.NextLine, line, week, cost),
            _ when cost < -better => Remarks.Say(Remark.BetterLine, line, week),
            _ => Remarks.Say(Remark.AlikeLine, line, week),
        };
    }

    /// <summary>Weeks and lines in which the plan takes from a row.</summary>
    private HashSet<(int Week, int Line)> Taken(int row)
    {
        if (!_taken.TryGetValue(row, out HashSet<(int Week, int Line)>? taken))
            _taken[row] = taken = [.. _building.Paths.Where(path => path.Row == row).SelectMany(path => path.Exits).Where(e => e.Mass > 0).Select(e => (e.Exit.Week, e.Exit.Line))];
        return taken;
    }

    private string Life(PlannedPath path, int week)
    {
        double life = path.Life[week];
        if (life >= 1) return Remarks.Say(Remark.PastLife, life);
        int last = LastGoodWeek(path, week);
        return last >= _instance.Weeks ? Remarks.Say(Remark.LifeUsed, life) : Remarks.Say(Remark.LifeUntil, life, _instance.Season.Settings.Monday(last));
    }

    private int LastGoodWeek(PlannedPath path, int from)
    {
        int week = from;
        while (week + 1 <= _instance.Weeks && path.Life[week + 1] < 1) week++;
        return week;
    }
}
