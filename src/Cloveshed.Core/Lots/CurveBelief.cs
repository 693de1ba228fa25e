using Cloveshed.Core.Seasons;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Lots;

/// <summary>
/// How sure we are of a lot's size curve: ln mean or mean ln g normal with a variance, variance of ln g scaled
/// inverse chi-square with degrees of freedom. Bands of shares come from 128 fixed points spread evenly over both, so the
/// same question always has the same answer.
/// </summary>
/// <param name="Centre">Of <see cref="OfMean"/>: ln of mean g, else mean of ln g.</param>
/// <param name="Variance">Of the centre.</param>
/// <param name="SigmaSquared">Variance of ln g.</param>
/// <param name="Freedom">How many degrees of freedom that is known by.</param>
public readonly record struct CurveBelief(bool OfMean, double Centre, double Variance, double SigmaSquared, double Freedom)
{
    private const int Points = 128;
    private static readonly (double Mean, double Spread)[] Normals = Spread();

    /// <summary>The best single curve.</summary>
    public SizeCurve Curve =>
        OfMean ? SizeCurve.OfLogs(Centre - SigmaSquared / 2, SigmaSquared) : SizeCurve.OfLogs(Centre, SigmaSquared);

    /// <summary>80% band of the mean (first) and of each class's share by mass.</summary>
    public (Band Mean, Band[] Classes) Bands(MassLaw law, IReadOnlyList<SizeClass> sizes)
    {
        var means = new double[Points];
        var shares = new double[sizes.Count][];
        for (int c = 0; c < sizes.Count; c++)
            shares[c] = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            SizeCurve curve = At(Normals[i].Mean, Normals[i].Spread);
            means[i] = curve.MeanG;
            for (int c = 0; c < sizes.Count; c++)
                shares[c][i] = curve.MassShare(law, sizes[c].MinMm, sizes[c].MaxMm);
        }

        return (Middle80(means), [.. shares.Select(Middle80)]);
    }

    // Wilson and Hilferty's cube for the chi-square quantile; error under 1% for 3 or more degrees of freedom.
    private SizeCurve At(double zMean, double zSpread)
    {
        double t = 2 / (9 * Math.Max(3, Freedom));
        double root = 1 - t + zSpread * Math.Sqrt(t);
        double sigmaSquared = SigmaSquared / (root * root * root);
        double centre = Centre + zMean * Math.Sqrt(Variance);
        return SizeCurve.OfLogs(OfMean ? centre - sigmaSquared / 2 : centre, sigmaSquared);
    }

    // Linear between order statistics, at (i + 1/2)/n as the points are laid.
    private static Band Middle80(double[] values)
    {
        Array.Sort(values);
        return new Band(Quantile(values, 0.1), Quantile(values, 0.9));
    }

    private static double Quantile(double[] sorted, double p)
    {
        double at = p * sorted.Length - 0.5;
        int left = (int)at;
        return sorted[left] + (at - left) * (sorted[left + 1] - sorted[left]);
    }

    // A rank-1 lattice whose first coordinate is exactly even (M. Roberts's additive recurrence gives the second).
    private static (double, double)[] Spread()
    {
        const double InverseGolden = 0.6180339887498949;
        var points = new (double, double)[Points];
        for (int i = 0; i < Points; i++)
        {
            double u = (i + 0.5) / Points, v = (0.5 + i * InverseGolden) % 1;
            points[i] = (Normal.InvCDF(0, 1, u), Normal.InvCDF(0, 1, v));
        }

        return points;
    }
}
