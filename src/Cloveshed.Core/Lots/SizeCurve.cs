using Cloveshed.Core.Seasons;
using MathNet.Numerics;

namespace Cloveshed.Core.Lots;

/// <summary>
/// What is in a lot: piece mass lognormal with this mean (g) and coefficient of variation. With sigma^2 = ln(1 + cv^2)
/// and mu = ln mean - sigma^2/2, ln g ~ N(mu, sigma^2) by count and N(mu + sigma^2, sigma^2) by mass (the first partial
/// moment of a lognormal is a lognormal of the same sigma, shifted). Diameter given mass is normal in ln mm with mean
/// (ln g - a)/b and sd s/b, so a window of diameter is a difference of two normal distribution functions.
/// </summary>
public readonly record struct SizeCurve(double MeanG, double Cv)
{
    /// <summary>Variance of ln g.</summary>
    public double SigmaSquared => Math.Log(1 + Cv * Cv);

    /// <summary>Mean of ln g by count.</summary>
    public double Mu => Math.Log(MeanG) - SigmaSquared / 2;

    /// <summary>The curve of given mean and variance of ln g.</summary>
    public static SizeCurve OfLogs(double mu, double sigmaSquared) =>
        new(Math.Exp(mu + sigmaSquared / 2), Math.Sqrt(Math.Exp(sigmaSquared) - 1));

    /// <summary>Share by mass of the pieces of [minMm, maxMm); maxMm null: no upper bound.</summary>
    public double MassShare(MassLaw law, double minMm, double? maxMm) =>
        Share(Mu + SigmaSquared, law, minMm, maxMm);

    /// <summary>Share by count of the pieces of [minMm, maxMm); maxMm null: no upper bound.</summary>
    public double CountShare(MassLaw law, double minMm, double? maxMm) => Share(Mu, law, minMm, maxMm);

    private double Share(double meanLnG, MassLaw law, double minMm, double? maxMm)
    {
        double mean = (meanLnG - law.A) / law.B;
        double sd = Math.Sqrt(SigmaSquared + law.S * law.S) / law.B;
        double above = AtLeast(minMm, mean, sd);
        return maxMm is { } max ? Math.Max(0, above - AtLeast(max, mean, sd)) : above;
    }

    // The upper tail: a class is the difference of two of these, and shares of contiguous classes telescope exactly.
    private static double AtLeast(double mm, double mean, double sd)
    {
        if (mm <= 0)
            return 1;
        double distance = Math.Log(mm) - mean;
        // A point mass belongs to the class whose lower limit it meets: min is inclusive, max is not.
        return sd > 0 ? 0.5 * SpecialFunctions.Erfc(distance / (sd * Constants.Sqrt2)) : distance <= 0 ? 1 : 0;
    }
}
