namespace Cloveshed.Core.Lots;

/// <summary>A lot's size curve: the point (given cells win), what the bands are made of, and where both are from.</summary>
internal readonly record struct SizeBelief(SizeCurve Curve, CurveBelief Belief, KnownBy Mean, KnownBy Spread);

/// <summary>Pools means and spreads of bulb weight over a season's lots, by variety, and over all where a variety has none.</summary>
internal sealed class SizeBeliefs
{
    private readonly LotEvidence[] lots;
    private readonly LotDefaults defaults;
    private readonly Pool<SpreadPooling> spreads;
    private readonly Pool<Shrinkage> means;
    private readonly SizeBelief[] beliefs;

    public SizeBeliefs(LotEvidence[] lots, int varieties, LotDefaults defaults)
    {
        this.lots = lots;
        this.defaults = defaults;
        (double S2, double Freedom)?[] seenSpreads = [.. lots.Select(SpreadSeen)];
        spreads = Pool<SpreadPooling>.Of(
            lots, varieties, i => seenSpreads[i] is not null,
            (seen, group, groups) => SpreadPooling.Of(
                [.. seen.Select(i => seenSpreads[i]!.Value.S2)], [.. seen.Select(i => seenSpreads[i]!.Value.Freedom)],
                group, groups, defaults.SpreadStrength));
        (double S2, double Freedom, KnownBy By)[] spread = [.. lots.Select((_, i) => SpreadOf(i))];
        (double Y, double V)?[] seenMeans = [.. lots.Select((l, i) => MeanSeen(l, spread[i].S2))];
        means = Pool<Shrinkage>.Of(
            lots, varieties, i => seenMeans[i] is not null,
            (seen, group, groups) => Shrinkage.Of(
                [.. seen.Select(i => seenMeans[i]!.Value.Y)], [.. seen.Select(i => seenMeans[i]!.Value.V)],
                group, groups, DefaultBetween(acrossVarieties: groups == 1 && varieties > 1)));
        beliefs = [.. lots.Select((_, i) => BeliefOf(i, spread[i]))];
    }

    public SizeBelief Of(int lot) => beliefs[lot];

    public IEnumerable<DefaultTaken> DefaultsTaken()
    {
        int mean = beliefs.Count(b => b.Mean == KnownBy.Default), spread = beliefs.Count(b => b.Spread == KnownBy.Default);
        if (mean > 0)
            yield return defaults.Taken("bulb_mean_g", mean);
        if (spread > 0)
            yield return defaults.Taken("bulb_cv", spread);
        int pulled = beliefs.Count(b => b.Mean == KnownBy.Samples), pulledSpread = beliefs.Count(b => b.Spread == KnownBy.Samples);
        if (pulled > 0 && !means.ByVariety!.Fitted)
            yield return defaults.Taken("between_lot_sd", pulled);
        if (pulledSpread > 0 && !spreads.ByVariety!.Fitted)
            yield return defaults.Taken("spread_strength", pulledSpread);
        int given = lots.Count(l => l.Head.MeanG is not null && l.Weighed == 0);
        int givenSpread = lots.Count(l => l.Head.Cv is not null && l.Weighed < 2);
        if (given > 0)
            yield return defaults.Taken("given_mean_sd", given);
        if (givenSpread > 0)
            yield return defaults.Taken("given_cv_strength", givenSpread);
    }

    // Two bulbs make a spread. A cell of cv 0 is a wish for one weight, not a finding about the variety.
    private (double S2, double Freedom)? SpreadSeen(LotEvidence lot) => lot switch
    {
        { Weighed: > 1 } => (lot.VarianceOfLogs, lot.Weighed - 1),
        { Head.Cv: { } cv and > 0 } => (Math.Log(1 + cv * cv), defaults.GivenCvStrength),
        _ => null,
    };

    private (double Y, double V)? MeanSeen(LotEvidence lot, double s2) => lot switch
    {
        { Weighed: > 0 } => (lot.MeanLog, s2 / lot.Weighed),
        { Head: { MeanG: { } g, Cv: var cv } } =>
            (Math.Log(g) - (cv is { } c ? Math.Log(1 + c * c) : s2) / 2, defaults.GivenMeanSd * defaults.GivenMeanSd),
        _ => null,
    };

    private double DefaultBetween(bool acrossVarieties) =>
        defaults.BetweenLotSd * defaults.BetweenLotSd
        + (acrossVarieties ? defaults.BetweenVarietySd * defaults.BetweenVarietySd : 0);

    // As the samples and the other lots have it: the lot's own cell is left to BeliefOf.
    private (double S2, double Freedom, KnownBy By) SpreadOf(int i)
    {
        if (lots[i].Weighed > 1)
        {
            int at = spreads.PlaceOf(i);
            return (spreads.ByVariety!.Variances[at], spreads.ByVariety.Freedom[at], KnownBy.Samples);
        }

        if (spreads.GroupOf(lots[i].Group) is { } g)
            return (spreads.ByVariety!.GroupVariances[g], spreads.ByVariety.Prior, KnownBy.Variety);
        return spreads.All is { } all
            ? (all.GroupVariances[0], all.Prior, KnownBy.AllLots)
            : (Math.Log(1 + defaults.Cv * defaults.Cv), defaults.SpreadStrength, KnownBy.Default);
    }

    private SizeBelief BeliefOf(int i, (double S2, double Freedom, KnownBy By) spread)
    {
        (double mu, double variance, KnownBy by) = MeanOf(i, spread.S2);
        Seasons.LotRow row = lots[i].Head;
        SizeCurve found = SizeCurve.OfLogs(mu, spread.S2);
        var point = new SizeCurve(row.MeanG ?? found.MeanG, row.Cv ?? found.Cv);
        bool sampled = lots[i].Weighed > 0, spreadSampled = lots[i].Weighed > 1;
        (double s2, double freedom) = !spreadSampled && row.Cv is { } cv
            ? (Math.Log(1 + cv * cv), defaults.GivenCvStrength)
            : (spread.S2, spread.Freedom);
        CurveBelief belief = !sampled && row.MeanG is { } g
            ? new(true, Math.Log(g), defaults.GivenMeanSd * defaults.GivenMeanSd, s2, freedom)
            : new(false, mu, variance, s2, freedom);
        return new(point, belief, row.MeanG is null ? by : KnownBy.Given, row.Cv is null ? spread.By : KnownBy.Given);
    }

    private (double Mu, double Variance, KnownBy By) MeanOf(int i, double s2)
    {
        if (lots[i].Weighed > 0)
        {
            int at = means.PlaceOf(i);
            return (means.ByVariety!.Means[at], means.ByVariety.Variances[at], KnownBy.Samples);
        }

        if (means.GroupOf(lots[i].Group) is { } g)
            return (means.ByVariety!.GroupMeans[g], means.ByVariety.GroupVariances[g] + means.ByVariety.Between, KnownBy.Variety);
        return means.All is { } all
            ? (all.GroupMeans[0], all.GroupVariances[0] + all.Between, KnownBy.AllLots)
            : (Math.Log(defaults.MeanG) - s2 / 2, DefaultBetween(true), KnownBy.Default);
    }
}
