using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Weighing;

/// <summary>--prices: class and its price per kg (price_per_kg, or price), a row for each class of the chart.</summary>
public static class PriceFile
{
    /// <summary>In the order of the chart.</summary>
    public static FileReading<IReadOnlyList<double>> Read(string path, IReadOnlyList<SizeClass> chart, TextLanguage language) =>
        OneFile.Read<IReadOnlyList<double>>(path, language, (bytes, faults) => Parse(path, bytes, chart, faults));

    private static double[]? Parse(string path, ReadOnlyMemory<byte> bytes, IReadOnlyList<SizeClass> chart, FaultList faults)
    {
        FileLayout layout = new(path, needed: true, 10_000);
        Column name = layout.NeededText("class"), perKg = layout.Number("price_per_kg", Bounds.Money), price = layout.Number("price", Bounds.Money);
        Table table = new(layout, bytes, faults);
        if (table.SomeLost)
            return null;
        if (!table.Has(perKg) && !table.Has(price))
        {
            faults.Add(FaultRule.OneColumnOf, path, 1, null, null, "price_per_kg, price");
            return null;
        }

        RowKeys keys = new(name);
        var found = new double?[chart.Count];
        while (table.Next())
        {
            string? of = table.Cells.Text(name);
            double? money = table.Cells.Number(perKg) ?? table.Cells.Number(price);
            keys.Take(table, of);
            int at = chart.TakeWhile(c => c.Id.Text != of).Count();
            if (of is not null && at == chart.Count)
                table.Fault(FaultRule.Unknown, name, "the chart", "class");
            if (table.RowSound && money is null)
                table.Fault(FaultRule.OneCellOf, table.Has(perKg) ? perKg : price, "price_per_kg, price");
            if (table.RowSound)
                found[at] = money;
        }

        if (faults.Count == 0 && Array.FindIndex(found, f => f is null) is var missing and >= 0)
            faults.Add(FaultRule.PriceMissing, path, null, name.Name, null, chart[missing].Id.Text);
        return faults.Count == 0 ? [.. found.Select(f => f!.Value)] : null;
    }
}
