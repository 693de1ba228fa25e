using Cloveshed.Core.Cuts;
using Cloveshed.Core.Line;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.Core.Tests.Lots;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Tests.Line;

/// <summary>The curve that a lot is sized by: its mean and spread are those known of it, its bands hold.</summary>
public class LotWeighingTests
{
    [Fact]
    public void A_form_is_brought_to_the_mean_and_spread_that_are_known()
    {
        LognormalMixture form = new([new(0.3, Math.Log(30), 0.2), new(0.7, Math.Log(60), 0.25)]);
        LognormalMixture brought = LotWeighing.BroughtTo(form, new SizeCurve(55, 0.31));
        Assert.Equal((55, 0.31), (Math.Round(brought.MeanG, 6), Math.Round(brought.Cv, 6)));
        Assert.Equal([0.3, 0.7], brought.Parts.Select(part => part.Share));
    }

    /// <summary>
    /// Lots whose bulbs are drawn from gamma distributions, never from a lognormal: by mass a gamma of shape k is one of shape k + 1 (its
    /// first partial moment), so that the true share of a box is closed and MathNet's.
    /// </summary>
    [Theory]
    [InlineData(60, 3)]
    [InlineData(110, 4)]
    public void The_80_percent_band_of_a_box_holds_for_lots_of_another_law(int bulbs, int seed)
    {
        const int Lots = 60;
        var random = new Random(seed);
        var truths = new Gamma[Lots];
        List<LotRow> rows = [];
        List<SampleBulb> samples = [];
        for (int lot = 0; lot < Lots; lot++)
        {
            double mean = 55 * Math.Exp(Normal.Sample(random, 0, 0.12)), shape = 1 / Math.Pow(0.31 * Math.Exp(Normal.Sample(random, 0, 0.06)), 2);
            truths[lot] = new Gamma(shape, shape / mean, random);
            rows.Add(SmallSeason.Lot($"L{lot}"));
            for (int bulb = 0; bulb < bulbs; bulb++)
            {
                double g = truths[lot].Sample();
                samples.Add(SmallSeason.Bulb($"L{lot}", Math.Round(g, 1)));
            }
        }

        Season season = SmallSeason.Of(rows, samples);
        LotsKnown known = LotKnowing.Know(season);
        int held = 0, asked = 0;
        double[] cuts = [30, 42, 50, 58, 70, 90];
        for (int lot = 0; lot < Lots; lot++)
        {
            LotWeights weights = LotWeighing.Of(new(known.Lots[new LotId($"L{lot}")], [.. samples.Where(bulb => bulb.Lot.Text == $"L{lot}")], SmallSeason.Law, null, 0, 1, 100, 1));
            Assert.Equal(WeightsFrom.Sample, weights.From);
            double ByMass(double g) => new Gamma(truths[lot].Shape + 1, truths[lot].Rate).CumulativeDistribution(g);
            for (int k = 0; k + 1 < cuts.Length; k++)
            {
                double truth = ByMass(cuts[k + 1]) - ByMass(cuts[k]);
                Band band = weights.Share80(cuts[k], cuts[k + 1]);
                asked++;
                held += truth >= band.Low && truth <= band.High ? 1 : 0;
            }
        }

        Assert.InRange((double)held / asked, 0.72, 0.88);
    }

    [Fact]
    public void Without_bulbs_of_its_own_a_lot_has_the_lognormal_that_the_files_speak_of()
    {
        Season season = SmallSeason.Of([SmallSeason.Lot("A", mean: 50, cv: 0.3)]);
        LotWeights weights = LotWeighing.Of(new(LotKnowing.Know(season).Lots[new LotId("A")], [], SmallSeason.Law, null, 0, 1, 50, 1));
        double s2 = Math.Log(1 + 0.09), mu = Math.Log(50) - s2 / 2;
        Assert.Equal(WeightsFrom.Law, weights.From);
        Assert.Equal(1 - Normal.CDF(mu + s2, Math.Sqrt(s2), Math.Log(60)), weights.Curve.MassAtLeast(60), 1e-9);
    }

    [Fact]
    public void What_the_sizer_counted_takes_the_form_and_most_of_the_mean()
    {
        Season season = SmallSeason.Of([SmallSeason.Lot("A", mean: 50, cv: 0.3)]);
        WeightHistogram seen = new();
        var random = new Random(5);
        for (int bulb = 0; bulb < 50_000; bulb++)
            seen.Add(PieceMass.FromGrams(Math.Exp(Normal.Sample(random, Math.Log(60), 0.2))));
        LotWeights weights = LotWeighing.Of(new(LotKnowing.Know(season).Lots[new LotId("A")], [], SmallSeason.Law, seen, 20, 20, 50, 1));
        Assert.Equal(WeightsFrom.Sizer, weights.From);
        Assert.InRange(weights.Curve.MeanG, 58, 62);
        Assert.Equal(0.2, weights.Curve.Parts.Count == 1 ? weights.Curve.Parts[0].Sigma : weights.Curve.Cv, 0.01);
    }
}
