using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Drum;

/// <summary>How a lot's clove mass lies over width: the width at which a clove passes a round hole. Shares sum to 1.</summary>
public sealed record CloveWidths(double[] WidthMm, double[] Share)
{
    // Cells of ln width; a hundredth of a typical spread.
    private const double Step = 0.004;

    // Beyond this many sds of the kernel nothing is left.
    private const double Reach = 4.5;

    /// <summary>
    /// Of sampled cloves: each is spread by a normal kernel in ln width (B. W. Silverman, Density Estimation, 1986, eq. 3.31), shrunk
    /// toward the mean so that the spread of all stays what it is; a clove that was weighed only, by the law's own scatter.
    /// </summary>
    /// <param name="cloves">Weight, or width, or both; a width alone is weighed by the law, a weight alone is measured by it.</param>
    public static CloveWidths OfSample(IReadOnlyList<(double? WeightG, double? WidthMm, long Count)> cloves, MassLaw law)
    {
        Moments logs = default;
        var points = new (double Ln, double Mass, bool Measured)[cloves.Count];
        for (int i = 0; i < points.Length; i++)
        {
            (double? g, double? mm, long count) = cloves[i];
            double ln = mm is { } width ? Math.Log(width) : (Math.Log(g!.Value) - law.A) / law.B;
            double mass = count * (g ?? Math.Exp(law.A + law.B * ln));
            points[i] = (ln, mass, mm is not null);
            logs.Add(ln, count);
        }

        double sd = logs.Count > 1 ? logs.Sd : 0, scatter = law.S / law.B;
        double kernel = Math.Max(Step, 0.9 * sd * Math.Pow(Math.Max(1, logs.Count), -0.2));
        double shrink = sd > kernel ? Math.Sqrt(1 - kernel * kernel / (sd * sd)) : 0;
        double low = points.Min(p => p.Ln) - Reach * Math.Max(kernel, scatter), high = points.Max(p => p.Ln) + Reach * Math.Max(kernel, scatter);
        var mean = logs.Mean;
        return Gather(low, high, points.Select(p => p.Measured
            ? (mean + shrink * (p.Ln - mean), kernel, p.Mass)
            : (p.Ln, Math.Max(Step, scatter), p.Mass)));
    }

    /// <summary>
    /// From bulbs: clove mass is the bulb's x kept share / cloves per bulb on average, with its own spread, as in the season's files.
    /// </summary>
    public static CloveWidths OfBulbs(double bulbG, double keptShare, double clovesPerBulb, double cloveCv, MassLaw law)
    {
        SizeCurve curve = new(bulbG * keptShare / clovesPerBulb, cloveCv);
        double mean = (curve.Mu + curve.SigmaSquared - law.A) / law.B, sd = Math.Max(Step, Math.Sqrt(curve.SigmaSquared + law.S * law.S) / law.B);
        return Gather(mean - Reach * sd, mean + Reach * sd, [(mean, sd, 1.0)]);
    }

    /// <summary>The width under which this share of the mass lies.</summary>
    public double Quantile(double share)
    {
        double before = 0;
        for (int i = 0; i < Share.Length; i++)
        {
            if (before + Share[i] >= share && Share[i] > 0)
                return WidthMm[i] * Math.Exp(Step * ((share - before) / Share[i] - 0.5));
            before += Share[i];
        }

        return WidthMm[^1];
    }

    /// <summary>Share of the mass at least from and under to (null: no upper end) wide.</summary>
    public double Between(double fromMm, double? toMm)
    {
        double sum = 0;
        for (int i = 0; i < Share.Length; i++)
            sum += Share[i] * Inside(WidthMm[i], fromMm, toMm);
        return sum;
    }

    /// <summary>How much of the cell at this width lies within a window, by ln width.</summary>
    internal static double Inside(double widthMm, double fromMm, double? toMm)
    {
        double ln = Math.Log(widthMm), low = ln - Step / 2, high = ln + Step / 2;
        double from = fromMm > 0 ? Math.Max(low, Math.Log(fromMm)) : low, to = toMm is { } top ? Math.Min(high, Math.Log(top)) : high;
        return Math.Max(0, to - from) / Step;
    }

    private static CloveWidths Gather(double low, double high, IEnumerable<(double Ln, double Sd, double Mass)> kernels)
    {
        int cells = (int)Math.Ceiling((high - low) / Step) + 1;
        var share = new double[cells];
        foreach ((double ln, double sd, double mass) in kernels)
        {
            int from = Math.Max(0, (int)((ln - Reach * sd - low) / Step)), to = Math.Min(cells - 1, (int)((ln + Reach * sd - low) / Step) + 1);
            double sum = 0;
            for (int i = from; i <= to; i++)
                sum += Math.Exp(-0.5 * Math.Pow((low + (i + 0.5) * Step - ln) / sd, 2));
            for (int i = from; i <= to; i++)
                share[i] += mass * Math.Exp(-0.5 * Math.Pow((low + (i + 0.5) * Step - ln) / sd, 2)) / sum;
        }

        double all = share.Sum();
        return new([.. Enumerable.Range(0, cells).Select(i => Math.Exp(low + (i + 0.5) * Step))], [.. share.Select(s => s / all)]);
    }
}
