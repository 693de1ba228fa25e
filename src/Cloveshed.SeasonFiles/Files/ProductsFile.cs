using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>products.csv: what is sold, and of which size class or clove grade it is made.</summary>
internal static class ProductsFile
{
    public static readonly FileLayout Layout = new("products.csv", needed: true, rowLimit: 50_000);
    private static readonly Column Name = Layout.NeededText("product");
    private static readonly Column Form = Layout.NeededText("form");
    private static readonly Column From = Layout.NeededText("from");
    private static readonly Column Net = Layout.NeededNumber("net", Bounds.SomeMass);
    private static readonly Column UnitCost = Layout.Number("unit_cost", Bounds.Money);
    private static readonly Column ShelfWeeks = Layout.Number("shelf_weeks", Bounds.ShelfWeeks);
    private static readonly Column Organic = Layout.YesNo("organic");

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Name);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? name = cells.Text(Name), from = cells.Text(From);
            keys.Take(table, name);
            draft.ProductNames.Add(name);
            ProductForm? form = cells.Word(Form, Words.ProductForms);
            if (form is { } known)
                (known == ProductForm.Bulb ? draft.SizeNames : draft.GradeNames).Require(table, From, from);
            Product product = new(
                new ProductId(name ?? ""), form ?? default, from ?? "", cells.Number(Net) ?? 0, cells.Money(UnitCost) ?? 0,
                cells.Whole(ShelfWeeks) ?? 0, cells.YesNo(Organic) ?? false);
            if (table.RowSound)
                draft.Products.Add(product);
        }
        draft.ProductNames.Complete = !table.SomeLost;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (Product row in season.Products)
            text.Text(row.Id.Text).Word(Words.ProductForms, (ProductForm?)row.Form).Text(row.From).Number(row.Net).Money(row.UnitCost)
                .Whole(row.ShelfWeeks).YesNo(row.Organic).EndRow();
        return text.ToBytes();
    }
}
