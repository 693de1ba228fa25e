using MathNet.Numerics;

namespace Cloveshed.Core.Lots;

/// <summary>
/// Variances of many groups' members, pulled toward their group's as if each group had been observed for d0 more degrees
/// of freedom. G. K. Smyth, "Linear models and empirical Bayes methods", Stat. Appl. Genet. Mol. Biol. 3 (2004) 3
/// (formulas from memory): ln s^2 less its bias is compared with what chance alone gives, by trigamma.
/// </summary>
/// <param name="Variances">Per member, pulled.</param>
/// <param name="Freedom">Per member: its own degrees of freedom and d0.</param>
/// <param name="GroupVariances">Per group: the variance of a member not seen.</param>
/// <param name="Prior">d0.</param>
/// <param name="Fitted">False: d0 is the default.</param>
public sealed record SpreadPooling(double[] Variances, double[] Freedom, double[] GroupVariances, double Prior, bool Fitted)
{
    private const int LeastSurplus = 3;

    // d0 where members differ by no more than chance: as good as equal.
    private const double MostPrior = 500;

    /// <param name="s2">Estimates, positive.</param>
    /// <param name="freedom">Their degrees of freedom, at least 1.</param>
    /// <param name="group">Group of each, 0 to groups - 1; every group has a member.</param>
    public static SpreadPooling Of(double[] s2, double[] freedom, int[] group, int groups, double defaultPrior)
    {
        int k = s2.Length, surplus = k - groups;
        var level = new double[groups];
        var members = new int[groups];
        var e = new double[k];
        for (int i = 0; i < k; i++)
        {
            e[i] = Math.Log(s2[i]) - SpecialFunctions.DiGamma(freedom[i] / 2) + Math.Log(freedom[i] / 2);
            level[group[i]] += e[i];
            members[group[i]]++;
        }

        for (int g = 0; g < groups; g++)
            level[g] /= members[g];

        bool fitted = surplus >= LeastSurplus;
        double prior = defaultPrior;
        if (fitted)
        {
            double spread = 0, chance = 0;
            for (int i = 0; i < k; i++)
            {
                spread += (e[i] - level[group[i]]) * (e[i] - level[group[i]]);
                chance += Trigamma(freedom[i] / 2);
            }

            double real = spread / surplus - chance / k;
            prior = real > 0 ? Math.Min(MostPrior, 2 * TrigammaInverse(real)) : MostPrior;
        }

        double bias = SpecialFunctions.DiGamma(prior / 2) - Math.Log(prior / 2);
        double[] typical = [.. level.Select(l => Math.Exp(l + bias))];
        var variances = new double[k];
        var total = new double[k];
        for (int i = 0; i < k; i++)
        {
            total[i] = prior + freedom[i];
            variances[i] = (prior * typical[group[i]] + freedom[i] * s2[i]) / total[i];
        }

        return new SpreadPooling(variances, total, typical, prior, fitted);
    }

    /// <summary>Second derivative of ln gamma, by recurrence and its asymptotic series (Abramowitz and Stegun 6.4.12); relative error under 1e-12 for x over 0.</summary>
    public static double Trigamma(double x)
    {
        double sum = 0;
        for (; x < 20; x++)
            sum += 1 / (x * x);
        double r = 1 / (x * x);
        return sum + 1 / x + r / 2 + r / x * (1.0 / 6 - r * (1.0 / 30 - r * (1.0 / 42 - r / 30)));
    }

    /// <summary>The x of a given trigamma, by bisection in ln x: the function only falls.</summary>
    public static double TrigammaInverse(double value)
    {
        double low = -20, high = 20;
        for (int round = 0; round < 100; round++)
        {
            double middle = (low + high) / 2;
            if (Trigamma(Math.Exp(middle)) > value)
                low = middle;
            else
                high = middle;
        }

        return Math.Exp((low + high) / 2);
    }
}
