using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using NodaTime;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>orders.csv: one row per line of an order.</summary>
internal static class OrdersFile
{
    public static readonly FileLayout Layout = new("orders.csv", needed: true);
    private static readonly Column Order = Layout.NeededText("order");
    private static readonly Column Number = Layout.NeededNumber("line", Bounds.OrderLineNumber);
    private static readonly Column Customer = Layout.NeededText("customer");
    private static readonly Column Product = Layout.NeededText("product");
    private static readonly Column ShipFrom = Layout.Date("ship_from");
    private static readonly Column Due = Layout.NeededDate("due");
    private static readonly Column Units = Layout.NeededNumber("units", Bounds.Units);
    private static readonly Column Price = Layout.NeededNumber("price", Bounds.Money);
    private static readonly Column Firm = Layout.YesNo("firm");
    private static readonly Column LateCost = Layout.Number("late_cost", Bounds.Money);
    private static readonly Column ShortCost = Layout.Number("short_cost", Bounds.Money);
    private static readonly Column LargerOk = Layout.YesNo("larger_ok");
    private static readonly Column Whole = Layout.YesNo("whole");

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Order, Number);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? order = cells.Text(Order), product = cells.Text(Product), number = null;
            if (cells.Whole(Number) is { } counted)
            {
                // 1 and 01 are one line, but the number stays as written: answers name it so.
                keys.Take(table, order, counted.ToString(CultureInfo.InvariantCulture));
                number = cells.Canonical(Number);
            }
            draft.ProductNames.Require(table, Product, product);
            LocalDate? shipFrom = cells.Date(ShipFrom), due = cells.Date(Due);
            if (shipFrom > due)
                table.Fault(FaultRule.ShipFromAfterDue, ShipFrom, IsoDate.Text(due.Value));
            OrderLine line = new(
                new OrderId(order ?? ""), number ?? "", cells.Text(Customer) ?? "", new ProductId(product ?? ""),
                shipFrom ?? IsoDate.MondayOf(due ?? new LocalDate(2000, 1, 1)), due ?? default, cells.Whole(Units) ?? 0, cells.Money(Price) ?? 0,
                cells.YesNo(Firm) ?? true, cells.Money(LateCost) ?? 0, cells.Money(ShortCost) ?? 0, cells.YesNo(LargerOk) ?? false,
                cells.YesNo(Whole) ?? false);
            if (table.RowSound)
                draft.Orders.Add(line);
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (OrderLine row in season.Orders)
            text.Text(row.Order.Text).Text(row.Number).Text(row.Customer).Text(row.Product.Text).Date(row.ShipFrom).Date(row.Due)
                .Whole(row.Units).Money(row.Price).YesNo(row.Firm).Money(row.LateCost).Money(row.ShortCost).YesNo(row.LargerOk)
                .YesNo(row.Whole).EndRow();
        return text.ToBytes();
    }
}
