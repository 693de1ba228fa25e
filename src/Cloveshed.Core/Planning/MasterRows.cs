using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// The rows of the master and where each stands; -1 where there is no such row. Only rows that something can reach are made.
/// All are "at most" rows but the lots' (all of a row's mass goes somewhere) and the spots' (bins standing, in and out).
/// </summary>
internal sealed class MasterRows
{
    private readonly List<double> _lower = [];
    private readonly List<double> _upper = [];

    internal int[] Row { get; }
    internal int[,,] Supply { get; }
    internal int[,] Available { get; }
    internal int[] Stock { get; }
    internal int[] OrderLine { get; }
    internal int[] WholeOrder { get; }
    internal int[] Seed { get; }
    internal int[,] AsIs { get; }
    internal int[,] Hour { get; }
    internal int[] People { get; }
    internal int[,] Stand { get; }
    internal int[,] Out { get; }
    internal int[,] Opening { get; }
    internal int[] OneSchedule { get; }
    internal int[,] Shared { get; }
    internal int[,] Blocked { get; }

    /// <summary>Rows that hold a pinned run at its least mass-in, by pin.</summary>
    internal int[] Pin { get; }

    /// <summary>Rows that hold a decided run at its least mass-in, by lot, line and week.</summary>
    internal Dictionary<(int Lot, int Line, int Week), int> LeastRun { get; } = [];

    internal IReadOnlyList<double> Lower => _lower;
    internal IReadOnlyList<double> Upper => _upper;
    internal int Count => _upper.Count;

    /// <summary>Rows that allow mass-in only where a run is open (polish), by lot (-1: sorted-out bulbs), line and week.</summary>
    internal Dictionary<(int Lot, int Line, int Week), int> OpenRun { get; } = [];

    /// <summary>Rows that allow nothing of a lot's row after a week in which it is said to be finished (polish).</summary>
    internal Dictionary<(int Row, int Week), int> Finished { get; } = [];

    /// <summary>Rows of what unsplit fresh runs of a lot and week give (polish): of each sort (-1 where none of it is packed), and at the end of what is sorted out.</summary>
    internal Dictionary<(int Lot, int Week), int[]> Unsplit { get; } = [];

    /// <summary>The same by lot's row: its weeks, and the master's rows.</summary>
    internal ILookup<int, (int Week, int Row)> FinishedOf { get; }

    internal MasterRows(PlanningInstance instance, Spot[] spots, DecidedRuns? decided)
    {
        int weeks = instance.Weeks, asOf = instance.AsOf;
        Row = [.. instance.Rows.Select(r => Equal(r.Mass))];
        Supply = Grid(instance.Sorts.Length, instance.SupplyKinds, weeks);
        for (int k = 0; k < instance.Sorts.Length; k++)
            for (int o = 0; instance.Sorts[k].Packed && o < instance.SupplyKinds; o++)
                for (int t = asOf; t < weeks; t++) Supply[k, o, t] = o > 0 && !instance.SortApart[k] ? Supply[k, 0, t] : AtMost(0);
        Available = Grid(instance.Products.Length, weeks);
        for (int q = 0; q < instance.Products.Length; q++)
            for (int t = asOf; t < weeks; t++) Available[q, t] = AtMost(0);
        Stock = [.. instance.Stock.Select(s => AtMost(s.Mass))];
        var inWhole = instance.WholeOrders.SelectMany(o => o.Lines).ToHashSet();
        OrderLine = [.. instance.OrderLines.Select((l, i) => inWhole.Contains(i) || l.Earliest >= weeks ? -1 : AtMost(l.Mass))];
        WholeOrder = [.. instance.WholeOrders.Select(_ => AtMost(1))];
        Seed = [.. instance.SeedNeeds.Select(n => AtMost(n.Mass))];
        AsIs = Grid(instance.AsIs.Length, weeks);
        for (int a = 0; a < instance.AsIs.Length; a++)
            for (int t = asOf; t < weeks && !double.IsInfinity(instance.AsIs[a].Limit); t++) AsIs[a, t] = AtMost(instance.AsIs[a].Limit);
        Hour = Grid(instance.Lines.Length, weeks);
        for (int i = 0; i < instance.Lines.Length; i++)
            for (int t = asOf; t < weeks; t++)
                if (instance.Lines[i].Hours[t] + instance.Lines[i].Overtime[t] > 0) Hour[i, t] = AtMost(decided is null ? 0 : -decided.SetUpHours[i, t]);
        People = [.. Enumerable.Range(0, weeks).Select(t => t >= asOf && !double.IsInfinity(instance.People[t]) ? AtMost(instance.People[t]) : -1)];
        foreach (((int, int, int) run, double least) in decided?.LeastMass ?? []) LeastRun[run] = AtMost(-least);
        foreach (var run in decided?.Open ?? []) OpenRun[run] = AtMost(0);
        foreach ((int row, int week) in decided?.Finishes ?? []) Finished[(row, week)] = AtMost(instance.Rows[row].Mass);
        foreach ((int lot, int week) in decided?.Unsplit ?? [])
            Unsplit[(lot, week)] = [.. instance.Sorts.Select((sort, k) => !sort.Clove && sort.Packed && instance.Lots[lot].SortShares[k] > 0 ? AtMost(0) : -1), AtMost(0)];
        FinishedOf = Finished.ToLookup(f => f.Key.Row, f => (f.Key.Week, f.Value));
        Pin = [.. instance.Pins.Select(p => AtMost(-p.Mass))];
        Stand = Grid(spots.Length, weeks);
        for (int s = 0; s < spots.Length; s++)
            for (int t = asOf; t < weeks; t++) Stand[s, t] = Equal(0);
        Out = Grid(spots.Length, weeks + 1);
        Opening = Grid(spots.Length, weeks + 1);
        OneSchedule = new int[spots.Length];
        Shared = Grid(spots.Length, weeks);
        Blocked = Grid(spots.Length, weeks);
        for (int s = 0; s < spots.Length; s++)
        {
            OneSchedule[s] = -1;
            if (spots[s].Kind == SpotKind.FreeSealed)
            {
                OneSchedule[s] = AtMost(1);
                for (int t = asOf; t <= weeks; t++) Out[s, t] = AtMost(0);
                foreach (int o in Spots.OpeningWeeks(instance, spots[s].Place).Append(weeks)) Opening[s, o] = AtMost(0);
            }
            else if (spots[s].Kind == SpotKind.FreeCold)
            {
                for (int t = asOf; t < weeks; t++)
                {
                    Shared[s, t] = AtMost(instance.Places[spots[s].Place].Capacity);
                    Blocked[s, t] = AtMost(instance.Places[spots[s].Place].Capacity);
                }
            }
        }
    }

    private int AtMost(double bound)
    {
        _lower.Add(double.NegativeInfinity);
        _upper.Add(bound);
        return _upper.Count - 1;
    }

    private int Equal(double value)
    {
        _lower.Add(value);
        _upper.Add(value);
        return _upper.Count - 1;
    }

    private static int[,] Grid(int a, int b)
    {
        int[,] grid = new int[a, b];
        for (int i = 0; i < a; i++)
            for (int j = 0; j < b; j++) grid[i, j] = -1;
        return grid;
    }

    private static int[,,] Grid(int a, int b, int c)
    {
        int[,,] grid = new int[a, b, c];
        for (int i = 0; i < a; i++)
            for (int j = 0; j < b; j++)
                for (int k = 0; k < c; k++) grid[i, j, k] = -1;
        return grid;
    }
}
