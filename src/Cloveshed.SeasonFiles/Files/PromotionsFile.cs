using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>promotions.csv: weeks in which a product is cheaper for a buyer or for any, or in which more of it is taken.</summary>
internal static class PromotionsFile
{
    public static readonly FileLayout Layout = new("promotions.csv", needed: false, rowLimit: 10_000, contract: 2);
    public static readonly Column Name = Layout.NeededText("promotion");
    private static readonly Column Customer = Layout.Text("customer");
    private static readonly Column Product = Layout.NeededText("product");
    private static readonly Column From = Layout.NeededDate("from");
    private static readonly Column To = Layout.NeededDate("to");
    private static readonly Column Cut = Layout.Number("cut", Bounds.Money);
    private static readonly Column Extra = Layout.Number("extra", Bounds.Units);

    public static void Read(Table table, SeasonDraft draft)
    {
        WeekSpans spans = new([Name, Customer, Product], From, To);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? name = cells.Text(Name), customer = cells.Text(Customer), product = cells.Text(Product);
            draft.ProductNames.Require(table, Product, product);
            (int? from, int? to) = spans.Read(table, draft, name, customer, product);
            decimal? cut = cells.Money(Cut);
            int? extra = cells.Whole(Extra);
            if (cells.IsEmpty(Cut) && cells.IsEmpty(Extra))
                table.Fault(FaultRule.OneCellOf, Cut, $"{Cut.Name}, {Extra.Name}");
            if (table.RowSound)
                draft.Promotions.Add((new Promotion(name!, customer, new ProductId(product!), from!.Value, to!.Value, cut ?? 0, extra ?? 0), table.Line));
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (Promotion row in season.Terms?.Promotions ?? [])
            text.Text(row.Name).Text(row.Customer).Text(row.Product.Text).Date(season.Settings.Monday(row.From)).Date(season.Settings.Monday(row.To)).Money(row.Cut).Whole(row.Extra).EndRow();
        return text.ToBytes();
    }
}
