using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>Order lines and whole orders as the planner sees them.</summary>
internal sealed record OrderBuilding(InstanceOrderLine[] Lines, InstanceWholeOrder[] Whole)
{
    internal static OrderBuilding Build(
        Season season, InstanceProduct[] products, Dictionary<ProductId, int> index, double massScale, double moneyScale)
    {
        SeasonSettings s = season.Settings;
        double perMass = massScale / moneyScale;
        var orderIndex = new Dictionary<OrderId, int>();
        var lines = new List<InstanceOrderLine>();
        foreach (OrderLine o in season.Orders)
        {
            if (!orderIndex.TryGetValue(o.Order, out int order)) orderIndex[o.Order] = order = orderIndex.Count;
            int p = index[o.Product];
            double net = products[p].NetInUnit;
            lines.Add(new InstanceOrderLine(order, o, p, Alternatives(season, p, o.LargerOk), Math.Max(s.AsOfWeek, s.WeekOf(o.ShipFrom)),
                s.WeekOf(o.Due), o.Units * products[p].Net, (double)o.Price / net * perMass,
                o.Firm ? (double)o.ShortCost / net * perMass : 0, (double)o.LateCost / net * perMass));
        }
        InstanceWholeOrder[] whole = [.. lines.Select((l, i) => (l, i)).GroupBy(x => x.l.Order).Where(g => g.Any(x => x.l.Line.Whole))
            .Select(g => new InstanceWholeOrder(g.First().l.Line.Order, [.. g.Select(x => x.i)], g.Max(x => x.l.Earliest)))];
        return new OrderBuilding([.. lines], whole);
    }

    /// <summary>The ordered product, then its organic twin, then, where larger is accepted, the next larger class with the same form and net or its organic twin.</summary>
    internal static int[] Alternatives(Season season, int ordered, bool largerOk)
    {
        Product p = season.Products[ordered];
        var found = new List<int> { ordered };
        for (int q = 0; q < season.Products.Count; q++)
        {
            Product other = season.Products[q];
            if (q == ordered || other.Form != p.Form || other.Net != p.Net) continue;
            bool twin = other.From == p.From && other.Organic && !p.Organic;
            bool larger = largerOk && (other.Organic || !p.Organic) && Rank(season, other) == Rank(season, p) + 1;
            if (twin || larger) found.Add(q);
        }
        return [.. found];
    }

    private static int Rank(Season season, Product p) => p.Form == ProductForm.Bulb
        ? Index(season.Sizes, c => c.Id.Text == p.From)
        // Clove grades may be listed in any order; larger means the grade whose window starts next.
        : season.CloveGrades.OrderBy(g => g.MinMm).Select((g, i) => (g, i)).First(x => x.g.Id.Text == p.From).i;

    private static int Index<T>(IReadOnlyList<T> list, Func<T, bool> match)
    {
        for (int i = 0; i < list.Count; i++) if (match(list[i])) return i;
        return -1;
    }
}
