using Cloveshed.Core.Lots.Trials;
using Cloveshed.Core.Seasons;
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

    public static SureFound Nothing { get; } = new(null, null, []);

    /// <summary>All trials that could be made.</summary>
    public IReadOnlyList<BandScore> All { get; } = [.. new[] { Half, Whole }.Concat(MadeUp).OfType<BandScore>()];
}

/// <summary>The trials of a season's size curves, made once for each state of its rows: they know its lots over and over and take a second or two.</summary>
public sealed class SureShelf
{
    private const int Room = 4;

    private readonly Shelf<SureFound> shelf = new(Room);

    public SureFound Of(ShedReading shed) => shelf.Of(shed.State.KnowledgeDigest, () =>
    {
        Season season = shed.SeasonOpen;
        return new(HeldOutBulbs.HalfOfEachLot(season), HeldOutBulbs.WholeLots(season), SimulatedSeasons.Scores(new(season, shed.Lots, SureFound.Bulbs)));
    });
}
