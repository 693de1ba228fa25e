using System.Collections.Concurrent;

namespace Cloveshed.Core.Planning;

/// <summary>When to stop, and how to be told. Elapsed is the caller's clock in seconds; Core reads none of its own.</summary>
/// <param name="Gap">Relative gap between master and bound that is good enough.</param>
/// <param name="Until">Seconds on the caller's clock at which to stop with what there is.</param>
/// <param name="RoundsAtMost">A stop that repeats exactly, for tests.</param>
internal sealed record GenerationLimits(double Gap, double Until, int RoundsAtMost, SearchDepth Depth, Func<double> Elapsed, int Threads, CancellationToken Cancel);

/// <summary>The master's value, the proven bound, and the prices of the last solve.</summary>
/// <param name="Center">The prices of the best bound: a good place for a like master to start from.</param>
internal sealed record GenerationResult(double Value, double Bound, Prices Prices, Prices Center, int Rounds, bool Solved)
{
    internal double Gap => (Bound - Value) / Math.Max(1e-9, Math.Abs(Value));
}

/// <summary>
/// Column generation: solve the master, price every row's best path at its duals (and at duals between them and the best bound's),
/// add what would pay, until the bound says that nothing more can come of it.
/// </summary>
internal static class ColumnGeneration
{

    internal static GenerationResult Run(Master master, GenerationLimits limits, double cutOffBelow = double.NegativeInfinity, Action<int, double, double>? progress = null, Prices? center = null)
    {
        PlanningInstance instance = master.Instance;
        double bound = double.PositiveInfinity, previous = double.NegativeInfinity;
        Prices? bestPrices = center, last = null;
        bool locked = false;
        int round = 0;
        for (; round < limits.RoundsAtMost; round++)
        {
            bool large = master.RowCount > 1500;
            LinearMethod method = large && !locked ? LinearMethod.InteriorPoint : LinearMethod.WarmSimplex;
            // The first solve is worth any wait: without it there is no plan at all.
            double seconds = last is null ? 600 : Math.Max(0.5, limits.Until - limits.Elapsed());
            LinearStatus status = master.Solve(method, seconds);
            if (status != LinearStatus.Optimal && method == LinearMethod.InteriorPoint)
                status = last is null || limits.Elapsed() < limits.Until ? master.Solve(LinearMethod.WarmSimplex, seconds) : status;
            if (status != LinearStatus.Optimal)
            {
                if (last is null) throw new InvalidOperationException($"The season's linear program could not be solved even once ({status}).");
                break;
            }
            double value = master.Value;
            Prices now = master.ReadPrices();
            UpperBound.Repair(instance, now);
            last = now;
            // Interior point with crossover lands on another optimal vertex each time, so the bound can stall: go over to simplex.
            if (value - previous < 3e-4 * Math.Abs(value)) locked = true;
            previous = value;

            if (!locked && master.ColumnCount > 26000) master.Drop(-0.08 * Math.Abs(value) / Math.Max(1, instance.Rows.Sum(r => r.Mass)));
            int added = 0;
            Prices? from = bestPrices;
            double[] weights = bestPrices is null ? [1] : [0.25, 0.6, 1];
            foreach (double weight in weights)
            {
                Prices at = weight == 1 ? now : now.Toward(from!, weight, instance, master.SpotsHere);
                if (weight != 1) UpperBound.Repair(instance, at);
                (double here, List<PathColumn> paths) = Price(master, at, limits, weight == 1 ? 10 : 5);
                if (here < bound)
                {
                    bound = here;
                    bestPrices = at;
                }
                added += master.AddPaths(paths);
                added += AddOrders(master, at);
            }
            progress?.Invoke(round, value, bound);
            double gap = (bound - value) / Math.Max(1e-9, Math.Abs(value));
            if (gap <= limits.Gap || added == 0 || bound < cutOffBelow || limits.Elapsed() >= limits.Until || limits.Cancel.IsCancellationRequested)
            {
                round++;
                break;
            }
        }
        return new GenerationResult(previous, bound, last!, bestPrices!, round, true);
    }

    /// <summary>The bound at some prices and the paths that pay by the master's row duals.</summary>
    internal static (double Bound, List<PathColumn> Paths) Price(Master master, Prices prices, GenerationLimits limits, int perRow)
    {
        PlanningInstance instance = master.Instance;
        PricedExit[][][] exits = new PricedExit[instance.Lots.Length][][];
        double[] bounds = new double[instance.Rows.Length];
        var found = new List<PathColumn>?[instance.Rows.Length];
        var options = new ParallelOptions { MaxDegreeOfParallelism = limits.Threads };
        Parallel.For(0, instance.Lots.Length, options, l =>
            exits[l] = [.. Enumerable.Range(0, instance.Weeks).Select(t => Exits.Of(instance, master.Charges, prices, l, t))]);
        if (instance.Rows.Length > 0) Parallel.ForEach(Partitioner.Create(0, instance.Rows.Length, Math.Max(1, instance.Rows.Length / 16)), options, range =>
        {
            for (int row = range.Item1; row < range.Item2; row++)
            {
                double dual = master.DualOfRow(row);
                RowSearch best = master.Search.Best(row, exits[instance.Rows[row].Lot], prices, limits.Depth, perRow, dual + 1e-7 * (1 + Math.Abs(dual)));
                bounds[row] = best.Bound;
                IEnumerable<PricedPath> good = best.Paths;
                if (!limits.Depth.BoundsAll)
                {
                    (bounds[row], PricedPath? deep) = master.Table.Best(row, exits[instance.Rows[row].Lot], prices);
                    if (deep is { } path && path.Value > dual + 1e-7 * (1 + Math.Abs(dual))) good = good.Append(path);
                }
                found[row] = [.. good.Select(p => PathStates.Column(instance, master.SpotsHere, row, p.Stays, p.Exit))];
            }
        });
        double bound = UpperBound.OfAllButPaths(instance, master.SpotsHere, prices);
        var paths = new List<PathColumn>();
        for (int row = 0; row < bounds.Length; row++)
        {
            bound += instance.Rows[row].Mass * bounds[row];
            paths.AddRange(found[row]!);
        }
        return (bound, paths);
    }

    private static int AddOrders(Master master, Prices prices)
    {
        PlanningInstance instance = master.Instance;
        var fills = new List<(int, int, int)>();
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            if (master.Rows.OrderLine[i] < 0) continue;
            (double margin, int product, int week) = UpperBound.BestFill(instance, prices, i);
            if (product >= 0 && margin > Math.Max(0, master.Duals[master.Rows.OrderLine[i]]) + 1e-9) fills.Add((i, product, week));
        }
        var wholes = new List<(int, int[], int)>();
        for (int o = 0; o < instance.WholeOrders.Length; o++)
        {
            (double margin, int week, int[] products) = UpperBound.BestWhole(instance, prices, o);
            if (week >= 0 && margin > Math.Max(0, master.Duals[master.Rows.WholeOrder[o]]) + 1e-9) wholes.Add((o, products, week));
        }
        return master.AddFills(fills) + master.AddWholes(wholes);
    }
}
