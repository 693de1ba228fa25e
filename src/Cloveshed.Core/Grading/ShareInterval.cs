using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Grading;

/// <summary>A share and the interval that holds the true one with some confidence.</summary>
public readonly record struct ShareInterval(double Share, double Low, double High)
{
    /// <summary>
    /// E. B. Wilson, J. Amer. Stat. Assoc. 22 (1927) 209. Faulty and all may be fractional (a sample by mass is worth so many bulbs).
    /// </summary>
    public static ShareInterval Wilson(double faulty, double all, double confidence)
    {
        Check(faulty, all, confidence);
        if (all == 0)
            return new(0, 0, 1);
        double z = Normal.InvCDF(0, 1, (1 + confidence) / 2), p = faulty / all, z2 = z * z / all;
        double centre = (p + z2 / 2) / (1 + z2), half = z * Math.Sqrt(p * (1 - p) / all + z2 / (4 * all)) / (1 + z2);
        return new(p, p <= 0 ? 0 : Math.Max(0, centre - half), p >= 1 ? 1 : Math.Min(1, centre + half));
    }

    /// <summary>
    /// Exact: C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404, by beta quantiles. Never holds less than asked, mostly more.
    /// </summary>
    public static ShareInterval Exact(double faulty, double all, double confidence)
    {
        Check(faulty, all, confidence);
        if (all == 0)
            return new(0, 0, 1);
        double tail = (1 - confidence) / 2;
        return new(
            faulty / all,
            faulty <= 0 ? 0 : Beta.InvCDF(faulty, all - faulty + 1, tail),
            faulty >= all ? 1 : Beta.InvCDF(faulty + 1, all - faulty, 1 - tail));
    }

    private static void Check(double faulty, double all, double confidence)
    {
        if (!(faulty >= 0 && faulty <= all))
            throw new ArgumentOutOfRangeException(nameof(faulty), faulty, "From 0 to as many as were looked at.");
        if (confidence is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "Between 0 and 1.");
    }
}
