using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Lots.Trials;

/// <summary>How the bulbs of a simulated lot weigh. Only one kind is what the curve assumes.</summary>
public enum BulbKind { Lognormal, Gamma, Weibull, TwoKinds, NormalDiameters }

/// <summary>A lot made up for a trial, whose bulbs are drawn one by one: nothing of it comes from a fitted curve.</summary>
/// <param name="MeanG">Of its bulbs, g, by and large.</param>
/// <param name="Cv">Sd over mean, likewise.</param>
internal sealed record SimulatedLot(BulbKind Kind, double MeanG, double Cv, MassLaw Law)
{
    // Bulbs whose true classes are added up: the truth is then known to about a tenth of what a sample of 120 tells.
    private const int TrueBulbs = 20_000;

    /// <summary>One bulb's weight to the tenth of a gram, and its diameter to the tenth of a mm.</summary>
    public SampledBulb Bulb(Chance chance, int line)
    {
        double g = Math.Max(0.1, Math.Round(Weight(chance), 1));
        return new(g, Math.Round(Width(g, chance), 1), 1, line);
    }

    /// <summary>Share by mass of each class, of many bulbs.</summary>
    public double[] Truth(IReadOnlyList<SizeClass> chart, Chance chance)
    {
        var mass = new double[chart.Count];
        double all = 0;
        for (int b = 0; b < TrueBulbs; b++)
        {
            double g = Weight(chance), mm = Width(g, chance);
            all += g;
            for (int c = chart.Count - 1; c >= 0; c--)
            {
                if (mm < chart[c].MinMm)
                    continue;
                if (mm < (chart[c].MaxMm ?? double.PositiveInfinity))
                    mass[c] += g;
                break;
            }
        }

        return [.. mass.Select(m => m / all)];
    }

    private double Width(double g, Chance chance) => Math.Exp((Math.Log(g) - Law.A + Law.S * chance.Normal()) / Law.B);

    private double Weight(Chance chance)
    {
        switch (Kind)
        {
            case BulbKind.Gamma:
                double shape = 1 / (Cv * Cv);
                return MeanG * chance.Gamma(shape) / shape;
            case BulbKind.Weibull:
                // Shape by the usual approximation cv^-1.086, its mean put right by the gamma function.
                double k = Math.Pow(Cv, -1.086);
                return MeanG * Math.Pow(-Math.Log(chance.Uniform()), 1 / k) / MathNet.Numerics.SpecialFunctions.Gamma(1 + 1 / k);
            case BulbKind.TwoKinds:
                // A sixth stayed small, at 55 in 100 of the main crop.
                return MeanG * 1.08 * (chance.Uniform() < 1.0 / 6 ? 0.55 : 1) * Math.Exp(0.8 * Cv * chance.Normal() - 0.32 * Cv * Cv);
            case BulbKind.NormalDiameters:
                double mm = Math.Exp((Math.Log(MeanG) - Law.A) / Law.B);
                return Math.Exp(Law.A + Law.B * Math.Log(Math.Max(mm / 3, mm * (1 + Cv / Law.B * chance.Normal()))));
            default:
                double s2 = Math.Log(1 + Cv * Cv);
                return MeanG * Math.Exp(Math.Sqrt(s2) * chance.Normal() - s2 / 2);
        }
    }
}
