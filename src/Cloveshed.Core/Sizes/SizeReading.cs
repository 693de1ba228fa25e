using Cloveshed.Core.Seasons;
using MathNet.Numerics.Statistics;

namespace Cloveshed.Core.Sizes;

/// <summary>Weighed bulbs of one lot, and the chart that they are to be read by.</summary>
/// <param name="Cells">ln g of the bulbs.</param>
/// <param name="Grams">Their plain mean and spread.</param>
/// <param name="Law">How weight goes with diameter.</param>
/// <param name="Chart">Small to large.</param>
/// <param name="Draws">Curves to simulate for the bands.</param>
/// <param name="Seed">Of the simulation.</param>
public sealed record SizeQuestion(WeightCells Cells, Moments Grams, MassLawFit Law, IReadOnlyList<SizeClass> Chart, int Draws, long Seed);

/// <summary>A window's part of a lot.</summary>
/// <param name="Share">By mass.</param>
/// <param name="Low80">80% band of it: one in ten under, one in ten over.</param>
/// <param name="Low95">95% band.</param>
/// <param name="CountShare">By count.</param>
/// <param name="MeanG">Mean mass of its bulbs.</param>
public sealed record WindowShare(string Name, double Share, double Low80, double High80, double Low95, double High95, double CountShare, double MeanG)
{
    /// <summary>30 lb in grams.</summary>
    public const double CartonG = 30 * (double)Quantities.Mass.GramsPerPound;

    /// <summary>Bulbs in a 30 lb carton.</summary>
    public double CountPer30Lb => CartonG / MeanG;
}

/// <summary>What is in a lot, as its sample tells.</summary>
/// <param name="MeanG">Of the sample.</param>
/// <param name="Cv">Of the sample, with n - 1.</param>
/// <param name="Under">Smaller than the chart's smallest class.</param>
/// <param name="Over">Wider than its largest; null where that has no upper limit.</param>
public sealed record SizeAnswer(
    double Bulbs, double MeanG, double Cv, FittedMixture Fit, MassLawFit Law, IReadOnlyList<WindowShare> Classes, WindowShare Under, WindowShare? Over);

/// <summary>Reads a lot's size curve from weighed bulbs. Formulas: docs/formulas/size-curve.md.</summary>
public static class SizeReading
{
    /// <summary>Simulated curves where nobody asks for another number: the ends of an 80% band are then sure to about 2 in 100 of its share.</summary>
    public const int UsualDraws = 400;

    /// <summary>The answer; needs at least one bulb.</summary>
    public static SizeAnswer Read(SizeQuestion question)
    {
        IReadOnlyList<FittedMixture> fits = MixtureFit.All(question.Cells);
        FittedMixture fit = MixtureFit.Chosen(fits, question.Cells);
        // Limits in mm: 0, each class's lower end, the top's upper end, none.
        double[] limits = [0, .. question.Chart.Select(c => c.MinMm), question.Chart[^1].MaxMm ?? double.PositiveInfinity, double.PositiveInfinity];
        var draws = new CurveDraws(question.Cells, fits, question.Law, question.Seed);
        double[][] drawn = [.. Enumerable.Range(0, limits.Length - 1).Select(_ => new double[question.Draws])];
        for (int d = 0; d < question.Draws; d++)
        {
            (JoinedCurve curve, MassLaw law) = draws.Next();
            double[] wide = curve.AtLeast(law, limits).Mass;
            for (int w = 0; w < drawn.Length; w++)
                drawn[w][d] = wide[w] - wide[w + 1];
        }

        JoinedCurve joined = new(fit.Curve, question.Cells, JoinedCurve.UsualCurveBulbs);
        (double[] mass, double[] count) = joined.AtLeast(question.Law.DiameterOnMass, limits);
        double meanG = joined.MeanG;
        WindowShare Window(string name, int w) =>
            Share(name, Math.Max(0, mass[w] - mass[w + 1]), Math.Max(0, count[w] - count[w + 1]), meanG, question.Law, limits[w], limits[w + 1], drawn[w]);
        return new(
            question.Cells.Bulbs, question.Grams.Mean, question.Grams.Cv, fit, question.Law,
            [.. question.Chart.Select((c, k) => Window(c.Id.Text, k + 1))], Window("under", 0),
            question.Chart[^1].MaxMm is null ? null : Window("over", limits.Length - 2));
    }

    private static WindowShare Share(string name, double mass, double count, double lotMeanG, MassLawFit law, double fromMm, double toMm, double[] drawn)
    {
        Array.Sort(drawn);
        // Where hardly a bulb of the curve falls, the mean law at the window's middle says what one would weigh.
        const double Hardly = 1e-9;
        double meanG = count > Hardly && mass > Hardly
            ? lotMeanG * mass / count
            : law.MeanG(double.IsPositiveInfinity(toMm) ? fromMm : (fromMm + toMm) / 2);
        return new(
            name, mass, Math.Min(mass, Quantile(drawn, 0.1)), Math.Max(mass, Quantile(drawn, 0.9)), Math.Min(mass, Quantile(drawn, 0.025)),
            Math.Max(mass, Quantile(drawn, 0.975)), count, meanG);
    }

    private static double Quantile(double[] sorted, double p) => Math.Clamp(SortedArrayStatistics.QuantileCustom(sorted, p, QuantileDefinition.R5), 0, 1);
}
