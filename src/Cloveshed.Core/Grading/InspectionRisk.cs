using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Grading;

/// <summary>How an inspector looks: so many pounds of a lot's packs, and the share that may be found wrong.</summary>
/// <param name="Kilograms">Looked at.</param>
/// <param name="Tolerance">By weight.</param>
public sealed record Inspection(double Kilograms, double Tolerance);

/// <summary>
/// The risk that packs with a true share of wrong bulbs are refused, and what share may be packed for a risk. The sample is
/// kilograms over mean mass bulbs; a share by weight of unlike bulbs is as sure as one of bulbs / (1 + cv^2) alike ones, each wrong or
/// right by itself (binomial).
/// </summary>
public static class InspectionRisk
{
    /// <summary>Bulbs, as if alike, in the inspector's sample; at least one.</summary>
    public static int Bulbs(Inspection inspection, double meanG, double cv) =>
        (int)Math.Max(1, Math.Round(inspection.Kilograms * 1000 / meanG / (1 + cv * cv), MidpointRounding.ToEven));

    /// <summary>Probability that more than the tolerance is found wrong.</summary>
    public static double Refused(Inspection inspection, double wrongShare, double meanG, double cv)
    {
        if (wrongShare <= 0)
            return 0;
        int n = Bulbs(inspection, meanG, cv), allowed = (int)Math.Floor(inspection.Tolerance * n + 1e-9);
        return wrongShare >= 1 ? (allowed >= n ? 0 : 1) : 1 - Binomial.CDF(wrongShare, n, allowed);
    }

    /// <summary>The largest true share that is refused no more often than this; by halving, to 1e-9.</summary>
    public static double MostWrong(Inspection inspection, double risk, double meanG, double cv)
    {
        double low = 0, high = 1;
        if (Refused(inspection, 1, meanG, cv) <= risk)
            return 1;
        while (high - low > 1e-9)
        {
            double middle = (low + high) / 2;
            if (Refused(inspection, middle, meanG, cv) <= risk)
                low = middle;
            else
                high = middle;
        }

        return low;
    }
}
