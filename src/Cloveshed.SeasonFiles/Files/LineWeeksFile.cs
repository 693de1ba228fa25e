using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>line-weeks.csv: other hours of a line in a week.</summary>
internal static class LineWeeksFile
{
    public static readonly FileLayout Layout = new("line-weeks.csv", needed: false);
    private static readonly Column Line = Layout.NeededText("line");
    private static readonly Column Week = Layout.NeededDate("week");
    private static readonly Column Hours = Layout.NeededNumber("hours", Bounds.LineHours);
    private static readonly Column Overtime = Layout.Number("overtime_hours", Bounds.LineHours);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Line, Week);
        OutsideSeason outside = new(draft);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? line = cells.Text(Line);
            int? week = cells.Week(Week, draft.Frame);
            keys.Take(table, line, week is null ? null : cells.Canonical(Week));
            draft.LineNames.Require(table, Line, line);
            LineWeek row = new(new LineId(line ?? ""), week ?? 0, cells.Number(Hours) ?? 0, cells.Number(Overtime));
            if (!outside.Leaves(table, week) && table.RowSound)
                draft.LineWeeks.Add(row);
        }
        outside.Report(table, Week.Name);
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (LineWeek row in season.LineWeeks)
            text.Text(row.Line.Text).Date(season.Settings.Monday(row.Week)).Number(row.Hours).Number(row.OvertimeHours).EndRow();
        return text.ToBytes();
    }
}
