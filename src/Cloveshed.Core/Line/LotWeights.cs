using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Line;

/// <summary>Where a lot's curve of weights is from, as the sizer is set by it.</summary>
public enum WeightsFrom
{
    /// <summary>The lot's mean and spread as known, on a lognormal: too few of its bulbs were weighed for a form of its own.</summary>
    Law,

    /// <summary>The form of its own weighed bulbs, brought to the mean and spread that are known of it.</summary>
    Sample,

    /// <summary>What the sizer counted of it, moved to what the bins left are believed to hold.</summary>
    Sizer,
}

/// <summary>What the sizer is asked about.</summary>
/// <param name="Known">Mean and spread as pooled with variety and season, without what the sizer saw.</param>
/// <param name="Bulbs">The lot's sampled bulbs, as called.</param>
/// <param name="VarietyLaw">Mass and diameter where too few of the lot's bulbs have both.</param>
/// <param name="Seen">The sizer's counts; null: none, or not to be used.</param>
/// <param name="BinsRun">That they came out of.</param>
/// <param name="BinsLeft">Standing.</param>
/// <param name="Draws">Curves to simulate for the bands.</param>
/// <param name="Seed">Of the simulation.</param>
public sealed record LotWeightsQuestion(
    LotKnowledge Known, IReadOnlyList<SampleBulb> Bulbs, MassLaw VarietyLaw, WeightHistogram? Seen, int BinsRun, int BinsLeft, int Draws, long Seed)
{
    /// <summary>Enough that the ends of an 80% band are sure to about 3 in 100 of its share, and fast enough to follow a hand.</summary>
    public const int UsualDraws = 200;
}

/// <summary>A lot's weights: the curve, how weight goes with diameter, and other curves that it may be.</summary>
/// <param name="Law">With the bulbs that look odd.</param>
/// <param name="Drawn">Curves drawn from what is believed of the lot.</param>
public sealed record LotWeights(WeightsFrom From, LognormalMixture Curve, MassLawFit Law, IReadOnlyList<LognormalMixture> Drawn)
{
    /// <summary>80% band of the share by mass from one weight to another (infinite: no end); the curve's own share is always in it.</summary>
    public Band Share80(double fromG, double toG) => Shares80([fromG, toG])[0];

    /// <summary>The same of each window between two neighbours of rising weights: each drawn curve is asked once a weight.</summary>
    /// <param name="edgesG">g; the last may be infinite.</param>
    public Band[] Shares80(IReadOnlyList<double> edgesG)
    {
        double[] own = Between(Curve, edgesG);
        double[][] drawn = [.. Drawn.Select(curve => Between(curve, edgesG))];
        return [.. own.Select((share, k) => Band80(share, [.. drawn.Select(shares => shares[k])]))];
    }

    /// <summary>Shares by mass of a curve between neighbours of rising weights, g.</summary>
    internal static double[] Between(LognormalMixture curve, IReadOnlyList<double> edgesG)
    {
        double[] shares = new double[Math.Max(0, edgesG.Count - 1)];
        double above = edgesG.Count == 0 ? 0 : curve.MassAtLeast(edgesG[0]);
        for (int k = 0; k < shares.Length; k++)
        {
            double next = double.IsPositiveInfinity(edgesG[k + 1]) ? 0 : curve.MassAtLeast(edgesG[k + 1]);
            shares[k] = Math.Max(0, above - next);
            above = next;
        }

        return shares;
    }

    /// <summary>The middle eight tenths of what was drawn, widened to hold the figure itself. Sorts what it is given.</summary>
    internal static Band Band80(double own, double[] drawn)
    {
        Array.Sort(drawn);
        return drawn.Length == 0 ? new(own, own) : new(Math.Min(own, Quantile(drawn, 0.1)), Math.Max(own, Quantile(drawn, 0.9)));
    }

    private static double Quantile(double[] sorted, double p) =>
        MathNet.Numerics.Statistics.SortedArrayStatistics.QuantileCustom(sorted, p, MathNet.Numerics.Statistics.QuantileDefinition.R5);
}
