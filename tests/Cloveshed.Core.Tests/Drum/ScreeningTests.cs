using Cloveshed.Core.Drum;
using CsCheck;

namespace Cloveshed.Core.Tests.Drum;

public class ScreeningTests
{
    /// <summary>
    /// Two decks, three products: a class exercise with the sampled fractions of each stream (scribd.com/document/392324892), solved there to
    /// P 736.076, R 221.914, Q 42.010 kg and an effectiveness of 0.7299 of the coarse deck.
    /// </summary>
    [Fact]
    public void Two_decks_close_to_the_published_masses()
    {
        double[] masses = ScreenTest.Masses(1000, [0.8868, 0.0927, 0.0205], [[0.9836, 0.0163, 0], [0.6585, 0.3407, 0.0009], [0.3967, 0.1213, 0.4821]]);
        Assert.Equal(736.076, masses[0], 0.001);
        Assert.Equal(221.914, masses[1], 0.001);
        Assert.Equal(42.010, masses[2], 0.001);
        double recovery = 0.9836 * masses[0] / 886.8, rejection = 1 - 0.0163 * masses[0] / 113.2;
        Assert.Equal(0.7299, recovery * rejection, 0.0001);
    }

    /// <summary>Quartz on a 10-mesh screen (W. L. McCabe, J. C. Smith and P. Harriott, Unit Operations of Chemical Engineering, from memory).</summary>
    [Fact]
    public void One_screen_has_McCabes_ratio_and_effectiveness()
    {
        ScreenFound found = ScreenTest.OneScreen(0.47, 0.85, 0.195);
        Assert.Equal(0.420, found.OverPerFeed, 0.0005);
        Assert.Equal(0.669, found.Effectiveness, 0.0005);
        // The book's own form of the same.
        double e = (0.47 - 0.195) * (0.85 - 0.47) * (1 - 0.195) * 0.85 / (Math.Pow(0.85 - 0.195, 2) * (1 - 0.47) * 0.47);
        Assert.Equal(e, found.Effectiveness, 1e-12);
    }

    /// <summary>Rosin-Rammler: at x = x' 36.788% stay (R package sievetest); x' 50 mm, n 3 round trip (derived).</summary>
    [Fact]
    public void Rosin_Rammler_goes_there_and_back()
    {
        double[] x = [20, 35, 50, 65, 80], published = [0.938005, 0.709638, 0.367879, 0.111136, 0.016639];
        for (int k = 0; k < x.Length; k++)
            Assert.Equal(published[k], ScreenTest.Retained(x[k], 50, 3), 1e-6);
        (double size, double spread) = ScreenTest.FitRosinRammler(x, published);
        Assert.Equal(50, size, 1e-3);
        Assert.Equal(3, spread, 1e-3);
    }

    /// <summary>75% at d50 + Ep, 25% at d50 - Ep is the definition; x75/x25 perfect at 1 (powder-technology handbook's scale).</summary>
    [Fact]
    public void A_partition_is_half_at_d50_and_sharper_is_nearer_to_perfect()
    {
        Partition p = new(12, 30);
        Assert.Equal(0.5, p.Over(12), 1e-12);
        Assert.Equal(0.75, p.Over(p.WidthAt(0.75)), 1e-12);
        Assert.Equal(Math.Exp(2 * Math.Log(3) / 30), p.Imperfection, 1e-12);
        Assert.True(new Partition(12, 60).Imperfection < p.Imperfection);
        Assert.Equal((0, 1), (new Partition(12, double.PositiveInfinity).Over(11.99), new Partition(12, double.PositiveInfinity).Over(12)));
        // The linear form with this Ep is the curve's tangent at d50.
        const double Step = 1e-5;
        double Linear(double d) => 1 / (1 + Math.Exp(-Math.Log(3) * (d - 12) / p.Ep));
        Assert.Equal((p.Over(12 + Step) - p.Over(12 - Step)) / (2 * Step), (Linear(12 + Step) - Linear(12 - Step)) / (2 * Step), 1e-4);
    }

    /// <summary>Everything that goes in comes out, whatever the holes and the order; finer than any limit.</summary>
    [Fact]
    public void Outflows_add_up_and_a_perfect_drum_mixes_nothing() =>
        Gen.Select(Gen.Double[6, 12].Array[1, 4], Gen.Double[5, 60], Gen.Bool).Sample((limits, sharpness, smallFirst) =>
        {
            double[] at = [.. limits.Order().Select((l, k) => l + 3 * k)];
            GradeWanted[] grades = [.. at.Select((l, k) => new GradeWanted($"g{k}", l, k + 1 < at.Length ? at[k + 1] : null, null, null))];
            IReadOnlyList<Zone> zones = DrumOutflows.Zones(Cloves, grades);
            HoleOrder order = smallFirst ? HoleOrder.SmallestFirst : HoleOrder.LargestFirst;
            IReadOnlyList<Outflow> real = DrumOutflows.Of(Cloves, zones, [.. at.Select(l => new Partition(l, sharpness))], order);
            Assert.Equal(1, real.Sum(f => f.Share), 1e-9);
            IReadOnlyList<Outflow> perfect = DrumOutflows.Of(Cloves, zones, [.. at.Select(l => new Partition(l, double.PositiveInfinity))], order);
            // A cell of widths that a limit divides goes one way whole.
            Assert.All(perfect, f => Assert.True(f.Share < 1e-6 || f.Contamination * f.Share < 0.01));
            Assert.True(real.Sum(f => f.Share * f.Contamination) >= perfect.Sum(f => f.Share * f.Contamination) - 1e-9);
        }, iter: 60);

    /// <summary>Against trying every pair of holes on a coarse grid.</summary>
    [Theory]
    [InlineData(HoleOrder.SmallestFirst, null)]
    [InlineData(HoleOrder.LargestFirst, null)]
    [InlineData(HoleOrder.SmallestFirst, 0.12)]
    public void Chosen_holes_are_the_best_of_all(HoleOrder order, double? limit)
    {
        GradeWanted[] grades = [new("a", null, null, 0.3, null), new("b", null, null, 0.45, limit), new("c", null, null, 0.25, null)];
        DrumQuestion question = new(Cloves, grades, DrumNature.Usual, 1, 0.25, order);
        DrumAnswer answer = HoleChoosing.Choose(question);
        IReadOnlyList<Zone> zones = DrumOutflows.Zones(Cloves, grades);
        double best = double.PositiveInfinity;
        for (int a = 20; a < 80; a++)
        {
            for (int b = a; b < 80; b++)
                best = Math.Min(best, HoleChoosing.Cost(DrumOutflows.Of(Cloves, zones, [DrumNature.Usual.At(a * 0.25, 1), DrumNature.Usual.At(b * 0.25, 1)], order), grades));
        }

        Assert.Equal(best, HoleChoosing.Cost(answer.Outflows, grades), 1e-9);
    }

    [Fact]
    public void A_fuller_drum_mixes_more_and_a_limit_says_how_full_it_may_be()
    {
        GradeWanted[] grades = [new("small", 7, 11, null, null), new("large", 11, null, null, 0.09)];
        DrumQuestion At(double load) => new(Cloves, grades, DrumNature.Usual, load, 0.1, HoleOrder.SmallestFirst);
        Assert.True(HoleChoosing.Choose(At(0.2)).Misplaced < HoleChoosing.Choose(At(1)).Misplaced);
        Assert.True(HoleChoosing.Choose(At(1)).Misplaced < HoleChoosing.Choose(At(2)).Misplaced);
        double most = HoleChoosing.MostLoad(At(1) with { Grades = [grades[0], grades[1] with { MostContamination = HoleChoosing.Choose(At(1)).Outflows[^1].Contamination }] }, 3);
        Assert.InRange(most, 0.9, 3);
    }

    /// <summary>Against following the passes one by one.</summary>
    [Fact]
    public void The_loop_is_what_its_passes_add_up_to() =>
        Gen.Select(Gen.Double[0, 0.6], Gen.Double[0, 0.9], Gen.Double[0, 1], Gen.Double[0, 0.3], Gen.Double[0, 0.2]).Sample((first, again, caught, waste, hurt) =>
        {
            LoopAnswer loop = CrackerLoop.At(new(1000, first, again, caught, waste, hurt));
            double passing = 1000, round = 0, cloves = 0, skins = 0, uncaught = 0, hurtCloves = 0;
            for (int pass = 1; pass < 800; pass++)
            {
                double uncracked = passing * (pass == 1 ? first : again), cracked = passing - uncracked;
                cloves += cracked * (1 - waste);
                skins += cracked * waste;
                hurtCloves += cracked * (1 - waste) * (1 - Math.Pow(1 - hurt, pass));
                uncaught += uncracked * (1 - caught);
                passing = uncracked * caught;
                round += passing;
            }

            Assert.Equal(round, loop.Recirculating, 1e-6);
            Assert.Equal(cloves, loop.Cloves, 1e-6);
            Assert.Equal(skins, loop.Waste, 1e-6);
            Assert.Equal(uncaught, loop.Uncaught, 1e-6);
            Assert.Equal(hurtCloves, loop.Hurt, 1e-6);
            Assert.Equal(1000, loop.Cloves + loop.Waste + loop.Uncaught, 1e-6);
        }, iter: 200);

    [Fact]
    public void A_loop_that_cracks_nothing_again_is_refused() =>
        Assert.Throws<ArgumentException>(() => CrackerLoop.At(new(1000, 0.3, 1, 1, 0.1, 0)));

    private static CloveWidths Cloves { get; } = CloveWidths.OfBulbs(55, 0.82, 12, 0.45, new(-5.5, 2.6, 0.12));
}
