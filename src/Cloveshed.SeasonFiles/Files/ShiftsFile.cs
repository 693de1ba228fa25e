using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using NodaTime;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>shifts.csv: when lines work, breaks, maintenance, closed days, and when loads leave.</summary>
internal static class ShiftsFile
{
    public static readonly FileLayout Layout = new("shifts.csv", needed: false, rowLimit: 10_000);
    private static readonly Column Kind = Layout.NeededText("kind");
    private static readonly Column Name = Layout.NeededText("name");
    private static readonly Column Line = Layout.Text("line");
    private static readonly Column Week = Layout.Date("week");
    private static readonly Column Day = Layout.Text("day");
    private static readonly Column Start = Layout.NeededText("start");
    private static readonly Column End = Layout.NeededText("end");
    private static readonly Column Heads = Layout.Number("heads", Bounds.Heads);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Kind, Line, Week, Day, Start);
        OutsideSeason outside = new(draft);
        Cells cells = table.Cells;
        while (table.Next())
        {
            ShiftKind? kind = cells.Word(Kind, Words.ShiftKinds);
            string? name = cells.Text(Name), line = cells.Text(Line);
            int? week = cells.Week(Week, draft.Frame);
            IsoDayOfWeek? day = cells.Word(Day, Words.Days);
            int? start = DayTime.Read(table, cells, Start, endOfDay: false), end = DayTime.Read(table, cells, End, endOfDay: true);
            draft.LineNames.Require(table, Line, line);
            double? heads = cells.Number(Heads);
            if (kind is { } of && of != ShiftKind.Work && heads is not null)
                table.Fault(FaultRule.NotOfKind, Heads, Words.ShiftKinds.TextOf(of));
            if (kind is ShiftKind.Dock && line is not null)
                table.Fault(FaultRule.NotOfKind, Line, Words.ShiftKinds.TextOf(ShiftKind.Dock));
            if (kind is not null && start is not null)
                keys.Take(table, Words.ShiftKinds.TextOf(kind.Value), line, week is null ? null : cells.Canonical(Week), day is null ? null : Words.Days.TextOf(day.Value), DayTime.Text(start.Value));
            int begins = start ?? 0, ends = end ?? 0;
            ShiftRow row = new(kind ?? default, name ?? "", line is null ? null : new LineId(line), week, day, begins, ends <= begins ? ends + DayTime.MinutesOfDay : ends, heads);
            if (!outside.Leaves(table, week) && table.RowSound)
                draft.Shifts.Add(row);
        }

        outside.Report(table, Week.Name);
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (ShiftRow row in season.Shifts)
            text.Word(Words.ShiftKinds, (ShiftKind?)row.Kind).Text(row.Name).Text(row.Line?.Text).Date(row.Week is { } week ? season.Settings.Monday(week) : null)
                .Word(Words.Days, row.Day).Text(DayTime.Text(row.StartMinute)).Text(DayTime.Text(row.EndMinute)).Number(row.Heads).EndRow();
        return text.ToBytes();
    }
}
