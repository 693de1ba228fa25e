namespace Cloveshed.Core.Planning;

/// <summary>
/// Fresh runs of the polish of which it is decided apart, for all of a lot and week together, what is packed of each class and what of the sorted-out bulbs is cracked where
/// and when. A path by each set of classes and each cracker and week would say the same in many times as many columns.
/// </summary>
internal sealed class UnsplitRuns
{
    private const double Nothing = 1e-9;

    private readonly Master _master;
    private readonly Dictionary<(int Lot, int Week), List<Taken>> _taken = [];

    /// <summary>A column by which some of what a run gives is taken: of a class to be sorted out (Sort), or of what is sorted out to a cracker in a week.</summary>
    private readonly record struct Taken(int Column, int Sort, int Line, int Week);

    internal UnsplitRuns(Master master)
    {
        _master = master;
        PlanningInstance instance = master.Instance;
        var columns = new List<(double, double, IEnumerable<(int, double)>)>();
        int next = master.ColumnCount;
        foreach (((int lot, int week), int[] gives) in master.Rows.Unsplit.OrderBy(u => u.Key))
        {
            int supply = instance.SupplyOf(lot);
            List<Taken> taken = _taken[(lot, week)] = [];
            for (int k = 0; k < instance.Sorts.Length; k++)
            {
                if (gives[k] < 0) continue;
                Add([(gives[k], 1), (master.Rows.Supply[k, supply, week], -1)]);
                taken.Add(new Taken(next, k, -1, -1));
                Add([(gives[k], 1), (gives[^1], -1)]);
            }
            for (int t = week; t <= week + FreshRuns.WeeksToCrack && t < instance.Weeks; t++)
                for (int j = 0; j < instance.Lines.Length; j++)
                {
                    double hours = master.Charges.OfSorted(j, t);
                    if (double.IsInfinity(hours)) continue;
                    var entries = new List<(int, double)> { (gives[^1], 1), (master.Rows.Hour[j, t], hours) };
                    if (master.Rows.OpenRun.TryGetValue((-1, j, t), out int open)) entries.Add((open, 1));
                    MasterColumnWriter.Cloves(instance, master.Rows, (row, value) => entries.Add((row, value)), instance.Lots[lot], supply, t, instance.KeptCrack);
                    taken.Add(new Taken(next, -1, j, t));
                    Add(entries);
                }
        }
        master.AddChoices(columns);

        void Add(List<(int Row, double Value)> entries)
        {
            columns.Add((0, double.PositiveInfinity, [.. entries.OrderBy(e => e.Row)]));
            next++;
        }
    }

    /// <summary>[sort] bit set where some of the sort may be packed.</summary>
    internal static ulong Packable(int[] gives)
    {
        ulong packable = 0;
        for (int k = 0; k < gives.Length - 1; k++) if (gives[k] >= 0) packable |= 1UL << k;
        return packable;
    }

    /// <summary>A path as such a model has it.</summary>
    internal static PathColumn Of(PathColumn path) =>
        path.Exit.Kind == ExitKind.Fresh ? path with { Exit = new Exit(ExitKind.Unsplit, path.Exit.Week, path.Exit.Line, 0, -1, -1, -1) } : path;

    /// <summary>
    /// Values in which every unsplit path is told by the classes that are packed of it and by where the rest is cracked. The paths are added to the master.
    /// </summary>
    internal double[] Split(double[] values)
    {
        var parts = new Dictionary<PathColumn, double>(new Master.SamePath());
        int count = _master.ColumnCount;
        values = (double[])values.Clone();
        foreach (var run in Enumerable.Range(0, count).Where(k => values[k] > 0 && _master.Columns[k].Path?.Exit.Kind == ExitKind.Unsplit)
            .GroupBy(k => (_master.Instance.Rows[_master.Columns[k].A].Lot, _master.Columns[k].Path!.Exit.Week)))
        {
            (PathColumn Path, double Mass)[] paths = [.. run.Select(k => (_master.Columns[k].Path!, values[k]))];
            foreach ((double share, ulong packed, int line, int week) in Pieces(run.Key, paths, values))
                foreach ((PathColumn path, double mass) in paths)
                {
                    PathColumn part = path with { Exit = new Exit(ExitKind.Fresh, path.Exit.Week, path.Exit.Line, packed, line, week, -1) };
                    parts[part] = parts.GetValueOrDefault(part) + (share * mass);
                }
            foreach (int k in run) values[k] = 0;
        }
        _master.AddPaths(parts.Keys);
        double[] split = [.. values, .. new double[_master.ColumnCount - count]];
        for (int k = 0; k < split.Length; k++)
            if (_master.Columns[k].Path is { } path && parts.TryGetValue(path, out double mass)) split[k] += mass;
        return split;
    }

    /// <summary>
    /// Shares of what a lot's fresh runs of a week take in, each with the classes packed of it and where what is sorted out of it is cracked: first that of which most
    /// classes are packed, and crackers one after another.
    /// </summary>
    private IEnumerable<(double Share, ulong Packed, int Line, int Week)> Pieces((int Lot, int Week) run, (PathColumn Path, double Mass)[] paths, double[] values)
    {
        PlanningInstance instance = _master.Instance;
        int[] gives = _master.Rows.Unsplit[run];
        double fit = paths.Sum(p => p.Mass * p.Path.MassRatio * p.Path.Fresh * instance.KeptFresh);
        double always = paths.Sum(p => p.Mass * FreshRuns.SortedOut(instance, p.Path with { Exit = p.Path.Exit with { Packed = Packable(gives) } }));
        List<Taken> taken = _taken[run];
        // Up to which share of it a class is packed.
        var until = taken.Where(t => t.Sort >= 0).Select(t => (t.Sort, Mass: fit * instance.Lots[run.Lot].SortShares[t.Sort], Out: values[t.Column]))
            .Select(c => (c.Sort, c.Mass, Until: c.Mass > Nothing ? Math.Clamp(1 - (c.Out / c.Mass), 0, 1) : 1)).ToArray();
        var crackers = new Queue<(int Line, int Week, double Mass)>(taken.Where(t => t.Line >= 0 && values[t.Column] > Nothing).Select(t => (t.Line, t.Week, values[t.Column])));
        double[] ends = [.. until.Select(c => c.Until).Append(1).Distinct().Order()];
        double at = 0, left = crackers.TryPeek(out var first) ? first.Mass : 0;
        foreach (double end in ends)
        {
            ulong packed = 0;
            double perShare = always;
            foreach ((int sort, double mass, double untilShare) in until)
                if (untilShare >= end) packed |= 1UL << sort;
                else perShare += mass;
            while (end - at > Nothing)
            {
                bool cracks = crackers.TryPeek(out var to);
                double share = cracks && perShare > Nothing ? Math.Min(end - at, left / perShare) : end - at;
                if (share > Nothing) yield return (share, packed, cracks ? to.Line : -1, cracks ? to.Week : -1);
                at += share;
                left -= share * perShare;
                if (!cracks || left > Nothing) continue;
                crackers.Dequeue();
                left = crackers.TryPeek(out var then) ? then.Mass : 0;
            }
        }
    }
}
