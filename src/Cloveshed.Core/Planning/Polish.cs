using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// For seasons small enough: what rounding decided is decided again by branch and bound over the paths at hand. Set-ups and least runs
/// (with the run that finishes a row exempt), a place's cost by the week, whole orders and whole units are exact here.
/// </summary>
internal sealed class Polish(PlanningInstance instance, ILinearSolver solver)
{
    /// <summary>More yes-or-no choices than this are left to rounding.</summary>
    private const int ChoicesAtMost = 700;

    /// <summary>A better plan than rounding's, or null where the season is too large or nothing better was found.</summary>
    internal Master? Run(RoomChoice choice, IReadOnlyList<Findings> found, double seconds, int nodes, int seed)
    {
        RunCharges charges = RunCharges.ForBound(instance);
        Spot[] spots = Spots.Of(instance, choice);
        List<PathColumn> paths = [.. found.SelectMany(f => f.Paths.Select(p => PathMoving.To(instance, f.Spots, spots, charges, p)).OfType<PathColumn>())];
        long all = (long)instance.Rows.Length * spots.Length * instance.Weeks;
        if (all <= 3000) paths.AddRange(FirstPaths.Of(instance, spots, charges, 1));
        HashSet<(int Lot, int Line, int Week)> runs = [.. paths.Where(p => p.Exit.Line >= 0).Select(p => (instance.Rows[p.Row].Lot, p.Exit.Line, p.Exit.Week)),
            .. paths.Where(p => p.Exit.SortedLine >= 0).Select(p => (-1, p.Exit.SortedLine, p.Exit.SortedWeek))];
        var open = runs.Where(r => instance.Lines[r.Line].SetUp > 0 || (r.Lot >= 0 && instance.Lines[r.Line].MinRun > 0)).ToHashSet();
        int placeWeeks = spots.Count(s => instance.Places[s.Place].WeekCost > 0) * (instance.Weeks - instance.AsOf);
        int orders = instance.OrderLines.Length + instance.Market.Length;
        if (open.Count + placeWeeks > ChoicesAtMost || orders > 400 || paths.Count > 60000) return null;
        var least = open.Where(r => r.Lot >= 0 && instance.Lines[r.Line].MinRun > 0).ToList();
        HashSet<(int Row, int Week)> finishes = [.. least.SelectMany(r => instance.Lots[r.Lot].Rows.Select(row => (row, r.Week)))];
        if (finishes.Count > ChoicesAtMost) return null;

        Exact(charges, runs);
        var master = new Master(instance, choice, charges, solver,
            new DecidedRuns(new double[instance.Lines.Length, instance.Weeks], least.ToDictionary(r => r, _ => 0.0), open, finishes));
        master.AddFills(FirstPaths.Fills(instance));
        foreach (Findings f in found) RoomSearch.AddOrders(master, f);
        if (instance.OrderLines.Length * instance.Weeks <= 2000) master.AddFills(AllFills());
        master.AddWholes(AllWholes());
        master.AddPaths(paths);
        Choose(master, open, finishes, placeWeeks > 0);
        MixedResult result = master.Program.SolveMixed(seconds, 1e-7, nodes, null, seed);
        if (result.Values is null)
        {
            master.Dispose();
            return null;
        }
        master.Take(result.Values, result.Objective);
        return master;
    }

    private void Exact(RunCharges charges, HashSet<(int Lot, int Line, int Week)> runs)
    {
        for (int i = 0; i < instance.Lines.Length; i++)
            for (int t = 0; t < instance.Weeks; t++)
            {
                if (!double.IsInfinity(charges.OfSorted(i, t))) charges.SetSorted(i, t, 1 / instance.Lines[i].Rate);
                for (int l = 0; l < instance.Lots.Length; l++)
                    if (!double.IsInfinity(charges[l, i, t])) charges[l, i, t] = runs.Contains((l, i, t)) ? 1 / instance.Lines[i].Rate : double.PositiveInfinity;
            }
    }

    private IEnumerable<(int, int, int)> AllFills()
    {
        for (int i = 0; i < instance.OrderLines.Length; i++)
            foreach (int q in instance.OrderLines[i].Alternatives)
                for (int t = instance.OrderLines[i].Earliest; t < instance.Weeks; t++) yield return (i, q, t);
    }

    private IEnumerable<(int, int[], int)> AllWholes()
    {
        for (int o = 0; o < instance.WholeOrders.Length && instance.WholeOrders.Length * instance.Weeks <= 2000; o++)
            for (int t = instance.WholeOrders[o].Earliest; t < instance.Weeks; t++)
                yield return (o, [.. instance.WholeOrders[o].Lines.Select(l => instance.OrderLines[l].Product)], t);
    }

    private void Choose(Master master, HashSet<(int Lot, int Line, int Week)> open, HashSet<(int Row, int Week)> finishes, bool placeWeeks)
    {
        MasterRows rows = master.Rows;
        var whole = new List<int>();
        var finish = new Dictionary<(int, int), List<(int, double)>>();
        foreach ((int row, int week) in finishes) finish[(row, week)] = [(rows.Finished[(row, week)], instance.Rows[row].Mass)];
        foreach ((int lot, int line, int week) in open)
        {
            InstanceLine l = instance.Lines[line];
            double most = RunCharges.MostInAWeek(instance, line, week);
            if (lot >= 0) most = Math.Min(most, instance.Lots[lot].Mass);
            var entries = new List<(int, double)> { (rows.OpenRun[(lot, line, week)], -most), (rows.Hour[line, week], l.SetUp) };
            if (rows.LeastRun.TryGetValue((lot, line, week), out int least))
            {
                entries.Add((least, l.MinRun));
                foreach (int row in instance.Lots[lot].Rows) finish[(row, week)].Add((least, -l.MinRun));
            }
            whole.Add(master.AddChoice(0, 1, entries));
        }
        foreach (var entries in finish.Values) whole.Add(master.AddChoice(0, 1, entries));
        var costs = new List<(int Column, double Cost)>();
        for (int k = 0; k < master.ColumnCount; k++)
        {
            MasterColumn c = master.Columns[k];
            if (c.Kind == ColumnKind.Whole) whole.Add(k);
            if (c.Kind == ColumnKind.Standing && instance.Places[master.SpotsHere[c.A].Place].WeekCost > 0) costs.Add((k, -instance.Places[master.SpotsHere[c.A].Place].BinWeekCost));
        }
        master.Program.SetColumnCosts([.. costs.Select(c => c.Column)], [.. costs.Select(c => c.Cost)]);
        if (placeWeeks) PolishPlaces.Choose(master, [.. costs.Select(c => c.Column)], whole);
        PolishUnits.Choose(master, whole);
        master.Program.SetIntegral(whole, true);
    }
}
