using Cloveshed.Check.Season;
using SpecialFunctions = MathNet.Numerics.SpecialFunctions;

namespace Cloveshed.Check.Rules;

/// <summary>
/// Shares by mass of bulbs or cloves in windows of mm, from the mean mass, its coefficient of variation and the mass law
/// ln g = a + b ln mm (residual s, of ln g).
/// With s1² = ln(1 + cv²) a lognormal mass has ln g ~ N(ln mean - s1²/2, s1²) by count; weighting by mass shifts it to
/// N(ln mean + s1²/2, s1²) (the first moment distribution of the lognormal). ln mm given ln g is N((ln g - a)/b, (s/b)²), so by mass
/// ln mm ~ N((ln mean + s1²/2 - a)/b, (s1² + s²)/b²).
/// </summary>
internal static class SizeCurve
{
    /// <summary>One share per window, null where the figures are not a size curve. Min is inclusive, max exclusive.</summary>
    public static double[]? Shares(double meanG, double cv, MassLaw law, IReadOnlyList<Window> windows)
    {
        if (!(meanG > 0) || !(cv >= 0) || !(law.B > 0))
        {
            return null;
        }

        double variance = Math.Log(1 + (cv * cv));
        double centre = (Math.Log(meanG) + (variance / 2) - law.A) / law.B;
        double spread = Math.Sqrt(variance + (law.S * law.S)) / law.B;
        double[] shares = [.. windows.Select(window => Below(window.Max, centre, spread) - Below(window.Min, centre, spread))];
        return Array.TrueForAll(shares, double.IsFinite) ? shares : null;
    }

    private static double Below(double? mm, double centre, double spread)
    {
        if (mm is not double limit)
        {
            return 1;
        }

        double ln = Math.Log(limit);
        return spread > 0 ? StandardNormal((ln - centre) / spread) : ln > centre ? 1 : 0;
    }

    /// <summary>The standard normal distribution function.</summary>
    public static double StandardNormal(double z) => SpecialFunctions.Erfc(-z / Math.Sqrt(2)) / 2;
}
