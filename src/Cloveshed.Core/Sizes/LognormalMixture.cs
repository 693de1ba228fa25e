using Cloveshed.Core.Seasons;
using MathNet.Numerics;

namespace Cloveshed.Core.Sizes;

/// <summary>One kind of bulbs in a lot: its share by count, and mean and sd of ln g.</summary>
public readonly record struct LognormalPart(double Share, double Mu, double Sigma)
{
    /// <summary>Mean mass, g.</summary>
    public double MeanG => Math.Exp(Mu + Sigma * Sigma / 2);

    /// <summary>Coefficient of variation.</summary>
    public double Cv => Math.Sqrt(Math.Exp(Sigma * Sigma) - 1);
}

/// <summary>
/// Bulb weights as a mixture of lognormals. Shares of any window are closed: the first partial moment of a lognormal is a
/// lognormal of the same sigma with mu + sigma^2 (J. Aitchison and J. A. C. Brown, The Lognormal Distribution, 1957, from memory),
/// and a diameter window adds the residual variance of the mass law. Lower ends are included, upper ends are not.
/// </summary>
/// <param name="Parts">By rising mu; shares sum to 1.</param>
public sealed record LognormalMixture(IReadOnlyList<LognormalPart> Parts)
{
    /// <summary>Mean mass, g.</summary>
    public double MeanG => Parts.Sum(p => p.Share * p.MeanG);

    /// <summary>Coefficient of variation of the whole.</summary>
    public double Cv
    {
        get
        {
            double mean = MeanG, square = Parts.Sum(p => p.Share * Math.Exp(2 * p.Mu + 2 * p.Sigma * p.Sigma));
            return Math.Sqrt(Math.Max(0, square / (mean * mean) - 1));
        }
    }

    /// <summary>Share by count of bulbs of at least lowG and under highG (null: no upper end).</summary>
    public double CountShare(double lowG, double? highG) => CountAtLeast(lowG) - (highG is { } g ? CountAtLeast(g) : 0);

    /// <summary>Share by mass, likewise.</summary>
    public double MassShare(double lowG, double? highG) => MassAtLeast(lowG) - (highG is { } g ? MassAtLeast(g) : 0);

    /// <summary>Share by count of bulbs at least minMm and under maxMm wide.</summary>
    public double CountShare(MassLaw law, double minMm, double? maxMm) =>
        CountAtLeast(law, minMm) - (maxMm is { } mm ? CountAtLeast(law, mm) : 0);

    /// <summary>Share by mass, likewise.</summary>
    public double MassShare(MassLaw law, double minMm, double? maxMm) => MassAtLeast(law, minMm) - (maxMm is { } mm ? MassAtLeast(law, mm) : 0);

    /// <summary>Share by count at least this heavy.</summary>
    public double CountAtLeast(double g) => g <= 0 ? 1 : Parts.Sum(p => p.Share * Tail(Math.Log(g) - p.Mu, p.Sigma));

    /// <summary>Share by mass at least this heavy. Bands ask it tens of thousands of times for a page, so it makes nothing.</summary>
    public double MassAtLeast(double g)
    {
        if (g <= 0)
            return 1;
        double lnG = Math.Log(g), mass = 0, all = 0;
        for (int k = 0; k < Parts.Count; k++)
        {
            LognormalPart part = Parts[k];
            double here = part.Share * part.MeanG;
            all += here;
            mass += here * Tail(lnG - part.Mu - part.Sigma * part.Sigma, part.Sigma);
        }

        return mass / all;
    }

    /// <summary>Share by count at least this wide.</summary>
    public double CountAtLeast(MassLaw law, double mm) =>
        mm <= 0 ? 1 : Parts.Sum(p => p.Share * Tail(law.A + law.B * Math.Log(mm) - p.Mu, Joint(p, law)));

    /// <summary>Share by mass at least this wide.</summary>
    public double MassAtLeast(MassLaw law, double mm) =>
        mm <= 0 ? 1 : Parts.Sum(p => p.Share * p.MeanG * Tail(law.A + law.B * Math.Log(mm) - p.Mu - p.Sigma * p.Sigma, Joint(p, law))) / MeanG;

    /// <summary>The weight that this share of the bulbs, by count, lies under; by bisection to 1e-9 of ln g.</summary>
    public double Quantile(double share)
    {
        double low = Parts.Min(p => p.Mu - 9 * p.Sigma) - 1e-9, high = Parts.Max(p => p.Mu + 9 * p.Sigma) + 1e-9;
        while (high - low > 1e-9)
        {
            double middle = (low + high) / 2;
            if (1 - CountAtLeast(Math.Exp(middle)) < share)
                low = middle;
            else
                high = middle;
        }

        return Math.Exp((low + high) / 2);
    }

    private static double Joint(LognormalPart part, MassLaw law) => Math.Sqrt(part.Sigma * part.Sigma + law.S * law.S);

    // Probability that a normal of this sd lies at or above a point that is this far over its mean.
    private static double Tail(double distance, double sd) =>
        sd > 0 ? 0.5 * SpecialFunctions.Erfc(distance / (sd * Constants.Sqrt2)) : distance <= 0 ? 1 : 0;
}
