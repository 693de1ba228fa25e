using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>A lot's size curve and class shares (given cells win), with 80% bands.</summary>
internal readonly record struct CurveBelief(SizeCurve Curve, double[] Classes, Band MeanBand, Band[] Bands, LotSources Sources, double OfKind);

/// <summary>Makes each lot's size curve of what pooling says, of the variety's shape and of the lot's own bulbs and cells.</summary>
internal sealed class CurveBeliefs
{
    private const double Z80 = 1.2815515655446004;

    private readonly Season season;
    private readonly LotEvidence[] lots;
    private readonly LotDefaults defaults;
    private readonly SizeBeliefs sizes;
    private readonly LawShifts shifts;
    private readonly BulbShape[] shapes;
    private readonly SkewPooling skews;
    private readonly double shapeStrength;

    public CurveBeliefs(Season season, LotEvidence[] lots, LotDefaults defaults)
    {
        (this.season, this.lots, this.defaults) = (season, lots, defaults);
        sizes = new(lots, season.Varieties.Count, defaults);
        shifts = new(lots, season.Varieties, defaults);
        shapes = ShapesOf(lots, season.Varieties.Count, defaults);
        skews = new(lots, shapes);
        MeasuredLot[] measured =
        [
            .. Enumerable.Range(0, lots.Length).Where(i => lots[i].Weighed > 1 && lots[i].Diameters.Length >= ShapeStrength.FewestBulbs).Select(i => new MeasuredLot(
                season.Varieties[lots[i].Group].BulbLaw, shapes[lots[i].Group], lots[i].MeanLog - shifts.Of(i).Shift, Math.Sqrt(lots[i].VarianceOfLogs), lots[i].InClasses(season.Sizes))),
        ];
        shapeStrength = ShapeStrength.Of(measured, season.Sizes, defaults.ShapeStrength);
        Learned = new(sizes.BetweenLots, shapeStrength, measured.Length >= ShapeStrength.FewestLots);
    }

    /// <summary>What the season's lots taught of lots.</summary>
    public LotsLearned Learned { get; }

    /// <summary>The lots that were seen; null where none was.</summary>
    public LotHistory? History => sizes.History;

    public CurveBelief Of(int i)
    {
        LotEvidence lot = lots[i];
        LogBelief logs = sizes.Of(i);
        MassLaw law = season.Varieties[lot.Group].BulbLaw;
        (double shift, double shiftVariance) = shifts.Of(i);
        (double? givenMean, double? givenCv) = (lot.Head.MeanG, lot.Head.Cv);

        double s2 = givenCv is { } cv && lot.SpreadTold is null ? Math.Log(1 + cv * cv) : logs.S2;
        double freedom = givenCv is not null && lot.SpreadTold is null ? defaults.GivenCvStrength : logs.Freedom;
        (double mu, double muVariance, double ofKind) = givenMean is { } g && !lot.TellsMean
            ? (Math.Log(g) - s2 / 2, defaults.GivenMeanSd * defaults.GivenMeanSd, 0)
            : (logs.Mu, logs.MuVariance, logs.OfKind);
        (double skew, double skewVariance) = skews.Of(i);
        var found = new LotCurve(mu, s2, s2 > 0 ? shapes[lot.Group].Skewed(skew) : BulbShape.OfNormal, shapeStrength, lot.Logs) { Sized = SizedAround(lot, mu) };
        if (lot.Sizer is not null)
            muVariance = SizerSeen.Left(new(mu, muVariance), lot.BinsStanding, defaults.BetweenBinSd).Variance;

        SizeCurve moments = found.Moments;
        double[] shares = found.Shares(law, shift, season.Sizes);
        double[] variances = found.Variances(law, shift, season.Sizes, muVariance, shiftVariance, freedom, skewVariance);
        var bands = new Band[shares.Length];
        for (int c = 0; c < bands.Length; c++)
            bands[c] = LogitBand(shares[c], variances[c]);
        double meanSd = Math.Sqrt(muVariance + s2 * s2 / (2 * freedom));
        var meanBand = new Band(moments.MeanG * Math.Exp(-Z80 * meanSd), moments.MeanG * Math.Exp(Z80 * meanSd));

        var sources = new LotSources(
            givenMean is null ? logs.MeanBy : KnownBy.Given, givenCv is null ? logs.SpreadBy : KnownBy.Given, KnownBy.Default, lot.Weighed) { BinsSized = lot.Sizer?.BinsRun ?? 0, ByField = logs.ByField };
        if (givenMean is null && givenCv is null)
            return new(moments, shares, meanBand, bands, sources, ofKind);
        // A given cell is the point value, by the lognormal law that the files' contract states.
        var point = new SizeCurve(givenMean ?? moments.MeanG, givenCv ?? moments.Cv);
        return new(point, [.. season.Sizes.Select(s => point.MassShare(law, s.MinMm, s.MaxMm))], meanBand, bands, sources, ofKind);
    }

    // The bins that stand have the shape that the sizer saw, around the mean that they are believed to have.
    private static IReadOnlyList<(double, double)> SizedAround(LotEvidence lot, double mu)
    {
        if (lot.Sizer is not { } told)
            return [];
        double each = told.Worth / told.Cells.Bulbs, moved = mu - told.Mean;
        return [.. told.Cells.Low.Zip(told.Cells.Count, (ln, count) => (ln + moved, count * each))];
    }

    public IEnumerable<DefaultTaken> DefaultsTaken()
    {
        foreach (DefaultTaken taken in sizes.DefaultsTaken())
            yield return taken;
        int sized = lots.Count(l => l.Sizer is not null);
        if (sized > 0)
            yield return defaults.Taken("between_bin_sd", sized);
        int own = lots.Count(l => l.TellsMean && (l.Head.MeanG is null || l.Head.Cv is null));
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
