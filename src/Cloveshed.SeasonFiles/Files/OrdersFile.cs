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
    private static readonly Column Price = Layout.Number("price", Bounds.Money);
    private static readonly Column Firm = Layout.YesNo("firm");
    private static readonly Column LateCost = Layout.Number("late_cost", Bounds.Money);
    private static readonly Column ShortCost = Layout.Number("short_cost", Bounds.Money);
    private static readonly Column LargerOk = Layout.YesNo("larger_ok");
    private static readonly Column Whole = Layout.YesNo("whole");
    private static readonly Column PriceList = Layout.Text("price_list");
    private static readonly Column Destination = Layout.Text("destination");

    /// <summary>As contract 1 has it: every line has its price in the row.</summary>
    private static readonly FileLayout First = Layout.Before(PriceList);

    /// <summary>The columns that count from contract 2 on.</summary>
    public static readonly IReadOnlyList<Column> OfTerms = [PriceList, Destination];

    /// <summary>The column that contract 1 wants filled in every row.</summary>
    public static readonly Column PriceOfFirst = Price;

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Order, Number);
        Cells cells = table.Cells;
        bool terms = draft.Frame.HasTerms;
        if (!terms && !FirstContract(table))
            return;
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
            decimal? price = cells.Money(Price);
            string? list = null, destination = null;
            if (terms)
            {
                (list, destination) = (cells.Text(PriceList), cells.Text(Destination));
                PriceCells.Check(table, draft, Price, price, PriceList, list, Destination, destination);
            }
            else if (cells.IsEmpty(Price))
                table.Fault(FaultRule.CellEmpty, Price);
            OrderLine line = new(
                new OrderId(order ?? ""), number ?? "", cells.Text(Customer) ?? "", new ProductId(product ?? ""),
                shipFrom ?? IsoDate.MondayOf(due ?? new LocalDate(2000, 1, 1)), due ?? default, cells.Whole(Units) ?? 0, price ?? 0,
                cells.YesNo(Firm) ?? true, cells.Money(LateCost) ?? 0, cells.Money(ShortCost) ?? 0, cells.YesNo(LargerOk) ?? false,
                cells.YesNo(Whole) ?? false);
            if (!table.RowSound)
                continue;
            if (draft.Frame.Contract is 1)
                draft.Orders.Add(line);
            else
                draft.OrderTerms.Add((new OrderTerms(line with { Price = 0 }, price, PriceCells.List(list), PriceCells.To(destination)), table.Line));
        }
    }

    /// <summary>Contract 1 wants a price column, and knows nothing of terms. False where the file cannot be read so.</summary>
    private static bool FirstContract(Table table)
    {
        foreach (Column column in OfTerms)
            if (table.Has(column))
                table.Warn(WarningRule.ColumnOfTerms, column);
        if (!table.HasColumns || table.Has(Price))
            return true;
        table.Fault(FaultRule.ColumnMissing, Price.Name, null);
        return false;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(season.Terms is null ? First : Layout);
        foreach (OrderTerms row in season.Terms?.Orders ?? [.. season.Orders.Select(line => new OrderTerms(line, line.Price, null, null))])
        {
            OrderLine line = row.Line;
            text.Text(line.Order.Text).Text(line.Number).Text(line.Customer).Text(line.Product.Text).Date(line.ShipFrom).Date(line.Due)
                .Whole(line.Units).Money(row.Price).YesNo(line.Firm).Money(line.LateCost).Money(line.ShortCost).YesNo(line.LargerOk)
                .YesNo(line.Whole);
            if (season.Terms is not null)
                text.Text(row.PriceList?.Text).Text(row.Destination?.Text);
            text.EndRow();
        }

        return text.ToBytes();
    }
}
