namespace Cloveshed.Core.Sizes;

/// <summary>
/// Weights as the fit takes them: cells with a number of bulbs each. A cell is a single ln g (a bulb on a scale, or a tenth of a
/// gram) or an interval of ln g (a coarser count). What the sizer cannot see lies outside the seen range.
/// </summary>
/// <param name="Low">ln g of each cell's lower end.</param>
/// <param name="High">Its upper end; equal to Low for a single weight.</param>
/// <param name="Count">Bulbs in each, above 0.</param>
/// <param name="SeenFrom">ln g from which the sizer sees; -infinity: all.</param>
/// <param name="SeenTo">ln g up to which it sees; +infinity: all.</param>
public sealed record WeightCells(double[] Low, double[] High, double[] Count, double SeenFrom, double SeenTo)
{
    // Cells of a histogram closer than this in ln g are joined at their mean: far under any spread of a lot (error of a variance under 2e-6).
    private const double Near = 0.005;

    /// <summary>All bulbs.</summary>
    public double Bulbs => Count.Sum();

    /// <summary>Whether something is out of sight.</summary>
    public bool Truncated => !double.IsNegativeInfinity(SeenFrom) || !double.IsPositiveInfinity(SeenTo);

    /// <summary>Of single weights in grams, each above 0.</summary>
    public static WeightCells OfWeights(IReadOnlyList<double> grams) => OfWeights(grams, [.. Enumerable.Repeat(1.0, grams.Count)]);

    /// <summary>Of weights in grams that each occurred so often.</summary>
    public static WeightCells OfWeights(IReadOnlyList<double> grams, double[] counts)
    {
        double[] logs = [.. grams.Select(g => Math.Log(g))];
        return new(logs, logs, counts, double.NegativeInfinity, double.PositiveInfinity);
    }

    /// <summary>Of counts between limits in grams (one more than counts, rising; the first may be 0, the last infinite).</summary>
    public static WeightCells OfBins(IReadOnlyList<double> limitsG, IReadOnlyList<double> counts)
    {
        int[] held = [.. Enumerable.Range(0, counts.Count).Where(k => counts[k] > 0)];
        return new(
            [.. held.Select(k => Math.Log(limitsG[k]))], [.. held.Select(k => Math.Log(limitsG[k + 1]))], [.. held.Select(k => counts[k])],
            double.NegativeInfinity, double.PositiveInfinity);
    }

    /// <summary>Of a sizer's histogram; a bulb of 0.0 g is not one and is left out.</summary>
    public static WeightCells Of(WeightHistogram histogram)
    {
        var at = new List<double>();
        var count = new List<double>();
        double opened = double.NegativeInfinity, sum = 0, bulbs = 0;
        for (int cell = 1; cell < WeightHistogram.Cells; cell++)
        {
            long here = histogram[cell];
            if (here == 0)
                continue;
            double ln = Math.Log(cell / 10.0);
            if (ln - opened > Near)
            {
                Close();
                opened = ln;
            }

            sum += here * ln;
            bulbs += here;
        }

        Close();
        return new([.. at], [.. at], [.. count], double.NegativeInfinity, double.PositiveInfinity);

        void Close()
        {
            if (bulbs > 0)
            {
                at.Add(sum / bulbs);
                count.Add(bulbs);
            }

            (sum, bulbs) = (0, 0);
        }
    }

    /// <summary>The same cells, known to be all that lies between these weights.</summary>
    public WeightCells SeenBetween(double lowG, double highG) => this with { SeenFrom = Math.Log(lowG), SeenTo = Math.Log(highG) };
}
