using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Cloveshed.Core.Tests.Lots;

using Chance = Cloveshed.Core.Sizes.Chance;

/// <summary>What field, season and sizer tell of a lot beside its own sample, and how strongly its variety's shape speaks.</summary>
public class KindOfLotTests
{
    /// <summary>
    /// A twin without any elimination: the covariance of all lots' means written out, the unknown mean by generalized least squares, and the
    /// textbook's best linear unbiased prediction (A. S. Goldberger, J. Amer. Stat. Assoc. 57 (1962) 369).
    /// </summary>
    [Fact]
    public void What_is_predicted_is_what_the_whole_covariance_predicts()
    {
        Chance chance = new(21);
        PastLot[] lots = [.. Enumerable.Range(0, 30).Select(k => new PastLot($"v{k % 4}", $"f{k * 7 % 11}", k % 3, 4 + 0.2 * chance.Normal(), 0.002 + 0.02 * chance.Uniform()))];
        LotHistory history = LotHistory.Of(lots);
        HistorySpread s = history.Spread;
        double Shared(PastLot a, PastLot b) =>
            (a.Variety == b.Variety ? s.Variety * s.Variety : 0) + (a.Field == b.Field ? s.Field * s.Field : 0) + (a.Season == b.Season ? s.Season * s.Season : 0);
        double real = s.Lot * s.Lot;
        Matrix<double> inverse = Matrix<double>.Build.Dense(30, 30, (i, j) => Shared(lots[i], lots[j]) + (i == j ? real + lots[i].Variance : 0)).Inverse();
        var y = Vector<double>.Build.Dense(30, i => lots[i].MeanLog);
        var ones = Vector<double>.Build.Dense(30, 1);
        double information = ones * inverse * ones, mean = ones * inverse * y / information;
        MeanBelief Twin(PastLot lot, int? own)
        {
            var shared = Vector<double>.Build.Dense(30, i => Shared(lot, lots[i]) + (i == own ? real : 0));
            double unexplained = 1 - shared * inverse * ones;
            return new(mean + shared * inverse * (y - mean), Shared(lot, lot) + real - shared * inverse * shared + unexplained * unexplained / information);
        }

        PastLot[] next = [new("v1", "f3", 2, 0, 0), new("v1", "new", 2, 0, 0), new("new", "f3", 9, 0, 0), new("new", "new", 9, 0, 0)];
        foreach (PastLot lot in next)
            Same(Twin(lot, null), history.Next(lot.Variety, lot.Field, lot.Season));
        for (int i = 0; i < lots.Length; i++)
            Same(Twin(lots[i], i), history.Seen(i));

        static void Same(MeanBelief expected, MeanBelief found)
        {
            Assert.Equal(expected.Mean, found.Mean, 1e-9);
            Assert.Equal(expected.Variance, found.Variance, 1e-9);
        }
    }

    [Fact]
    public void A_lot_without_a_sample_is_believed_to_be_like_its_field()
    {
        LotRow Row(int k, string field) => SmallSeason.Lot($"{k}") with { Field = field };
        LotRow[] rows = [.. Enumerable.Range(0, 8).Select(k => Row(k, k % 2 == 0 ? "Sand" : "Loam")), Row(8, "Sand"), Row(9, "Loam"), Row(10, "Clay")];
        SampleBulb[] samples = [.. Enumerable.Range(0, 8).SelectMany(k => Bulbs($"{k}", k % 2 == 0 ? 42 + k : 60 + k, 60))];
        LotsKnown known = LotKnowing.Know(SmallSeason.Of(rows, samples));
        LotKnowledge sand = known.Lots[new("8")], loam = known.Lots[new("9")], clay = known.Lots[new("10")];
        Assert.InRange(sand.MeanG, 44, clay.MeanG - 2);
        Assert.InRange(loam.MeanG, clay.MeanG + 2, 68);
        Assert.Equal(("variety and field", "variety"), (sand.HowKnown, clay.HowKnown));
        Assert.True(Math.Log(clay.MeanBand.High / clay.MeanBand.Low) > Math.Log(sand.MeanBand.High / sand.MeanBand.Low));
        Assert.True(known.Learned.BetweenLots!.Value.Field > 0.1);
    }

    [Fact]
    public void What_the_sizer_counted_tells_more_than_a_sample_and_a_given_cell_stays_the_point()
    {
        Season season = SmallSeason.Of(
            [SmallSeason.Lot("1") with { Bins = 30 }, SmallSeason.Lot("2"), SmallSeason.Lot("3"), SmallSeason.Lot("4", mean: 61.3, cv: 0.37)], [.. Bulbs("1", 45, 60), .. Bulbs("2", 55, 60), .. Bulbs("3", 50, 60)]);
        Season counted = season with { SizerCounts = [new(new("1"), 12, Counted(70, 20_000)), new(new("4"), 12, Counted(70, 20_000))] };
        LotsKnown before = LotKnowing.Know(season), after = LotKnowing.Know(counted);
        LotKnowledge one = after.Lots[new("1")];
        double mean = 70 * Math.Exp(0.3 * 0.3 / 2);
        Assert.True(Math.Abs(one.MeanG - mean) < 0.3 * Math.Abs(before.Lots[new("1")].MeanG - mean));
        Assert.True(Width(one) < 0.7 * Width(before.Lots[new("1")]));
        Assert.Equal("sizer bins=12 and samples n=60, shrunk toward variety and field", one.HowKnown);
        Assert.Contains(after.Defaults, d => d is { Name: "between_bin_sd", Count: 2 });
        Assert.Equal(before.Lots[new("4")].ClassShares, after.Lots[new("4")].ClassShares);
        Assert.True(after.Lots[new("4")].MeanBand.Low > 61.3);
        // The other lots are pulled along, a little.
        Assert.True(after.Lots[new("2")].MeanG > before.Lots[new("2")].MeanG);

        static double Width(LotKnowledge k) => Math.Log(k.MeanBand.High / k.MeanBand.Low);
    }

    /// <summary>Whole crops whose bins differ and whose bulbs are gamma: the sizer saw a part, the bands are held to what was left.</summary>
    [Fact]
    public void Four_in_five_true_class_shares_of_what_stands_lie_in_their_bands_after_the_sizer_saw_a_part()
    {
        Chance chance = new(23);
        int inside = 0, all = 0;
        double squared = 0, without = 0;
        for (int crop = 0; crop < 3; crop++)
        {
            List<LotRow> rows = [];
            List<SampleBulb> samples = [];
            List<SizerCounted> counts = [];
            List<(LotId Id, double Mean)> truth = [];
            double field = 0.08 * chance.Normal();
            for (int k = 0; k < 24; k++)
            {
                double lot = Math.Log(52) + field + 0.12 * chance.Normal(), rest = lot + 0.05 / Math.Sqrt(30) * chance.Normal(), run = lot + 0.05 / Math.Sqrt(6) * chance.Normal();
                rows.Add(SmallSeason.Lot($"{k}") with { Bins = 30 });
                for (int b = 0; b < 40; b++)
                {
                    double g = Bulb(chance, lot);
                    samples.Add(SmallSeason.Bulb($"{k}", g, Math.Exp((Math.Log(g) - SmallSeason.Law.A + SmallSeason.Law.S * chance.Normal()) / SmallSeason.Law.B)));
                }

                if (k % 2 == 1)
                    continue;
                WeightHistogram seen = new();
                for (int b = 0; b < 4000; b++)
                    seen.AddTenths((int)Math.Round(10 * Bulb(chance, run)), 1);
                counts.Add(new(new($"{k}"), 6, seen));
                truth.Add((new($"{k}"), rest));
            }

            Season season = SmallSeason.Of(rows, samples);
            LotsKnown blind = LotKnowing.Know(season), known = LotKnowing.Know(season with { SizerCounts = counts });
            foreach ((LotId id, double mean) in truth)
            {
                double[] shares = Shares(mean, season.Sizes);
                for (int c = 0; c < shares.Length; c++)
                {
                    all++;
                    Band band = known.Lots[id].ClassBands[c];
                    inside += band.Low <= shares[c] && shares[c] <= band.High ? 1 : 0;
                    squared += Math.Pow(known.Lots[id].ClassShares[c] - shares[c], 2);
                    without += Math.Pow(blind.Lots[id].ClassShares[c] - shares[c], 2);
                }
            }
        }

        Assert.InRange(inside / (double)all, 0.75, 0.9);
        Assert.True(squared < 0.5 * without, $"{squared} against {without}");
    }

    [Theory]
    [InlineData(80)]
    [InlineData(400)]
    public void The_strength_that_lots_were_drawn_with_is_found_by_and_large(double strength)
    {
        Chance chance = new(27);
        IReadOnlyList<SizeClass> chart = TradeChart.Us;
        SizeCurve curve = new(52, 0.36);
        double under = curve.CountShare(SmallSeason.Law, 0, chart[0].MinMm);
        double[] shares = [under, .. chart.Select(c => curve.CountShare(SmallSeason.Law, c.MinMm, c.MaxMm)), 0];
        MeasuredLot[] lots =
        [
            .. Enumerable.Range(0, 60).Select(_ =>
            {
                double[] gammas = [.. shares.Select(s => s > 0 ? chance.Gamma(strength * s) : 0)];
                double sum = gammas.Sum();
                var counts = new double[shares.Length];
                for (int b = 0; b < 150; b++)
                {
                    double u = chance.Uniform() * sum;
                    int c = 0;
                    while (c + 1 < gammas.Length && u > gammas[c])
                        u -= gammas[c++];
                    counts[c]++;
                }

                return new MeasuredLot(SmallSeason.Law, BulbShape.OfNormal, curve.Mu, Math.Sqrt(curve.SigmaSquared), counts);
            }),
        ];
        double found = ShapeStrength.Of(lots, chart, 200);
        Assert.InRange(found / strength, 0.6, 1.25);
        Assert.Equal(123, ShapeStrength.Of([.. lots.Take(ShapeStrength.FewestLots - 1)], chart, 123));
    }

    [Fact]
    public void A_shape_is_skewed_by_as_much_as_is_asked_and_keeps_its_mean_and_variance()
    {
        Assert.Equal(0, BulbShape.OfNormal.Skewness, 1e-9);
        foreach (double by in (double[])[-0.6, -0.2, 0.2, 0.6])
        {
            BulbShape skewed = BulbShape.OfNormal.Skewed(by);
            Assert.Equal(by, skewed.Skewness, 0.15 * Math.Abs(by));
            Assert.Equal(0, skewed.Z.Average(), 1e-12);
            Assert.Equal(1, skewed.Z.Average(z => z * z), 1e-12);
        }
    }

    /// <summary>Lots whose largest bulbs end early (Weibull) beside lognormal ones: the upper classes are nearer to the truth than under one shape for all.</summary>
    [Fact]
    public void A_lot_keeps_as_much_of_its_own_skewness_as_its_bulbs_can_tell()
    {
        Chance chance = new(29);
        List<LotRow> rows = [];
        List<SampleBulb> samples = [];
        for (int k = 0; k < 20; k++)
        {
            rows.Add(SmallSeason.Lot($"{k}"));
            for (int b = 0; b < 300; b++)
            {
                double g = k % 2 == 0 ? 50 * Math.Exp(0.34 * chance.Normal()) : 58 * Math.Pow(-Math.Log(chance.Uniform()), 1 / 3.2);
                samples.Add(SmallSeason.Bulb($"{k}", Math.Max(1, g)));
            }
        }

        LotEvidence[] lots = [.. rows.Select(r => new LotEvidence([r], 0, [.. samples.Where(s => s.Lot == r.Lot)]))];
        SkewPooling skews = new(lots, [BulbShape.Of(lots.Select(l => l.Logs), 100)]);
        double even = Enumerable.Range(0, 10).Average(k => skews.Of(2 * k).Skew), odd = Enumerable.Range(0, 10).Average(k => skews.Of(2 * k + 1).Skew);
        // ln of a Weibull is a Gumbel's mirror image: skewness -1.1395 (handbooks), of a lognormal 0; their shapes' mean lies between.
        Assert.InRange(even - odd, 0.8, 1.2);
        Assert.True(skews.Of(0).Variance < 6.0 / 300);
        // Too few lots: taken to be alike.
        Assert.Equal((0, 0), new SkewPooling([.. lots.Take(5)], [BulbShape.OfNormal]).Of(0));
    }

    // Gamma of cv 0.34, which no lognormal is.
    private const double Shape = 8.65;

    private static double Bulb(Chance chance, double lot) => Math.Max(0.1, Math.Round(Math.Exp(lot) * chance.Gamma(Shape) / Shape, 1));

    private static double[] Shares(double lot, IReadOnlyList<SizeClass> sizes)
    {
        const int Steps = 4000;
        var shares = new double[sizes.Count];
        double mass = 0;
        for (int k = 0; k < Steps; k++)
        {
            double g = Math.Exp(lot) * Gamma.InvCDF(Shape, Shape, (k + 0.5) / Steps), ln = (Math.Log(g) - SmallSeason.Law.A) / SmallSeason.Law.B, sd = SmallSeason.Law.S / SmallSeason.Law.B;
            mass += g;
            for (int c = 0; c < shares.Length; c++)
                shares[c] += g * ((sizes[c].MaxMm is { } max ? Normal.CDF(ln, sd, Math.Log(max)) : 1) - Normal.CDF(ln, sd, Math.Log(sizes[c].MinMm)));
        }

        return [.. shares.Select(s => s / mass)];
    }

    private static IEnumerable<SampleBulb> Bulbs(string lot, double median, int n) =>
        Enumerable.Range(0, n).Select(i => SmallSeason.Bulb(lot, median * Math.Exp(0.3 * Normal.InvCDF(0, 1, (i + 0.5) / n))));

    private static WeightHistogram Counted(double median, int n)
    {
        WeightHistogram seen = new();
        for (int i = 0; i < n; i++)
            seen.AddTenths((int)Math.Round(10 * median * Math.Exp(0.3 * Normal.InvCDF(0, 1, (i + 0.5) / n))), 1);
        return seen;
    }
}
