using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using NodaTime;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>seed-needs.csv: planting cloves that must be there by a date.</summary>
internal static class SeedNeedsFile
{
    public static readonly FileLayout Layout = new("seed-needs.csv", needed: false);
    private static readonly Column Variety = Layout.NeededText("variety");
    private static readonly Column Net = Layout.NeededNumber("net", Bounds.Mass);
    private static readonly Column By = Layout.NeededDate("by");
    private static readonly Column Class = Layout.NeededText("seed_class");
    private static readonly Column ShortCost = Layout.NeededNumber("short_cost", Bounds.Money);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Variety, By, Class);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? variety = cells.Text(Variety);
            LocalDate? by = cells.Date(By);
            SeedClass? seed = cells.Word(Class, Words.SeedClasses);
            keys.Take(table, variety, by is { } date ? IsoDate.Text(date) : null, seed is { } known ? Words.SeedClasses.TextOf(known) : null);
            draft.VarietyNames.Require(table, Variety, variety);
            SeedNeed row = new(
                new VarietyId(variety ?? ""), cells.Number(Net) ?? 0, by ?? default, seed ?? default, cells.Money(ShortCost) ?? 0);
            if (table.RowSound)
                draft.SeedNeeds.Add(row);
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (SeedNeed row in season.SeedNeeds)
            text.Text(row.Variety.Text).Number(row.Net).Date(row.By).Word(Words.SeedClasses, (SeedClass?)row.Class).Money(row.ShortCost).EndRow();
        return text.ToBytes();
    }
}
