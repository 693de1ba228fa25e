using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using CsCheck;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Tests.Sizes;

public class MixtureTests
{
    private static readonly LognormalMixture Two = new([new(0.25, Math.Log(28), 0.25), new(0.75, Math.Log(60), 0.22)]);
    private static readonly MassLaw Law = new(-6.482, 2.646, 0.1);

    /// <summary>MathNet's lognormal as referee: shares by count by its distribution function, by mass by adding its quantiles up.</summary>
    [Fact]
    public void Shares_of_a_window_are_those_of_MathNets_lognormals()
    {
        LogNormal little = new(Math.Log(28), 0.25), main = new(Math.Log(60), 0.22);
        double Count(double g) => 0.25 * little.CumulativeDistribution(g) + 0.75 * main.CumulativeDistribution(g);
        Assert.Equal(Count(55) - Count(40), Two.CountShare(40, 55), 1e-12);
        Assert.Equal(0.25 * little.Mean + 0.75 * main.Mean, Two.MeanG, 1e-12);
        double inside = 0, all = 0;
        const int Steps = 200_000;
        for (int k = 0; k < Steps; k++)
        {
            double p = (k + 0.5) / Steps;
            foreach ((double share, double g) in new[] { (0.25, little.InverseCumulativeDistribution(p)), (0.75, main.InverseCumulativeDistribution(p)) })
            {
                all += share * g;
                inside += g is >= 40 and < 55 ? share * g : 0;
            }
        }

        Assert.Equal(inside / all, Two.MassShare(40, 55), 1e-5);
    }

    /// <summary>The closed form of one part is the contract's curve, tested on its own.</summary>
    [Fact]
    public void One_lognormal_gives_the_shares_of_the_season_files() =>
        Gen.Select(Gen.Double[20, 120], Gen.Double[0.1, 0.6], Gen.Double[20, 80], Gen.Double[1, 30]).Sample((mean, cv, min, width) =>
        {
            Core.Lots.SizeCurve curve = new(mean, cv);
            LognormalMixture one = new([new(1, curve.Mu, Math.Sqrt(curve.SigmaSquared))]);
            Assert.Equal(curve.MassShare(Law, min, min + width), one.MassShare(Law, min, min + width), 1e-12);
            Assert.Equal(curve.CountShare(Law, min, null), one.CountShare(Law, min, null), 1e-12);
            Assert.Equal(cv, one.Cv, 1e-9);
        }, iter: 200);

    [Fact]
    public void Two_kinds_are_found_by_BIC_with_their_shares()
    {
        Random random = new(1);
        double[] grams = [.. Enumerable.Range(0, 4000).Select(_ => Math.Exp(random.NextDouble() < 0.25 ? Normal.Sample(random, Math.Log(28), 0.25) : Normal.Sample(random, Math.Log(60), 0.22)))];
        FittedMixture fit = MixtureFit.Usual(WeightCells.OfWeights(grams));
        Assert.Equal(2, fit.Curve.Parts.Count);
        Assert.Equal(0.25, fit.Curve.Parts[0].Share, 0.04);
        Assert.Equal(28, Math.Exp(fit.Curve.Parts[0].Mu), 1.5);
        Assert.Equal(60, Math.Exp(fit.Curve.Parts[1].Mu), 1.5);
        Assert.Equal(0.22, fit.Curve.Parts[1].Sigma, 0.015);
        // Never less likely than the truth that made the sample.
        double truth = grams.Sum(g => Math.Log(0.25 * LogNormal.PDF(Math.Log(28), 0.25, g) * g + 0.75 * LogNormal.PDF(Math.Log(60), 0.22, g) * g));
        Assert.True(fit.LogLikelihood >= truth, $"{fit.LogLikelihood} under {truth}");
    }

    /// <summary>One lognormal's maximum likelihood is mean and sd of ln g: plain arithmetic.</summary>
    [Fact]
    public void One_lognormal_is_the_mean_and_sd_of_ln_g()
    {
        double[] grams = [31.2, 44.8, 50.1, 52.9, 61.3, 75.5];
        double mean = grams.Average(Math.Log), sd = Math.Sqrt(grams.Average(g => Math.Pow(Math.Log(g) - mean, 2)));
        LognormalPart part = MixtureFit.Of(WeightCells.OfWeights(grams), 1).Curve.Parts[0];
        Same((mean, sd), (part.Mu, part.Sigma), 1e-9);
    }

    [Fact]
    public void Coarse_bins_and_what_the_sizer_does_not_see_give_the_same_lognormal_back()
    {
        // Expected counts of a known curve, in bins of 8 g; then only what lies over 45 g.
        LognormalMixture truth = new([new(1, Math.Log(52), 0.3)]);
        double[] limits = [.. Enumerable.Range(0, 26).Select(k => 8.0 * k)], counts = [.. Enumerable.Range(0, 25).Select(k => 1e5 * truth.CountShare(limits[k], limits[k + 1]))];
        LognormalPart binned = MixtureFit.Of(WeightCells.OfBins(limits, counts), 1).Curve.Parts[0];
        Same((Math.Log(52), 0.3), (binned.Mu, binned.Sigma), 0.002);

        double[] over = [.. Enumerable.Range(450, 1500).Select(t => t / 10.0)], seen = [.. over.Select(g => 1e6 * truth.CountShare(g - 0.05, g + 0.05))];
        LognormalPart cut = MixtureFit.Of(WeightCells.OfWeights(over, seen).SeenBetween(44.95, 1000), 1).Curve.Parts[0];
        Same((Math.Log(52), 0.3), (cut.Mu, cut.Sigma), 0.01);
        LognormalPart blind = MixtureFit.Of(WeightCells.OfWeights(over, seen), 1).Curve.Parts[0];
        Assert.True(blind.Mu > Math.Log(57), "A fit that does not know what is out of sight is too heavy.");
    }

    [Fact]
    public void Each_round_of_EM_is_at_least_as_likely() =>
        Gen.Select(Gen.Double[10, 150].Array[30, 80], Gen.Int[1, 3]).Sample((grams, parts) =>
        {
            WeightCells cells = WeightCells.OfWeights(grams);
            LognormalPart[] start = [.. Enumerable.Range(0, parts).Select(k => new LognormalPart(1.0 / parts, Math.Log(25 + 40 * k), 0.3))];
            double last = double.NegativeInfinity;
            for (int rounds = 1; rounds < 12; rounds++)
            {
                double now = MixtureFit.From(cells, start, rounds, 0).LogLikelihood;
                Assert.True(now >= last - 1e-6, $"{now} after {last}");
                last = now;
            }
        }, iter: 40);

    private static void Same((double, double) expected, (double, double) found, double within)
    {
        Assert.Equal(expected.Item1, found.Item1, within);
        Assert.Equal(expected.Item2, found.Item2, within);
    }
}
