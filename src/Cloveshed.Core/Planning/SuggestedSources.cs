namespace Cloveshed.Core.Planning;

/// <summary>
/// Where the solved master takes what it ships from, by product and week of shipping: packed of a kind of supply in a week, or out of stock. What is carried on from week to
/// week leaves in the order in which it was packed.
/// </summary>
internal static class SuggestedSources
{
    private const double Nothing = 1e-9;

    internal static Dictionary<(int Product, int Week), List<SuggestedSource>> Of(Master master)
    {
        PlanningInstance instance = master.Instance;
        ILookup<(int, int), SuggestedSource> packed = Packed(master).ToLookup(one => one.For, one => one.From);
        double[,] shipped = Shipped(master);
        var suggested = new Dictionary<(int, int), List<SuggestedSource>>();
        for (int q = 0; q < instance.Products.Length; q++)
        {
            var there = new Queue<SuggestedSource>();
            for (int t = instance.AsOf; t < instance.Weeks; t++)
            {
                if (!instance.KeepsOn(q)) there.Clear();
                foreach (SuggestedSource from in packed[(q, t)]) there.Enqueue(from);
                var leaves = new List<SuggestedSource>();
                for (double left = shipped[q, t]; left > Nothing && there.TryPeek(out SuggestedSource? first);)
                {
                    double taken = Math.Min(left, first.Mass);
                    leaves.Add(first with { Mass = taken });
                    left -= taken;
                    if ((first.Mass -= taken) <= Nothing) there.Dequeue();
                }
                if (leaves.Count > 0) suggested[(q, t)] = leaves;
            }
        }
        return suggested;
    }

    private static IEnumerable<((int Product, int Week) For, SuggestedSource From)> Packed(Master master)
    {
        for (int k = 0; k < master.ColumnCount; k++)
        {
            MasterColumn c = master.Columns[k];
            if (master.Values[k] <= Nothing) continue;
            if (c.Kind == ColumnKind.Pack) yield return ((c.A, c.D), new SuggestedSource(c.B, c.C, -1, master.Values[k]));
            else if (c.Kind == ColumnKind.FromStock) yield return ((c.B, c.D), new SuggestedSource(0, 0, c.A, master.Values[k]));
        }
    }

    /// <summary>[product, week] scaled mass.</summary>
    private static double[,] Shipped(Master master)
    {
        PlanningInstance instance = master.Instance;
        double[,] shipped = new double[instance.Products.Length, instance.Weeks];
        for (int k = 0; k < master.ColumnCount; k++)
        {
            MasterColumn c = master.Columns[k];
            if (c.Kind is ColumnKind.Fill or ColumnKind.Market) shipped[c.B, c.D] += master.Values[k];
            if (c.Kind == ColumnKind.Whole)
                foreach ((int line, int i) in instance.WholeOrders[c.A].Lines.Select((line, i) => (line, i))) shipped[c.Products![i], c.D] += master.Values[k] * instance.OrderLines[line].Mass;
        }
        return shipped;
    }
}

/// <summary>A mass out of a kind of supply packed in a week, or out of a row of stock (else -1). Scaled.</summary>
internal sealed record SuggestedSource(int Supply, int Made, int Stock, double Mass)
{
    /// <summary>What is left of it.</summary>
    internal double Mass { get; set; } = Mass;
}
