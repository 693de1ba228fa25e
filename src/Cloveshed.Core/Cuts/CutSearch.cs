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
    private readonly Dictionary<(int, int), Ranks> ranks = [];

    /// <summary>Boxes as (class, last class, first point), small to large, and the point at which the top is taken off.</summary>
    public (IReadOnlyList<(int Class, int Last, int From)> Boxes, int End, double Value) Best(int mostOutlets)
    {
        if (mostOutlets >= classes)
        {
            // More boxes than classes there cannot be: one layer for any number of them.
            Layer any = Fill(null, true);
            return Read([any], any, mostOutlets);
        }

        var layers = new List<Layer>();
        for (int k = 0; k < mostOutlets; k++)
            layers.Add(Fill(k == 0 ? null : layers[k - 1], false));
        return Read(layers, null, mostOutlets);
    }

    private (IReadOnlyList<(int Class, int Last, int From)>, int End, double Value) Read(List<Layer> layers, Layer? any, int mostOutlets)
    {
        (int Layer, int End, double Value) best = (-1, points - 1, 0);
        for (int k = 0; k < layers.Count; k++)
        {
            double[] top = layers[k].Value[classes - 1];
            for (int j = topIsOpen ? points - 1 : 0; j < points; j++)
            {
                // A further box must earn something, or it isn't worth its outlet.
                if (top[j] > best.Value + 1e-12)
                    best = (k, j, top[j]);
            }
        }

        var boxes = new List<(int, int, int)>();
        for (int k = best.Layer, e = classes - 1, j = best.End; k >= 0; k -= any is null ? 1 : 0)
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
    private Layer Fill(Layer? before, bool anyNumber)
    {
        var layer = new Layer(classes, points);
        var tree = new RunningMaxima(points);
        double[] mass = table.Mass;
        for (int c = 0; c < classes; c++)
        {
            // With one layer, what ends with the class below is complete when this class's turn comes.
            double[]? earlier = c == 0 ? null : anyNumber ? layer.Value[c - 1] : before?.Value[c - 1];
            double price = prices[c];
            for (int e = c; e < classes; e++)
            {
                (int[] holding, int[] place) = RanksOf(c, e);
                double[] value = layer.Value[e];
                tree.Clear();
                for (int j = 0; j < points; j++)
                {
                    if (tree.Best(holding[j]) is var i and >= 0)
                    {
                        double worth = tree.Value(i) + price * mass[j];
                        if (worth > value[j])
                        {
                            value[j] = worth;
                            layer.Choice[e][j] = (c, i, earlier is null || earlier[i] <= 0);
                        }
                    }

                    double start = earlier is null ? 0 : Math.Max(0, earlier[j]);
                    tree.Put(place[j], j, start - price * mass[j]);
                }
            }
        }

        return layer;
    }

    // Of each grid point: how many places of the tree hold it as a box's end, and its own place; by falling H.
    private Ranks RanksOf(int c, int e)
    {
        if (ranks.TryGetValue((c, e), out Ranks known))
            return known;
        double t = tolerance(c, e);
        double[] wide = table.Wide[c], over = table.Wide[e + 1], sorted = new double[points];
        int[] order = new int[points], holding = new int[points], place = new int[points];
        for (int p = 0; p < points; p++)
        {
            sorted[p] = -((1 - t) * table.Mass[p] - wide[p] + over[p]);
            order[p] = p;
        }

        Array.Sort(sorted, order);
        for (int k = 0, reach = 0; k < points; k++)
        {
            while (reach < points && sorted[reach] <= sorted[k] + Rounding)
                reach++;
            place[order[k]] = k;
            holding[order[k]] = reach;
        }

        return ranks[(c, e)] = new(holding, place);
    }

    private readonly record struct Ranks(int[] Holding, int[] Place);

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
