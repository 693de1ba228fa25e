using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using MathNet.Numerics;

namespace Cloveshed.Core.Cuts;

/// <summary>
/// A lot over the sizer's grid, summed from the lightest bulb up: mass, mass at least as wide as each limit of the chart, and bulbs.
/// A sum between grid points is read on a straight line. All mass is a share of the lot.
/// </summary>
public sealed class CutTable
{
    // Bulbs rarer than this are taken with the grid's ends.
    private const double Tail = 1e-6;
    private const int MostCells = 20_000;

    private readonly double stepG;
    private readonly double[] wideEnough;

    private CutTable(double fromG, double stepG, int points, int limits)
    {
        (FromG, this.stepG) = (fromG, stepG);
        Mass = new double[points];
        Bulbs = new double[points];
        Squares = new double[points];
        Wide = [.. Enumerable.Range(0, limits).Select(_ => new double[points])];
        wideEnough = new double[limits];
    }

    /// <summary>Weight of the second grid point; the first is 0.</summary>
    public double FromG { get; }

    /// <summary>Grid points.</summary>
    public int Points => Mass.Length;

    /// <summary>Mass of all lighter bulbs, at each grid point.</summary>
    public double[] Mass { get; }

    /// <summary>Of these, as wide as the chart's limit k or wider; the last limit is the top's, of no bulb where it has none.</summary>
    public double[][] Wide { get; }

    /// <summary>Number of lighter bulbs, for each gram of the lot.</summary>
    public double[] Bulbs { get; }

    /// <summary>Sum of the squares of their masses, for each gram of the lot.</summary>
    public double[] Squares { get; }

    /// <summary>The weight of a grid point; the last stands for all that is heavier too.</summary>
    public double WeightG(int point) => point == 0 ? 0 : FromG + (point - 1) * stepG;

    /// <summary>A sum at any weight.</summary>
    public double At(double[] sums, double g)
    {
        if (g < FromG)
            return FromG > 0 ? sums[0] + (sums[1] - sums[0]) * Math.Max(0, g) / FromG : sums[0];
        double at = 1 + (g - FromG) / stepG;
        int left = (int)Math.Min(at, Points - 1);
        return left >= Points - 1 ? sums[^1] : sums[left] + (at - left) * (sums[left + 1] - sums[left]);
    }

    /// <summary>Tabulates a curve on a grid of this step, widened where the lot spans more than 20,000 of them.</summary>
    public static CutTable Of(LognormalMixture curve, MassLaw law, IReadOnlyList<SizeClass> chart, double stepG)
    {
        double low = Math.Floor(curve.Quantile(Tail) / stepG) * stepG, high = curve.Quantile(1 - Tail);
        while ((high - low) / stepG > MostCells)
            stepG *= 2;
        int cells = Math.Max(1, (int)Math.Ceiling((high - low) / stepG));
        double[] limits = [.. chart.Select(c => c.MinMm), chart[^1].MaxMm ?? double.PositiveInfinity];
        var table = new CutTable(low, stepG, cells + 2, limits.Length);
        double mass = 1, count = 1, mean = curve.MeanG;
        for (int p = 0; p + 1 < table.Points; p++)
        {
            double from = table.WeightG(p), to = table.WeightG(p + 1);
            bool last = p + 2 == table.Points;
            double massLeft = last ? 0 : curve.MassAtLeast(to), countLeft = last ? 0 : curve.CountAtLeast(to);
            double here = Math.Max(0, mass - massLeft), bulbs = Math.Max(0, count - countLeft) / mean;
            (mass, count) = (massLeft, countLeft);
            double g = bulbs > 0 && here > 0 ? Math.Clamp(here / bulbs, from, last ? double.MaxValue : to) : (from + to) / 2;
            table.Add(p, here, bulbs, g, law, limits);
        }

        return table;
    }

    /// <summary>Of masses and weights given cell by cell: what a slower twin can follow by hand.</summary>
    /// <param name="wide">For each limit, the part of each cell's mass that is at least as wide.</param>
    public static CutTable OfCells(double fromG, double stepG, IReadOnlyList<double> mass, IReadOnlyList<double[]> wide)
    {
        var table = new CutTable(fromG, stepG, mass.Count + 2, wide.Count);
        for (int p = 0; p + 1 < table.Points; p++)
        {
            double here = p == 0 ? 0 : mass[p - 1], g = p == 0 ? 1 : fromG + (p - 0.5) * stepG;
            for (int k = 0; k < wide.Count; k++)
                table.wideEnough[k] = p == 0 ? 0 : wide[k][p - 1];
            table.Put(p, here, here / g, g);
        }

        return table;
    }

    private void Add(int p, double here, double bulbs, double g, MassLaw law, double[] limits)
    {
        double lnMm = (Math.Log(Math.Max(g, double.Epsilon)) - law.A) / law.B, sd = law.S / law.B;
        for (int k = 0; k < limits.Length; k++)
        {
            double away = Math.Log(limits[k]) - lnMm;
            wideEnough[k] = limits[k] <= 0 ? 1 : double.IsPositiveInfinity(limits[k]) ? 0
                : sd > 0 ? 0.5 * SpecialFunctions.Erfc(away / (sd * Constants.Sqrt2)) : away <= 0 ? 1 : 0;
        }

        Put(p, here, bulbs, g);
    }

    private void Put(int p, double here, double bulbs, double g)
    {
        Mass[p + 1] = Mass[p] + here;
        Bulbs[p + 1] = Bulbs[p] + bulbs;
        Squares[p + 1] = Squares[p] + here * g;
        for (int k = 0; k < Wide.Length; k++)
            Wide[k][p + 1] = Wide[k][p] + here * wideEnough[k];
    }
}
