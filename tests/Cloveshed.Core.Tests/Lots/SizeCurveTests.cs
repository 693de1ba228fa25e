using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using CsCheck;

namespace Cloveshed.Core.Tests.Lots;

public class SizeCurveTests
{
    private static readonly Gen<SizeCurve> Curves = Gen.Select(Gen.Double[5, 150], Gen.Double[0.02, 0.9], (m, c) => new SizeCurve(m, c));
    private static readonly Gen<MassLaw> Laws = Gen.Select(Gen.Double[-8, -5], Gen.Double[2, 3.2], Gen.Double[0.02, 0.3], (a, b, s) => new MassLaw(a, b, s));

    /// <summary>
    /// Against the integral itself: mass x lognormal density x normal probability of the window, by Simpson's rule in ln g. The
    /// definitions only (the lognormal: J. Aitchison and J. A. C. Brown, The Lognormal Distribution, 1957), none of the closed form.
    /// </summary>
    [Fact]
    public void Shares_are_the_integrals_that_define_them() =>
        Gen.Select(Curves, Laws, Gen.Double[20, 70], Gen.Double[1, 25]).Sample(
            (curve, law, min, wide) =>
            {
                double max = min + wide;
                Assert.Equal(Integral(curve, law, min, max, byMass: true), curve.MassShare(law, min, max), 1e-6);
                Assert.Equal(Integral(curve, law, min, max, byMass: false), curve.CountShare(law, min, max), 1e-6);
            },
            iter: 200);

    [Fact]
    public void Contiguous_classes_hold_everything_once() =>
        Gen.Select(Curves, Laws, Gen.Double[1, 40].Array[1, 9]).Sample((curve, law, steps) =>
        {
            double at = 20, sum = 1 - curve.MassShare(law, 20, null);
            for (int i = 0; i < steps.Length; i++)
            {
                double? max = i + 1 < steps.Length ? at + steps[i] : null;
                double share = curve.MassShare(law, at, max);
                Assert.InRange(share, 0, 1);
                sum += share;
                at += steps[i];
            }

            Assert.Equal(1, sum, 1e-12);
        });

    [Fact]
    public void A_heavier_lot_never_has_less_above_a_limit() =>
        Gen.Select(Curves, Laws, Gen.Double[20, 90], Gen.Double[1, 3]).Sample((curve, law, min, times) =>
            Assert.True((curve with { MeanG = curve.MeanG * times }).MassShare(law, min, null) >= curve.MassShare(law, min, null)));

    [Fact]
    public void By_mass_large_bulbs_weigh_more_than_they_count() =>
        Gen.Select(Curves, Laws, Gen.Double[20, 90]).Sample((curve, law, min) =>
            Assert.True(curve.MassShare(law, min, null) >= curve.CountShare(law, min, null)));

    [Fact]
    public void Without_any_scatter_a_lot_is_of_one_class_and_min_is_inclusive()
    {
        var curve = new SizeCurve(50, 0);
        var law = new MassLaw(0, 1, 0);
        Assert.Equal(1, curve.MassShare(law, 50, 60));
        Assert.Equal(0, curve.MassShare(law, 40, 50));
        Assert.Equal(1, curve.MassShare(law, 0, null));
        Assert.Equal(0, curve.CountShare(law, 50.001, null));
    }

    [Fact]
    public void Logs_and_moments_are_two_names_of_one_curve() =>
        Curves.Sample(c =>
        {
            SizeCurve again = SizeCurve.OfLogs(c.Mu, c.SigmaSquared);
            Assert.Equal(1, again.MeanG / c.MeanG, 1e-12);
            Assert.Equal(c.Cv, again.Cv, 1e-9);
        });

    private static double Integral(SizeCurve c, MassLaw law, double min, double max, bool byMass)
    {
        double sigma = Math.Sqrt(Math.Log(1 + c.Cv * c.Cv)), mu = Math.Log(c.MeanG) - sigma * sigma / 2;
        const int Steps = 4000;
        double from = mu - 9 * sigma, h = 20 * sigma / Steps, sum = 0, all = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double x = from + i * h, z = (x - mu) / sigma;
            double w = (i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2) * Math.Exp(-z * z / 2) * (byMass ? Math.Exp(x - mu) : 1);
            double mean = (x - law.A) / law.B, sd = law.S / law.B;
            all += w;
            sum += w * (Phi((Math.Log(max) - mean) / sd) - Phi((Math.Log(min) - mean) / sd));
        }

        return sum / all;
    }

    private static double Phi(double z) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, z);
}
