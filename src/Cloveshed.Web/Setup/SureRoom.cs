using Cloveshed.Core.Lots;
using Cloveshed.Core.Lots.Trials;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>How the bands of a season's size curves did in trials.</summary>
/// <param name="Half">Every second bulb of each lot held out; null where no lot has bulbs enough.</param>
/// <param name="Whole">Whole lots held out; likewise.</param>
/// <param name="MadeUp">Seasons made up around this one, a score for each of <see cref="Bulbs"/>.</param>
public sealed record SureFound(BandScore? Half, BandScore? Whole, IReadOnlyList<BandScore> MadeUp)
{
    /// <summary>Bulbs of a sample that made-up lots are tried with.</summary>
    public static IReadOnlyList<int> Bulbs { get; } = [30, 60, 120];

    /// <summary>All trials that could be made.</summary>
    public IReadOnlyList<BandScore> All { get; } = [.. new[] { Half, Whole }.Concat(MadeUp).OfType<BandScore>()];
}

/// <summary>A season's size curves being tried, and what came of it. Its parts are lots that are known anew.</summary>
public sealed class SureJob(Season season, LotsKnown known) : QuietJob<SureFound>
{
    private readonly SimulatedQuestion madeUp = new(season, known, SureFound.Bulbs);

    /// <summary>How often lots are known anew, in all trials together.</summary>
    public int Knowings => HeldOutBulbs.Knowings + madeUp.Knowings;

    protected override SureFound Make() =>
        new(HeldOutBulbs.HalfOfEachLot(season, () => Step(1)), HeldOutBulbs.WholeLots(season, () => Step(1)), SimulatedSeasons.Scores(madeUp, () => Step(1)));
}

/// <summary>Tries the size curves of a season, once for each state of its rows: it knows its lots over and over and takes seconds, with a machine under load many.</summary>
public sealed class SureRoom() : QuietRoom<SureJob, SureFound>("size curves tried")
{
    /// <summary>The trials of what a page sees.</summary>
    public SureJob Of(ShedReading shed) => Of(shed.State.KnowledgeDigest, () => new SureJob(shed.SeasonOpen, shed.Lots));

    /// <summary>Begins anew what was stopped.</summary>
    public void Again(ShedReading shed) => Again(shed.State.KnowledgeDigest, Of(shed));
}
