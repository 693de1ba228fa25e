using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>clove-grades.csv: windows of clove width in any order, with gaps allowed but no overlap.</summary>
internal static class CloveGradesFile
{
    /// <summary>The name in shares.csv of cloves that fall into no grade.</summary>
    public const string Ungraded = "ungraded";

    public static readonly FileLayout Layout = new("clove-grades.csv", needed: false, rowLimit: 1000);
    private static readonly Column Grade = Layout.NeededText("grade");
    private static readonly Column MinMm = Layout.NeededNumber("min_mm", Bounds.Millimetres);
    private static readonly Column MaxMm = Layout.Number("max_mm", Bounds.SomeMillimetres);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Grade);
        Cells cells = table.Cells;
        List<(CloveGrade Grade, int Line)> windows = [];
        while (table.Next())
        {
            string? name = cells.Text(Grade);
            double? min = cells.Number(MinMm), max = cells.Number(MaxMm);
            keys.Take(table, name);
            draft.GradeNames.Add(name);
            if (name == Ungraded)
                table.Fault(FaultRule.ReservedName, Grade, Ungraded);
            if (min is { } from && max is { } to && to <= from)
                table.Fault(FaultRule.MinNotBelowMax, MaxMm, NumberText.Of(from));
            if (!table.RowSound)
                continue;
            CloveGrade grade = new(new CloveGradeId(name!), min ?? 0, max);
            foreach ((CloveGrade other, int line) in windows)
                if (grade.MinMm < (other.MaxMm ?? double.MaxValue) && other.MinMm < (grade.MaxMm ?? double.MaxValue))
                {
                    table.Fault(FaultRule.GradesOverlap, MinMm, other.Id.Text, line);
                    break;
                }
            windows.Add((grade, table.Line));
        }
        draft.CloveGrades.AddRange(windows.Select(window => window.Grade));
        draft.GradeNames.Complete = !table.SomeLost;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (CloveGrade row in season.CloveGrades)
            text.Text(row.Id.Text).Number(row.MinMm).Number(row.MaxMm).EndRow();
        return text.ToBytes();
    }
}
