using Cloveshed.Core.Seasons;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Lots;

/// <summary>
/// Shares of a sample's mass by what it is fit for, and how many independent bulbs they are worth: (sum w)^2 / sum w^2,
/// since a share by mass of unlike bulbs is surer than one of a few heavy ones.
/// </summary>
public readonly record struct DefectSample(double Bulbs, double Fresh, double Crack, double Waste)
{
    /// <summary>
    /// No defect makes grade. Mould and decay are waste: they never become food or seed. Sprouted, shattered, bruised, bare
    /// or otherwise faulty bulbs fail grade but their cloves are sound: the cracker's. (Which call goes where is ours; the
    /// grade's own list of defects is USDA's, U.S. No. 1.)
    /// </summary>
    public static DefectSample Of(IEnumerable<SampleBulb> bulbs)
    {
        double fresh = 0, crack = 0, waste = 0, squares = 0;
        foreach (SampleBulb bulb in bulbs)
        {
            squares += bulb.WeightG * bulb.WeightG;
            if (bulb.Defect == Defect.None)
                fresh += bulb.WeightG;
            else if (bulb.Defect is Defect.Mold or Defect.Decay)
                waste += bulb.WeightG;
            else
                crack += bulb.WeightG;
        }

        double all = fresh + crack + waste;
        return all > 0 ? new(all * all / squares, fresh / all, crack / all, waste / all) : default;
    }
}

/// <summary>
/// Shares of fresh, crack and waste of many lots, pulled toward their variety's by a Dirichlet prior worth M bulbs; M by
/// the moment equation for proportions of unequal n (J. C. Kleinman, J. Amer. Stat. Assoc. 68 (1973) 46, from memory).
/// </summary>
/// <param name="VarietyBulbs">How many bulbs a variety's own shares are known by: lots differ, so fewer than were looked at.</param>
/// <param name="Strength">M: how many bulbs the variety's shares count for.</param>
/// <param name="Fitted">False: M is the default.</param>
public sealed record DefectPooling(DefectSample[] VarietyShares, double[] VarietyBulbs, double Strength, bool Fitted)
{
    private const int LeastSurplus = 3;
    private const double LeastStrength = 2, MostStrength = 5000;

    /// <param name="samples">At least one bulb each.</param>
    /// <param name="group">Group of each, 0 to groups - 1; every group has a member.</param>
    /// <param name="prior">Shares, and the bulbs that they count for, that every group's own are joined with, so that no share is ever 0 for want of bulbs.</param>
    public static DefectPooling Of(IReadOnlyList<DefectSample> samples, int[] group, int groups, DefectSample prior, double defaultStrength)
    {
        var shares = new DefectSample[groups];
        for (int g = 0; g < groups; g++)
        {
            double n = prior.Bulbs, fresh = n * prior.Fresh, crack = n * prior.Crack, waste = n * prior.Waste;
            for (int i = 0; i < group.Length; i++)
            {
                if (group[i] != g)
                    continue;
                DefectSample s = samples[i];
                n += s.Bulbs;
                fresh += s.Bulbs * s.Fresh;
                crack += s.Bulbs * s.Crack;
                waste += s.Bulbs * s.Waste;
            }

            shares[g] = new DefectSample(n, fresh / n, crack / n, waste / n);
        }

        bool fitted = group.Length - groups >= LeastSurplus;
        double strength = fitted ? Fit(samples, group, shares) : defaultStrength;
        // A lot's observed share varies by 1/(M + 1) between lots and by 1/n within one; the variety's is their mean.
        var bulbs = new double[groups];
        for (int i = 0; i < group.Length; i++)
            bulbs[group[i]] += 1 / (1 / (strength + 1) + 1 / samples[i].Bulbs);
        return new DefectPooling(shares, bulbs, strength, fitted);
    }

    /// <summary>
    /// The posterior: a lot's own sample (none: default) joined with M bulbs of its variety. Its bulbs are what the band rests on:
    /// fewer than the sum, since the variety's shares are not known exactly.
    /// </summary>
    public DefectSample Joined(int group, DefectSample own)
    {
        DefectSample v = VarietyShares[group];
        double n = Strength + own.Bulbs, pull = Strength / n;
        return new DefectSample(
            1 / (1 / n + pull * pull / VarietyBulbs[group]),
            (Strength * v.Fresh + own.Bulbs * own.Fresh) / n,
            (Strength * v.Crack + own.Bulbs * own.Crack) / n,
            (Strength * v.Waste + own.Bulbs * own.Waste) / n);
    }

    /// <summary>80% band of one share known as well as from this many bulbs: beta quantiles (with half a bulb each way it would be Jeffreys's).</summary>
    public static Band BandOf(double share, double bulbs)
    {
        double a = bulbs * share, b = bulbs - a;
        // Under a hundredth of a bulb either way the beta is a spike at its end.
        const double Spike = 0.01;
        if (a < Spike)
            return new Band(0, share);
        if (b < Spike)
            return new Band(share, 1);
        return new Band(Beta.InvCDF(a, b, 0.1), Beta.InvCDF(a, b, 0.9));
    }

    // Q = sum over lots and kinds of n (p - pooled)^2; its expectation is h [rho (N - sum n^2/N) + (1 - rho)(k - 1)] within
    // a variety, with h = sum of pooled (1 - pooled) and rho = 1/(M + 1).
    private static double Fit(IReadOnlyList<DefectSample> samples, int[] group, DefectSample[] shares)
    {
        double above = 0, below = 0;
        for (int g = 0; g < shares.Length; g++)
        {
            DefectSample v = shares[g];
            double h = v.Fresh * (1 - v.Fresh) + v.Crack * (1 - v.Crack) + v.Waste * (1 - v.Waste);
            double q = 0, n = 0, n2 = 0;
            int k = 0;
            for (int i = 0; i < group.Length; i++)
            {
                if (group[i] != g)
                    continue;
                DefectSample s = samples[i];
                double df = s.Fresh - v.Fresh, dc = s.Crack - v.Crack, dw = s.Waste - v.Waste;
                q += s.Bulbs * (df * df + dc * dc + dw * dw);
                n += s.Bulbs;
                n2 += s.Bulbs * s.Bulbs;
                k++;
            }

            if (k < 2 || h <= 0)
                continue;
            above += q / h - (k - 1);
            below += n - n2 / n - (k - 1);
        }

        double rho = below > 0 ? above / below : 0;
        return Math.Clamp(rho > 0 ? 1 / rho - 1 : MostStrength, LeastStrength, MostStrength);
    }
}
