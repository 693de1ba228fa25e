using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>An 80% band: one in ten below Low, one in ten above High.</summary>
public readonly record struct Band(double Low, double High);

/// <summary>Where a number of a lot is from, best first.</summary>
public enum KnownBy { Given, Sizer, Samples, Variety, AllLots, Default }

/// <summary>Where a lot's mean mass, spread and defect shares are from, and how many of its bulbs were weighed.</summary>
public sealed record LotSources(KnownBy Mean, KnownBy Spread, KnownBy Shares, int SampledBulbs)
{
    /// <summary>Bins of the lot that a sizer saw.</summary>
    public int BinsSized { get; init; }

    /// <summary>Whether other lots of its field spoke for its mean, of this season or of one before.</summary>
    public bool ByField { get; init; }
}

/// <summary>Shares of a lot's mass at its start: makes grade, sound but fails grade; the rest is waste.</summary>
public readonly record struct SoundShares(double Fresh, double Crack)
{
    /// <summary>Neither grade nor cracker.</summary>
    public double Waste => Math.Max(0, 1 - Fresh - Crack);
}

/// <summary>What is known of a lot, with how sure we are. Shares are by mass.</summary>
/// <param name="ClassShares">In the order of season.Sizes.</param>
/// <param name="Under">All that no class holds, so that classes and Under sum to 1.</param>
/// <param name="GradeShares">In the order of season.CloveGrades.</param>
/// <param name="Ungraded">All cloves that no grade holds.</param>
/// <param name="FreshShare">Makes grade; used where a row's cells are empty (<see cref="SharesOf"/>).</param>
/// <param name="CrackShare">Sound but fails grade; likewise.</param>
/// <param name="ClassBands">80% band of each class's share.</param>
/// <param name="HowKnown">In words: "given", "sizer 12 bins", "samples n=60, shrunk toward variety and field", "variety", "all lots", "default".</param>
public sealed record LotKnowledge(
    LotId Lot, VarietyId Variety, double MeanG, double Cv, double[] ClassShares, double Under, double[] GradeShares,
    double Ungraded, double FreshShare, double CrackShare, Band[] ClassBands, Band MeanBand, Band FreshBand, Band CrackBand,
    Band WasteBand, LotSources Sources, string HowKnown)
{
    /// <summary>How much of what its variety, field and season are believed wrongly comes through to it: 1 where nothing else is known of the lot, 0 where its mean is given.</summary>
    public double OfKind { get; init; }

    /// <summary>Neither grade nor cracker, where a row's cells are empty.</summary>
    public double WasteShare => Math.Max(0, 1 - FreshShare - CrackShare);

    /// <summary>
    /// The shares of one of the lot's rows: its cells where given. Where one of the two is given, the rest is divided as
    /// this lot's own shares divide it, so that the three never exceed 1.
    /// </summary>
    public SoundShares SharesOf(LotRow row) => (row.FreshShare, row.CrackShare) switch
    {
        ({ } fresh, { } crack) => new SoundShares(fresh, crack),
        ({ } fresh, null) => new SoundShares(fresh, (1 - fresh) * Part(CrackShare, FreshShare)),
        (null, { } crack) => new SoundShares((1 - crack) * Part(FreshShare, CrackShare), crack),
        _ => new SoundShares(FreshShare, CrackShare),
    };

    private static double Part(double share, double of) => of < 1 ? share / (1 - of) : 0;
}

/// <summary>Every lot of a season, and the defaults that stood in for what is not known.</summary>
public sealed record LotsKnown(IReadOnlyDictionary<LotId, LotKnowledge> Lots, IReadOnlyList<DefaultTaken> Defaults, LotsLearned Learned)
{
    /// <summary>The lots that were seen, from which kinds of lots are believed; null where none was.</summary>
    public LotHistory? History { get; init; }
}

/// <summary>What a season's lots taught of lots: how far they differ, and how well their variety's shape fits them.</summary>
/// <param name="BetweenLots">Sds of ln g between varieties, fields, seasons, and lots alike in these; null where no lot was seen.</param>
/// <param name="ShapeBulbs">Bulbs that a variety's shape counts for beside a lot's own.</param>
/// <param name="ShapeFitted">False: that number is the default.</param>
public sealed record LotsLearned(HistorySpread? BetweenLots, double ShapeBulbs, bool ShapeFitted);
