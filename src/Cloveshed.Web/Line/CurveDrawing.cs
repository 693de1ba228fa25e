using System.Text;
using Cloveshed.Core.Line;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.Ledger;
using Cloveshed.Pictures.Markup;
using MathNet.Numerics;

namespace Cloveshed.Web.Line;

/// <summary>
/// The lot's weights as a picture: how its mass lies over the logarithm of weight, and under that one hump for each size class as a ring would call its
/// bulbs. Humps overlap because bulbs of one weight are not of one width; a cut where two cross does the least harm. It stretches with
/// the page, so that words and handles stand over it and not in it.
/// </summary>
/// <param name="Inside">What is drawn; it rests on the lot alone and not on a setting.</param>
/// <param name="FromG">Left edge.</param>
/// <param name="ToG">Right edge.</param>
public sealed record CurveDrawing(string Inside, double FromG, double ToG, IReadOnlyList<double> Ticks)
{
    private const double Wide = 1000, Tall = 300;
    private const int Points = 160;
    private static readonly double[] Ticked = [1, 2, 5, 10, 15, 20, 30, 40, 50, 70, 100, 140, 200, 300, 500, 1000, 2000];

    /// <summary>The picture, with what it says in words.</summary>
    public string Svg(string label)
    {
        MarkupText svg = new();
        svg.Open("svg", ("xmlns", "http://www.w3.org/2000/svg"), ("class", "curve"), ("viewBox", "0 0 1000 300"), ("preserveAspectRatio", "none"), ("role", "img"), ("aria-label", label));
        return svg.Trusted(Inside).Close("svg").ToString();
    }

    /// <summary>Where a weight stands, as percent from the left; what is beyond an edge stands at it. Weights stand by their logarithm: a class is then as wide as its neighbours.</summary>
    public double At(double g) => Math.Clamp(Math.Log(Math.Max(g, 1e-9) / FromG) / Math.Log(ToG / FromG), 0, 1) * 100;

    public static CurveDrawing Of(LotWeights weights, IReadOnlyList<SizeClass> chart, SizerTotal? seen)
    {
        const double Rare = 0.001;
        double from = Math.Max(1, Math.Floor(weights.Curve.Quantile(Rare))), to = Math.Max(from + 1, Math.Ceiling(weights.Curve.Quantile(1 - Rare))), step = Math.Log(to / from) / Points;
        double[] at = [.. Enumerable.Range(0, Points + 1).Select(k => from * Math.Exp(k * step))], edges = [.. Enumerable.Range(0, Points + 2).Select(k => from * Math.Exp((k - 0.5) * step))];
        // By mass, for each unit of ln g.
        double[] own = [.. Enumerable.Range(0, at.Length).Select(k => weights.Curve.MassShare(edges[k], edges[k + 1]) / step)];
        Band[] band = weights.Shares80(edges);
        double[] low = [.. band.Select(one => one.Low / step)], high = [.. band.Select(one => one.High / step)];
        double[]? counted = seen is null ? null : Counted(seen.Counts, at, step);
        double top = Math.Max(high.Max(), counted?.Max() ?? 0) * 1.06;
        MarkupText svg = new();
        void Path(string d, string kind) => svg.Empty("path", ("class", kind), ("d", d));
        Path(Band(at, low, high, from, to, top), "curve-band");
        for (int k = 0; k <= chart.Count; k++)
        {
            double[] hump = [.. at.Select((g, i) => own[i] * Called(weights.Law.DiameterOnMass, chart, k, g))];
            if (hump.Max() > top / 200)
            {
                Path(Area(at, hump, from, to, top), k == chart.Count ? "hump hump-under" : k % 2 == 0 ? "hump hump-even" : "hump hump-odd");
            }
        }

        Path(Line(at, own, from, to, top), "curve-line");
        if (counted is not null)
        {
            Path(Line(at, counted, from, to, top), "curve-counted");
        }

        return new(svg.ToString(), from, to, [.. Ticked.Where(g => g > from && g < to)]);
    }

    /// <summary>The chance that a bulb of this weight is of class k by its width; the chart's length asks for those under its smallest class.</summary>
    private static double Called(MassLaw law, IReadOnlyList<SizeClass> chart, int k, double g)
    {
        double Wider(double mm) => mm <= 0 ? 1 : double.IsPositiveInfinity(mm) ? 0
            : 0.5 * SpecialFunctions.Erfc((law.A + law.B * Math.Log(mm) - Math.Log(Math.Max(g, 1e-3))) / (Math.Max(law.S, 1e-6) * Constants.Sqrt2));
        return k == chart.Count ? 1 - Wider(chart[0].MinMm) : Wider(chart[k].MinMm) - Wider(chart[k].MaxMm ?? double.PositiveInfinity);
    }

    // By mass, for each unit of ln g, over cells as wide as the picture's points.
    private static double[] Counted(WeightHistogram counts, double[] at, double step)
    {
        double all = 0;
        double[] mass = new double[at.Length];
        for (int tenths = 1; tenths < WeightHistogram.Cells; tenths++)
        {
            double here = counts[tenths] * (tenths / 10.0);
            if (here == 0)
            {
                continue;
            }

            all += here;
            // A tenth of a gram is spread over the cells that it reaches into: light bulbs have cells of four or five tenths, and whole tenths would make a saw of the line.
            double from = Math.Log((tenths - 0.5) / 10 / at[0]) / step + 0.5, to = Math.Log((tenths + 0.5) / 10 / at[0]) / step + 0.5;
            for (int cell = Math.Max(0, (int)Math.Floor(from)); cell < mass.Length && cell < to; cell++)
            {
                mass[cell] += here * (Math.Min(to, cell + 1) - Math.Max(from, cell)) / (to - from);
            }
        }

        return [.. mass.Select(one => all > 0 ? one / all / step : 0)];
    }

    private static string Line(double[] at, double[] y, double from, double to, double top) => Points2(at, y, from, to, top, "M");

    private static string Area(double[] at, double[] y, double from, double to, double top) => $"M0 {N(Tall)}" + Points2(at, y, from, to, top, "L") + $"L{N(Wide)} {N(Tall)}Z";

    private static string Band(double[] at, double[] low, double[] high, double from, double to, double top) =>
        Points2(at, high, from, to, top, "M") + Points2([.. at.Reverse()], [.. low.Reverse()], from, to, top, "L") + "Z";

    private static string Points2(double[] at, double[] y, double from, double to, double top, string begin)
    {
        StringBuilder d = new();
        for (int i = 0; i < at.Length; i++)
        {
            d.Append(i == 0 ? begin : "L").Append(N(Math.Log(at[i] / from) / Math.Log(to / from) * Wide)).Append(' ').Append(N(Tall * (1 - y[i] / top)));
        }

        return d.ToString();
    }

    private static string N(double value) => MarkupText.Number(Math.Round(value, 1));
}
