using Cloveshed.Core.Answers;

namespace Cloveshed.Core.Planning;

/// <summary>Whole units shipped to order lines and to the market.</summary>
internal sealed record Filled(IReadOnlyList<(int Line, int Product, int Week, int Units)> Fills, IReadOnlyList<(int Market, int Units)> Sales);

/// <summary>
/// Turns the master's fractional fills into whole units: whole orders first, then what the plan fills, dearest first, then what
/// rounding left over goes to the best line that still wants a unit.
/// </summary>
internal static class OrderFilling
{
    /// <param name="newPool">A full pool each time it is called: filling starts again where a whole order turns out a unit short.</param>
    internal static (Filled Filled, SupplyPool Pool) Fill(Master master, Func<SupplyPool> newPool)
    {
        HashSet<int> leftOut = [];
        while (true)
        {
            SupplyPool pool = newPool();
            if (Fill(master, pool, leftOut) is { } filled) return (filled, pool);
        }
    }

    private static Filled? Fill(Master master, SupplyPool pool, HashSet<int> leftOut)
    {
        PlanningInstance instance = master.Instance;
        var fills = new Dictionary<(int Line, int Product, int Week), int>();
        int[] wanted = [.. instance.OrderLines.Select(l => l.Line.Units)];
        int[] sold = new int[instance.Market.Length];
        HashSet<int> inWhole = [.. instance.WholeOrders.SelectMany(o => o.Lines)];

        void Ship(int line, int product, int week, int units)
        {
            int taken = pool.Take(product, week, Math.Min(units, wanted[line]));
            if (taken == 0) return;
            wanted[line] -= taken;
            fills[(line, product, week)] = fills.GetValueOrDefault((line, product, week)) + taken;
        }

        if (!WholeOrders(master, pool, wanted, fills, leftOut)) return null;
        double Gain(int line, int week) => instance.OrderLines[line].GainIn(week);
        var planned = new List<(int Line, int Product, int Week, double Units)>();
        for (int k = 0; k < master.ColumnCount; k++)
        {
            MasterColumn c = master.Columns[k];
            if (c.Kind == ColumnKind.Fill && master.Values[k] > 1e-9) planned.Add((c.A, c.B, c.D, master.Values[k] / instance.Products[c.B].Net));
        }
        foreach (var f in planned.OrderByDescending(f => Gain(f.Line, f.Week)).ThenBy(f => f.Line))
            Ship(f.Line, f.Product, f.Week, (int)Math.Floor(f.Units + 1e-5));
        for (int k = 0; k < master.ColumnCount; k++)
        {
            MasterColumn c = master.Columns[k];
            if (c.Kind == ColumnKind.Market && master.Values[k] > 1e-9)
                sold[c.A] += pool.Take(c.B, c.D, Math.Min(instance.Market[c.A].Units, (int)Math.Floor(master.Values[k] / instance.Products[c.B].Net + 1e-5)));
        }
        // What is left in the pool costs only its making.
        var more = new List<(double Margin, int Line, int Product, int Week)>();
        for (int i = 0; i < wanted.Length; i++)
            if (wanted[i] > 0 && !inWhole.Contains(i))
                foreach (int q in instance.OrderLines[i].Alternatives)
                    for (int t = instance.OrderLines[i].Earliest; t < instance.Weeks; t++)
                        if (Gain(i, t) - instance.Products[q].UnitCost > 1e-9) more.Add((Gain(i, t) - instance.Products[q].UnitCost, i, q, t));
        foreach ((_, int line, int product, int week) in more.OrderByDescending(m => m.Margin))
            if (wanted[line] > 0) Ship(line, product, week, wanted[line]);
        for (int m = 0; m < sold.Length; m++)
            if (instance.Market[m].Price - instance.Products[instance.Market[m].Product].UnitCost > 1e-9)
                sold[m] += pool.Take(instance.Market[m].Product, instance.Market[m].Week, instance.Market[m].Units - sold[m]);
        return new Filled([.. fills.Select(f => (f.Key.Line, f.Key.Product, f.Key.Week, f.Value)).OrderBy(f => f.Week).ThenBy(f => f.Line)],
            [.. sold.Select((units, m) => (m, units)).Where(x => x.units > 0)]);
    }

    private static bool WholeOrders(Master master, SupplyPool pool, int[] wanted, Dictionary<(int, int, int), int> fills, HashSet<int> leftOut)
    {
        PlanningInstance instance = master.Instance;
        // The parts of one order in one week may take different products: each line takes what the larger part says first.
        var parts = Enumerable.Range(0, master.ColumnCount).Where(k => master.Columns[k].Kind == ColumnKind.Whole && master.Values[k] > 1e-6)
            .Select(k => (Column: master.Columns[k], Share: master.Values[k])).GroupBy(p => (p.Column.A, p.Column.D));
        foreach (var group in parts.Where(g => g.Sum(p => p.Share) > 1 - 1e-5 && !leftOut.Contains(g.Key.A)))
        {
            InstanceWholeOrder order = instance.WholeOrders[group.Key.A];
            for (int i = 0; i < order.Lines.Length; i++)
            {
                int line = order.Lines[i];
                int left = wanted[line];
                foreach ((int q, double share) in group.GroupBy(p => p.Column.Products![i]).Select(g => (g.Key, Share: g.Sum(p => p.Share))).OrderByDescending(p => p.Share))
                {
                    int taken = pool.Take(q, group.Key.D, Math.Min(left, (int)Math.Round(instance.OrderLines[line].Line.Units * share)));
                    if (taken > 0) fills[(line, q, group.Key.D)] = fills.GetValueOrDefault((line, q, group.Key.D)) + taken;
                    left -= taken;
                }
                foreach (int q in instance.OrderLines[line].Alternatives)
                {
                    if (left == 0) break;
                    int taken = pool.Take(q, group.Key.D, left);
                    if (taken > 0) fills[(line, q, group.Key.D)] = fills.GetValueOrDefault((line, q, group.Key.D)) + taken;
                    left -= taken;
                }
                if (left > 0)
                {
                    leftOut.Add(group.Key.A);
                    return false;
                }
                wanted[line] = 0;
            }
        }
        return true;
    }
}
