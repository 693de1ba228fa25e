using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>market.csv: units that can be sold beyond orders, as three quantiles that may be fractional.</summary>
internal static class MarketFile
{
    public static readonly FileLayout Layout = new("market.csv", needed: false);
    private static readonly Column Product = Layout.NeededText("product");
    private static readonly Column Week = Layout.NeededDate("week");
    private static readonly Column Price = Layout.NeededNumber("price", Bounds.Money);
    private static readonly Column P10 = Layout.Number("p10", Bounds.Units);
    private static readonly Column P50 = Layout.NeededNumber("p50", Bounds.Units);
    private static readonly Column P90 = Layout.Number("p90", Bounds.Units);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Product, Week);
        OutsideSeason outside = new(draft);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? product = cells.Text(Product);
            int? week = cells.Week(Week, draft.Frame);
            keys.Take(table, product, week is null ? null : cells.Canonical(Week));
            draft.ProductNames.Require(table, Product, product);
            decimal price = cells.Money(Price) ?? 0;
            double? p10 = cells.Number(P10), p50 = cells.Number(P50), p90 = cells.Number(P90);
            if (p10 > p50)
                table.Fault(FaultRule.LowAboveHigh, P10, P10.Name, P50.Name, NumberText.Of(p50.Value));
            if (p50 > p90)
                table.Fault(FaultRule.LowAboveHigh, P90, P50.Name, P90.Name, NumberText.Of(p50.Value));
            if (!outside.Leaves(table, week) && table.RowSound)
                draft.Market.Add(new MarketWeek(new ProductId(product!), week!.Value, price, p10, p50!.Value, p90));
        }
        outside.Report(table, Week.Name);
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (MarketWeek row in season.Market)
            text.Text(row.Product.Text).Date(season.Settings.Monday(row.Week)).Money(row.Price).Number(row.P10).Number(row.P50).Number(row.P90).EndRow();
        return text.ToBytes();
    }
}
