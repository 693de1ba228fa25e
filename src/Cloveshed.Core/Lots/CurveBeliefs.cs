using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>A lot's size curve and class shares (given cells win), with 80% bands.</summary>
internal readonly record struct CurveBelief(SizeCurve Curve, double[] Classes, Band MeanBand, Band[] Bands, LotSources Sources);

/// <summary>Makes each lot's size curve of what pooling says, of the variety's shape and of the lot's own bulbs and cells.</summary>
internal sealed class CurveBeliefs(Season season, LotEvidence[] lots, LotDefaults defaults)
{
    private const double Z80 = 1.2815515655446004;

    private readonly SizeBeliefs sizes = new(lots, season.Varieties.Count, defaults);
    private readonly LawShifts shifts = new(lots, season.Varieties, defaults);
    private readonly BulbShape[] shapes = ShapesOf(lots, season.Varieties.Count, defaults);

    public CurveBelief Of(int i)
    {
        LotEvidence lot = lots[i];
        LogBelief logs = sizes.Of(i);
        MassLaw law = season.Varieties[lot.Group].BulbLaw;
        (double shift, double shiftVariance) = shifts.Of(i);
        (double? givenMean, double? givenCv) = (lot.Head.MeanG, lot.Head.Cv);

        double s2 = givenCv is { } cv && lot.Weighed < 2 ? Math.Log(1 + cv * cv) : logs.S2;
        double freedom = givenCv is not null && lot.Weighed < 2 ? defaults.GivenCvStrength : logs.Freedom;
        (double mu, double muVariance) = givenMean is { } g && lot.Weighed == 0
            ? (Math.Log(g) - s2 / 2, defaults.GivenMeanSd * defaults.GivenMeanSd)
            : (logs.Mu, logs.MuVariance);
        var found = new LotCurve(mu, s2, s2 > 0 ? shapes[lot.Group] : BulbShape.OfNormal, defaults.ShapeStrength, lot.Logs);

        SizeCurve moments = found.Moments;
        double[] shares = found.Shares(law, shift, season.Sizes);
        double[] variances = found.Variances(law, shift, season.Sizes, muVariance, shiftVariance, freedom);
        var bands = new Band[shares.Length];
        for (int c = 0; c < bands.Length; c++)
            bands[c] = LogitBand(shares[c], variances[c]);
        double meanSd = Math.Sqrt(muVariance + s2 * s2 / (2 * freedom));
        var meanBand = new Band(moments.MeanG * Math.Exp(-Z80 * meanSd), moments.MeanG * Math.Exp(Z80 * meanSd));

        var sources = new LotSources(
            givenMean is null ? logs.MeanBy : KnownBy.Given, givenCv is null ? logs.SpreadBy : KnownBy.Given, KnownBy.Default, lot.Weighed);
        if (givenMean is null && givenCv is null)
            return new(moments, shares, meanBand, bands, sources);
        // A given cell is the point value, by the lognormal law that the files' contract states.
        var point = new SizeCurve(givenMean ?? moments.MeanG, givenCv ?? moments.Cv);
        return new(point, [.. season.Sizes.Select(s => point.MassShare(law, s.MinMm, s.MaxMm))], meanBand, bands, sources);
    }

    public IEnumerable<DefaultTaken> DefaultsTaken()
    {
        foreach (DefaultTaken taken in sizes.DefaultsTaken())
            yield return taken;
        int own = lots.Count(l => l.Weighed > 0 && (l.Head.MeanG is null || l.Head.Cv is null));
        if (own > 0)
            yield return defaults.Taken("shape_strength", own);
        if (shapes.Any(s => !s.IsNormal))
            yield return defaults.Taken("normal_strength", lots.Length);
        if (!shifts.Fitted && lots.Length > 0)
            yield return defaults.Taken("law_shift_sd", lots.Length);
    }

    // Normal on the scale of ln (share/(1 - share)), so that a band stays within 0 and 1.
    private static Band LogitBand(double share, double variance)
    {
        if (share is <= 0 or >= 1)
            return new Band(share, share);
        double at = Math.Log(share / (1 - share)), sd = Math.Sqrt(variance) / (share * (1 - share));
        return new Band(1 / (1 + Math.Exp(Z80 * sd - at)), 1 / (1 + Math.Exp(-Z80 * sd - at)));
    }

    private static BulbShape[] ShapesOf(LotEvidence[] lots, int varieties, LotDefaults defaults)
    {
        BulbShape all = BulbShape.Of(lots.Select(l => l.Logs), defaults.NormalStrength);
        return
        [
            .. Enumerable.Range(0, varieties).Select(v =>
            {
                BulbShape own = BulbShape.Of(lots.Where(l => l.Group == v).Select(l => l.Logs), defaults.NormalStrength);
                return own.IsNormal ? all : own;
            }),
        ];
    }
}
