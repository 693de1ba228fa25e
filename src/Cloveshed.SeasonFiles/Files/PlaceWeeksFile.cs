using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>place-weeks.csv: exceptions to a place's climate.</summary>
internal static class PlaceWeeksFile
{
    public static readonly FileLayout Layout = new("place-weeks.csv", needed: false);
    private static readonly Column Place = Layout.NeededText("place");
    private static readonly Column Week = Layout.NeededDate("week");
    private static readonly Column TempC = Layout.Number("temp_c", Bounds.Celsius);
    private static readonly Column Rh = Layout.Number("rh", Bounds.Percent);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Place, Week);
        OutsideSeason outside = new(draft);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? place = cells.Text(Place);
            int? week = cells.Week(Week, draft.Frame);
            keys.Take(table, place, week is null ? null : cells.Canonical(Week));
            draft.PlaceNames.Require(table, Place, place);
            PlaceWeek row = new(new PlaceId(place ?? ""), week ?? 0, cells.Number(TempC), PlacesFile.Humidity(table, Rh));
            if (!outside.Leaves(table, week) && table.RowSound)
                draft.PlaceWeeks.Add(row);
        }
        outside.Report(table, Week.Name);
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (PlaceWeek row in season.PlaceWeeks)
            text.Text(row.Place.Text).Date(season.Settings.Monday(row.Week)).Number(row.TempC).Number(row.Rh).EndRow();
        return text.ToBytes();
    }
}
