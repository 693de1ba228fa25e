using Cloveshed.Core.Answers;

namespace Cloveshed.Core.Planning;

/// <summary>What the plan leaves unfilled, and why.</summary>
internal static class Shorts
{
    internal static List<ShortRow> Of(PlanningInstance instance, IReadOnlyList<FillRow> fills, Prices prices)
    {
        var filled = fills.GroupBy(f => (f.Order, f.Line)).ToDictionary(g => g.Key, g => g.Sum(f => f.Units));
        HashSet<int> whole = [.. instance.WholeOrders.SelectMany(o => o.Lines)];
        var rows = new List<ShortRow>();
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            InstanceOrderLine l = instance.OrderLines[i];
            int left = l.Line.Units - filled.GetValueOrDefault((l.Line.Order, l.Line.Number));
            if (left > 0) rows.Add(new ShortRow(l.Line.Order, l.Line.Number, left, Why(instance, prices, l, i, whole)));
        }
        return rows;
    }

    private static string Why(PlanningInstance instance, Prices prices, InstanceOrderLine l, int index, HashSet<int> whole)
    {
        if (l.Earliest >= instance.Weeks) return "it may not ship before the season ends";
        (double margin, int product, int week) = UpperBound.BestFill(instance, prices, index);
        if (product < 0 || double.IsNegativeInfinity(margin)) return "nothing in the season can make it";
        double costs = prices.Available[product, week] * instance.Products[product].Net * instance.MoneyScale, pays = (l.Price + l.Short) * instance.Products[l.Product].Net * instance.MoneyScale;
        string price = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"a unit is worth {costs:0.00} elsewhere and this line gives {pays:0.00}");
        return whole.Contains(index) ? $"the order ships whole or not at all; {price}" : price;
    }
}
