using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Sizes;

/// <summary>Why a row of a sample is pointed out.</summary>
public enum OddReason
{
    /// <summary>Mass over the cube of the diameter lies outside the plausible band.</summary>
    Shape,

    /// <summary>So far from its own lot's law that it is a slip of key or unit; it is left out of the law, not of the weights.</summary>
    FarFromLaw,
}

/// <summary>A row that someone should look at.</summary>
public readonly record struct OddBulb(SampledBulb Bulb, OddReason Reason);

/// <summary>How weight goes with diameter in a lot or variety.</summary>
/// <param name="MassOnDiameter">ln g = a + b ln mm, by least squares: the mean law, for the weight of a given diameter.</param>
/// <param name="DiameterOnMass">ln mm given ln g is normal with mean (ln g - A)/B and sd S/B, by least squares of ln mm on ln g: for the diameters of a given weight, which is what a sizer asks.</param>
/// <param name="Pairs">Bulbs that the law rests on.</param>
/// <param name="ByDefault">No law could be fitted: fewer than <see cref="Allometry.LeastPairs"/> bulbs have both, or they don't rise together.</param>
public sealed record MassLawFit(StraightLine? MassOnDiameter, StraightLine? DiameterLine, MassLaw MeanLaw, MassLaw DiameterOnMass, double Pairs, bool ByDefault, IReadOnlyList<OddBulb> Odd)
{
    /// <summary>g of a bulb so wide, by the mean law.</summary>
    public double MeanG(double mm) => Math.Exp(MeanLaw.A + MeanLaw.B * Math.Log(mm));

    /// <summary>Band of g that holds a bulb so wide with this probability.</summary>
    public (double Low, double High) BandG(double mm, double probability)
    {
        if (MassOnDiameter is { } line)
        {
            (double low, double high) = line.Band(Math.Log(mm), probability);
            return (Math.Exp(low), Math.Exp(high));
        }

        double half = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (1 + probability) / 2) * MeanLaw.S;
        return (MeanG(mm) * Math.Exp(-half), MeanG(mm) * Math.Exp(half));
    }
}

/// <summary>Fits the law of mass and diameter, and points out what cannot be right.</summary>
public static class Allometry
{
    /// <summary>
    /// g/mm^3. Shape factors of published garlic lie from 2.9e-4 to 4.6e-4 (BC Ministry of Agriculture table, 3.26e-4 of Taskopru garlic,
    /// 4.44e-4 at Akola; derived); outside this wider band a keyed figure is more likely than a bulb.
    /// </summary>
    public const double LeastShape = 2.5e-4, MostShape = 5.0e-4;

    /// <summary>Bulbs with both figures that a law of one's own takes at least.</summary>
    public const int LeastPairs = 8;

    /// <summary>
    /// Where no diameters are measured: g = 0.00289 mm^2.494, the log-log line through the nine classes of the garlic table of the BC
    /// Ministry of Agriculture (derived; the same default as for season files). Its residual sd is our own, no published value.
    /// </summary>
    public static readonly MassLaw Default = new(Math.Log(0.00289), 2.494, 0.1);

    // Beyond this many sds of the rest no bulb lies by chance (one in two million).
    private const double Far = 5;

    /// <summary>Fits the lot's own law, or falls back on the default.</summary>
    public static MassLawFit Of(IReadOnlyList<SampledBulb> bulbs) => Of(bulbs, Default);

    /// <summary>Fits the lot's own law, or falls back on another one.</summary>
    public static MassLawFit Of(IReadOnlyList<SampledBulb> bulbs, MassLaw otherwise)
    {
        SampledBulb[] measured = [.. bulbs.Where(b => b.DiameterMm is not null && b.Count > 0)];
        List<OddBulb> odd = [.. measured.Where(b => b.Shape is < LeastShape or > MostShape).Select(b => new OddBulb(b, OddReason.Shape))];
        int[] all = [.. Enumerable.Range(0, measured.Length)], within = all;
        for (int round = 0; round < 10; round++)
        {
            SampledBulb[] those = [.. within.Select(i => measured[i])];
            (double centre, double slope, double sd) = round == 0 ? Rough(those, otherwise.B) : Fine(those);
            int[] next = [.. all.Where(i => Math.Abs(Away(measured[i], slope) - centre) <= Far * Math.Max(sd, 0.01))];
            bool same = next.Length == within.Length;
            within = next;
            if (same && round > 0)
                break;
        }

        odd.AddRange(all.Except(within).Select(i => new OddBulb(measured[i], OddReason.FarFromLaw)));
        SampledBulb[] kept = [.. within.Select(i => measured[i])];
        double[] lnMm = [.. kept.Select(b => Math.Log(b.DiameterMm!.Value))], lnG = [.. kept.Select(b => Math.Log(b.WeightG))], count = [.. kept.Select(b => (double)b.Count)];
        StraightLine? mass = StraightLine.Fit(lnMm, lnG, count), width = StraightLine.Fit(lnG, lnMm, count);
        // A slope of ln mm on ln g under a tenth would say that weight hardly tells diameter: mixed-up columns, not garlic.
        if (mass is null || width is null || width.Count < LeastPairs || width.Slope < 0.1)
            return new(null, null, otherwise, otherwise, width?.Count ?? 0, true, odd);
        return new(
            mass, width, new(mass.Intercept, mass.Slope, mass.ResidualSd),
            new(-width.Intercept / width.Slope, 1 / width.Slope, width.ResidualSd / width.Slope), width.Count, false, odd);
    }

    private static double Away(SampledBulb bulb, double slope) => Math.Log(bulb.WeightG) - slope * Math.Log(bulb.DiameterMm!.Value);

    private static (double Centre, double Slope, double Sd) Rough(SampledBulb[] bulbs, double slope)
    {
        if (bulbs.Length == 0)
            return (0, slope, 1);
        double[] away = [.. bulbs.Select(b => Away(b, slope)).Order()];
        double median = away[away.Length / 2];
        double[] spread = [.. away.Select(a => Math.Abs(a - median)).Order()];
        // 1.4826 makes the median distance of a normal its sd; the slope is only assumed yet, so a wider net.
        return (median, slope, 1.5 * 1.4826 * spread[spread.Length / 2]);
    }

    private static (double Centre, double Slope, double Sd) Fine(SampledBulb[] bulbs)
    {
        StraightLine? line = StraightLine.Fit(
            [.. bulbs.Select(b => Math.Log(b.DiameterMm!.Value))], [.. bulbs.Select(b => Math.Log(b.WeightG))], [.. bulbs.Select(b => (double)b.Count)]);
        return line is null ? (0, 1, double.PositiveInfinity) : (line.Intercept, line.Slope, line.ResidualSd);
    }
}
