using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using CsCheck;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Tests.Sizes;

public class AllometryTests
{
    /// <summary>
    /// British Columbia Ministry of Agriculture, "Garlic (organic)", p. 10: average diameters with g per bulb from the count per kg. Recomputed
    /// from the table: m = 0.00289 d^2.494, R^2 0.981; and every row's shape within 2.9 to 4.6 of 10,000 g/mm^3.
    /// </summary>
    [Fact]
    public void The_trades_table_gives_the_default_law_and_plausible_shapes()
    {
        (double Mm, double PerKg)[] table = [(75, 8), (70, 9), (65, 10), (55, 13), (50, 20), (47, 23), (44, 30), (41, 33), (37, 44)];
        SampledBulb[] rows = [.. table.Select((r, k) => new SampledBulb(1000 / r.PerKg, r.Mm, 1, k))];
        MassLawFit fit = Allometry.Of(rows);
        Assert.False(fit.ByDefault);
        Assert.Equal(Allometry.Default.B, fit.MeanLaw.B, 0.001);
        Assert.Equal(Math.Exp(Allometry.Default.A), Math.Exp(fit.MeanLaw.A), 0.00001);
        Assert.Equal(0.981, fit.MassOnDiameter!.RSquared, 0.0005);
        Assert.All(rows, r => Assert.InRange(r.Shape!.Value * 1e4, 2.85, 4.65));
        Assert.Empty(fit.Odd);
    }

    /// <summary>Taskopru garlic, 32.81 g at 46.51 mm: 3.26 of 10,000 g/mm^3 (Haciseferogullari et al.; derived).</summary>
    [Fact]
    public void Shape_is_mass_over_the_cube() => Assert.Equal(3.26e-4, new SampledBulb(32.81, 46.51, 1, 1).Shape!.Value, 0.005e-4);

    /// <summary>Diameters drawn for given weights, as the season files have it: both ways of asking are met.</summary>
    [Fact]
    public void The_law_for_the_sizer_is_the_one_that_made_the_diameters()
    {
        SampledBulb[] bulbs = Draw(20_000, 1);
        MassLawFit fit = Allometry.Of(bulbs);
        Assert.Equal(-6.482, fit.DiameterOnMass.A, 0.15);
        Assert.Equal(2.646, fit.DiameterOnMass.B, 0.04);
        Assert.Equal(0.1, fit.DiameterOnMass.S, 0.005);
        // Least squares the other way is flatter, by what scatter takes.
        Assert.True(fit.MeanLaw.B < fit.DiameterOnMass.B - 0.1);
    }

    [Theory]
    [InlineData(0.8)]
    [InlineData(0.95)]
    public void Bands_hold_as_many_further_bulbs_as_they_promise(double probability)
    {
        int inside = 0, all = 0;
        for (int seed = 0; seed < 150; seed++)
        {
            MassLawFit fit = Allometry.Of(Draw(20, seed));
            foreach (SampledBulb next in Draw(20, 1000 + seed))
            {
                (double low, double high) = fit.BandG(next.DiameterMm!.Value, probability);
                all++;
                inside += low <= next.WeightG && next.WeightG <= high ? 1 : 0;
            }
        }

        Assert.InRange(inside / (double)all, probability - 0.02, probability + 0.02);
    }

    [Fact]
    public void A_slip_is_named_and_left_out_of_the_law_but_an_odd_shape_only_named()
    {
        SampledBulb[] bulbs = [.. Draw(60, 2), new(50, 5.1, 1, 901), new(38, 42, 1, 902)];
        MassLawFit fit = Allometry.Of(bulbs), without = Allometry.Of([.. bulbs.Where(b => b.Line != 901)]);
        Assert.Contains(new OddBulb(bulbs[60], OddReason.FarFromLaw), fit.Odd);
        Assert.Contains(new OddBulb(bulbs[61], OddReason.Shape), fit.Odd);
        Assert.DoesNotContain(fit.Odd, o => o.Bulb.Line == 902 && o.Reason == OddReason.FarFromLaw);
        Assert.Equal(without.MeanLaw, fit.MeanLaw);
        Assert.Equal(61, fit.Pairs);
    }

    [Fact]
    public void Too_few_diameters_or_none_that_go_with_weight_leave_the_default()
    {
        Assert.True(Allometry.Of(Draw(7, 3)).ByDefault);
        Assert.False(Allometry.Of(Draw(8, 3)).ByDefault);
        Assert.Equal(Allometry.Default, Allometry.Of([new(50, null, 1, 1)]).MeanLaw);
    }

    /// <summary>MathNet's line as referee, and its t for the band.</summary>
    [Fact]
    public void The_line_is_MathNets() =>
        Gen.Select(Gen.Double[1, 5].Array[5, 20], Gen.Double[-1, 1].Array[20]).Sample((x, e) =>
        {
            if (x.Distinct().Count() < 3)
                return;
            double[] y = [.. x.Select((v, k) => 2 - 0.7 * v + e[k])];
            StraightLine line = StraightLine.Fit(x, y)!;
            (double a, double b) = MathNet.Numerics.Fit.Line(x, y);
            Assert.Equal(a, line.Intercept, 1e-6);
            Assert.Equal(b, line.Slope, 1e-6);
            if (line.ResidualSd < 1e-6)
                return; // points on one line: no band but dust
            (double low, double high) = line.Band(3, 0.8);
            Assert.Equal(0.9, StudentT.CDF(line.At(3), line.ResidualSd * Math.Sqrt(1 + 1.0 / x.Length + Math.Pow(3 - x.Average(), 2) / line.SquaresX), x.Length - 2, high), 1e-9);
            Assert.Equal(line.At(3), (low + high) / 2, 1e-9);
        }, iter: 100);

    private static SampledBulb[] Draw(int n, int seed)
    {
        Random random = new(seed);
        return
        [
            .. Enumerable.Range(0, n).Select(k =>
            {
                double ln = Normal.Sample(random, Math.Log(52), 0.32);
                return new SampledBulb(Math.Exp(ln), Math.Exp((ln + 6.482 + 0.1 * Normal.Sample(random, 0, 1)) / 2.646), 1, k);
            }),
        ];
    }
}
