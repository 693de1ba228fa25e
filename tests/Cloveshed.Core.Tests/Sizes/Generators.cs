using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Tests.Sizes;

/// <summary>A lot whose truth is known: how its bulbs weigh and how wide they are for it.</summary>
/// <param name="Draw">One bulb's weight, g.</param>
/// <param name="Truth">True share by mass of each class of the chart.</param>
public sealed record TrueLot(string Kind, Func<Random, double> Draw, MassLaw Law, double[] Truth)
{
    /// <summary>A sample with diameters to the tenth.</summary>
    public SampledBulb[] Sample(int n, Random random) =>
    [
        .. Enumerable.Range(0, n).Select(line =>
        {
            double g = Math.Max(0.1, Math.Round(Draw(random), 1));
            double mm = Math.Exp((Math.Log(g) - Law.A + Law.S * Normal.Sample(random, 0, 1)) / Law.B);
            return new SampledBulb(g, Math.Round(mm, 1), 1, line);
        }),
    ];

    /// <summary>The sample's own share by mass of each class, by the diameters measured.</summary>
    public static double[] Raw(SampledBulb[] sample, IReadOnlyList<SizeClass> chart)
    {
        double all = sample.Sum(b => b.WeightG);
        return [.. chart.Select(c => sample.Where(b => b.DiameterMm >= c.MinMm && b.DiameterMm < (c.MaxMm ?? double.MaxValue)).Sum(b => b.WeightG) / all)];
    }

    /// <summary>Truth by numerical integration over the quantiles of the weights: no closed form of the fitted curve in it.</summary>
    public static TrueLot Of(string kind, Func<double, double> quantile, MassLaw law, IReadOnlyList<SizeClass> chart)
    {
        const int Steps = 20_000;
        var share = new double[chart.Count];
        double mass = 0;
        for (int k = 0; k < Steps; k++)
        {
            double g = quantile((k + 0.5) / Steps), ln = (Math.Log(g) - law.A) / law.B, above = Over(chart[0].MinMm);
            mass += g;
            for (int c = 0; c < chart.Count; c++)
            {
                double next = chart[c].MaxMm is { } max ? Over(max) : 0;
                share[c] += g * (above - next);
                above = next;
            }

            double Over(double mm) => 1 - Normal.CDF(ln, law.S / law.B, Math.Log(mm));
        }

        return new(kind, random => quantile(random.NextDouble()), law, [.. share.Select(s => s / mass)]);
    }

    /// <summary>Kinds of lots that are no single lognormal, of the same mean and spread by and large.</summary>
    public static IReadOnlyList<TrueLot> Others(IReadOnlyList<SizeClass> chart, Random random)
    {
        double mean = 48 + 14 * random.NextDouble(), cv = 0.28 + 0.1 * random.NextDouble();
        double shape = 1 / (cv * cv), k = Math.Pow(cv, -1.086);
        MassLaw law = new(-6.482, 2.646, 0.1);
        double small = 0.1 + 0.15 * random.NextDouble(), sigma = 0.28;
        return
        [
            Of("lognormal", p => Math.Exp(Normal.InvCDF(Math.Log(mean) - Math.Log(1 + cv * cv) / 2, Math.Sqrt(Math.Log(1 + cv * cv)), p)), law, chart),
            Of("gamma", p => Gamma.InvCDF(shape, shape / mean, p), law, chart),
            Of("weibull", p => mean / MathNet.Numerics.SpecialFunctions.Gamma(1 + 1 / k) * Math.Pow(-Math.Log(1 - p), 1 / k), law, chart),
            TwoKinds(mean, small, sigma, law, chart),
            Of("normal diameters", p => Math.Exp(law.A + law.B * Math.Log(Math.Max(15, Normal.InvCDF(Math.Pow(mean / Math.Exp(law.A), 1 / law.B), 6, p)))), law, chart),
        ];
    }

    private static TrueLot TwoKinds(double mean, double small, double sigma, MassLaw law, IReadOnlyList<SizeClass> chart)
    {
        double main = Math.Log(mean), little = main + Math.Log(0.55);
        double Cdf(double g) => (1 - small) * Normal.CDF(main, sigma, Math.Log(g)) + small * Normal.CDF(little, sigma, Math.Log(g));
        double Quantile(double p)
        {
            double low = little - 6 * sigma, high = main + 6 * sigma;
            for (int round = 0; round < 45; round++)
            {
                double middle = (low + high) / 2;
                if (Cdf(Math.Exp(middle)) < p)
                    low = middle;
                else
                    high = middle;
            }

            return Math.Exp((low + high) / 2);
        }

        return Of("two kinds", Quantile, law, chart);
    }
}
