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
/// <param name="Settled">Whether it ended because the value will not change by much.</param>
internal sealed record GenerationResult(double Value, double Bound, Prices Prices, Prices Center, int Rounds, bool Solved, bool Settled = true)
{
    internal double Gap => (Bound - Value) / Math.Max(1e-9, Math.Abs(Value));
}

/// <summary>
/// Column generation: solve the master, price every row's best path at its duals (and at duals between them and the best bound's),
/// add what would pay, until the bound says that nothing more can come of it. A large master is first worked on roughly: its prices are taken
/// from the middle of where the best ones lie, the closer the nearer the end is, over paths with one move and, once these are settled, over all;
/// then sharply, by simplex.
/// </summary>
internal sealed class ColumnGeneration
{
    /// <summary>Where the rough part ends: what is left then is quicker by simplex.</summary>
    private const double RoughGap = 1e-3;

    /// <summary>Gap from which on paths with more than one move are looked for: before, their prices say too little.</summary>
    private const double DeepGap = 0.03;

    /// <summary>A round is solved to this share of the gap that is left: closer than that its prices are no better.</summary>
    private const double ShareOfGap = 0.1;

    /// <summary>A round that leaves more than this of the gap was solved too roughly: the next ones are solved to this share of that.</summary>
    private const double Slow = 0.8, Finer = 0.3;

    /// <summary>So few new columns, as a share of all, that a trial is over.</summary>
    private const double FewColumns = 0.02;

    private const double CoarsestTolerance = 1e-2, FinestTolerance = 1e-5;

    /// <summary>New columns from which on a solve from scratch is quicker than one from the last basis.</summary>
    private const int ManyColumns = 3000;

    private readonly Master _master;
    private readonly PlanningInstance _instance;
    private readonly GenerationLimits _limits;
    private readonly bool _large;
    private IReadOnlyDictionary<int, InstanceOrderLine> _changed = new Dictionary<int, InstanceOrderLine>();
    private Prices? _center;
    private double _bound = double.PositiveInfinity;
    private int _rounds;

    private ColumnGeneration(Master master, GenerationLimits limits, Prices? center)
    {
        (_master, _instance, _limits, _center) = (master, master.Instance, limits, center);
        _large = master.IsLarge;
    }

    /// <param name="settled">The master was settled roughly before: the rest is quicker by simplex.</param>
    internal static GenerationResult Run(Master master, GenerationLimits limits, double cutOffBelow = double.NegativeInfinity, Action<int, double, double>? progress = null, Prices? center = null, bool settled = false)
    {
        var generation = new ColumnGeneration(master, limits, center);
        if (generation._large && !limits.Over && !settled) generation.Roughly(Math.Max(RoughGap, limits.Gap), cutOffBelow, progress, nearly: false);
        return generation.Sharply(cutOffBelow, progress);
    }

    /// <summary>As far as the limits' gap by prices from the middle alone, where the master is large: its value is near the best and no plan's, its bound is one.</summary>
    internal static GenerationResult RunNearly(Master master, GenerationLimits limits, double cutOffBelow, Prices? center, Action<int, double, double>? progress = null)
    {
        var generation = new ColumnGeneration(master, limits, center);
        return generation._large && generation.Roughly(limits.Gap, cutOffBelow, progress, nearly: center is not null) is { } near ? near : generation.Sharply(cutOffBelow, progress);
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

    /// <summary>Null where not one solve was had.</summary>
    private GenerationResult? Roughly(double target, double cutOffBelow, Action<int, double, double>? progress, bool nearly)
    {
        double best = double.PositiveInfinity, gap = double.PositiveInfinity, coarsest = CoarsestTolerance, tolerance = _center is null ? CoarsestTolerance : RoughGap;
        bool deep = _center is not null, begun = deep;
        GenerationResult? result = null;
        if (begun) Begin();
        _master.Loosen(true);
        for (int round = 0; round < _limits.RoundsAtMost && !(_rounds > 0 && _limits.Over); round++)
        {
            if (_master.Solve(LinearMethod.Central, _rounds == 0 ? 600 : Math.Max(0.5, _limits.Until - _limits.Elapsed()), tolerance) != LinearStatus.Near) break;
            _rounds++;
            (Prices now, int added) = Take();
            // Dropping and pricing in again could go on for ever: it ends with the paths of one move, or with prices too rough to come any further.
            if (begun ? round == 1 : round > 0 && !deep && coarsest == CoarsestTolerance) _master.Drop();
            double before = gap;
            (double here, int more) = Improve(now, deep, deep ? best : double.PositiveInfinity);
            best = Math.Min(best, here);
            if (deep) _bound = Math.Min(_bound, here);
            added += more;
            gap = (best - _master.Value) / Math.Max(1e-9, Math.Abs(_master.Value));
            if (deep) progress?.Invoke(round, _master.Value, _bound);
            // The bound lags behind: with prices as close as this, few new columns mean that the value will not change by much.
            bool few = nearly && deep && round > 0 && tolerance <= RoughGap && added < FewColumns * _master.ColumnCount;
            result = new GenerationResult(_master.Value, _bound, now, _center!, _rounds, true, Settled: few || (deep && gap <= target));
            if (result.Settled || (deep && _bound < cutOffBelow)) break;
            if (added == 0 && tolerance <= Math.Max(FinestTolerance, gap * ShareOfGap)) break;
            if (deep && gap < 3 * target && gap > 0.9 * before) break;
            if (gap > Slow * before) coarsest *= Finer;
            tolerance = Math.Clamp(gap * ShareOfGap, FinestTolerance, begun ? RoughGap : Math.Max(FinestTolerance, coarsest));
            if (deep || gap > DeepGap) continue;
            // From here on the bound is over all paths.
            (deep, best) = (true, double.PositiveInfinity);
        }
        _master.Loosen(false);
        // Stopped before it was asked over all paths, it still owes a bound.
        if (result is not null && double.IsInfinity(_bound)) result = result with { Bound = _bound = Pricing.At(_master, _center!, _limits, 1).Bound };
        return result;
    }

    /// <summary>What is best at prices that a like master had: before there are prices of its own.</summary>
    private void Begin()
    {
        UpperBound.Repair(_instance, _center!);
        _master.AddPacks(PackArcs.Paying(_instance, _center!));
        (_bound, List<PathColumn> paths) = Pricing.At(_master, _center!, _limits, 10);
        _master.AddPaths(paths);
    }

    private GenerationResult Sharply(double cutOffBelow, Action<int, double, double>? progress)
    {
        double bound = _bound, value = double.NegativeInfinity;
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
            (double here, int more) = Improve(now, true, bound);
            bound = Math.Min(bound, here);
            added += more;
            progress?.Invoke(round, value, bound);
            double gap = (bound - value) / Math.Max(1e-9, Math.Abs(value));
            if (gap <= _limits.Gap || added == 0 || bound < cutOffBelow || _limits.Over) break;
        }
        return new GenerationResult(value, bound, last!, _center!, _rounds, true);
    }

    /// <summary>
    /// Bounds and columns at the last prices and at some between them and the best: over one move everywhere, and, if asked for, over all paths where that
    /// promises most and at the last. Prices with a bound under the one given are the best from then on.
    /// </summary>
    private (double Bound, int Added) Improve(Prices now, bool deep, double bound)
    {
        Prices? from = _center;
        double promise = double.PositiveInfinity, best = double.PositiveInfinity;
        int added = 0;
        Prices most = now;
        foreach (double weight in from is null || (deep && _limits.Depth.BoundsAll) ? [] : new[] { 0.25, 0.6 })
        {
            Prices at = Between(now, from, weight);
            (double here, List<PathColumn> paths) = Pricing.At(_master, at, _limits, 5, deep: false);
            if (here < promise) (promise, most) = (here, at);
            if (!deep) Note(here, at);
            added += _master.AddPaths(paths) + AddOrders(at);
        }
        foreach (Prices at in !deep || ReferenceEquals(most, now) ? [now] : new[] { most, now })
        {
            (double here, List<PathColumn> paths) = Pricing.At(_master, at, _limits, ReferenceEquals(at, now) ? 10 : 1, deep);
            Note(here, at);
            added += _master.AddPaths(paths) + AddOrders(at);
        }
        return (best, added);

        void Note(double here, Prices at)
        {
            if (here >= best) return;
            best = here;
            if (here < bound || _center is null) (bound, _center) = (here, at);
        }
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
