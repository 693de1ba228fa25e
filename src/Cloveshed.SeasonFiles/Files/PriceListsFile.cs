using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>price-lists.csv: what products cost in which weeks, for programs and order lines that name the list.</summary>
internal static class PriceListsFile
{
    public static readonly FileLayout Layout = new("price-lists.csv", needed: false, contract: 2);
    private static readonly Column List = Layout.NeededText("list");
    private static readonly Column Product = Layout.NeededText("product");
    private static readonly Column From = Layout.NeededDate("from");
    private static readonly Column To = Layout.Date("to");
    private static readonly Column Price = Layout.NeededNumber("price", Bounds.Money);

    public static void Read(Table table, SeasonDraft draft)
    {
        WeekSpans spans = new([List, Product], From, To);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? list = cells.Text(List), product = cells.Text(Product);
            draft.PriceListNames.Add(list);
            draft.ProductNames.Require(table, Product, product);
            (int? from, int? to) = spans.Read(table, draft, list, product);
            decimal price = cells.Money(Price) ?? 0;
            if (table.RowSound)
                draft.PriceLists.Add((new ListPrice(new PriceListId(list!), new ProductId(product!), from!.Value, to, price), table.Line));
            else
                draft.PricesLost = true;
        }

        draft.PricesLost |= table.SomeLost;
        draft.PriceListNames.Complete = !table.SomeLost;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (ListPrice row in season.Terms?.PriceLists ?? [])
            text.Text(row.List.Text).Text(row.Product.Text).Date(season.Settings.Monday(row.From)).Date(row.To is { } to ? season.Settings.Monday(to) : null).Money(row.Price).EndRow();
        return text.ToBytes();
    }
}
