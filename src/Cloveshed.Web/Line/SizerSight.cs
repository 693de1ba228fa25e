using Cloveshed.Core;
using Cloveshed.Core.Cuts;
using Cloveshed.Core.Grading;
using Cloveshed.Core.Line;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Line;

/// <summary>A lot on the sizer as a page and its live numbers see it: the setting asked about, the best one, and the one in force.</summary>
public sealed record SizerSight(
    LotId Lot, LotRow[] Rows, SizerAsked Asked, SizedLot Sized, CutQuestion Question, SizerWish Wish, SettingSeen Setting, SizerWish BestWish, SettingSeen Best,
    SizerSetting? InForce, SettingSeen Now, double Mass, double PackedShare, IReadOnlyList<double> Prices, int? OutOfOrder)
{
    /// <summary>Where nobody says otherwise, one inspected box in ten may be refused.</summary>
    public const double UsualRisk = 0.1;

    /// <summary>Kilograms that reach the boxes.</summary>
    public double PackedKg(double kilogramsPerUnit) => Mass * kilogramsPerUnit * PackedShare;

    /// <summary>Null where the season has no such lot.</summary>
    public static SizerSight? Of(ShedReading shed, WeightsShelf shelf, LotId lot, IQueryCollection query)
    {
        Season season = shed.SeasonOpen;
        LotRow[] rows = [.. season.Lots.Where(row => row.Lot == lot)];
        if (rows.Length == 0)
        {
            return null;
        }

        SizerAsked asked = SizerAsked.Of(query, season.Sizes.Count);
        SizedLot sized = shelf.Of(shed, lot, asked.BySizer);
        double[] usual = ClassPrices.Of(season, rows[0].Organic), prices = [.. usual.Select((price, k) => asked.Prices[k] ?? price)];
        double kg = KilogramsPerUnit(season), tolerance = asked.Tolerance ?? GradeRule.UsNo1.OffSize;
        CutQuestion question = new(
            sized.Weights.Curve, sized.Weights.Law.DiameterOnMass, sized.Weights.Law.MeanLaw, season.Sizes, [.. prices.Select(price => price / kg)], tolerance,
            CutQuestion.UsualStepG, asked.Outlets, asked.Pounds is { } pounds ? new(pounds * Core.Quantities.Mass.KilogramsPerPound, tolerance) : null, asked.Risk ?? UsualRisk);

        // In force: what was said last for this lot, else cuts at the class limits by the mean law.
        Setting nominal = CutChoosing.Nominal(question, sized.Table);
        double[] limits = [.. nominal.Boxes.Select(found => Math.Round(found.Box.MinG, 1))];
        SizerSetting? inForce = shed.State.SizerSettings.FirstOrDefault(setting => setting.Lot == lot);
        SizerWish now = inForce is null ? SizerWish.Plain(limits) : WishOf(inForce, season, limits) ?? SizerWish.Plain(limits);
        SizerWish wish = new([.. now.Uses.Select((use, k) => asked.Uses[k] ?? use)], [.. now.CutG.Select((cut, k) => asked.Cuts[k] ?? cut)]);
        int? outOfOrder = wish.FirstOutOfOrder;
        (IReadOnlyList<Box> boxes, double? over) = wish.Boxes;
        if (outOfOrder is not null)
        {
            // Shown as it was typed, and judged as far as it can be: each cut no lower than the one before.
            boxes = [.. boxes.Select((box, at) => box with { MinG = boxes.Take(at + 1).Max(one => one.MinG) })];
            over = over is { } top && boxes.Count > 0 ? Math.Max(top, boxes[^1].MinG) : over;
        }

        (IReadOnlyList<Box> bestBoxes, double? bestOver) = shelf.Best(shed, lot, asked.BySizer, question, sized.Table, wish);
        (IReadOnlyList<Box> nowBoxes, double? nowOver) = now.Boxes;
        SettingSeen Look(IReadOnlyList<Box> of, double? top) => SizerLooking.At(question, sized.Table, sized.Weights, of, top, asked.Off);
        return new(
            lot, rows, asked, sized, question, wish, Look(boxes, over), SizerWish.Of(bestBoxes, bestOver, wish.CutG), Look(bestBoxes, bestOver), inForce, Look(nowBoxes, nowOver),
            asked.Mass ?? ToDump.Of(shed, rows, fresh: true).Mass, PackedOf(shed, season, rows, lot), prices, outOfOrder);
    }

    public static double KilogramsPerUnit(Season season) => season.Settings.MassUnit == MassUnit.Pound ? Core.Quantities.Mass.KilogramsPerPound : 1;

    /// <summary>Of what is dumped: what makes grade, less dirt, roots, tops and loose skins.</summary>
    private static double PackedOf(ShedReading shed, Season season, LotRow[] rows, LotId lot)
    {
        LotKnowledge known = shed.Lots.Lots[lot];
        double net = rows.Sum(row => row.Net), fresh = net > 0 ? rows.Sum(row => row.Net * known.SharesOf(row).Fresh) / net : known.FreshShare;
        return fresh * (season.Yields.FirstOrDefault(yield => yield.Mode == LineMode.Fresh)?.KeptShare ?? 1);
    }

    /// <summary>Null where the setting names a class that the chart no longer has.</summary>
    private static SizerWish? WishOf(SizerSetting setting, Season season, double[] limits)
    {
        int At(string name) => season.Sizes.TakeWhile(size => size.Id.Text != name).Count();
        Box[] boxes = [.. setting.Boxes.Select(box => new Box(At(box.Class), At(box.Last), box.MinG))];
        return boxes.All(box => box.Last < limits.Length && box.Class <= box.Last) ? SizerWish.Of(boxes, setting.OverG, limits) : null;
    }
}
