using Cloveshed.Core.Lots;
using Cloveshed.Core.Sizes;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Tests.Lots;

public class HistoryTests
{
    /// <summary>
    /// A. Gelman et al., Bayesian Data Analysis, sec. 3.4, the 1988 poll: 727, 583, 137 of 1447 under a flat prior give a Dirichlet(728, 584,
    /// 138): means 0.502069, 0.402759, 0.095172; sds 0.013126, 0.012875, 0.007704; difference of the first two 0.099310 with sd 0.024835.
    /// </summary>
    [Fact]
    public void The_poll_of_1988_has_the_books_posterior()
    {
        ClassBelief belief = new ClassBelief([1 / 3.0, 1 / 3.0, 1 / 3.0], 3).With([727, 583, 137]);
        double[] mean = [0.502069, 0.402759, 0.095172], sd = [0.013126, 0.012875, 0.007704];
        for (int c = 0; c < 3; c++)
        {
            Assert.Equal(mean[c], belief.Shares[c], 1e-6);
            Assert.Equal(sd[c], belief.Sd(c), 1e-6);
        }

        double difference = belief.Shares[0] - belief.Shares[1];
        double variance = (belief.Shares[0] + belief.Shares[1] - difference * difference) / (belief.Bulbs + 1);
        Assert.Equal(0.099310, difference, 1e-6);
        Assert.Equal(0.024835, Math.Sqrt(variance), 1e-6);
    }

    /// <summary>Two classes are a beta-binomial: MathNet's beta function as referee.</summary>
    [Fact]
    public void The_marginal_likelihood_of_two_classes_is_the_beta_binomials()
    {
        double expected = MathNet.Numerics.SpecialFunctions.BetaLn(3 + 7, 7 + 13) - MathNet.Numerics.SpecialFunctions.BetaLn(3, 7);
        Assert.Equal(expected, ClassCountPooling.LogMarginal([7, 13], [0.3, 0.7], 10), 1e-10);
    }

    /// <summary>
    /// B. Efron and C. Morris, J. Amer. Stat. Assoc. 70 (1975) 311: eighteen batters' hits of 45. Pooled with a strength by marginal likelihood the
    /// squared error against the rest of the season is far under the raw 0.0753 (beta-binomial by moments: 0.0218, recomputed).
    /// </summary>
    [Fact]
    public void Batters_pooled_by_marginal_likelihood_come_near_the_best()
    {
        int[] hits = [18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7];
        double[] rest = [.346, .298, .276, .222, .273, .270, .263, .210, .269, .230, .264, .256, .303, .264, .226, .285, .316, .200];
        ClassCountPooling pooled = ClassCountPooling.Of([.. hits.Select(h => new ClassCounts(0, 0, [h, 45 - h]))], 2);
        Assert.True(pooled.Fitted[0]);
        double raw = hits.Zip(rest, (h, r) => Math.Pow(h / 45.0 - r, 2)).Sum();
        double error = hits.Zip(rest, (h, r) => Math.Pow(pooled.Prior(0, 0).With([h, 45 - h]).Shares[0] - r, 2)).Sum();
        Assert.Equal(0.0753, raw, 0.0001);
        Assert.InRange(error, 0.020, 0.026);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(120)]
    public void The_fitted_strength_is_the_one_that_made_the_lots(double strength)
    {
        Chance chance = new(5);
        ClassCounts[] lots = [.. Enumerable.Range(0, 300).Select(k => Draw(chance, [0.2, 0.3, 0.4, 0.1], strength, 60, k % 3, 0))];
        Assert.InRange(ClassCountPooling.Of(lots, 4).Strengths[0] / strength, 0.75, 1.33);
    }

    [Fact]
    public void Bands_of_pooled_lots_hold_four_in_five_and_pooling_beats_the_raw_shares()
    {
        Chance chance = new(6);
        int inside = 0, all = 0;
        double squared = 0, raw = 0;
        for (int crop = 0; crop < 8; crop++)
        {
            double[][] varieties = [[0.2, 0.3, 0.4, 0.1], [0.35, 0.35, 0.25, 0.05]];
            (ClassCounts Seen, double[] Truth)[] lots =
            [
                .. Enumerable.Range(0, 40).Select(k =>
                {
                    double[] truth = Dirichlet(chance, varieties[k % 2], 80);
                    return (new ClassCounts(k % 2, k % 10, Multinomial(chance, truth, 30)), truth);
                }),
            ];
            for (int held = 0; held < lots.Length; held++)
            {
                // The lot itself is not in the history that it is pulled toward.
                ClassCountPooling pooled = ClassCountPooling.Of([.. lots.Where((_, k) => k != held).Select(l => l.Seen)], 4);
                ClassBelief belief = pooled.Prior(lots[held].Seen.Variety, lots[held].Seen.Field).With(lots[held].Seen.Counts);
                for (int c = 0; c < 4; c++)
                {
                    Band band = belief.Band(c);
                    all++;
                    inside += band.Low <= lots[held].Truth[c] && lots[held].Truth[c] <= band.High ? 1 : 0;
                    squared += Math.Pow(belief.Shares[c] - lots[held].Truth[c], 2);
                    raw += Math.Pow(lots[held].Seen.Counts[c] / 30 - lots[held].Truth[c], 2);
                }
            }
        }

        Assert.InRange(inside / (double)all, 0.75, 0.85);
        Assert.True(squared < 0.6 * raw, $"{squared} against {raw}");
    }

    [Fact]
    public void A_new_variety_is_known_less_well_than_a_new_field_and_that_less_than_a_known_one_and_one_lot_is_history_enough()
    {
        ClassCountPooling one = ClassCountPooling.Of([new(0, 0, [20, 30, 10])], 3);
        Assert.Equal(ClassCountPooling.DefaultStrengths, one.Strengths);
        Assert.All(one.Fitted, Assert.False);
        Assert.True(one.Prior(1, 0).Bulbs < one.Prior(0, 1).Bulbs);
        Assert.True(one.Prior(0, 1).Bulbs < one.Prior(0, 0).Bulbs);
        Assert.True(one.Prior(0, 0).Shares[1] > one.Prior(1, 0).Shares[1]);
        Assert.Equal(1, one.Prior(0, 0).Shares.Sum(), 1e-12);
    }

    [Fact]
    public void Sds_between_varieties_fields_seasons_and_lots_are_found_again()
    {
        PastLot[] past = History(7, 6, 12, 6, new(0.2, 0.1, 0.12, 0.08));
        HistorySpread found = LotHistory.Of(past).Spread;
        Assert.InRange(found.Variety, 0.1, 0.4);
        Assert.InRange(found.Field, 0.06, 0.16);
        Assert.InRange(found.Season, 0.06, 0.24);
        Assert.InRange(found.Lot, 0.06, 0.11);
    }

    /// <summary>With equal errors and one group it is the shrinkage of Efron and Morris toward the common mean, under a fixed spread.</summary>
    [Fact]
    public void The_next_lot_of_a_known_spread_is_kriged_as_by_hand()
    {
        // One past lot, y = 4 with error 0.01: the next of the same variety, field and season shares all but the lot's own part.
        LotHistory history = LotHistory.Of([new("a", "f", 1, 4, 0.01)]);
        HistorySpread s = history.Spread;
        MeanBelief same = history.Next("a", "f", 1), other = history.Next("b", "g", 2);
        Assert.Equal(4, same.Mean, 1e-9);
        // Nothing but its one lot tells the mean: its whole variance, less what is shared, twice the lot's part and the error.
        Assert.Equal(2 * s.Lot * s.Lot + 0.01, same.Variance, 1e-9);
        Assert.Equal(2 * (s.Variety * s.Variety + s.Field * s.Field + s.Season * s.Season + s.Lot * s.Lot) + 0.01, other.Variance, 1e-9);
    }

    [Fact]
    public void Bands_of_the_next_season_hold_four_in_five_for_known_and_new_varieties_and_fields()
    {
        int inside = 0, all = 0;
        double pooled = 0, plain = 0;
        Chance chance = new(11);
        for (int crop = 0; crop < 60; crop++)
        {
            PastLot[] lots = History(100 + crop, 5, 8, 4, new(0.2, 0.08, 0.08, 0.12));
            PastLot[] past = [.. lots.Where(l => l.Season < 3 && l.Variety != "v4")];
            LotHistory history = LotHistory.Of(past);
            foreach (PastLot lot in lots.Where(l => l.Season == 3))
            {
                // MeanLog is the truth and its noise; a sample of 30 bulbs is drawn around the truth anew.
                double error = 0.33 * 0.33 / 30, truth = lot.MeanLog, seen = truth + Math.Sqrt(error) * chance.Normal();
                MeanBelief belief = history.Next(lot.Variety, lot.Field, lot.Season).With(seen, error);
                all++;
                inside += belief.Band80.Low <= truth && truth <= belief.Band80.High ? 1 : 0;
                pooled += Math.Pow(belief.Mean - truth, 2);
                plain += Math.Pow(seen - truth, 2);
            }
        }

        Assert.InRange(inside / (double)all, 0.75, 0.85);
        Assert.True(pooled < 0.96 * plain, $"{pooled} against {plain}");
    }

    [Fact]
    public void What_the_sizer_saw_of_some_bins_tells_of_the_rest_but_never_all()
    {
        Chance chance = new(9);
        WeightHistogram seen = new();
        for (int k = 0; k < 20_000; k++)
            seen.AddTenths((int)Math.Round(10 * Math.Exp(Math.Log(50) + 0.3 * chance.Normal())), 1);
        SizerSeenAnswer Of(int run, int left) => SizerSeen.Update(new(new(Math.Log(56), 0.01), seen, run, left));
        SizerSeenAnswer few = Of(1, 20), more = Of(10, 11);
        Assert.InRange(few.Mean.Mean, Math.Log(50), Math.Log(56));
        Assert.True(Math.Abs(more.Mean.Mean - Math.Log(50)) < Math.Abs(few.Mean.Mean - Math.Log(50)));
        Assert.True(more.Mean.Variance < few.Mean.Variance);
        Assert.True(few.Mean.Variance > SizerSeen.UsualBetweenBinSd * SizerSeen.UsualBetweenBinSd / 20);
        // One bin of any number of bulbs is worth about s^2/tau^2 of a fair sample.
        Assert.Equal(0.3 * 0.3 / (0.05 * 0.05), few.BulbsWorth, 1.5);
        Assert.Equal(few.Mean.Mean, few.Curve.Parts.Sum(p => p.Share * p.Mu), 0.02);
    }

    [Fact]
    public void Bands_of_what_is_left_hold_four_in_five_when_bins_differ()
    {
        Chance chance = new(10);
        int inside = 0;
        const int Lots = 400;
        for (int k = 0; k < Lots; k++)
        {
            double lot = 4 + 0.12 * chance.Normal(), rest = lot + 0.05 / Math.Sqrt(12) * chance.Normal(), run = lot + 0.05 / Math.Sqrt(3) * chance.Normal();
            WeightHistogram seen = new();
            for (int b = 0; b < 300; b++)
                seen.AddTenths((int)Math.Round(10 * Math.Exp(run + 0.3 * chance.Normal())), 1);
            Band band = SizerSeen.Update(new(new(4, 0.12 * 0.12), seen, 3, 12)).Mean.Band80;
            inside += band.Low <= rest && rest <= band.High ? 1 : 0;
        }

        Assert.InRange(inside / (double)Lots, 0.75, 0.85);
    }

    private static PastLot[] History(int seed, int varieties, int fields, int seasons, HistorySpread spread)
    {
        Chance chance = new((uint)seed);
        double[] variety = [.. Enumerable.Range(0, varieties).Select(_ => spread.Variety * chance.Normal())], field = [.. Enumerable.Range(0, fields).Select(_ => spread.Field * chance.Normal())];
        double[] season = [.. Enumerable.Range(0, seasons).Select(_ => spread.Season * chance.Normal())];
        return
        [
            .. from s in Enumerable.Range(0, seasons)
               from f in Enumerable.Range(0, fields)
               let v = (f + s) % varieties
               select new PastLot($"v{v}", $"f{f}", s, 4 + variety[v] + field[f] + season[s] + spread.Lot * chance.Normal(), 0.0005),
        ];
    }

    private static ClassCounts Draw(Chance chance, double[] shares, double strength, int n, int variety, int field) =>
        new(variety, field, Multinomial(chance, Dirichlet(chance, shares, strength), n));

    private static double[] Dirichlet(Chance chance, double[] shares, double strength)
    {
        double[] gammas = [.. shares.Select(s => Gamma.InvCDF(strength * s, 1, chance.Uniform()))];
        return [.. gammas.Select(g => g / gammas.Sum())];
    }

    private static double[] Multinomial(Chance chance, double[] shares, int n)
    {
        var counts = new double[shares.Length];
        for (int k = 0; k < n; k++)
        {
            double u = chance.Uniform();
            int c = 0;
            while (c + 1 < shares.Length && u > shares[c])
                u -= shares[c++];
            counts[c]++;
        }

        return counts;
    }
}
