using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// A season with its room weeks held, written so that branch and bound can decide it over the paths at hand. Set-ups and least runs (with the run that finishes a row
/// exempt), a place's cost by the week, whole orders and whole units are exact here.
/// </summary>
internal sealed class PolishModel : IDisposable
{
    /// <summary>More than these and the season is left to rounding.</summary>
    private const int ChoicesAtMost = 6000, PathsAtMost = 60000;

    private readonly PlanningInstance _instance;
    private readonly List<PolishChoice> _choices = [];
    private readonly List<LinearRow> _newRows = [];
    private readonly List<(double Gain, double Most, IEnumerable<(int Row, double Value)> Entries)> _newChoices = [];

    private readonly UnsplitRuns _unsplit;
    private readonly WholeShipments _wholes;

    private PolishModel(PlanningInstance instance, Master master, IEnumerable<(int Order, int Week)> wholes)
    {
        (_instance, Master) = (instance, master);
        IsLarge = master.IsLargeWithout(master.Rows.Unsplit.Sum(u => u.Value.Length));
        _unsplit = new UnsplitRuns(master);
        _wholes = new WholeShipments(this, wholes);
    }

    internal Master Master { get; }
    internal IReadOnlyList<PolishChoice> Choices => _choices;

    /// <summary>Whether it has every way of one move, and not only those that were found.</summary>
    internal bool HasEveryWay => Master.Rows.Unsplit.Count > 0;

    /// <summary>Whether the master is large without what is decided apart of unsplit runs.</summary>
    internal bool IsLarge { get; }

    /// <summary>Null where the season is too large.</summary>
    /// <param name="plan">Ships what the model must be able to ship.</param>
    internal static PolishModel? Of(PlanningInstance instance, ILinearSolver solver, RoomChoice choice, IReadOnlyList<Findings> found, AnswerBuilding plan)
    {
        RunCharges charges = RunCharges.ForBound(instance);
        Spot[] spots = Spots.Of(instance, choice);
        List<PathColumn> paths = [.. found.SelectMany(f => f.Paths.Select(p => PathMoving.To(instance, f.Spots, spots, charges, p)).OfType<PathColumn>())];
        List<PathColumn>? every = WaysOfAll.Of(instance, spots, charges);
        if (every is not null) paths = [.. paths.Select(UnsplitRuns.Of), .. every];
        HashSet<(int Lot, int Line, int Week)> runs = [.. paths.Where(p => p.Exit.Line >= 0).Select(p => (instance.Rows[p.Row].Lot, p.Exit.Line, p.Exit.Week)),
            .. paths.Where(p => p.Exit.SortedLine >= 0).Select(p => (-1, p.Exit.SortedLine, p.Exit.SortedWeek)), .. every is null ? [] : Cracked(instance, charges)];
        var open = runs.Where(r => instance.Lines[r.Line].SetUp > 0 || (r.Lot >= 0 && instance.Lines[r.Line].MinRun > 0)).ToHashSet();
        var least = open.Where(r => r.Lot >= 0 && instance.Lines[r.Line].MinRun > 0).ToList();
        HashSet<(int Row, int Week)> finishes = [.. least.SelectMany(r => instance.Lots[r.Lot].Rows.Select(row => (row, r.Week)))];
        int placeWeeks = spots.Count(s => instance.Places[s.Place].WeekCost > 0) * (instance.Weeks - instance.AsOf);
        if (open.Count + finishes.Count + placeWeeks > ChoicesAtMost || paths.Count > PathsAtMost) return null;

        Exact(instance, charges, runs);
        var master = new Master(instance, choice, charges, solver,
            new DecidedRuns(new double[instance.Lines.Length, instance.Weeks], least.ToDictionary(r => r, _ => 0.0), open, finishes,
                [.. paths.Where(p => p.Exit.Kind == ExitKind.Unsplit).Select(p => (instance.Rows[p.Row].Lot, p.Exit.Week)).Distinct()]));
        master.AddFills(FirstPaths.Fills(instance));
        MasterColumn[] orders = [.. found.SelectMany(f => f.Orders)];
        master.AddFills(orders.Where(c => c.Kind == ColumnKind.Fill).Select(c => (c.A, c.B, c.D)));
        if (instance.OrderLines.Length * instance.Weeks <= 2000) master.AddFills(AllFills(instance));
        master.AddFills(plan.Filled.Fills.Where(f => master.Rows.OrderLine[f.Line] >= 0).Select(f => (f.Line, f.Product, f.Week)));
        master.AddPaths(paths);
        var model = new PolishModel(instance, master, WholeWeeks(instance, orders, plan));
        model.Choose(open, finishes);
        return model;
    }

    public void Dispose() => Master.Dispose();

    /// <summary>Only paths that are used, or whose run may change, may be used: a window of a large season is then a small program.</summary>
    internal void Narrow(Func<PolishChoice, bool> free, Func<int, bool> used)
    {
        var columns = new List<int>();
        var upper = new List<double>();
        for (int k = 0; k < Master.ColumnCount; k++)
        {
            if (Master.Columns[k].Path is not { } path) continue;
            columns.Add(k);
            bool may = used(k) || free(new PolishChoice(ChoiceKind.Run, k, _instance.Rows[path.Row].Lot, path.Exit.Line, path.Exit.Week, 1));
            upper.Add(may ? double.PositiveInfinity : 0);
        }
        Master.Program.SetColumnBounds(columns, new double[columns.Count], upper);
    }

    internal void SetWholeUnits(bool whole) => Master.Program.SetIntegral([.. _choices.Where(c => !c.IsYesNo).Select(c => c.Column)], whole);

    /// <summary>Takes over the values of a solve.</summary>
    internal void Take((double[] Values, double Objective) solved) => Master.Take(_wholes.Told(_unsplit.Split(solved.Values)), solved.Objective);

    /// <summary>A path as the model has it.</summary>
    internal PathColumn Known(PathColumn path) => HasEveryWay ? UnsplitRuns.Of(path) : path;

    private static IEnumerable<(int Lot, int Line, int Week)> Cracked(PlanningInstance instance, RunCharges charges) =>
        from line in Enumerable.Range(0, instance.Lines.Length)
        from week in Enumerable.Range(0, instance.Weeks)
        where !double.IsInfinity(charges.OfSorted(line, week))
        select (-1, line, week);

    private static void Exact(PlanningInstance instance, RunCharges charges, HashSet<(int Lot, int Line, int Week)> runs)
    {
        for (int i = 0; i < instance.Lines.Length; i++)
            for (int t = 0; t < instance.Weeks; t++)
            {
                if (!double.IsInfinity(charges.OfSorted(i, t))) charges.SetSorted(i, t, runs.Contains((-1, i, t)) ? 1 / instance.Lines[i].Rate : double.PositiveInfinity);
                for (int l = 0; l < instance.Lots.Length; l++)
                    if (!double.IsInfinity(charges[l, i, t])) charges[l, i, t] = runs.Contains((l, i, t)) ? 1 / instance.Lines[i].Rate : double.PositiveInfinity;
            }
    }

    private static IEnumerable<(int, int, int)> AllFills(PlanningInstance instance)
    {
        for (int i = 0; i < instance.OrderLines.Length; i++)
            foreach (int q in instance.OrderLines[i].Alternatives)
                for (int t = instance.OrderLines[i].Earliest; t < instance.Weeks; t++) yield return (i, q, t);
    }

    /// <summary>When a whole order may ship: in any week, or, in a larger season, when it was found to be worth it.</summary>
    private static IEnumerable<(int Order, int Week)> WholeWeeks(PlanningInstance instance, IReadOnlyList<MasterColumn> found, AnswerBuilding plan)
    {
        if (instance.WholeOrders.Length * instance.Weeks <= 2000)
            return instance.WholeOrders.Index().SelectMany(o => Enumerable.Range(o.Item.Earliest, Math.Max(0, instance.Weeks - o.Item.Earliest)).Select(t => (o.Index, t)));
        ILookup<int, int> orderOf = instance.WholeOrders.Index().SelectMany(o => o.Item.Lines.Select(line => (line, o.Index))).ToLookup(x => x.line, x => x.Index);
        return found.Where(c => c.Kind == ColumnKind.Whole).Select(c => (c.A, c.D)).Concat(plan.Filled.Fills.SelectMany(f => orderOf[f.Line].Select(o => (o, f.Week)))).Distinct().Order();
    }

    private void Choose(HashSet<(int Lot, int Line, int Week)> open, HashSet<(int Row, int Week)> finishes)
    {
        MasterRows rows = Master.Rows;
        var finish = new Dictionary<(int Row, int Week), List<(int, double)>>();
        foreach ((int row, int week) in finishes) finish[(row, week)] = [(rows.Finished[(row, week)], _instance.Rows[row].Mass)];
        foreach ((int lot, int line, int week) in open.OrderBy(r => r.Week).ThenBy(r => r.Line).ThenBy(r => r.Lot))
        {
            InstanceLine l = _instance.Lines[line];
            double most = RunCharges.MostInAWeek(_instance, line, week);
            if (lot >= 0) most = Math.Min(most, _instance.Lots[lot].Mass);
            var entries = new List<(int, double)> { (rows.OpenRun[(lot, line, week)], -most), (rows.Hour[line, week], l.SetUp) };
            if (rows.LeastRun.TryGetValue((lot, line, week), out int least))
            {
                entries.Add((least, l.MinRun));
                foreach (int row in _instance.Lots[lot].Rows) finish[(row, week)].Add((least, -l.MinRun));
            }
            Choice(ChoiceKind.Run, lot, line, week, 1, 0, entries);
        }
        foreach (((int row, int week), List<(int, double)> entries) in finish.OrderBy(f => f.Key.Week).ThenBy(f => f.Key.Row)) Choice(ChoiceKind.Finish, row, -1, week, 1, 0, entries);
        int columns = Master.ColumnCount;
        _wholes.Choose();
        for (int k = 0; k < columns; k++) Units(k, Master.Columns[k]);
        Master.AddRows(_newRows);
        int first = Master.AddChoices(_newChoices);
        for (int k = 0; k < _choices.Count; k++) _choices[k] = _choices[k] with { Column = first + k };
        Master.Program.SetIntegral([.. _choices.Select(c => c.Column)], true);
    }

    /// <summary>Whole units, and places that are paid for in full.</summary>
    private void Units(int k, MasterColumn c)
    {
        switch (c.Kind)
        {
            case ColumnKind.Fill: Choice(ChoiceKind.Fill, c.A, c.B, c.D, _instance.OrderLines[c.A].Line.Units, 0, Counted(0, [(k, 1)], _instance.Products[c.B].Net)); break;
            case ColumnKind.Market: Choice(ChoiceKind.Sale, c.A, c.B, c.D, _instance.Market[c.A].Units, 0, Counted(0, [(k, 1)], _instance.Products[c.B].Net)); break;
            case ColumnKind.Standing when _instance.Places[Master.SpotsHere[c.A].Place] is { WeekCost: > 0 } place:
                Master.Program.SetColumnCosts([k], [-place.BinWeekCost]);
                Choice(ChoiceKind.Place, c.A, -1, c.D, 1, -place.WeekCost, Counted(double.NegativeInfinity, [(k, 1)], place.Capacity));
                break;
        }
    }

    /// <summary>A row that is to come, by which columns are at most (or as much as) so much for each of the choice; what the choice has in it.</summary>
    internal (int Row, double Value)[] Counted(double lower, (int Column, double Value)[] columns, double each)
    {
        _newRows.Add(new LinearRow(lower, 0, columns));
        return [(Master.RowCount + _newRows.Count - 1, -each)];
    }

    internal void Choice(ChoiceKind kind, int a, int b, int week, double most, double gain, IEnumerable<(int, double)> entries)
    {
        _choices.Add(new PolishChoice(kind, -1, a, b, week, most));
        _newChoices.Add((gain, most, entries));
    }
}
