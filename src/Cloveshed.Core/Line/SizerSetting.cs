using Cloveshed.Core.Cuts;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Line;

/// <summary>A setting of the sizer with what a run of the lot would give.</summary>
/// <param name="Setting">Its boxes, off-size shares and value.</param>
/// <param name="Shares">80% band of each box's share of the lot.</param>
/// <param name="Value">80% band of the value, at what each box is paid.</param>
/// <param name="CountShares">Of each box, by number of bulbs.</param>
/// <param name="Grams">What one gram up or down of each cut would change.</param>
public sealed record SettingSeen(Setting Setting, IReadOnlyList<Band> Shares, Band Value, IReadOnlyList<double> CountShares, IReadOnlyList<GramWorth> Grams);

/// <summary>What becomes of a box that is off its tolerance.</summary>
public enum OffBox
{
    /// <summary>Paid as the next smaller class; the smallest class: nothing.</summary>
    PaidAsSmaller,

    /// <summary>Refused: paid nothing.</summary>
    Refused,
}

/// <summary>Looks at settings of the sizer: one that a hand made, and the best within the same wishes.</summary>
public static class SizerLooking
{
    /// <summary>The boxes of a wish, judged.</summary>
    public static SettingSeen At(CutQuestion question, CutTable table, LotWeights weights, IReadOnlyList<Box> boxes, double? overG, OffBox off)
    {
        Setting setting = Judge(question, table, boxes, overG, off);
        double ToG(int k) => k + 1 < boxes.Count ? boxes[k + 1].MinG : overG ?? double.PositiveInfinity;
        // A share is of the drawn curve whole, so that one drawing of shares gives both the bands and what each curve would earn.
        double[] edges = boxes.Count == 0 ? [] : [.. boxes.Select(box => box.MinG), ToG(boxes.Count - 1)];
        double[][] drawn = [.. weights.Drawn.Select(curve => LotWeights.Between(curve, edges))];
        return new(
            setting,
            [.. LotWeights.Between(weights.Curve, edges).Select((own, k) => LotWeights.Band80(own, [.. drawn.Select(shares => shares[k])]))],
            LotWeights.Band80(setting.Value, [.. drawn.Select(shares => shares.Select((share, k) => setting.Boxes[k].Paid * share).Sum())]),
            [.. boxes.Select((box, k) => weights.Curve.CountShare(box.MinG, double.IsPositiveInfinity(ToG(k)) ? null : ToG(k)))],
            [.. boxes.Select((box, k) => new GramWorth(box.MinG, Moved(question, table, boxes, overG, off, k, 1) - setting.Value, Moved(question, table, boxes, overG, off, k, -1) - setting.Value))]);
    }

    /// <summary>
    /// The best cuts for the classes that a wish packs by themselves, merging further where a class cannot be held: the search is over a
    /// chart that has the merged classes joined and the others left out.
    /// </summary>
    public static (IReadOnlyList<Box> Boxes, double? OverG) Best(CutQuestion question, CutTable whole, SizerWish wish)
    {
        (IReadOnlyList<Box> wished, _) = wish.Boxes;
        if (wished.Count == 0)
            return ([], null);
        bool asChart = wished.Count == question.Chart.Count;
        // The top box ends where the chart's next class begins, if that is not packed.
        SizeClass[] chart = [.. wished.Select(box => question.Chart[box.Class] with { MaxMm = question.Chart[box.Last].MaxMm })];
        CutQuestion reduced = question with { Chart = chart, PricePerKg = [.. wished.Select(box => question.PricePerKg[box.Class])] };
        Setting best = (asChart ? CutChoosing.Choose(question, whole) : CutChoosing.Choose(reduced)).Best;
        return ([.. best.Boxes.Select(found => new Box(wished[found.Box.Class].Class, wished[found.Box.Last].Last, found.Box.MinG))], best.OverG);
    }

    private static double Moved(CutQuestion question, CutTable table, IReadOnlyList<Box> boxes, double? overG, OffBox off, int k, double byG)
    {
        Box[] moved = [.. boxes];
        double low = k > 0 ? moved[k - 1].MinG : 0, high = k + 1 < moved.Length ? moved[k + 1].MinG : overG ?? double.MaxValue;
        moved[k] = moved[k] with { MinG = Math.Clamp(moved[k].MinG + byG, low, Math.Max(low, high)) };
        return Judge(question, table, moved, overG, off).Value;
    }

    private static Setting Judge(CutQuestion question, CutTable table, IReadOnlyList<Box> boxes, double? overG, OffBox off)
    {
        Setting judged = CutChoosing.Judge(question, table, boxes, overG);
        if (off == OffBox.PaidAsSmaller)
            return judged;
        BoxFound[] found = [.. judged.Boxes.Select(box => box.Holds ? box : box with { Paid = 0 })];
        return judged with { Boxes = found, Value = found.Sum(box => box.Share * box.Paid) };
    }
}
