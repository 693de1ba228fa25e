using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>places.csv: where bins can stand. Empty costs are 0, empty climate stays unknown.</summary>
internal static class PlacesFile
{
    public static readonly FileLayout Layout = new("places.csv", needed: true, rowLimit: 10_000);
    private static readonly Column Name = Layout.NeededText("place");
    private static readonly Column Kind = Layout.NeededText("kind");
    private static readonly Column Capacity = Layout.NeededNumber("capacity_bins", Bounds.Bins);
    private static readonly Column TempC = Layout.Number("temp_c", Bounds.Celsius);
    private static readonly Column Rh = Layout.Number("rh", Bounds.Percent);
    private static readonly Column O2 = Layout.Number("o2", Bounds.Percent);
    private static readonly Column Co2 = Layout.Number("co2", Bounds.Percent);
    private static readonly Column CostPerBinWeek = Layout.Number("cost_per_bin_week", Bounds.Money);
    private static readonly Column CostPerWeek = Layout.Number("cost_per_week", Bounds.Money);
    private static readonly Column MoveInCost = Layout.Number("move_in_cost", Bounds.Money);
    private static readonly Column RunOutWeeks = Layout.Number("run_out_weeks", Bounds.RunOutWeeks);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Name);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? name = cells.Text(Name);
            keys.Take(table, name);
            draft.PlaceNames.Add(name);
            Place place = new(
                new PlaceId(name ?? ""), cells.Word(Kind, Words.PlaceKinds) ?? default, cells.Number(Capacity) ?? 0, cells.Number(TempC),
                Humidity(table, Rh), cells.Number(O2), cells.Number(Co2), cells.Money(CostPerBinWeek) ?? 0, cells.Money(CostPerWeek) ?? 0,
                cells.Money(MoveInCost) ?? 0, cells.Whole(RunOutWeeks));
            if (table.RowSound)
                draft.Places.Add(place);
        }
        draft.PlaceNames.Complete = !table.SomeLost;
    }

    /// <summary>Air of under 1% relative humidity does not exist where garlic stands: such a number was meant as a share.</summary>
    public static double? Humidity(Table table, Column column)
    {
        double? percent = table.Cells.Number(column);
        if (percent is > 0 and <= 1)
            table.Warn(WarningRule.HumidityLikeShare, column, NumberText.Of(percent.Value));
        return percent;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (Place row in season.Places)
            text.Text(row.Id.Text).Word(Words.PlaceKinds, (PlaceKind?)row.Kind).Number(row.CapacityBins).Number(row.TempC).Number(row.Rh)
                .Number(row.O2).Number(row.Co2).Money(row.CostPerBinWeek).Money(row.CostPerWeek).Money(row.MoveInCost).Whole(row.RunOutWeeks).EndRow();
        return text.ToBytes();
    }
}
