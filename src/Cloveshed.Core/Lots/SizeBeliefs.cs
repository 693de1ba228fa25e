using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>What pooling says of a lot's bulbs: mean of ln g and its variance, variance of ln g and its degrees of freedom.</summary>
/// <param name="OfKind">How much of what its kind (variety, field, season) is off by comes through to the lot: 1 where nothing else is known of it.</param>
internal readonly record struct LogBelief(double Mu, double MuVariance, KnownBy MeanBy, double S2, double Freedom, KnownBy SpreadBy, bool ByField, double OfKind);

/// <summary>
/// Pools means of ln weight over lots by variety, field and season of harvest, and spreads by variety, and over all where a variety has none.
/// </summary>
internal sealed class SizeBeliefs
{
    private readonly LotEvidence[] lots;
    private readonly LotDefaults defaults;
    private readonly Pool<SpreadPooling> spreads;
    private readonly int[] seenMeans;
    private readonly HashSet<int> seenVarieties;
    private readonly LotHistory? history;
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
        (double Y, double V)?[] told = [.. lots.Select((l, i) => MeanSeen(l, spread[i].S2))];
        seenMeans = [.. Enumerable.Range(0, lots.Length).Where(i => told[i] is not null)];
        if (seenMeans.Length > 0)
            history = LotHistory.Of([.. seenMeans.Select(i => new PastLot(Variety(i), lots[i].Head.Field, SeasonOf(i), told[i]!.Value.Y, told[i]!.Value.V))], defaults.BetweenLots);
        Dictionary<string, int> inField = seenMeans.CountBy(i => lots[i].Head.Field).ToDictionary();
        seenVarieties = [.. seenMeans.Select(i => lots[i].Group)];
        beliefs = [.. lots.Select((_, i) =>
        {
            (double mu, double variance, double ofKind, KnownBy by) = MeanOf(i, spread[i].S2);
            return new LogBelief(mu, variance, by, spread[i].S2, spread[i].Freedom, spread[i].By, inField.GetValueOrDefault(lots[i].Head.Field) > (told[i] is null ? 0 : 1), ofKind);
        })];
    }

    /// <summary>Sds between lots; null where no lot was seen.</summary>
    public HistorySpread? BetweenLots => history?.Spread;

    /// <summary>Where none was seen.</summary>
    public LotHistory? History => history;

    public LogBelief Of(int lot) => beliefs[lot];

    public IEnumerable<DefaultTaken> DefaultsTaken()
    {
        int mean = 0, spread = 0, pulled = 0, pulledSpread = 0, given = 0, givenSpread = 0;
        for (int i = 0; i < lots.Length; i++)
        {
            (bool meanGiven, bool cvGiven) = (lots[i].Head.MeanG is not null, lots[i].Head.Cv is not null);
            mean += !meanGiven && beliefs[i].MeanBy == KnownBy.Default ? 1 : 0;
            spread += !cvGiven && beliefs[i].SpreadBy == KnownBy.Default ? 1 : 0;
            pulled += !meanGiven && beliefs[i].MeanBy != KnownBy.Default ? 1 : 0;
            pulledSpread += !cvGiven && beliefs[i].SpreadBy is KnownBy.Samples or KnownBy.Sizer ? 1 : 0;
            given += meanGiven && !lots[i].TellsMean ? 1 : 0;
            givenSpread += cvGiven && lots[i].SpreadTold is null ? 1 : 0;
        }

        // A fit of the spread between lots leans to the defaults always, the less the more lots there are; with one season there is none between seasons.
        bool seasons = seenMeans.Select(SeasonOf).Distinct().Count() > 1;
        (string Name, int Count)[] taken =
        [
            ("bulb_mean_g", mean), ("bulb_cv", spread),
            ("between_lot_sd", pulled), ("between_variety_sd", pulled), ("between_field_sd", pulled), ("between_season_sd", seasons ? pulled : 0),
            ("spread_strength", spreads.ByVariety is { Fitted: false } ? pulledSpread : 0),
            ("given_mean_sd", given), ("given_cv_strength", givenSpread),
        ];
        return taken.Where(t => t.Count > 0).Select(t => defaults.Taken(t.Name, t.Count));
    }

    // Two bulbs make a spread. A cell of cv 0 is a wish for one weight, not a finding about the variety.
    private (double S2, double Freedom)? SpreadSeen(LotEvidence lot) => lot switch
    {
        { SpreadTold: { } told } => told,
        { Head.Cv: { } cv and > 0 } => (Math.Log(1 + cv * cv), defaults.GivenCvStrength),
        _ => null,
    };

    private (double Y, double V)? MeanSeen(LotEvidence lot, double s2) => lot switch
    {
        { TellsMean: true } => lot.MeanTold(s2),
        { Head: { MeanG: { } g, Cv: var cv } } =>
            (Math.Log(g) - (cv is { } c ? Math.Log(1 + c * c) : s2) / 2, defaults.GivenMeanSd * defaults.GivenMeanSd),
        _ => null,
    };

    private string Variety(int i) => lots[i].Head.Variety.Text;

    private int SeasonOf(int i) => lots[i].Head.Harvested.Year;

    // As the samples and the other lots have it; the lot's own cell comes after.
    private (double S2, double Freedom, KnownBy By) SpreadOf(int i)
    {
        if (lots[i].SpreadTold is not null)
        {
            int at = spreads.PlaceOf(i);
            return (spreads.ByVariety!.Variances[at], spreads.ByVariety.Freedom[at], lots[i].Sizer is null ? KnownBy.Samples : KnownBy.Sizer);
        }

        if (spreads.GroupOf(lots[i].Group) is { } g)
            return (spreads.ByVariety!.GroupVariances[g], spreads.ByVariety.Prior, KnownBy.Variety);
        return spreads.All is { } all
            ? (all.GroupVariances[0], all.Prior, KnownBy.AllLots)
            : (Math.Log(1 + defaults.Cv * defaults.Cv), defaults.SpreadStrength, KnownBy.Default);
    }

    private (double Mu, double Variance, double OfKind, KnownBy By) MeanOf(int i, double s2)
    {
        if (history is null)
        {
            HistorySpread between = defaults.BetweenLots;
            double apart = between.Variety * between.Variety + between.Field * between.Field + between.Season * between.Season + between.Lot * between.Lot;
            return (Math.Log(defaults.MeanG) - s2 / 2, apart, 1, KnownBy.Default);
        }

        if (lots[i].TellsMean)
        {
            int at = Array.BinarySearch(seenMeans, i);
            MeanBelief own = history.Seen(at);
            return (own.Mean, own.Variance, history.KindInSeen(at), lots[i].Sizer is null ? KnownBy.Samples : KnownBy.Sizer);
        }

        MeanBelief kind = history.Next(Variety(i), lots[i].Head.Field, SeasonOf(i));
        return (kind.Mean, kind.Variance, 1, seenVarieties.Contains(lots[i].Group) ? KnownBy.Variety : KnownBy.AllLots);
    }
}
