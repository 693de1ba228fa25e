using Cloveshed.Core.Grading;

namespace Cloveshed.Core.Cuts;

/// <summary>
/// Where to set the sizer: the boxes that earn most of a lot with each held within its tolerance, exact over the grid; and what any
/// other setting is worth. Formulas: docs/formulas/cuts-and-holes.md.
/// </summary>
public static class CutChoosing
{
    /// <summary>The best setting, beside the nominal one.</summary>
    public static CutAnswer Choose(CutQuestion question)
    {
        CutTable table = CutTable.Of(question.Curve, question.Law, question.Chart, question.StepG);
        return Choose(question, table);
    }

    /// <summary>The same over a table made before: the handles of a screen ask again and again.</summary>
    public static CutAnswer Choose(CutQuestion question, CutTable table)
    {
        int classes = question.Chart.Count;
        var search = new CutSearch(table, question.PricePerKg, (c, e) => ToleranceOf(question, c, e), question.Chart[^1].MaxMm is null);
        (IReadOnlyList<(int Class, int Last, int From)> found, int end, _) = search.Best(question.MostOutlets ?? classes);
        Box[] boxes = [.. found.Select(b => new Box(b.Class, b.Last, Round(table.WeightG(b.From))))];
        double? over = end < table.Points - 1 ? Round(table.WeightG(end)) : null;
        Setting best = Judge(question, table, boxes, over);
        int first = boxes.Length > 0 ? boxes[0].Class : classes;
        return new(
            best, Nominal(question, table),
            [.. Enumerable.Range(first, classes - first).Where(c => boxes.All(b => b.Class != c))], [.. Enumerable.Range(0, first)],
            [.. boxes.Select((b, k) => new GramWorth(b.MinG, Moved(question, table, best, k, 1) - best.Value, Moved(question, table, best, k, -1) - best.Value))]);
    }

    /// <summary>
    /// What a setting is worth: a box within tolerance fetches its class's price, one that is off it the next lower class's (the
    /// smallest class's: nothing).
    /// </summary>
    public static Setting Judge(CutQuestion question, CutTable table, IReadOnlyList<Box> boxes, double? overG)
    {
        var found = new BoxFound[boxes.Count];
        double value = 0;
        for (int k = 0; k < found.Length; k++)
        {
            double to = k + 1 < boxes.Count ? boxes[k + 1].MinG : overG ?? double.PositiveInfinity;
            found[k] = Look(question, table, boxes[k], to);
            value += found[k].Share * found[k].Paid;
        }

        return new(found, overG, value);
    }

    /// <summary>Every class packed, cut where a bulb of its least diameter weighs by the mean law.</summary>
    public static Setting Nominal(CutQuestion question, CutTable table)
    {
        double Cut(double mm) => mm <= 0 ? 0 : Math.Exp(question.MeanLaw.A + question.MeanLaw.B * Math.Log(mm));
        return Judge(
            question, table, [.. question.Chart.Select((c, k) => new Box(k, k, Cut(c.MinMm)))],
            question.Chart[^1].MaxMm is { } top ? Cut(top) : null);
    }

    private static BoxFound Look(CutQuestion question, CutTable table, Box box, double toG)
    {
        double Between(double[] sums) => table.At(sums, toG) - table.At(sums, box.MinG);
        double share = Between(table.Mass);
        if (share <= 1e-12)
            return new(box, 0, 0, 0, 0, 0, question.Inspection is null ? null : 0, true, question.PricePerKg[box.Class]);
        double wide = Between(table.Wide[box.Class]), larger = Between(table.Wide[box.Class + 1]), over = Between(table.Wide[box.Last + 1]);
        double below = Math.Max(0, 1 - wide / share), above = Math.Max(0, over / share);
        double bulbs = Between(table.Bulbs), meanG = share / bulbs, cv = Math.Sqrt(Math.Max(0, Between(table.Squares) * bulbs / (share * share) - 1));
        double? risk = question.Inspection is { } inspection ? InspectionRisk.Refused(inspection, below + above, meanG, cv) : null;
        bool holds = below + above <= ToleranceOf(question, box.Class, box.Last) + 1e-9;
        double paid = holds ? question.PricePerKg[box.Class] : box.Class > 0 ? question.PricePerKg[box.Class - 1] : 0;
        return new(box, share, below, above, Math.Max(0, (larger - over) / share), meanG, risk, holds, paid);
    }

    // With an inspector, the share that his sample lets pass often enough; its bulbs are counted by a bulb of the class's least diameter,
    // the lightest that belongs there being the most of them and the box's own mean not known before it is cut.
    private static double ToleranceOf(CutQuestion question, int c, int e)
    {
        if (question.Inspection is not { } inspection)
            return question.Tolerance;
        double mm = Math.Max(question.Chart[c].MinMm, 1), topMm = question.Chart[e].MaxMm ?? mm * 1.15;
        double g = Math.Exp(question.MeanLaw.A + question.MeanLaw.B * Math.Log((mm + topMm) / 2));
        return Math.Min(question.Tolerance, InspectionRisk.MostWrong(inspection, question.InspectionRisk, g, 0.1));
    }

    private static double Moved(CutQuestion question, CutTable table, Setting best, int k, double byG)
    {
        Box[] boxes = [.. best.Boxes.Select(b => b.Box)];
        double low = k > 0 ? boxes[k - 1].MinG : 0, high = k + 1 < boxes.Length ? boxes[k + 1].MinG : best.OverG ?? double.MaxValue;
        boxes[k] = boxes[k] with { MinG = Math.Clamp(boxes[k].MinG + byG, low, high) };
        return Judge(question, table, boxes, best.OverG).Value;
    }

    // Grid points are tenths of a gram or multiples; sums of steps carry dust.
    private static double Round(double g) => Math.Round(g, 6, MidpointRounding.ToEven);
}
