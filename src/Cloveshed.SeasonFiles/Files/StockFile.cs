using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using NodaTime;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>
/// stock.csv: packed units on the day that the files describe, by the week in which they were made, which may lie before the
/// season. The lot need not be in lots.csv: a lot that is packed to the last bin stands nowhere any more.
/// </summary>
internal static class StockFile
{
    public static readonly FileLayout Layout = new("stock.csv", needed: false);
    private static readonly Column Product = Layout.NeededText("product");
    private static readonly Column Made = Layout.NeededDate("made");
    private static readonly Column Units = Layout.NeededNumber("units", Bounds.Units);
    private static readonly Column Lot = Layout.Text("lot");

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Product, Made, Lot);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? product = cells.Text(Product), lot = cells.Text(Lot);
            int? made = cells.Week(Made, draft.Frame);
            keys.Take(table, product, made is null ? null : cells.Canonical(Made), lot);
            draft.ProductNames.Require(table, Product, product);
            if (draft.Frame.AsOf is { } asOf && draft.Frame.FirstWeek is { } first && made > draft.Frame.WeekOf(LocalDate.Max(asOf, first)))
                table.Fault(FaultRule.MadeAfterAsOf, Made, IsoDate.Text(IsoDate.MondayOf(LocalDate.Max(asOf, first))));
            StockRow row = new(new ProductId(product ?? ""), made ?? 0, cells.Whole(Units) ?? 0, lot is null ? null : new LotId(lot));
            if (table.RowSound)
                draft.Stock.Add(row);
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (StockRow row in season.Stock)
            text.Text(row.Product.Text).Date(season.Settings.Monday(row.Made)).Number(row.Units).Text(row.Lot?.Text).EndRow();
        return text.ToBytes();
    }
}
