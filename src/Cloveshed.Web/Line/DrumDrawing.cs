using System.Text;
using Cloveshed.Core.Drum;
using Cloveshed.Pictures.Markup;

namespace Cloveshed.Web.Line;

/// <summary>
/// The lot's cloves over width, and under the line one hump for each outflow: what falls into it through these holes. Where a hump reaches
/// past its hole, cloves come out where they do not belong. Stretches with the page as <see cref="CurveDrawing"/> does.
/// </summary>
internal static class DrumDrawing
{
    private const double Wide = 1000, Tall = 300;

    private const double Rare = 0.002;

    public static CurveDrawing Of(DrumSight sight)
    {
        CloveWidths cloves = sight.Question.Cloves;
        double from = Math.Max(1, Math.Floor(Math.Min(cloves.Quantile(Rare), sight.Holes[0] * 0.9))), to = Math.Ceiling(Math.Max(cloves.Quantile(1 - Rare), sight.Holes[^1] * 1.1));
        int[] within = [.. Enumerable.Range(0, cloves.Share.Length).Where(i => cloves.WidthMm[i] >= from && cloves.WidthMm[i] <= to)];
        // A picture's points are fewer than the cells.
        const int Every = 2;
        within = [.. within.Where((_, at) => at % Every == 0)];
        double top = within.Max(i => cloves.Share[i]) * 1.06;
        Partition[] holes = [.. sight.Holes.Select(mm => sight.Question.Nature.At(mm, sight.Question.Load))];
        MarkupText svg = new();
        for (int z = 0; z <= holes.Length; z++)
        {
            int zone = z;
            string hump = Path(within, i => cloves.Share[i] * Part(holes, sight.Order, zone, cloves.WidthMm[i]), "L");
            svg.Empty("path", ("class", sight.Zones[z].Grade is null ? "hump hump-under" : z % 2 == 0 ? "hump hump-even" : "hump hump-odd"), ("d", $"M0 {N(Tall)}{hump}L{N(Wide)} {N(Tall)}Z"), ("data-zone", MarkupText.Number(z)));
        }

        svg.Empty("path", ("class", "curve-line"), ("d", Path(within, i => cloves.Share[i], "M")));
        return new(svg.ToString(), from, to, [.. new double[] { 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 25, 30, 40, 60, 100 }.Where(mm => mm > from && mm < to)]);

        string Path(int[] cells, Func<int, double> y, string begin)
        {
            StringBuilder d = new();
            foreach ((int at, int i) in cells.Index())
            {
                d.Append(at == 0 ? begin : "L").Append(N(Math.Log(cloves.WidthMm[i] / from) / Math.Log(to / from) * Wide)).Append(' ').Append(N(Tall * (1 - y(i) / top)));
            }

            return d.ToString();
        }
    }

    /// <summary>Which part of the cloves of one width comes out of a zone.</summary>
    private static double Part(Partition[] holes, HoleOrder order, int zone, double mm)
    {
        double left = 1;
        if (order == HoleOrder.SmallestFirst)
        {
            for (int h = 0; h < holes.Length; h++)
            {
                double over = holes[h].Over(mm);
                if (h == zone)
                {
                    return left * (1 - over);
                }

                left *= over;
            }

            return left;
        }

        for (int h = holes.Length - 1; h >= 0; h--)
        {
            double over = holes[h].Over(mm);
            if (h + 1 == zone)
            {
                return left * over;
            }

            left *= 1 - over;
        }

        return left;
    }

    private static string N(double value) => MarkupText.Number(Math.Round(value, 1));
}
