namespace Cloveshed.Core.Cuts;

/// <summary>
/// The best boxes over a grid, exactly. After J. Liang, J. Agric. Engng Res. 14 (1969) 139 (cut points by dynamic programming), but not by
/// trying every pair of cuts: a box of classes c to e between grid points i and j holds its tolerance t when
/// H(j) is at most H(i), with H = (1 - t) mass - mass wide enough for c + mass too wide for e, because all three are sums. So
/// the best i for each j is the largest of (value before i - price x mass before i) among those with H(i) at least H(j): one
/// look into a tree of running maxima. Time grows with classes^2 x grid x log(grid), not with grid^2.
/// </summary>
/// <remarks>
/// A class in the middle is never skipped: merged into the one below it, it takes the same bulbs, earns the same and widens the window.
/// Only classes under the first box are skipped, their bulbs left under the first cut.
/// </remarks>
internal sealed class CutSearch(CutTable table, IReadOnlyList<double> prices, Func<int, int, double> tolerance, bool topIsOpen)
{
    /// <summary>Rounding of sums of shares of the lot, which are 1 in all.</summary>
    private const double Rounding = 1e-13;

    private readonly int points = table.Points, classes = prices.Count;

    /// <summary>Boxes as (class, last class, first point), small to large, and the point at which the top is taken off.</summary>
    public (IReadOnlyList<(int Class, int Last, int From)> Boxes, int End, double Value) Best(int mostOutlets)
    {
        var layers = new List<Layer>();
        (int Layer, int End, double Value) best = (-1, points - 1, 0);
        for (int k = 0; k < Math.Min(mostOutlets, classes); k++)
        {
            Layer layer = Fill(k == 0 ? null : layers[k - 1]);
            layers.Add(layer);
            double[] top = layer.Value[classes - 1];
            for (int j = topIsOpen ? points - 1 : 0; j < points; j++)
            {
                // A further box must earn something, or it isn't worth its outlet.
                if (top[j] > best.Value + 1e-12)
                    best = (k, j, top[j]);
            }
        }

        var boxes = new List<(int, int, int)>();
        for (int k = best.Layer, e = classes - 1, j = best.End; k >= 0; k--)
        {
            (int c, int i, bool first) = layers[k].Choice[e][j];
            boxes.Add((c, e, i));
            if (first)
                break;
            (e, j) = (c - 1, i);
        }

        boxes.Reverse();
        return (boxes, best.End, best.Value);
    }

    // Value[e][j]: the most that boxes can earn of the bulbs lighter than grid point j, the last of them holding class e as its
    // largest. Choice: the last box's class and first point, and whether it is the first box.
    private Layer Fill(Layer? before)
    {
        var layer = new Layer(classes, points);
        var tree = new RunningMaxima(points);
        var h = new double[points];
        var sorted = new double[points];
        for (int c = 0; c < classes; c++)
        {
            double[]? earlier = c > 0 ? before?.Value[c - 1] : null;
            for (int e = c; e < classes; e++)
            {
                double t = tolerance(c, e);
                double[] wide = table.Wide[c], over = table.Wide[e + 1];
                for (int p = 0; p < points; p++)
                    sorted[p] = h[p] = (1 - t) * table.Mass[p] - wide[p] + over[p];
                Array.Sort(sorted);
                tree.Clear();
                for (int j = 0; j < points; j++)
                {
                    if (j > 0 && tree.Best(FromTop(sorted, h[j] - Rounding)) is var i and >= 0)
                    {
                        double value = tree.Value(i) + prices[c] * table.Mass[j];
                        if (value > layer.Value[e][j])
                        {
                            layer.Value[e][j] = value;
                            layer.Choice[e][j] = (c, i, earlier is null || earlier[i] <= 0);
                        }
                    }

                    double start = earlier is null ? 0 : Math.Max(0, earlier[j]);
                    tree.Put(FromTop(sorted, h[j]) - 1, j, start - prices[c] * table.Mass[j]);
                }
            }
        }

        return layer;
    }

    // How many of the sorted values are at least this.
    private static int FromTop(double[] sorted, double least)
    {
        int low = 0, high = sorted.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (sorted[middle] >= least)
                high = middle;
            else
                low = middle + 1;
        }

        return sorted.Length - low;
    }

    private sealed class Layer
    {
        public Layer(int classes, int points)
        {
            Value = [.. Enumerable.Range(0, classes).Select(_ => Never(points))];
            Choice = [.. Enumerable.Range(0, classes).Select(_ => new (int, int, bool)[points])];
        }

        public double[][] Value { get; }

        public (int Class, int From, bool First)[][] Choice { get; }

        private static double[] Never(int points)
        {
            var values = new double[points];
            Array.Fill(values, double.NegativeInfinity);
            return values;
        }
    }

    /// <summary>The largest value put at any of the first so many places (P. M. Fenwick, Softw. Pract. Exper. 24 (1994) 327).</summary>
    private sealed class RunningMaxima(int places)
    {
        private readonly double[] value = new double[places];
        private readonly int[] best = new int[places + 1];

        public void Clear() => Array.Fill(best, -1);

        public double Value(int of) => value[of];

        public void Put(int place, int of, double worth)
        {
            value[of] = worth;
            for (int at = place + 1; at < best.Length; at += at & -at)
            {
                if (best[at] < 0 || value[best[at]] < worth)
                    best[at] = of;
            }
        }

        public int Best(int first)
        {
            int found = -1;
            for (int at = first; at > 0; at -= at & -at)
            {
                if (best[at] >= 0 && (found < 0 || value[best[at]] > value[found]))
                    found = best[at];
            }

            return found;
        }
    }
}
