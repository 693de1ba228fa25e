using Cloveshed.Core;
using Cloveshed.Core.Cuts;
using Cloveshed.Core.Line;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Line;

/// <summary>A lot's weights with the sums over the sizer's grid that every setting is read from, and its picture, which no setting changes.</summary>
public sealed record SizedLot(LotWeights Weights, CutTable Table, SizerTotal? Seen, CurveDrawing Drawing);

/// <summary>What a lot is sized by, made once for each state of its rows and counts: a handle that is dragged asks again and again.</summary>
public sealed class WeightsShelf
{
    /// <summary>A lot's table is about 200 KB.</summary>
    private const int Lots = 24, Settings = 256;

    /// <summary>Of the bands' simulation; the same lot has the same bands.</summary>
    private const long Seed = 1;

    private readonly Shelf<SizedLot> lots = new(Lots);
    private readonly Shelf<LotsKnown> before = new(2);
    private readonly Shelf<(IReadOnlyList<Box> Boxes, double? OverG)> best = new(Settings);

    /// <param name="bySizer">By the sizer's counts, where there are any.</param>
    public SizedLot Of(ShedReading shed, LotId lot, bool bySizer)
    {
        Season season = shed.SeasonOpen;
        return lots.Of(Key(shed, lot, bySizer), () =>
        {
            LotRow[] rows = [.. season.Lots.Where(row => row.Lot == lot)];
            SizerTotal? seen = shed.State.SizerTotal(lot);
            LotWeights weights = LotWeighing.Of(new(
                Before(shed).Lots[lot], [.. season.Samples.Where(bulb => bulb.Lot == lot)], season.Varieties.First(variety => variety.Id == rows[0].Variety).BulbLaw,
                bySizer ? seen?.Counts : null, seen?.BinsRun ?? 0, (int)Math.Ceiling(rows.Sum(row => row.Bins)), LotWeightsQuestion.UsualDraws, Seed));
            return new(weights, CutTable.Of(weights.Curve, weights.Law.DiameterOnMass, season.Sizes, CutQuestion.UsualStepG), seen, CurveDrawing.Of(weights, season.Sizes, seen));
        });
    }

    /// <summary>The best cuts under a wish.</summary>
    public (IReadOnlyList<Box> Boxes, double? OverG) Best(ShedReading shed, LotId lot, bool bySizer, CutQuestion question, CutTable table, SizerWish wish)
    {
        string asked = FormattableString.Invariant(
            $"{Key(shed, lot, bySizer)} {string.Join(',', question.PricePerKg)} {question.Tolerance} {question.MostOutlets} {question.Inspection?.Kilograms} {question.InspectionRisk} {string.Join(',', wish.Boxes.Boxes.Select(box => $"{box.Class}-{box.Last}"))}");
        return best.Of(asked, () => SizerLooking.Best(question, table, wish));
    }

    /// <summary>What was known before the sizer saw anything: against it the counts are held, and with it they are joined once and not twice.</summary>
    private LotsKnown Before(ShedReading shed) =>
        shed.SeasonOpen.SizerCounts.Count == 0 ? shed.Lots : before.Of(shed.State.InputDigest, () => LotKnowing.Know(shed.SeasonOpen with { SizerCounts = [] }));

    private static string Key(ShedReading shed, LotId lot, bool bySizer) =>
        $"{shed.State.InputDigest} {lot} {bySizer} {string.Join(',', shed.State.SizerCounts.Where(count => count.Lot == lot).Select(count => count.Fact))}";
}
