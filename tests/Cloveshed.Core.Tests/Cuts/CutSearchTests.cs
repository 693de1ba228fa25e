using Cloveshed.Core.Cuts;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using CsCheck;

namespace Cloveshed.Core.Tests.Cuts;

/// <summary>The search against trying everything, by code that shares nothing with it but the table.</summary>
public class CutSearchTests
{
    private const double StepG = 5, FromG = 20;
    private static readonly MassLaw Law = new(-6.482, 2.646, 0.1);

    /// <summary>A small lot: masses of a few cells, and how much of each is as wide as each limit (falling from limit to limit, rising from cell to cell or not).</summary>
    private static readonly Gen<(double[] Mass, double[][] Wide, double[] Prices, double Tolerance, int Outlets, bool Open)> Lots =
        from cells in Gen.Int[3, 9]
        from classes in Gen.Int[1, 4]
        from raw in Gen.Double[0.01, 1].Array[cells]
        from falls in Gen.Double[0, 1].Array[cells * (classes + 1)]
        from smooth in Gen.Bool
        from prices in Gen.Double[0, 2].Array[classes]
        from pick in Gen.Int[0, 5]
        let tolerance = new[] { 0.0, 0.02, 0.05, 0.1, 0.3, 1.0 }[pick]
        from outlets in Gen.Int[1, 4]
        from open in Gen.Bool
        select (Shares(raw), Widths(falls, cells, classes, smooth, open), prices, tolerance, outlets, open);

    [Fact]
    public void The_best_boxes_are_those_that_trying_all_of_them_finds() =>
        Lots.Sample(lot =>
        {
            CutTable table = CutTable.OfCells(FromG, StepG, lot.Mass, lot.Wide);
            (IReadOnlyList<(int, int, int)> boxes, int end, double value) = new CutSearch(table, lot.Prices, (_, _) => lot.Tolerance, lot.Open).Best(lot.Outlets);
            double best = TryAll(lot.Mass, lot.Wide, lot.Prices, lot.Tolerance, lot.Outlets, lot.Open);
            Assert.Equal(best, value, 1e-9);
            // And the boxes that it names do earn that, each within tolerance.
            double earned = 0;
            for (int k = 0; k < boxes.Count; k++)
            {
                (int c, int e, int from) = boxes[k];
                int to = k + 1 < boxes.Count ? boxes[k + 1].Item3 : end;
                (double mass, double off) = Box(lot.Mass, lot.Wide, c, e, from, to);
                Assert.True(off <= lot.Tolerance * mass + 1e-9);
                earned += lot.Prices[c] * mass;
            }

            Assert.Equal(value, earned, 1e-9);
        }, iter: 3000);

    /// <summary>By hand: two classes, three cells of equal mass, every bulb where it belongs but one cell that is half and half.</summary>
    [Fact]
    public void A_cell_that_is_half_and_half_goes_where_it_is_borne()
    {
        double[] mass = [0.4, 0.2, 0.4];
        double[][] wide = [[1, 1, 1], [0, 0.5, 1], [0, 0, 0]];
        CutTable table = CutTable.OfCells(FromG, StepG, mass, wide);
        (IReadOnlyList<(int, int, int)> boxes, _, double value) = new CutSearch(table, [1, 2], (_, _) => 0.2, true).Best(2);
        // With the dear class 0.1 of 0.6 is off size, 16.7%: borne. 0.4 x 1 + 0.6 x 2.
        Assert.Equal([(0, 0, 0), (1, 1, 2)], boxes);
        Assert.Equal(1.6, value, 1e-12);
        // At 10% nobody takes the cell, and the two classes go as one.
        (boxes, _, value) = new CutSearch(table, [1, 2], (_, _) => 0.1, true).Best(2);
        Assert.Equal([(0, 1, 0)], boxes);
        Assert.Equal(1, value, 1e-12);
    }

    /// <summary>A looser tolerance or another outlet never earns less.</summary>
    [Fact]
    public void More_freedom_is_never_worth_less() =>
        Gen.Select(Gen.Double[45, 70], Gen.Double[0.25, 0.4], Gen.Double[0.02, 0.08], Gen.Double[0.02, 0.2]).Sample((mean, cv, scatter, tolerance) =>
        {
            CutQuestion Ask(double t, double step, int outlets) => new(
                One(mean, cv), Law with { S = scatter }, Law, TradeChart.Us, CutQuestion.UsualPrices(9), t, step, outlets);
            double here = CutChoosing.Choose(Ask(tolerance, 1, 4)).Best.Value;
            Assert.True(here <= CutChoosing.Choose(Ask(tolerance * 1.2, 1, 4)).Best.Value + 1e-9);
            Assert.True(here <= CutChoosing.Choose(Ask(tolerance, 1, 5)).Best.Value + 1e-9);
        }, iter: 15);

    [Fact]
    public void A_perfect_law_packs_every_class_at_its_own_limit_and_nothing_is_off_size()
    {
        MassLaw exact = Law with { S = 0 };
        CutAnswer answer = CutChoosing.Choose(new(One(55, 0.33), exact, exact, TradeChart.Us, CutQuestion.UsualPrices(9), 0.01, 0.02));
        Assert.Equal(9, answer.Best.Boxes.Count);
        Assert.Empty(answer.Merged);
        Assert.All(answer.Best.Boxes.Skip(1), b => Assert.Equal(Math.Exp(Law.A + Law.B * Math.Log(TradeChart.Us[b.Box.Class].MinMm)), b.Box.MinG, 0.5));
        Assert.All(answer.Best.Boxes, b => Assert.InRange(b.Below + b.Above, 0, 0.01 + 1e-9));
        Assert.All(answer.Nominal.Boxes, b => Assert.True(b.Holds));
        Assert.InRange(answer.Best.Value, answer.Nominal.Value, answer.Nominal.Value * 1.005);
    }

    /// <summary>Off size as the table has it against drawing bulbs and measuring them.</summary>
    [Fact]
    public void Off_size_is_what_drawn_bulbs_show()
    {
        SizeClass[] chart = [new(new("S"), null, 37, 47), new(new("M"), null, 47, 57), new(new("L"), null, 57, null)];
        MassLaw law = Law with { S = 0.03 };
        CutAnswer answer = CutChoosing.Choose(new(One(52, 0.32), law, law, chart, [1, 1.3, 1.6], 0.05, 0.1));
        Assert.Equal(3, answer.Best.Boxes.Count);
        Random random = new(3);
        var off = new double[3];
        var all = new double[3];
        LognormalPart part = One(52, 0.32).Parts[0];
        for (int k = 0; k < 400_000; k++)
        {
            double g = Math.Exp(MathNet.Numerics.Distributions.Normal.Sample(random, part.Mu, part.Sigma));
            double mm = Math.Exp((Math.Log(g) - law.A + law.S * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1)) / law.B);
            int box = answer.Best.Boxes.Count(b => g >= b.Box.MinG) - 1;
            if (box < 0)
                continue;
            all[box] += g;
            off[box] += mm < chart[box].MinMm || mm >= (chart[box].MaxMm ?? 1e9) ? g : 0;
        }

        for (int k = 0; k < 3; k++)
            Assert.Equal(off[k] / all[k], answer.Best.Boxes[k].Below + answer.Best.Boxes[k].Above, 0.002);
    }

    private static LognormalMixture One(double mean, double cv)
    {
        Core.Lots.SizeCurve curve = new(mean, cv);
        return new([new(1, curve.Mu, Math.Sqrt(curve.SigmaSquared))]);
    }

    private static double[] Shares(double[] raw) => [.. raw.Select(r => r / raw.Sum())];

    private static double[][] Widths(double[] falls, int cells, int classes, bool smooth, bool open)
    {
        var wide = new double[classes + 1][];
        for (int k = 0; k <= classes; k++)
            wide[k] = new double[cells];
        for (int cell = 0; cell < cells; cell++)
        {
            double left = 1;
            for (int k = 0; k <= classes; k++)
            {
                // A limit that a heavier cell passes more often, or anything at all.
                left *= smooth ? Math.Clamp(1.2 - 0.35 * k + 0.25 * (cell - cells / 2.0), 0, 1) : falls[cell * (classes + 1) + k];
                // In millionths: what is off by less than that is rounding, of which the search and trying all each have their own.
                left = Math.Round(left, 6);
                wide[k][cell] = k == classes && open ? 0 : left;
            }
        }

        return wide;
    }

    private static (double Mass, double Off) Box(double[] mass, double[][] wide, int c, int e, int from, int to)
    {
        double all = 0, off = 0;
        for (int point = from; point < to; point++)
        {
            if (point == 0)
                continue; // what is lighter than the grid: nothing here
            double m = mass[point - 1];
            all += m;
            off += m * (1 - wide[c][point - 1] + wide[e + 1][point - 1]);
        }

        return (all, off);
    }

    // Every way to cut, by recursion: where the first box begins, what each holds, where the last ends.
    private static double TryAll(double[] mass, double[][] wide, double[] prices, double tolerance, int outlets, bool open)
    {
        int points = mass.Length + 2, classes = prices.Length;
        double best = 0;
        for (int c = 0; c < classes; c++)
        {
            for (int from = 0; from < points; from++)
                Go(c, from, 0, outlets);
        }

        return best;

        void Go(int c, int from, double earned, int left)
        {
            if (left == 0)
                return;
            for (int e = c; e < classes; e++)
            {
                for (int to = from + 1; to < points; to++)
                {
                    (double m, double off) = Box(mass, wide, c, e, from, to);
                    if (off > tolerance * m + 1e-12)
                        continue;
                    double now = earned + prices[c] * m;
                    if (e == classes - 1 && (!open || to == points - 1))
                        best = Math.Max(best, now);
                    if (e + 1 < classes)
                        Go(e + 1, to, now, left - 1);
                }
            }
        }
    }
}
