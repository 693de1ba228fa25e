namespace Cloveshed.Core.Lots;

/// <summary>
/// Means of many groups' members, each pulled toward its group's mean by as much as its own error is larger than what
/// truly differs. C. N. Morris, "Parametric empirical Bayes inference", J. Amer. Stat. Assoc. 78 (1983) 47 (formulas from
/// memory): members y_i ~ N(theta_i, V_i), theta_i ~ N(group mean, A); A by the moment equation, shrinkage
/// B_i = ((k - r - 2)/(k - r)) V_i/(V_i + A) for k members in r groups. With one group and equal V it is the estimator of
/// Efron and Morris, J. Amer. Stat. Assoc. 70 (1975) 311.
/// </summary>
public sealed record Shrinkage(double[] Means, double[] Variances, double[] GroupMeans, double[] GroupVariances, double Between, bool Fitted)
{
    /// <summary>Fewer members than this above the number of groups cannot tell A from chance; the default is used.</summary>
    private const int LeastSurplus = 3;

    /// <param name="y">Estimates.</param>
    /// <param name="v">Their error variances, all positive.</param>
    /// <param name="group">Group of each, 0 to groups - 1; every group has a member.</param>
    /// <param name="defaultBetween">A where it cannot be fitted.</param>
    public static Shrinkage Of(double[] y, double[] v, int[] group, int groups, double defaultBetween)
    {
        int k = y.Length, surplus = k - groups;
        bool fitted = surplus >= LeastSurplus;
        double between = fitted ? FitBetween(y, v, group, groups) : defaultBetween;
        (double[] mean, double[] weight) = GroupMeansOf(y, v, group, groups, between);
        double trust = fitted ? (surplus - 2.0) / surplus : 1;
        double averageV = v.Average();
        var means = new double[k];
        var variances = new double[k];
        for (int i = 0; i < k; i++)
        {
            double b = trust * v[i] / (v[i] + between);
            double away = y[i] - mean[group[i]];
            means[i] = y[i] - b * away;
            double leverage = 1 / (v[i] + between) / weight[group[i]];
            // The second term is what not knowing A adds.
            double unsure = fitted ? 2.0 / Math.Max(1, surplus - 2) * b * b * away * away * (averageV + between) / (v[i] + between) : 0;
            variances[i] = v[i] * (1 - (1 - leverage) * b) + unsure;
        }
        return new Shrinkage(means, variances, mean, [.. weight.Select(w => 1 / w)], between, fitted);
    }

    private static double FitBetween(double[] y, double[] v, int[] group, int groups)
    {
        double k = y.Length, a = 0;
        for (int round = 0; round < 200; round++)
        {
            (double[] mean, _) = GroupMeansOf(y, v, group, groups, a);
            double above = 0, below = 0;
            for (int i = 0; i < y.Length; i++)
            {
                double weight = 1 / (v[i] + a), away = y[i] - mean[group[i]];
                above += weight * (k / (k - groups) * away * away - v[i]);
                below += weight;
            }
            double next = Math.Max(0, above / below);
            if (Math.Abs(next - a) <= 1e-12 * (1 + next))
                return next;
            a = next;
        }
        return a;
    }

    private static (double[] Mean, double[] Weight) GroupMeansOf(double[] y, double[] v, int[] group, int groups, double between)
    {
        var sum = new double[groups];
        var weight = new double[groups];
        for (int i = 0; i < y.Length; i++)
        {
            double w = 1 / (v[i] + between);
            sum[group[i]] += w * y[i];
            weight[group[i]] += w;
        }
        return ([.. sum.Zip(weight, (s, w) => s / w)], weight);
    }
}
