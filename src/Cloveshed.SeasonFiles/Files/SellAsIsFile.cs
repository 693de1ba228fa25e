using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>sell-as-is.csv: prices of garlic sold as it stands; at most one row is for any variety.</summary>
internal static class SellAsIsFile
{
    public static readonly FileLayout Layout = new("sell-as-is.csv", needed: false, rowLimit: 10_000);
    private static readonly Column Variety = Layout.Text("variety");
    private static readonly Column Price = Layout.NeededNumber("price", Bounds.Money);
    private static readonly Column Limit = Layout.Number("limit", Bounds.MassLimit);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Variety);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? variety = cells.Text(Variety);
            keys.Take(table, variety);
            draft.VarietyNames.Require(table, Variety, variety);
            AsIsPrice row = new(variety is null ? null : new VarietyId(variety), cells.Money(Price) ?? 0, cells.Number(Limit));
            if (table.RowSound)
                draft.AsIsPrices.Add(row);
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (AsIsPrice row in season.AsIsPrices)
            text.Text(row.Variety?.Text).Money(row.Price).Number(row.Limit).EndRow();
        return text.ToBytes();
    }
}
