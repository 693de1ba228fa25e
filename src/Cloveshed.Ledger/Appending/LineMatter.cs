using Cloveshed.Core.Sizes;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Folds;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger.Appending;

/// <summary>Whether a count or a setting of the line agrees with the season and with itself.</summary>
internal sealed record LineMatter(ShedFold Fold, TextLanguage Language)
{
    /// <summary>Null when it agrees. A body that is not of its form throws <see cref="BodyFault"/>.</summary>
    public Refusal? Against(FormedFact fact, Body body)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, Language, words);
        if (Fold.Season.Finished() is not { } rows)
            return Refuse(RefusalTexts.SeasonNone);
        string lot = body.Text("lot");
        if (!rows.Of("lots.csv").Any(row => row.Cells["lot"] == lot))
            return Refuse(RefusalTexts.HoldUnknown, Language == TextLanguage.Spanish ? "el lote" : "lot", lot);
        switch (fact.Stored.Kind)
        {
            case FactKinds.SizerCounted:
                Counted(body);
                return fact.Corrects is { } corrected && Fold.Count(corrected) is null ? Refuse(RefusalTexts.CorrectsUnknown, corrected) : null;
            case FactKinds.DrumSet:
                Holes(body);
                return null;
            default:
                HashSet<string> classes = [.. rows.Of("sizes.csv").Select(row => row.Cells["class"])];
                return Boxes(body).FirstOrDefault(name => !classes.Contains(name)) is { } unknown
                    ? Refuse(RefusalTexts.HoldUnknown, Language == TextLanguage.Spanish ? "la clase" : "size class", unknown) : null;
        }
    }

    /// <summary>Zero bulbs are allowed: a count that corrects another one to nothing.</summary>
    private static void Counted(Body body)
    {
        _ = body.Text("file");
        if (body.Whole("bins") is < 1 or > 1_000_000)
            throw new BodyFault("bins", "1 to 1000000");
        IReadOnlyList<long> counts = body.Wholes("counts");
        long from = body.Whole("from"), heavy = body.Whole("too_heavy"), bulbs = body.Whole("bulbs");
        if (from < 0 || from + counts.Count > WeightHistogram.Cells)
            throw new BodyFault("from", "tenths of a gram, with the last count at most 50000");
        if (heavy < 0 || counts.Any(count => count < 0))
            throw new BodyFault("counts", "a list of whole numbers of 0 or more");
        if (counts.Aggregate(0L, (sum, count) => checked(sum + count)) != bulbs)
            throw new BodyFault("bulbs", "the sum of counts");
    }

    private static IEnumerable<string> Boxes(Body body)
    {
        IReadOnlyList<SetBox> boxes = body.Boxes("boxes");
        double last = body.NumberOrNone("over_g") ?? double.PositiveInfinity;
        for (int at = 0; at < boxes.Count; at++)
            if (!(boxes[at].MinG >= (at == 0 ? 0 : boxes[at - 1].MinG) && boxes[at].MinG <= last))
                throw new BodyFault("boxes", "a list whose min_g rise from 0 or more, none over over_g");
        if (boxes.Count == 0)
            throw new BodyFault("boxes", "a list of at least one box");
        return boxes.SelectMany(box => new[] { box.Class, box.Last });
    }

    private static void Holes(Body body)
    {
        IReadOnlyList<double> holes = body.Numbers("holes_mm");
        if (holes.Count == 0 || holes.Where((hole, at) => !(hole > (at == 0 ? 0 : holes[at - 1]) && hole <= 500)).Any())
            throw new BodyFault("holes_mm", "a rising list of widths above 0 and at most 500");
        if (body.Text("order") is not ("smallest-first" or "largest-first"))
            throw new BodyFault("order", "smallest-first or largest-first");
    }
}
