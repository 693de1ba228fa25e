using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Tests.Lots;

public class LotKnowingTests
{
    private static LotKnowledge Know(Season season, string lot) => LotKnowing.Know(season).Lots[new(lot)];

    private static IEnumerable<SampleBulb> Bulbs(string lot, double mean, int n, Defect defect = Defect.None) =>
        Enumerable.Range(0, n).Select(i => SmallSeason.Bulb(lot, mean * Math.Exp(0.3 * MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (i + 0.5) / n)), defect: defect));

    [Fact]
    public void Given_cells_are_the_lognormal_law_of_the_contract_to_the_digit()
    {
        // Samples that say something else give bands, never the point.
        Season season = SmallSeason.Of([SmallSeason.Lot("1", mean: 61.3, cv: 0.37, fresh: 0.8, crack: 0.15)], [.. Bulbs("1", 40, 60)]);
        LotKnowledge k = Know(season, "1");
        var curve = new SizeCurve(61.3, 0.37);
        for (int c = 0; c < season.Sizes.Count; c++)
            Assert.Equal(curve.MassShare(SmallSeason.Law, season.Sizes[c].MinMm, season.Sizes[c].MaxMm), k.ClassShares[c]);
        Assert.Equal((61.3, 0.37, 0.8, 0.15), (k.MeanG, k.Cv, k.FreshShare, k.CrackShare));
        Assert.Equal("given", k.HowKnown);
        Assert.True(k.MeanBand.High < 61.3);
        Assert.True(k.FreshBand.Low > 0.8);
    }

    [Fact]
    public void A_lot_that_gives_one_of_the_two_cells_has_the_law_of_that_and_of_what_the_samples_say_of_the_other()
    {
        Season season = SmallSeason.Of(
            [SmallSeason.Lot("1", mean: 61.3), SmallSeason.Lot("2", cv: 0.5), SmallSeason.Lot("3")],
            [.. Bulbs("1", 40, 60), .. Bulbs("2", 40, 60), .. Bulbs("3", 40, 60)]);
        LotKnowledge mean = Know(season, "1"), cv = Know(season, "2"), neither = Know(season, "3");
        Assert.Equal((61.3, 0.5), (mean.MeanG, cv.Cv));
        Assert.Equal(neither.Cv, mean.Cv, 0.01);
        Assert.Equal(neither.MeanG, cv.MeanG, 0.5);
        foreach (LotKnowledge k in (LotKnowledge[])[mean, cv])
            Assert.Equal(new SizeCurve(k.MeanG, k.Cv).MassShare(SmallSeason.Law, 50, 57), k.ClassShares[2]);
        Assert.Equal("mean: given; spread: samples n=60, shrunk toward variety and field", mean.HowKnown);
    }

    [Fact]
    public void Classes_and_under_are_everything_and_so_are_grades_and_ungraded()
    {
        Season season = SmallSeason.Of(
            [SmallSeason.Lot("1", mean: 50, cv: 0.3), SmallSeason.Lot("2"), SmallSeason.Lot("3", "Violet")], [.. Bulbs("2", 45, 80)]);
        foreach (LotKnowledge k in LotKnowing.Know(season).Lots.Values)
        {
            Assert.Equal(1, k.ClassShares.Sum() + k.Under, 1e-12);
            Assert.Equal(1, k.GradeShares.Sum() + k.Ungraded, 1e-12);
            Assert.Equal(1, k.FreshShare + k.CrackShare + k.WasteShare, 1e-12);
            Assert.All(k.ClassBands.Zip(k.ClassShares), p => Assert.True(p.First.Low <= p.Second && p.Second <= p.First.High));
        }
    }

    [Fact]
    public void Cloves_weigh_the_bulb_less_what_cracking_loses_over_their_number()
    {
        Season season = SmallSeason.Of([SmallSeason.Lot("1", mean: 60, cv: 0.3)]);
        var cloves = new SizeCurve(60 * 0.8 / 12, 0.4);
        Assert.Equal(cloves.MassShare(new MassLaw(-5.5, 2.6, 0.12), 14, null), Know(season, "1").GradeShares[0]);
    }

    [Fact]
    public void A_small_sample_is_pulled_toward_its_variety_and_a_large_one_hardly()
    {
        Season Of(int n) => SmallSeason.Of(
            [.. Enumerable.Range(1, 8).Select(i => SmallSeason.Lot($"{i}"))],
            [.. Bulbs("1", 70, n), .. Enumerable.Range(2, 7).SelectMany(i => Bulbs($"{i}", 47 + i, 100))]);
        double few = Know(Of(5), "1").MeanG, many = Know(Of(400), "1").MeanG, mean = 70 * Math.Exp(0.3 * 0.3 / 2);
        Assert.InRange(few, 52, mean - 3);
        Assert.InRange(many, mean - 1.5, mean + 1);
        Assert.Equal("samples n=5, shrunk toward variety and field", Know(Of(5), "1").HowKnown);
    }

    [Fact]
    public void A_lot_without_samples_takes_its_varietys_value_then_all_lots_then_the_default()
    {
        Season season = SmallSeason.Of(
            [SmallSeason.Lot("1"), SmallSeason.Lot("2"), SmallSeason.Lot("3", "Violet")], [.. Bulbs("1", 45, 80)]);
        LotsKnown known = LotKnowing.Know(season);
        Assert.Equal(("variety and field", "all lots"), (known.Lots[new("2")].HowKnown, known.Lots[new("3")].HowKnown));
        Assert.Equal(45 * Math.Exp(0.045), known.Lots[new("2")].MeanG, 0.8);
        Assert.Equal(known.Lots[new("2")].MeanG, known.Lots[new("3")].MeanG, 0.01);
        Assert.True(known.Lots[new("2")].MeanBand.High > known.Lots[new("1")].MeanBand.High);

        LotsKnown nothing = LotKnowing.Know(SmallSeason.Of([SmallSeason.Lot("1")]));
        Assert.Equal("default", nothing.Lots[new("1")].HowKnown);
        Assert.Equal(LotDefaults.Default.MeanG, nothing.Lots[new("1")].MeanG, 1e-9);
        Assert.Equal(LotDefaults.Default.Cv, nothing.Lots[new("1")].Cv, 1e-9);
        Assert.Contains(nothing.Defaults, d => d is { Name: "bulb_mean_g", Value: "50", Count: 1 });
        Assert.Contains(nothing.Defaults, d => d.Name == "crack_share");
    }

    [Fact]
    public void Cells_of_other_lots_speak_for_the_variety_too()
    {
        Season season = SmallSeason.Of(
            [.. Enumerable.Range(1, 5).Select(i => SmallSeason.Lot($"{i}", mean: 58 + i, cv: 0.33)), SmallSeason.Lot("6")]);
        LotKnowledge k = Know(season, "6");
        Assert.Equal(61, k.MeanG, 1);
        Assert.Equal(0.33, k.Cv, 0.01);
        Assert.Equal("variety and field", k.HowKnown);
    }

    [Fact]
    public void Mould_and_decay_are_waste_and_all_other_faults_go_to_the_cracker_by_mass()
    {
        SampleBulb[] bulbs =
        [
            .. Enumerable.Range(0, 60).Select(_ => SmallSeason.Bulb("1", 50)),
            .. Enumerable.Range(0, 10).Select(i => SmallSeason.Bulb("1", 100, defect: i % 2 == 0 ? Defect.Mold : Defect.Decay)),
            .. Enumerable.Range(0, 20).Select(i => SmallSeason.Bulb("1", 50, defect: (Defect)(3 + i % 5))),
        ];
        DefectSample s = DefectSample.Of(bulbs);
        Assert.Equal((0.6, 0.2, 0.2), (s.Fresh, s.Crack, s.Waste));
        // (60 x 50 + 10 x 100 + 20 x 50)^2 / (80 x 2500 + 10 x 10000).
        Assert.Equal(5000.0 * 5000 / 300000, s.Bulbs, 1e-9);
        // Rotten bulbs are in no size class.
        Assert.Equal(80, Know(SmallSeason.Of([SmallSeason.Lot("1")], bulbs), "1").Sources.SampledBulbs);
    }

    [Fact]
    public void A_row_that_gives_one_share_divides_the_rest_as_the_lot_does()
    {
        LotRow fresh = SmallSeason.Lot("1", fresh: 0.9), crack = SmallSeason.Lot("1", place: "Cold", crack: 0.4), both = SmallSeason.Lot("1", place: "Shed", fresh: 0.7, crack: 0.2);
        LotKnowledge k = Know(SmallSeason.Of([fresh, crack, both]), "1");
        // The one row that gives both speaks for the lot: of what is not fresh, 2 in 3 are the cracker's.
        Assert.Equal((0.7, 0.2), (k.FreshShare, k.CrackShare));
        Assert.Equal(0.1 * 2 / 3, k.SharesOf(fresh).Crack, 1e-12);
        Assert.Equal(0.6 * 0.7 / 0.8, k.SharesOf(crack).Fresh, 1e-12);
        Assert.Equal(new SoundShares(0.7, 0.2), k.SharesOf(both));
    }

    [Fact]
    public void A_variety_without_clove_figures_takes_defaults_and_says_so()
    {
        Season season = SmallSeason.Of(
            [SmallSeason.Lot("1", mean: 50, cv: 0.3)],
            varieties: [new Variety(new("Pale"), SmallSeason.Law, null, null, null, null)], yields: [new(LineMode.Fresh, 0.9)]);
        LotsKnown known = LotKnowing.Know(season);
        string[] taken = [.. known.Defaults.Select(d => d.Name)];
        foreach (string name in (string[])["cloves_per_bulb", "clove_cv", "clove_g", "clove_width_mm", "clove_slope", "clove_scatter", "crack_kept_share"])
            Assert.Contains(name, taken);
        // The default clove: 1.813 g at a width of 10.4 mm (J. Food Sci. Technol. 51:3083).
        MassLaw law = LotDefaults.Default.CloveLaw;
        Assert.Equal(1.813, Math.Exp(law.A + law.B * Math.Log(10.4)), 1e-9);
    }

    [Fact]
    public void Every_default_turns_by_itself_and_every_one_taken_can_be_turned()
    {
        foreach (Dial<LotDefaults> dial in LotDefaults.Dials)
        {
            LotDefaults turned = LotDefaults.Default.With(dial.Name, 1.2);
            foreach (Dial<LotDefaults> other in LotDefaults.Dials)
                Assert.Equal(other.Read(LotDefaults.Default) * (other.Name == dial.Name ? 1.2 : 1), other.Read(turned), 1e-12);
        }

        // Every number is a dial: as many dials as constructor parameters.
        Assert.Equal(typeof(LotDefaults).GetConstructors().Max(c => c.GetParameters().Length), LotDefaults.Names.Count);
        Assert.Throws<ArgumentException>(() => LotDefaults.Default.With("no such default", 1));
    }

    [Fact]
    public void A_default_mean_that_is_turned_moves_the_lot_that_rests_on_it()
    {
        Season season = SmallSeason.Of([SmallSeason.Lot("1")]);
        Assert.Equal(60, LotKnowing.Know(season, LotDefaults.Default.With("bulb_mean_g", 1.2)).Lots[new("1")].MeanG, 1e-9);
    }

    [Fact]
    public void Bulbs_all_of_one_weight_or_a_single_bulb_do_no_harm()
    {
        Season season = SmallSeason.Of(
            [SmallSeason.Lot("1"), SmallSeason.Lot("2"), SmallSeason.Lot("3", mean: 50, cv: 0), SmallSeason.Lot("4")],
            [.. Enumerable.Repeat(SmallSeason.Bulb("1", 50), 10), SmallSeason.Bulb("2", 48, 45), SmallSeason.Bulb("4", 30, defect: Defect.Mold)]);
        foreach (LotKnowledge k in LotKnowing.Know(season).Lots.Values)
        {
            Assert.All(k.ClassShares, s => Assert.InRange(s, 0, 1));
            Assert.True(double.IsFinite(k.MeanG) && double.IsFinite(k.Cv) && double.IsFinite(k.FreshBand.High));
        }
    }
}
