using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Cloveshed.Core.Lots;

/// <summary>
/// The shape of a variety's bulb weights: 64 equally likely values of (ln g - mean)/sd, with mean 0 and variance 1. Fields hold
/// plants that stayed small beside the main crop, so ln g is seldom quite normal; many lots of a variety together show it.
/// </summary>
public sealed record BulbShape(double[] Z, bool IsNormal)
{
    private const int Points = 64;

    // A lot of fewer bulbs tells its own mean and spread, hardly a shape beyond them.
    private const int FewestBulbs = 20;

    private static readonly double[] NormalZ = Standard([.. Enumerable.Range(0, Points).Select(k => Normal.InvCDF(0, 1, (k + 0.5) / Points))]);

    /// <summary>ln g normal: the lognormal law.</summary>
    public static BulbShape OfNormal { get; } = new(NormalZ, true);

    /// <summary>
    /// The shape that these lots' ln weights have together, each lot brought to its own mean and sd; quantiles averaged with
    /// the normal's, which counts for `normalBulbs` bulbs.
    /// </summary>
    public static BulbShape Of(IEnumerable<double[]> lots, double normalBulbs)
    {
        double[] pooled = [.. lots.Where(l => l.Length >= FewestBulbs).SelectMany(Standard)];
        if (pooled.Length == 0)
            return OfNormal;
        Array.Sort(pooled);
        double trust = pooled.Length / (pooled.Length + normalBulbs);
        var z = new double[Points];
        for (int k = 0; k < Points; k++)
            z[k] = trust * SortedArrayStatistics.QuantileCustom(pooled, (k + 0.5) / Points, QuantileDefinition.R5) + (1 - trust) * NormalZ[k];
        return new BulbShape(Standard(z), false);
    }

    /// <summary>Skewness of ln g.</summary>
    public double Skewness => SkewnessOf(Z);

    /// <summary>
    /// A little more skewed by so much: the first term of the expansion of a skewed quantile about a normal's (E. A. Cornish and R. A. Fisher,
    /// Rev. Inst. Int. Statist. 5 (1938) 307), brought back to mean 0 and variance 1.
    /// </summary>
    public BulbShape Skewed(double by) => by == 0 ? this : new(Standard([.. Z.Select(z => z + by / 6 * (z * z - 1))]), false);

    /// <summary>Third central moment over the cube of the sd; 0 of values all alike.</summary>
    internal static double SkewnessOf(double[] x) => Standard(x).Average(z => z * z * z);

    private static double[] Standard(double[] x)
    {
        double mean = x.Average();
        double sd = Math.Sqrt(x.Sum(v => (v - mean) * (v - mean)) / x.Length);
        return sd > 0 ? [.. x.Select(v => (v - mean) / sd)] : new double[x.Length];
    }
}
