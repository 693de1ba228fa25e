using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>What pooling says of a lot's bulbs: mean of ln g and its variance, variance of ln g and its degrees of freedom.</summary>
internal readonly record struct LogBelief(double Mu, double MuVariance, KnownBy MeanBy, double S2, double Freedom, KnownBy SpreadBy);

/// <summary>Pools means and spreads of ln weight over a season's lots, by variety, and over all where a variety has none.</summary>
internal sealed class SizeBeliefs
{
    private readonly LotEvidence[] lots;
    private readonly LotDefaults defaults;
    private readonly Pool<SpreadPooling> spreads;
    private readonly Pool<Shrinkage> means;
    private readonly LogBelief[] beliefs;

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
        beliefs = [.. lots.Select((_, i) =>
        {
            (double mu, double variance, KnownBy by) = MeanOf(i, spread[i].S2);
            return new LogBelief(mu, variance, by, spread[i].S2, spread[i].Freedom, spread[i].By);
        })];
    }

    public LogBelief Of(int lot) => beliefs[lot];

    public IEnumerable<DefaultTaken> DefaultsTaken()
    {
        int mean = 0, spread = 0, pulled = 0, pulledSpread = 0, given = 0, givenSpread = 0;
        for (int i = 0; i < lots.Length; i++)
        {
            (bool meanGiven, bool cvGiven) = (lots[i].Head.MeanG is not null, lots[i].Head.Cv is not null);
            mean += !meanGiven && beliefs[i].MeanBy == KnownBy.Default ? 1 : 0;
            spread += !cvGiven && beliefs[i].SpreadBy == KnownBy.Default ? 1 : 0;
            pulled += !meanGiven && beliefs[i].MeanBy == KnownBy.Samples ? 1 : 0;
            pulledSpread += !cvGiven && beliefs[i].SpreadBy == KnownBy.Samples ? 1 : 0;
            given += meanGiven && lots[i].Weighed == 0 ? 1 : 0;
            givenSpread += cvGiven && lots[i].Weighed < 2 ? 1 : 0;
        }

        (string Name, int Count)[] taken =
        [
            ("bulb_mean_g", mean), ("bulb_cv", spread),
            ("between_lot_sd", means.ByVariety is { Fitted: false } ? pulled : 0),
            ("spread_strength", spreads.ByVariety is { Fitted: false } ? pulledSpread : 0),
            ("given_mean_sd", given), ("given_cv_strength", givenSpread),
        ];
        return taken.Where(t => t.Count > 0).Select(t => defaults.Taken(t.Name, t.Count));
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

    // As the samples and the other lots have it; the lot's own cell comes after.
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
