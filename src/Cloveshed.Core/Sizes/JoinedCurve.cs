using Cloveshed.Core.Seasons;
using MathNet.Numerics;

namespace Cloveshed.Core.Sizes;

/// <summary>
/// A fitted curve that counts for some bulbs, joined with the bulbs themselves, each for one (the posterior mean of a Dirichlet
/// process; T. S. Ferguson, Ann. Statist. 1 (1973) 209): few bulbs lean on the curve's form, many speak for themselves, and a lot
/// that is no mixture of lognormals is still met.
/// </summary>
/// <param name="CurveBulbs">How many bulbs the curve counts for; without it (bins, or a sizer that does not see all) the curve alone speaks.</param>
public sealed record JoinedCurve(LognormalMixture Curve, WeightCells Cells, double CurveBulbs)
{
    /// <summary>
    /// Bulbs that a fitted curve counts for. Ours: over simulated lots of five kinds a value from 20 to 80 has nearly the same error
    /// and this one keeps the bands true (docs/formulas/size-curve.md).
    /// </summary>
    public const double UsualCurveBulbs = 40;

    // Beyond this many residual sds a bulb is surely on one side of a limit (error under 1e-9).
    private const double Surely = 6;

    private bool CurveAlone => Cells.Truncated || !Cells.Low.AsSpan().SequenceEqual(Cells.High);

    /// <summary>Share by mass at least as wide as each limit (mm), and share by count; limits rising, 0 and infinity allowed.</summary>
    public (double[] Mass, double[] Count) AtLeast(MassLaw law, double[] limitsMm)
    {
        double[] mass = [.. limitsMm.Select(mm => double.IsPositiveInfinity(mm) ? 0 : Curve.MassAtLeast(law, mm))];
        double[] count = [.. limitsMm.Select(mm => double.IsPositiveInfinity(mm) ? 0 : Curve.CountAtLeast(law, mm))];
        if (CurveAlone)
            return (mass, count);
        double[] limits = [.. limitsMm.Select(mm => mm <= 0 ? double.NegativeInfinity : law.A + law.B * Math.Log(mm))];
        double[] ownMass = new double[limits.Length], ownCount = new double[limits.Length];
        double grams = 0, bulbs = 0;
        for (int i = 0; i < Cells.Count.Length; i++)
        {
            double ln = Cells.Low[i], n = Cells.Count[i], g = n * Math.Exp(ln);
            grams += g;
            bulbs += n;
            for (int k = 0; k < limits.Length; k++)
            {
                double p = Wide(limits[k] - ln, law.S);
                if (p <= 0)
                    break; // limits rise
                ownMass[k] += g * p;
                ownCount[k] += n * p;
            }
        }

        // By mass, a bulb of the curve weighs as its mean.
        double curveGrams = CurveBulbs * Curve.MeanG;
        for (int k = 0; k < limits.Length; k++)
        {
            mass[k] = (curveGrams * mass[k] + ownMass[k]) / (curveGrams + grams);
            count[k] = (CurveBulbs * count[k] + ownCount[k]) / (CurveBulbs + bulbs);
        }

        return (mass, count);
    }

    /// <summary>Mean mass, g.</summary>
    public double MeanG
    {
        get
        {
            if (CurveAlone)
                return Curve.MeanG;
            double grams = CurveBulbs * Curve.MeanG, bulbs = CurveBulbs;
            for (int i = 0; i < Cells.Count.Length; i++)
            {
                grams += Cells.Count[i] * Math.Exp(Cells.Low[i]);
                bulbs += Cells.Count[i];
            }

            return grams / bulbs;
        }
    }

    private static double Wide(double distance, double scatter) =>
        distance >= Surely * scatter ? distance > 0 || scatter > 0 ? 0 : 1
        : distance <= -Surely * scatter ? 1
        : 0.5 * SpecialFunctions.Erfc(distance / (scatter * Constants.Sqrt2));
}
