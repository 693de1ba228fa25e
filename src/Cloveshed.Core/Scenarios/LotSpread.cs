using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>How unsure a lot's mass and sizes are.</summary>
/// <param name="MeanSd">Sd of the logarithm of its mean bulb mass.</param>
/// <param name="Strength">Bulbs of the Dirichlet of its classes around the shifted curve; infinite: none.</param>
internal sealed record LotSpread(bool InGround, double NetSd, double NetLow, double NetHigh, double MeanSd, double Strength, MassLaw Law)
{
    private const double Z80 = 1.2815515655446004, Step = 0.005, LeastStrength = 10;

    public static LotSpread Of(Season season, InstanceLot lot, ScenarioAssumptions assumed)
    {
        LotRow[] rows = [.. season.Lots.Where(r => r.Lot == lot.Id)];
        LotState state = rows[0].State ?? LotState.Estimated;
        double sd = state switch { LotState.Weighed => assumed.Yield.Weighed, LotState.Dug => assumed.Yield.Dug, _ => assumed.Yield.Estimated };
        double net = rows.Sum(r => r.Net), low = 1, high = 1;
        if (sd > 0 && net > 0 && rows.All(r => r.NetLow is > 0 && r.NetHigh >= r.NetLow && r.NetLow <= r.Net && r.NetHigh >= r.Net))
            (low, high) = (rows.Sum(r => r.NetLow!.Value) / net, rows.Sum(r => r.NetHigh!.Value) / net);
        LotKnowledge known = lot.Known;
        MassLaw law = season.Varieties[lot.Variety].BulbLaw;
        double meanSd = known.MeanBand is { Low: > 0 } band ? assumed.Sizes.Scale * Math.Log(band.High / band.Low) / (2 * Z80) : 0;
        return new(state == LotState.Estimated, sd, low, high, meanSd, ClassStrength(season, known, law, meanSd, assumed.Sizes), law);
    }

    /// <summary>True over written mass at a standard normal: through the written band where there is one, else lognormal.</summary>
    public double Net(double z)
    {
        if (NetSd <= 0) return 1;
        if (NetLow == 1 && NetHigh == 1) return Math.Exp(NetSd * z - NetSd * NetSd / 2);
        return Math.Exp(z / Z80 * (z < 0 ? -Math.Log(NetLow) : Math.Log(NetHigh)));
    }

    /// <summary>Class shares and what no class holds, where the mean of ln g is off by so much: what is believed, times what the lognormal of its mean and spread answers.</summary>
    public double[] Shifted(LotKnowledge known, IReadOnlyList<SizeClass> sizes, double shift)
    {
        double[] shares = [.. known.ClassShares, known.Under];
        if (shift == 0 || known.Cv <= 0) return shares;
        double[] before = Curve(known, sizes, 0), after = Curve(known, sizes, shift);
        double sum = 0;
        for (int k = 0; k < shares.Length; k++) sum += shares[k] *= after[k] / Math.Max(before[k], 1e-9);
        if (!(sum > 0)) return [.. known.ClassShares, known.Under];
        for (int k = 0; k < shares.Length; k++) shares[k] /= sum;
        return shares;
    }

    private double[] Curve(LotKnowledge known, IReadOnlyList<SizeClass> sizes, double shift) => Curve(known, Law, sizes, shift);

    private static double[] Curve(LotKnowledge known, MassLaw law, IReadOnlyList<SizeClass> sizes, double shift)
    {
        var curve = new SizeCurve(known.MeanG * Math.Exp(shift), known.Cv);
        double[] shares = new double[sizes.Count + 1];
        for (int k = 0; k < sizes.Count; k++) shares[k] = curve.MassShare(law, sizes[k].MinMm, sizes[k].MaxMm);
        shares[^1] = Math.Max(0, 1 - shares.Sum());
        return shares;
    }

    // What the bands of the classes say beyond what the mean moves: summed over the classes, the variance of a Dirichlet is (sum of
    // share (1 - share)) over strength + 1.
    private static double ClassStrength(Season season, LotKnowledge known, MassLaw law, double meanSd, SizeSpread spread)
    {
        double scale = spread.Scale;
        if (scale <= 0 || spread.Classes <= 0 || known.Cv <= 0) return double.PositiveInfinity;
        double[] up = Curve(known, law, season.Sizes, Step), down = Curve(known, law, season.Sizes, -Step);
        double apart = 0, left = 0;
        for (int k = 0; k < known.ClassShares.Length; k++)
        {
            double share = known.ClassShares[k], sd = scale * (known.ClassBands[k].High - known.ClassBands[k].Low) / (2 * Z80);
            double moved = meanSd * (up[k] - down[k]) / (2 * Step);
            apart += share * (1 - share);
            left += Math.Max(0, sd * sd - moved * moved);
        }
        left *= spread.Classes * spread.Classes;
        return left > 0 && apart > 0 ? Math.Max(LeastStrength, apart / left - 1) : double.PositiveInfinity;
    }
}
