using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>freight.csv: what it costs to bring a unit to a destination. An empty product is any that has no row of its own there.</summary>
internal static class FreightFile
{
    public static readonly FileLayout Layout = new("freight.csv", needed: false, rowLimit: 10_000, contract: 2);
    private static readonly Column Destination = Layout.NeededText("destination");
    private static readonly Column Product = Layout.Text("product");
    private static readonly Column Cost = Layout.NeededNumber("cost", Bounds.Money);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Destination, Product);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? destination = cells.Text(Destination), product = cells.Text(Product);
            keys.Take(table, destination, product);
            draft.DestinationNames.Add(destination);
            draft.ProductNames.Require(table, Product, product);
            decimal cost = cells.Money(Cost) ?? 0;
            if (table.RowSound)
                draft.Freight.Add(new Freight(new DestinationId(destination!), product is null ? null : new ProductId(product), cost));
            else
                draft.FreightLost = true;
        }

        draft.FreightLost |= table.SomeLost;
        draft.DestinationNames.Complete = !table.SomeLost;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (Freight row in season.Terms?.Freight ?? [])
            text.Text(row.Destination.Text).Text(row.Product?.Text).Money(row.Cost).EndRow();
        return text.ToBytes();
    }
}
