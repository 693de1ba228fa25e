namespace Cloveshed.Core.Planning;

/// <summary>When to stop, and how to be told. Elapsed is the caller's clock in seconds; Core reads none of its own.</summary>
/// <param name="Gap">Relative gap between master and bound that is good enough.</param>
/// <param name="Until">Seconds on the caller's clock at which to stop with what there is.</param>
/// <param name="RoundsAtMost">A stop that repeats exactly, for tests.</param>
internal sealed record GenerationLimits(double Gap, double Until, int RoundsAtMost, SearchDepth Depth, Func<double> Elapsed, int Threads, CancellationToken Cancel)
{
    internal bool Over => Elapsed() >= Until || Cancel.IsCancellationRequested;
}

/// <summary>The master's value, the proven bound, and the prices of the last solve.</summary>
/// <param name="Center">The prices of the best bound: a good place for a like master to start from.</param>
internal sealed record GenerationResult(double Value, double Bound, Prices Prices, Prices Center, int Rounds, bool Solved)
{
    internal double Gap => (Bound - Value) / Math.Max(1e-9, Math.Abs(Value));
}

/// <summary>
/// Column generation: solve the master, price every row's best path at its duals (and at duals between them and the best bound's),
/// add what would pay, until the bound says that nothing more can come of it. A large master is first worked on roughly: its prices are taken
/// from the middle of where the best ones lie, which costs half a solve, over paths with one move; then sharply, by simplex and over all paths.
/// </summary>
internal sealed class ColumnGeneration
{
    /// <summary>Prices from the middle are good to about this gap and no further.</summary>
    private const double RoughGap = 0.01;

    /// <summary>New columns from which on a solve from scratch is quicker than one from the last basis.</summary>
    private const int ManyColumns = 3000;

    private readonly Master _master;
    private readonly PlanningInstance _instance;
    private readonly GenerationLimits _limits;
    private readonly bool _large;
    private IReadOnlyDictionary<int, InstanceOrderLine> _changed = new Dictionary<int, InstanceOrderLine>();
    private Prices? _center;
    private int _rounds;

    private ColumnGeneration(Master master, GenerationLimits limits, Prices? center)
    {
        (_master, _instance, _limits, _center) = (master, master.Instance, limits, center);
        _large = master.IsLarge;
    }

    internal static GenerationResult Run(Master master, GenerationLimits limits, double cutOffBelow = double.NegativeInfinity, Action<int, double, double>? progress = null, Prices? center = null)
    {
        var generation = new ColumnGeneration(master, limits, center);
        if (generation._large && center is null && !limits.Over) generation.Roughly();
        return generation.Sharply(cutOffBelow, progress);
    }

    /// <summary>One round on a master that is solved: its bound over all paths at its prices, and how many columns came in.</summary>
    /// <param name="changed">Order lines that are otherwise than the season has them, by index.</param>
    internal static (double Bound, Prices Prices, int Added) Round(Master master, GenerationLimits limits, IReadOnlyDictionary<int, InstanceOrderLine> changed)
    {
        var generation = new ColumnGeneration(master, limits, null) { _changed = changed };
        (Prices now, int added) = generation.Take();
        (double bound, List<PathColumn> paths) = Pricing.At(master, now, limits, 5);
        return (bound, now, added + master.AddPaths(paths) + generation.AddOrders(now));
    }

    private void Roughly()
    {
        double best = double.PositiveInfinity, gap = double.PositiveInfinity;
        _master.Loosen(true);
        for (int round = 0; round < _limits.RoundsAtMost && !(_rounds > 0 && _limits.Over); round++)
        {
            if (_master.Solve(LinearMethod.Central, _rounds == 0 ? 600 : Math.Max(0.5, _limits.Until - _limits.Elapsed())) != LinearStatus.Near) break;
            _rounds++;
            (Prices now, int added) = Take();
            if (round > 0) _master.Drop();
            Prices? from = _center;
            double before = gap;
            foreach (double weight in from is null ? [1] : new[] { 0.25, 0.6, 1 })
            {
                Prices at = Between(now, from, weight);
                (double here, List<PathColumn> paths) = Pricing.At(_master, at, _limits, weight == 1 ? 10 : 5, deep: false);
                if (here < best) (best, _center) = (here, at);
                added += _master.AddPaths(paths) + AddOrders(at);
            }
            gap = (best - _master.Value) / Math.Max(1e-9, Math.Abs(_master.Value));
            if (gap <= RoughGap || added == 0 || (gap < 3 * RoughGap && gap > 0.9 * before)) break;
        }
        _master.Loosen(false);
    }

    private GenerationResult Sharply(double cutOffBelow, Action<int, double, double>? progress)
    {
        double bound = double.PositiveInfinity, value = double.NegativeInfinity;
        Prices? last = null;
        int added = int.MaxValue;
        for (int round = 0; round < _limits.RoundsAtMost; round++)
        {
            bool scratch = _large && added > ManyColumns;
            // The first solve is worth any wait: without it there is no plan at all.
            double seconds = last is null ? 600 : Math.Max(0.5, _limits.Until - _limits.Elapsed());
            LinearStatus status = _master.Solve(scratch ? LinearMethod.InteriorPoint : LinearMethod.WarmSimplex, seconds);
            if (status != LinearStatus.Optimal && scratch && (last is null || !_limits.Over)) status = _master.Solve(LinearMethod.WarmSimplex, seconds);
            if (status != LinearStatus.Optimal)
            {
                if (last is null) throw new InvalidOperationException($"The season's linear program could not be solved even once ({status}).");
                break;
            }
            _rounds++;
            value = _master.Value;
            (Prices now, added) = Take();
            last = now;
            if (scratch) _master.Drop();
            (double here, int more) = Improve(now, bound);
            bound = Math.Min(bound, here);
            added += more;
            progress?.Invoke(round, value, bound);
            double gap = (bound - value) / Math.Max(1e-9, Math.Abs(value));
            if (gap <= _limits.Gap || added == 0 || bound < cutOffBelow || _limits.Over) break;
        }
        return new GenerationResult(value, bound, last!, _center!, _rounds, true);
    }

    /// <summary>Bounds and columns at the last prices and at some between them and the best: over one move everywhere, over all paths where that promises most and at the last.</summary>
    private (double Bound, int Added) Improve(Prices now, double bound)
    {
        Prices? from = _center;
        double promise = double.PositiveInfinity, best = double.PositiveInfinity;
        int added = 0;
        Prices most = now;
        foreach (double weight in from is null || _limits.Depth.BoundsAll ? [] : new[] { 0.25, 0.6 })
        {
            Prices at = Between(now, from, weight);
            (double here, List<PathColumn> paths) = Pricing.At(_master, at, _limits, 5, deep: false);
            if (here < promise) (promise, most) = (here, at);
            added += _master.AddPaths(paths) + AddOrders(at);
        }
        foreach (Prices at in ReferenceEquals(most, now) ? [now] : new[] { most, now })
        {
            (double here, List<PathColumn> paths) = Pricing.At(_master, at, _limits, ReferenceEquals(at, now) ? 10 : 1);
            if (here < best)
            {
                best = here;
                if (here < bound || _center is null) _center = at;
            }
            added += _master.AddPaths(paths) + AddOrders(at);
        }
        return (best, added);
    }

    /// <summary>The prices of the last solve, made usable, and the ways to pack added that they call for.</summary>
    private (Prices Now, int Added) Take()
    {
        Prices now = _master.ReadPrices();
        int added = _master.AddPacks(PackArcs.Paying(_instance, now));
        UpperBound.Repair(_instance, now);
        return (now, added);
    }

    private Prices Between(Prices now, Prices? from, double weight)
    {
        if (weight == 1 || from is null) return now;
        Prices at = now.Toward(from, weight, _instance, _master.SpotsHere);
        UpperBound.Repair(_instance, at);
        return at;
    }

    private int AddOrders(Prices prices)
    {
        var fills = new List<(int Line, int Product, int Week)>();
        for (int i = 0; i < _instance.OrderLines.Length; i++)
        {
            if (_master.Rows.OrderLine[i] < 0) continue;
            (double margin, int product, int week) = UpperBound.BestFill(prices, _changed.GetValueOrDefault(i, _instance.OrderLines[i]));
            if (product >= 0 && margin > Math.Max(0, _master.Duals[_master.Rows.OrderLine[i]]) + 1e-9) fills.Add((i, product, week));
        }
        var wholes = new List<(int Order, int[] Products, int Week)>();
        for (int o = 0; o < _instance.WholeOrders.Length; o++)
        {
            (double margin, int week, int[] products) = UpperBound.BestWhole(_instance, prices, o);
            if (week >= 0 && margin > Math.Max(0, _master.Duals[_master.Rows.WholeOrder[o]]) + 1e-9) wholes.Add((o, products, week));
        }
        IEnumerable<(int Product, int Week)> shipped = fills.Select(f => (f.Product, f.Week)).Concat(wholes.SelectMany(w => w.Products.Select(q => (q, w.Week)))).Distinct();
        return _master.AddFills(fills) + _master.AddWholes(wholes) + _master.AddPacks(shipped.Select(s => PackArcs.Cheapest(_instance, prices, s.Product, s.Week)));
    }
}
