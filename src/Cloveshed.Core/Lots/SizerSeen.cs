using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Lots;

/// <summary>What the sizer saw of a lot of which part is still standing.</summary>
/// <param name="Before">Mean of ln g as believed before.</param>
/// <param name="Seen">The sizer's counts of the bins run.</param>
/// <param name="BinsRun">At least one.</param>
/// <param name="BinsLeft">Still standing.</param>
/// <param name="BetweenBinSd">Sd of ln g between bins of one lot: a field is not the same from end to end.</param>
public sealed record SizerSeenQuestion(MeanBelief Before, WeightHistogram Seen, int BinsRun, int BinsLeft, double BetweenBinSd = SizerSeen.UsualBetweenBinSd);

/// <summary>What is left, as it is now believed.</summary>
/// <param name="Curve">The seen bins' curve, moved to the mean that the rest is believed to have.</param>
/// <param name="Mean">Mean of ln g of the bins left.</param>
/// <param name="Lot">Of the whole lot.</param>
/// <param name="BulbsWorth">Bulbs of a fair sample of the whole lot that would tell its mean as well: far fewer than the sizer weighed.</param>
public sealed record SizerSeenAnswer(LognormalMixture Curve, MeanBelief Mean, MeanBelief Lot, double BulbsWorth);

/// <summary>What a sizer's counts tell of a lot as a whole.</summary>
/// <param name="Mean">Of ln g of what it saw.</param>
/// <param name="Error">Variance of that mean as the lot's.</param>
/// <param name="Within">Variance of ln g of what it saw.</param>
/// <param name="Worth">Bulbs of a fair sample of the lot that would tell its mean as well.</param>
/// <param name="BinsRun">Bins that the bulbs came out of.</param>
internal sealed record SizerTold(WeightCells Cells, double Mean, double Error, double Within, double Worth, int BinsRun);

/// <summary>
/// Brings a lot up to date by what the sizer saw in part of it. The sizer weighs every bulb, so that its own error is nothing; what
/// remains is that bins differ. Seen mean ~ N(lot, tau^2/bins run + s^2/n), bins left ~ N(lot, tau^2/bins left).
/// </summary>
public static class SizerSeen
{
    /// <summary>Our default, no published value; a shed with a few sized lots can do better.</summary>
    public const double UsualBetweenBinSd = 0.05;

    /// <summary>The answer; the sizer must have seen a bulb.</summary>
    public static SizerSeenAnswer Update(SizerSeenQuestion q)
    {
        SizerTold told = Told(q.Seen, q.BinsRun, q.BetweenBinSd) ?? throw new ArgumentException("The sizer saw no bulb.", nameof(q));
        MeanBelief lot = q.Before.With(told.Mean, told.Error), left = Left(lot, q.BinsLeft, q.BetweenBinSd);
        LognormalMixture curve = MixtureFit.Usual(told.Cells).Curve;
        double moved = left.Mean - told.Mean;
        return new(new([.. curve.Parts.Select(p => p with { Mu = p.Mu + moved })]), left, lot, told.Worth);
    }

    /// <summary>What the counts tell; null of no bulb.</summary>
    internal static SizerTold? Told(WeightHistogram seen, int binsRun, double betweenBinSd)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(binsRun, 1);
        WeightCells cells = WeightCells.Of(seen);
        Moments logs = default;
        for (int i = 0; i < cells.Count.Length; i++)
            logs.Add(cells.Low[i], cells.Count[i]);
        if (logs.Count == 0)
            return null;
        double within = Math.Max(logs.Count > 1 ? logs.Sd * logs.Sd : 0, MixtureFit.LeastSigma * MixtureFit.LeastSigma);
        double error = betweenBinSd * betweenBinSd / binsRun + within / logs.Count;
        return new(cells, logs.Mean, error, within, within / error, binsRun);
    }

    /// <summary>The bins that still stand, of a lot so believed.</summary>
    internal static MeanBelief Left(MeanBelief lot, double binsLeft, double betweenBinSd) =>
        binsLeft > 0 ? lot with { Variance = lot.Variance + betweenBinSd * betweenBinSd / binsLeft } : lot;
}
