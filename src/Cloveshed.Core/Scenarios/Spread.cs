using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Cloveshed.Core.Scenarios;

/// <summary>
/// A figure over many scenarios: one in ten lies below P10, one in ten above P90 (quantiles by straight lines between order
/// statistics, definition 7 of R. J. Hyndman and Y. Fan, Am. Statist. 50 (1996) 361), its mean, and the mean of its worst tenth.
/// </summary>
public sealed record Spread(double P10, double P50, double P90, double Mean, double WorstTenth)
{
    /// <summary>Of one value for each scenario, at least one; the lowest are the worst.</summary>
    public static Spread Of(IReadOnlyCollection<double> values)
    {
        if (values.Count == 0) throw new ArgumentException("There is no spread of no values.", nameof(values));
        double[] sorted = [.. values.Order()];
        double At(double p) => SortedArrayStatistics.QuantileCustom(sorted, p, QuantileDefinition.R7);
        return new(At(0.1), At(0.5), At(0.9), sorted.Average(), WorstMean(sorted, 0.1));
    }

    /// <summary>
    /// Mean of the worst part of equally likely values: conditional value at risk, the value at the edge counted by the share of it that
    /// lies within (R. T. Rockafellar and S. Uryasev, J. Banking and Finance 26 (2002) 1443, proposition 8, from memory).
    /// </summary>
    /// <param name="sorted">Lowest first.</param>
    /// <param name="part">Above 0, at most 1.</param>
    public static double WorstMean(IReadOnlyList<double> sorted, double part)
    {
        if (!(part is > 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(part), part, "A part of the values is above 0 and at most 1.");
        double left = part * sorted.Count, sum = 0;
        for (int k = 0; k < sorted.Count && left > 0; k++)
        {
            double weight = Math.Min(1, left);
            sum += weight * sorted[k];
            left -= weight;
        }
        return sum / (part * sorted.Count);
    }
}

/// <summary>
/// By how much one plan does better than another over the same scenarios, with the 95% interval of the mean difference: the paired t
/// interval (Student, Biometrika 6 (1908) 1).
/// </summary>
public sealed record PairedDifference(double Mean, double Low95, double High95, double ShareBetter)
{
    /// <summary>Of the two values of each scenario, in one order; at least two scenarios.</summary>
    public static PairedDifference Of(IReadOnlyList<double> one, IReadOnlyList<double> other)
    {
        if (one.Count != other.Count || one.Count < 2) throw new ArgumentException("Two or more pairs make a difference.", nameof(one));
        double[] differences = [.. one.Zip(other, (a, b) => a - b)];
        double mean = differences.Average(), half = StudentT.InvCDF(0, 1, differences.Length - 1, 0.975) * Statistics.StandardDeviation(differences) / Math.Sqrt(differences.Length);
        return new(mean, mean - half, mean + half, differences.Count(d => d > 0) / (double)differences.Length);
    }
}
