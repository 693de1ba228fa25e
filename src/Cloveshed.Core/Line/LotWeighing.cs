using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Line;

/// <summary>
/// Makes the curve that a lot is sized by. Its mean and spread are those that the whole program works with (pooled, or given in a cell),
/// its form is that of its own bulbs, and once the sizer has counted some of it, that of the sizer.
/// </summary>
public static class LotWeighing
{
    private const double Z80 = 1.2815515655446004;

    // Bulbs that a variety's spread of ln g counts for where none of the lot's own were weighed; the default of docs/formulas/lot-knowledge.md.
    private const double SpreadFreedom = 20;

    /// <summary>The answer.</summary>
    public static LotWeights Of(LotWeightsQuestion q)
    {
        // A mouldy or decayed bulb has lost weight and is in no size class.
        SampleBulb[] sound = [.. q.Bulbs.Where(bulb => bulb.Defect is not (Defect.Mold or Defect.Decay))];
        MassLawFit law = Allometry.Of([.. sound.Select((bulb, at) => new SampledBulb(bulb.WeightG, bulb.DiameterMm, 1, at + 1))], q.VarietyLaw);
        SizeCurve known = new(q.Known.MeanG, q.Known.Cv);
        double logSd = Math.Log(q.Known.MeanBand.High / q.Known.MeanBand.Low) / (2 * Z80);
        Chance chance = new(q.Seed);
        if (q.Seen is { Bulbs: > 0 } seen)
            return OfSizer(q, seen, new MeanBelief(known.Mu, logSd * logSd), law, chance);
        if (sound.Length < CurveDraws.FewBulbs || known.Cv <= 0)
            return new(WeightsFrom.Law, Lognormal(known.Mu, known.SigmaSquared), law, [.. Enumerable.Range(0, q.Draws).Select(_ => AnyLaw(known, logSd, chance))]);

        WeightCells cells = WeightCells.OfWeights([.. sound.Select(bulb => bulb.WeightG)]);
        IReadOnlyList<FittedMixture> fits = MixtureFit.All(cells);
        LognormalMixture fit = MixtureFit.Chosen(fits, cells).Curve;
        (double scale, double shift) = Bringing(fit, known);
        (double fitMean, double fitVariance) = Logs(fit);
        // The resampled means spread as the sample's own error; what is believed of the lot's mean, pooled, is surer.
        double surer = logSd / Math.Max(1e-9, scale * Math.Sqrt(fitVariance / sound.Length));
        CurveDraws draws = new(cells, fits, law, q.Seed);
        return new(WeightsFrom.Sample, Brought(fit, scale, shift), law, [.. Enumerable.Range(0, q.Draws).Select(_ =>
        {
            LognormalMixture drawn = draws.Next().Curve.Curve;
            double away = Logs(drawn).Mean - fitMean;
            return Brought(drawn, scale, shift + scale * away * (surer - 1));
        })]);
    }

    /// <summary>The mixture with its ln g stretched and moved so that mean and cv are these.</summary>
    public static LognormalMixture BroughtTo(LognormalMixture curve, SizeCurve to)
    {
        (double scale, double shift) = Bringing(curve, to);
        return Brought(curve, scale, shift);
    }

    private static LotWeights OfSizer(LotWeightsQuestion q, WeightHistogram seen, MeanBelief before, MassLawFit law, Chance chance)
    {
        SizerSeenAnswer answer = SizerSeen.Update(new(before, seen, Math.Max(1, q.BinsRun), q.BinsLeft));
        double sd = Math.Sqrt(answer.Mean.Variance);
        return new(WeightsFrom.Sizer, answer.Curve, law, [.. Enumerable.Range(0, q.Draws).Select(_ => Brought(answer.Curve, 1, sd * chance.Normal()))]);
    }

    private static LognormalMixture AnyLaw(SizeCurve known, double logSd, Chance chance) =>
        Lognormal(known.Mu + logSd * chance.Normal(), known.SigmaSquared * SpreadFreedom / (2 * chance.Gamma(SpreadFreedom / 2)));

    private static LognormalMixture Lognormal(double mu, double variance) => new([new(1, mu, Math.Max(MixtureFit.LeastSigma, Math.Sqrt(variance)))]);

    // The cv rises with the stretch, so halving finds it; then the mean is a matter of moving.
    private static (double Scale, double Shift) Bringing(LognormalMixture curve, SizeCurve to)
    {
        double low = 0.01, high = 10;
        for (int round = 0; round < 60; round++)
        {
            double middle = Math.Sqrt(low * high);
            if (Brought(curve, middle, 0).Cv < to.Cv)
                low = middle;
            else
                high = middle;
        }

        double scale = Math.Sqrt(low * high);
        return (scale, Math.Log(to.MeanG / Brought(curve, scale, 0).MeanG));
    }

    private static LognormalMixture Brought(LognormalMixture curve, double scale, double shift)
    {
        double centre = Logs(curve).Mean;
        return new([.. curve.Parts.Select(part => part with { Mu = centre + scale * (part.Mu - centre) + shift, Sigma = Math.Max(MixtureFit.LeastSigma, scale * part.Sigma) })]);
    }

    private static (double Mean, double Variance) Logs(LognormalMixture curve)
    {
        double mean = curve.Parts.Sum(part => part.Share * part.Mu);
        return (mean, curve.Parts.Sum(part => part.Share * (part.Sigma * part.Sigma + (part.Mu - mean) * (part.Mu - mean))));
    }
}
