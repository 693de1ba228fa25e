using System.Collections.Concurrent;

namespace Cloveshed.Core.Planning;

/// <summary>Prices in; the bound at them, and for every row the paths that would pay, out.</summary>
internal static class Pricing
{
    /// <summary>The bound at some prices and the paths that pay by the master's row duals.</summary>
    /// <param name="deep">Over every sequence of places; else over paths with one move at most, and the bound is of those alone.</param>
    internal static (double Bound, List<PathColumn> Paths) At(Master master, Prices prices, GenerationLimits limits, int perRow, bool deep = true)
    {
        PlanningInstance instance = master.Instance;
        PricedExit[][][] exits = Exits.OfAll(instance, master.Charges, prices, limits.Threads);
        double[] bounds = new double[instance.Rows.Length];
        var found = new List<PathColumn>?[instance.Rows.Length];
        var options = new ParallelOptions { MaxDegreeOfParallelism = limits.Threads };
        var charges = new StandingCharges(instance, master.SpotsHere, prices);
        if (instance.Rows.Length > 0) Parallel.ForEach(Partitioner.Create(0, instance.Rows.Length, Math.Max(1, instance.Rows.Length / 16)), options, range =>
        {
            var sheet = deep ? new TableSheet(instance.Weeks, master.SpotsHere.Length) : null;
            for (int row = range.Item1; row < range.Item2; row++)
            {
                double dual = master.DualOfRow(row), worthMoreThan = dual + 1e-7 * (1 + Math.Abs(dual));
                PricedExit[][] ways = exits[instance.Rows[row].Lot];
                RowSearch best = limits.Depth.BoundsAll ? master.Search.Best(row, ways, prices, limits.Depth, perRow, worthMoreThan)
                    : master.OneMove.Best(row, ways, prices, charges, perRow, worthMoreThan);
                bounds[row] = best.Bound;
                IEnumerable<PricedPath> good = best.Paths;
                if (sheet is not null && !limits.Depth.BoundsAll)
                {
                    (bounds[row], PricedPath? far) = master.Table.Exact(row, ways, prices, sheet);
                    if (far is { } path && path.Value > worthMoreThan) good = good.Append(path);
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
}
