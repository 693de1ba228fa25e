using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>people.csv: person-hours by week. A week without a row has no limit.</summary>
internal static class PeopleFile
{
    public static readonly FileLayout Layout = new("people.csv", needed: false);
    private static readonly Column Week = Layout.NeededDate("week");
    private static readonly Column Hours = Layout.NeededNumber("hours", Bounds.PeopleHours);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Week);
        OutsideSeason outside = new(draft);
        Cells cells = table.Cells;
        while (table.Next())
        {
            int? week = cells.Week(Week, draft.Frame);
            keys.Take(table, week is null ? null : cells.Canonical(Week));
            PeopleWeek row = new(week ?? 0, cells.Number(Hours) ?? 0);
            if (!outside.Leaves(table, week) && table.RowSound)
                draft.People.Add(row);
        }
        outside.Report(table, Week.Name);
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (PeopleWeek row in season.People)
            text.Date(season.Settings.Monday(row.Week)).Number(row.Hours).EndRow();
        return text.ToBytes();
    }
}
