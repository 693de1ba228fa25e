namespace Cloveshed.Core.Lots;

/// <summary>A lot's fresh, crack and waste shares with bands, and where they are from.</summary>
internal readonly record struct ShareBelief(SoundShares Point, Band Fresh, Band Crack, Band Waste, KnownBy By);

/// <summary>Pools defect calls over a season's lots, by variety, and over all where a variety has none.</summary>
internal sealed class ShareBeliefs
{
    // As many bulbs as Jeffreys's prior has for three kinds, laid where our defaults lie.
    private const double PriorBulbs = 1.5;

    private readonly LotEvidence[] lots;
    private readonly LotDefaults defaults;
    private readonly Pool<DefectPooling> pool;
    private readonly ShareBelief[] beliefs;

    public ShareBeliefs(LotEvidence[] lots, int varieties, LotDefaults defaults)
    {
        this.lots = lots;
        this.defaults = defaults;
        var prior = new DefectSample(PriorBulbs, defaults.FreshShare, defaults.CrackShare, defaults.WasteShare);
        DefectSample?[] samples = [.. lots.Select(Seen)];
        pool = Pool<DefectPooling>.Of(
            lots, varieties, i => samples[i] is not null,
            (seen, group, groups) => DefectPooling.Of(
                [.. seen.Select(i => samples[i]!.Value)], group, groups, prior, defaults.DefectStrength));
        beliefs = [.. lots.Select(BeliefOf)];
    }

    public ShareBelief Of(int lot) => beliefs[lot];

    public IEnumerable<DefaultTaken> DefaultsTaken()
    {
        int none = beliefs.Count(b => b.By == KnownBy.Default);
        if (none > 0)
        {
            yield return defaults.Taken("crack_share", none);
            yield return defaults.Taken("waste_share", none);
        }

        int pulled = beliefs.Count(b => b.By is KnownBy.Samples);
        if (pulled > 0 && !pool.ByVariety!.Fitted)
            yield return defaults.Taken("defect_strength", pulled);
        int given = lots.Count(l => l.Bulbs.Length == 0 && l.GivenShares is not null);
        if (given > 0)
            yield return defaults.Taken("given_share_strength", given);
    }

    private DefectSample? Seen(LotEvidence lot) =>
        lot.Bulbs.Length > 0 ? lot.Defects
        : lot.GivenShares is { } s ? new DefectSample(defaults.GivenShareStrength, s.Fresh, s.Crack, s.Waste)
        : null;

    private ShareBelief BeliefOf(LotEvidence lot)
    {
        bool sampled = lot.Bulbs.Length > 0;
        SoundShares? given = lot.GivenShares;
        if (!sampled && given is { } g)
            return Of(new DefectSample(defaults.GivenShareStrength, g.Fresh, g.Crack, g.Waste), g, KnownBy.Given);
        (DefectSample found, KnownBy by) = Found(lot);
        return given is { } told && lot.EveryRowGivesShares
            ? Of(found, told, KnownBy.Given)
            : Of(found, new SoundShares(found.Fresh, found.Crack), by);
    }

    private (DefectSample Found, KnownBy By) Found(LotEvidence lot)
    {
        bool sampled = lot.Bulbs.Length > 0;
        if (pool.GroupOf(lot.Group) is { } g)
            return (pool.ByVariety!.Joined(g, sampled ? lot.Defects : default), sampled ? KnownBy.Samples : KnownBy.Variety);
        return pool.All is { } all
            ? (all.Joined(0, default), KnownBy.AllLots)
            : (new DefectSample(defaults.DefectStrength, defaults.FreshShare, defaults.CrackShare, defaults.WasteShare), KnownBy.Default);
    }

    private static ShareBelief Of(DefectSample s, SoundShares point, KnownBy by) => new(
        point, DefectPooling.BandOf(s.Fresh, s.Bulbs), DefectPooling.BandOf(s.Crack, s.Bulbs), DefectPooling.BandOf(s.Waste, s.Bulbs), by);
}
