using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>
/// Makes one belief of every lot from cells, samples, its variety and, failing all, a default. A given cell is the point
/// value always; samples fill empty cells, pulled toward the variety and field as far as they are few, and give the bands. Formulas:
/// docs/formulas/lot-knowledge.md.
/// </summary>
public static class LotKnowing
{
    /// <summary>With the shipped defaults.</summary>
    public static LotsKnown Know(Season season) => Know(season, LotDefaults.Default);

    /// <summary>With defaults of one's own.</summary>
    public static LotsKnown Know(Season season, LotDefaults defaults)
    {
        var varieties = season.Varieties.ToDictionary(v => v.Id);
        var group = season.Varieties.Select((v, i) => (v.Id, i)).ToDictionary(p => p.Id, p => p.i);
        ILookup<LotId, SampleBulb> samples = season.Samples.ToLookup(s => s.Lot);
        var sized = season.SizerCounts.ToDictionary(c => c.Lot);
        LotEvidence[] lots =
        [
            .. season.Lots.GroupBy(r => r.Lot)
                .Select(rows => new LotEvidence(
                    [.. rows], group[rows.First().Variety], [.. samples[rows.Key]],
                    sized.TryGetValue(rows.Key, out SizerCounted? counted) ? SizerSeen.Told(counted.Counts, counted.BinsRun, defaults.BetweenBinSd) : null)),
        ];
        var curves = new CurveBeliefs(season, lots, defaults);
        var shares = new ShareBeliefs(lots, season.Varieties.Count, defaults);
        var cloves = new CloveCurves(season, defaults);
        var known = new Dictionary<LotId, LotKnowledge>(lots.Length);
        for (int i = 0; i < lots.Length; i++)
            known.Add(lots[i].Head.Lot, One(varieties[lots[i].Head.Variety], lots[i], curves.Of(i), shares.Of(i), cloves));

        return new LotsKnown(known, [.. curves.DefaultsTaken(), .. shares.DefaultsTaken(), .. cloves.DefaultsTaken()], curves.Learned) { History = curves.History };
    }

    private static LotKnowledge One(Variety variety, LotEvidence lot, CurveBelief curve, ShareBelief shares, CloveCurves cloves)
    {
        (double[] grades, double ungraded) = cloves.Of(variety, curve.Curve.MeanG);
        return new LotKnowledge(
            lot.Head.Lot, variety.Id, curve.Curve.MeanG, curve.Curve.Cv, curve.Classes, Math.Max(0, 1 - curve.Classes.Sum()), grades, ungraded,
            shares.Point.Fresh, shares.Point.Crack, curve.Bands, curve.MeanBand, shares.Fresh, shares.Crack, shares.Waste,
            curve.Sources with { Shares = shares.By }, InWords(curve.Sources)) { OfKind = curve.OfKind };
    }

    private static string InWords(LotSources s)
    {
        string kind = s.ByField ? "variety and field" : "variety";
        string Word(KnownBy by) => by switch
        {
            KnownBy.Given => "given",
            KnownBy.Sizer when s.SampledBulbs > 0 => $"sizer bins={s.BinsSized} and samples n={s.SampledBulbs}, shrunk toward {kind}",
            KnownBy.Sizer => $"sizer bins={s.BinsSized}, shrunk toward {kind}",
            KnownBy.Samples => $"samples n={s.SampledBulbs}, shrunk toward {kind}",
            KnownBy.Variety => kind,
            KnownBy.AllLots => "all lots",
            _ => "default",
        };
        return s.Mean == s.Spread ? Word(s.Mean) : $"mean: {Word(s.Mean)}; spread: {Word(s.Spread)}";
    }
}
