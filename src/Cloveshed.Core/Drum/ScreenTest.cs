using Cloveshed.Core.Sizes;
using MathNet.Numerics.LinearAlgebra;

namespace Cloveshed.Core.Drum;

/// <summary>How well a screen did, from what was sampled of its flows.</summary>
/// <param name="Effectiveness">Recovery of the wanted x rejection of the unwanted: not the same as recovery alone, which some call efficiency.</param>
/// <param name="OverPerFeed">Mass that went over, of each unit fed.</param>
public readonly record struct ScreenFound(double OverPerFeed, double Recovery, double Rejection, double Effectiveness);

/// <summary>Sampled flows of screens, and the Rosin-Rammler law of what is fed.</summary>
public static class ScreenTest
{
    /// <summary>
    /// One screen from three sampled shares of what should go over it: in the feed, in what went over, in what went through
    /// (W. L. McCabe, J. C. Smith and P. Harriott, Unit Operations of Chemical Engineering, from memory).
    /// </summary>
    public static ScreenFound OneScreen(double inFeed, double inOver, double inThrough)
    {
        double over = (inFeed - inThrough) / (inOver - inThrough), recovery = over * inOver / inFeed, rejection = 1 - over * (1 - inOver) / (1 - inFeed);
        return new(over, recovery, rejection, recovery * rejection);
    }

    /// <summary>
    /// Masses of a drum's outflows from what was sampled: they total the feed exactly, and each size's balance (outflows x shares = feed x
    /// its share) is met in least squares. Sampled shares seldom quite add up to one, so the last size is left to the total.
    /// </summary>
    /// <param name="feedMass">Mass fed.</param>
    /// <param name="feed">Its share of each size.</param>
    /// <param name="outflows">Share of each size in each outflow; no more outflows than sizes.</param>
    public static double[] Masses(double feedMass, IReadOnlyList<double> feed, IReadOnlyList<IReadOnlyList<double>> outflows)
    {
        int last = outflows.Count - 1;
        var balances = Matrix<double>.Build.Dense(feed.Count - 1, last, (size, flow) => outflows[flow][size] - outflows[last][size]);
        var fed = Vector<double>.Build.Dense(feed.Count - 1, size => feedMass * (feed[size] - outflows[last][size]));
        double[] masses = [.. balances.QR().Solve(fed)];
        return [.. masses, feedMass - masses.Sum()];
    }

    /// <summary>Rosin-Rammler: the share that stays on a screen of x is exp(-(x/x')^n) (P. Rosin and E. Rammler, J. Inst. Fuel 7 (1933) 29).</summary>
    public static double Retained(double x, double size, double spread) => Math.Exp(-Math.Pow(x / size, spread));

    /// <summary>Size x' and spread n from shares retained, by the line of ln(-ln R) on ln x; shares strictly between 0 and 1.</summary>
    public static (double Size, double Spread) FitRosinRammler(IReadOnlyList<double> x, IReadOnlyList<double> retained)
    {
        StraightLine line = StraightLine.Fit([.. x.Select(v => Math.Log(v))], [.. retained.Select(r => Math.Log(-Math.Log(r)))])
            ?? throw new ArgumentException("Two screens of different holes at least.", nameof(x));
        return (Math.Exp(-line.Intercept / line.Slope), line.Slope);
    }
}
