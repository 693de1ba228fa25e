using Cloveshed.Core.Drum;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Weighing;

/// <summary>A row of a clove sample: what was weighed, how wide it is, how many such.</summary>
public sealed record SampledClove(double? WeightG, double? WidthMm, long Count);

/// <summary>A clove sample: weight_g, width_mm (or diameter_mm) or both, count.</summary>
public static class CloveFile
{
    // g of one clove: the largest of a few-clove type are under 50 g; a bulb of 200 g is none (from memory).
    private static readonly Bounds CloveGrams = new(0, 200, AboveMin: true);

    /// <summary>At least one clove.</summary>
    public static FileReading<IReadOnlyList<SampledClove>> Read(string path, TextLanguage language) =>
        OneFile.Read<IReadOnlyList<SampledClove>>(path, language, (bytes, faults) => Parse(path, bytes, faults));

    private static List<SampledClove>? Parse(string path, ReadOnlyMemory<byte> bytes, FaultList faults)
    {
        FileLayout layout = new(path, needed: true, 5_000_000);
        Column weight = layout.Number("weight_g", CloveGrams), width = layout.Number("width_mm", Bounds.SomeMillimetres);
        Column diameter = layout.Number("diameter_mm", Bounds.SomeMillimetres), count = layout.Number("count", new Bounds(0, 1e9));
        Table table = new(layout, bytes, faults);
        if (table.SomeLost)
            return null;
        if (!table.Has(weight) && !table.Has(width) && !table.Has(diameter))
        {
            faults.Add(FaultRule.OneColumnOf, path, 1, null, null, "weight_g, width_mm, diameter_mm");
            return null;
        }

        List<SampledClove> cloves = [];
        while (table.Next())
        {
            double? g = table.Cells.Number(weight), mm = table.Cells.Number(width) ?? table.Cells.Number(diameter);
            int bulbs = table.Cells.Whole(count) ?? 1;
            if (table.RowSound && g is null && mm is null)
                table.Fault(FaultRule.OneCellOf, table.Has(weight) ? weight : table.Has(width) ? width : diameter, "weight_g, width_mm, diameter_mm");
            if (table.RowSound && bulbs > 0)
                cloves.Add(new(g, mm, bulbs));
        }

        OneFile.NeedRows(table, cloves.Count, "clove", faults);
        return cloves;
    }
}

/// <summary>--split: the grades that a drum is to give. grade; min_mm and max_mm, or share, or both; contamination.</summary>
public static class SplitFile
{
    /// <summary>Small to large: by min_mm, or as the rows stand.</summary>
    public static FileReading<IReadOnlyList<GradeWanted>> Read(string path, TextLanguage language) =>
        OneFile.Read<IReadOnlyList<GradeWanted>>(path, language, (bytes, faults) => Parse(path, bytes, faults));

    private static List<GradeWanted>? Parse(string path, ReadOnlyMemory<byte> bytes, FaultList faults)
    {
        FileLayout layout = new(path, needed: true, 12);
        Column name = layout.NeededText("grade"), min = layout.Number("min_mm", Bounds.Millimetres), max = layout.Number("max_mm", Bounds.SomeMillimetres);
        Column share = layout.Number("share", Bounds.Share), contamination = layout.Number("contamination", Bounds.Share);
        Table table = new(layout, bytes, faults);
        if (table.SomeLost)
            return null;
        if (!table.Has(min) && !table.Has(share))
        {
            faults.Add(FaultRule.OneColumnOf, path, 1, null, null, "min_mm, share");
            return null;
        }

        RowKeys keys = new(name);
        List<(GradeWanted Grade, int Line)> grades = [];
        while (table.Next())
        {
            string? grade = table.Cells.Text(name);
            double? from = table.Cells.Number(min), to = table.Cells.Number(max), part = table.Cells.Number(share), most = table.Cells.Number(contamination);
            keys.Take(table, grade);
            if (from is { } low && to is { } high && high <= low)
                table.Fault(FaultRule.MinNotBelowMax, max, NumberText.Of(low));
            if (table.RowSound && from is null && (part is null || to is not null))
                table.Fault(part is null ? FaultRule.OneCellOf : FaultRule.SplitByBoth, table.Has(min) ? min : share, "min_mm, share");
            if (table.RowSound)
                grades.Add((new(grade!, from, to, part, most), table.Line));
        }

        OneFile.NeedRows(table, grades.Count, "grade", faults);
        if (faults.Count == 0)
            Together(path, min, share, grades, faults);
        return faults.Count == 0 ? [.. grades.Select(g => g.Grade)] : null;
    }

    private static void Together(string path, Column min, Column share, List<(GradeWanted Grade, int Line)> grades, FaultList faults)
    {
        double sum = grades.Sum(g => g.Grade.Share ?? 0);
        if (sum > 1 + 1e-9)
            faults.Add(FaultRule.SplitSum, path, grades[^1].Line, share.Name, null, NumberText.Of(Math.Round(sum, 6, MidpointRounding.ToEven)));
        if (grades.All(g => g.Grade.MinMm is null))
            return;
        if (grades.FirstOrDefault(g => g.Grade.MinMm is null) is { Line: > 0 } bare)
        {
            faults.Add(FaultRule.SplitByBoth, path, bare.Line, min.Name, "");
            return;
        }

        grades.Sort((x, y) => x.Grade.MinMm!.Value.CompareTo(y.Grade.MinMm!.Value));
        for (int k = 1; k < grades.Count; k++)
        {
            // A grade with no upper limit of its own ends where the next begins.
            (GradeWanted before, int line) = grades[k - 1];
            if (before.MaxMm is null)
                grades[k - 1] = (before with { MaxMm = grades[k].Grade.MinMm }, line);
            if (grades[k].Grade.MinMm < grades[k - 1].Grade.MaxMm || grades[k].Grade.MinMm <= before.MinMm)
                faults.Add(FaultRule.GradesOverlap, path, grades[k].Line, min.Name, NumberText.Of(grades[k].Grade.MinMm!.Value), before.Name, line);
        }
    }
}
