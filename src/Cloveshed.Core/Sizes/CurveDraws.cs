using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Sizes;

/// <summary>
/// What else the lot may be: curves and laws drawn from their posterior. Curves by the weighted likelihood bootstrap (M. A. Newton
/// and A. E. Raftery, J. R. Statist. Soc. B 56 (1994) 3): each bulb gets a random weight and the mixture is fitted again, the number
/// of lognormals drawn by exp(-BIC/2); it needs no faith in the fitted form. Few bulbs: the conjugate posterior of one lognormal under
/// a prior worth two bulbs of the usual spread. The law by its conjugate posterior.
/// </summary>
public sealed class CurveDraws
{
    /// <summary>Under this many bulbs a resampled spread is too narrow to be believed.</summary>
    public const double FewBulbs = 20;

    // Variance of ln g of a lot of the usual cv 0.35 (our default, see docs/formulas/lot-knowledge.md), and the bulbs that it counts for.
    private const double UsualVariance = 0.1155, UsualBulbs = 2;

    // Sd of ln g at a given diameter between varieties, where no diameter of the lot was measured: published means (Taskopru 32.81 g at
    // 46.51 mm; Akola 11.41 g at 29.51 mm) lie 0.24 and 0.16 under the default law; our own choice for one trade's varieties.
    private const double UnmeasuredLawSd = 0.1;

    private const int RefitRounds = 40;
    private const double RefitEnough = 1e-6;

    private readonly WeightCells cells;
    private readonly IReadOnlyList<FittedMixture> fits;
    private readonly double[] chances;
    private readonly MassLawFit law;
    private readonly Chance chance;

    /// <summary>Ready to draw.</summary>
    public CurveDraws(WeightCells cells, IReadOnlyList<FittedMixture> fits, MassLawFit law, long seed)
    {
        (this.cells, this.fits, this.law) = (cells, fits, law);
        chance = new Chance(seed);
        double best = fits.Min(f => f.Bic);
        double[] weights = [.. fits.Select(f => Math.Exp((best - f.Bic) / 2))];
        chances = [.. weights.Select(w => w / weights.Sum())];
    }

    /// <summary>The next curve and law.</summary>
    public (JoinedCurve Curve, MassLaw Law) Next() => (NextCurve(), NextLaw());

    private JoinedCurve NextCurve()
    {
        double bulbs = cells.Bulbs;
        if (bulbs < FewBulbs)
            return new(Conjugate(bulbs), cells with { Count = Weights() }, JoinedCurve.UsualCurveBulbs);
        double at = chance.Uniform();
        int k = 0;
        while (k + 1 < chances.Length && at > chances[k])
            at -= chances[k++];
        WeightCells reweighed = cells with { Count = Weights() };
        return new(MixtureFit.From(reweighed, fits[k].Curve.Parts, RefitRounds, RefitEnough).Curve, reweighed, JoinedCurve.UsualCurveBulbs);
    }

    // Gamma weights with a shape under 1 spread the draws: by what estimating a mean and a spread takes from few bulbs, and by a
    // tenth of the variance for a form that is never quite right (fitted to simulated lots, docs/formulas/size-curve.md).
    private double[] Weights()
    {
        double bulbs = cells.Bulbs, shape = Math.Max(0.5, 0.9 * (bulbs - 3) / (bulbs + 3));
        return [.. cells.Count.Select(c => chance.Gamma(shape * c) / shape)];
    }

    /// <summary>The lognormal in the middle of that posterior: two bulbs alike do not say that all are.</summary>
    internal static LognormalMixture OfFew(WeightCells cells)
    {
        (Moments logs, double freedom, double squares) = Posterior(cells);
        return new([new(1, logs.Mean, Math.Sqrt(squares / freedom))]);
    }

    private static (Moments Logs, double Freedom, double Squares) Posterior(WeightCells cells)
    {
        Moments logs = default;
        for (int i = 0; i < cells.Count.Length; i++)
            logs.Add((cells.Low[i] + cells.High[i]) / 2, cells.Count[i]);
        return (logs, UsualBulbs + logs.Count - 1, UsualBulbs * UsualVariance + logs.SquaresAboutMean);
    }

    private LognormalMixture Conjugate(double bulbs)
    {
        (Moments logs, double freedom, double squares) = Posterior(cells);
        double variance = squares / (2 * chance.Gamma(freedom / 2));
        double mu = logs.Mean + chance.Normal() * Math.Sqrt(variance / bulbs);
        return new([new(1, mu, Math.Max(MixtureFit.LeastSigma, Math.Sqrt(variance)))]);
    }

    private MassLaw NextLaw()
    {
        if (law.DiameterLine is not { } line)
            return law.DiameterOnMass with { A = law.DiameterOnMass.A + UnmeasuredLawSd * chance.Normal() };
        double freedom = Math.Max(1, line.Count - 2);
        double sd = line.ResidualSd * Math.Sqrt(freedom / (2 * chance.Gamma(freedom / 2)));
        double slope = Math.Max(0.1, line.Slope + chance.Normal() * sd / Math.Sqrt(line.SquaresX));
        double centre = line.At(line.MeanX) + chance.Normal() * sd / Math.Sqrt(line.Count);
        return new(-(centre - slope * line.MeanX) / slope, 1 / slope, sd / slope);
    }
}
