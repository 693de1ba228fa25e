namespace Cloveshed.Core.Planning;

/// <summary>
/// The plan's prices with products, and what they are packed from, priced at no more than anybody gives for them. A row that nothing asks for (a product in a week in which no order and no
/// market takes it) leaves its dual free: the solver may put it anywhere that no path wants, and a reason must not call that a worth.
/// </summary>
internal static class PaidPrices
{
    internal static Prices Of(PlanningInstance instance, Spot[] spots, Prices prices)
    {
        var paid = new Prices(instance, spots);
        foreach ((Array from, Array into) in new (Array, Array)[]
                 {
                     (prices.Supply, paid.Supply), (prices.Available, paid.Available), (prices.Hour, paid.Hour), (prices.People, paid.People), (prices.Stand, paid.Stand), (prices.Out, paid.Out),
                     (prices.Seed, paid.Seed), (prices.AsIs, paid.AsIs), (prices.Shared, paid.Shared), (prices.Blocked, paid.Blocked), (prices.Pin, paid.Pin),
                 })
            Array.Copy(from, into, from.Length);
        double[,] most = Most(instance);
        for (int q = 0; q < instance.Products.Length; q++)
            for (int t = 0; t < instance.Weeks; t++) paid.Available[q, t] = Math.Min(paid.Available[q, t], most[q, t]);
        for (int k = 0; k < instance.Sorts.Length; k++)
            for (int o = 0; o < instance.SupplyKinds; o++)
                for (int made = 0; made < instance.Weeks; made++) paid.Supply[k, o, made] = Math.Min(paid.Supply[k, o, made], Packed(instance, most, k, o, made));
        return paid;
    }

    /// <summary>[product, week]: the most that an order or the market gives for a mass of it shipped in the week, no longer short; a product that outlasts the season waits for its best week.</summary>
    private static double[,] Most(PlanningInstance instance)
    {
        double[,] most = new double[instance.Products.Length, instance.Weeks];
        void Give(int product, int week, double gain) => most[product, week] = Math.Max(most[product, week], gain);
        foreach (InstanceMarket market in instance.Market) Give(market.Product, market.Week, market.Price);
        // The last carton of an order that ships whole brings all of it.
        double[] whole = [.. instance.OrderLines.Select(_ => 1.0)];
        foreach (InstanceWholeOrder order in instance.WholeOrders)
            foreach (int line in order.Lines)
                whole[line] = order.Lines.Sum(l => instance.OrderLines[l].Mass * (instance.OrderLines[l].Price + instance.OrderLines[l].Short))
                    / Math.Max(1e-12, instance.OrderLines[line].Mass * (instance.OrderLines[line].Price + instance.OrderLines[line].Short));
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            InstanceOrderLine line = instance.OrderLines[i];
            for (int t = Math.Max(0, line.Earliest); t < instance.Weeks; t++)
                foreach (int q in line.Alternatives) Give(q, t, whole[i] * line.GainIn(t));
        }
        for (int q = 0; q < instance.Products.Length; q++)
            for (int t = instance.Weeks - 2; t >= 0 && instance.KeepsOn(q); t--) Give(q, t, most[q, t + 1]);
        return most;
    }

    /// <summary>The most that a mass of a sort packed in a week can come to within its products' shelf lives, packing paid.</summary>
    private static double Packed(PlanningInstance instance, double[,] most, int sort, int kind, int made)
    {
        double best = 0;
        for (int q = 0; q < instance.Products.Length; q++)
        {
            InstanceProduct p = instance.Products[q];
            if (p.Sort != sort || (p.Organic && kind == 0 && instance.OrganicApart)) continue;
            int last = instance.KeepsOn(q) ? made : Math.Min(instance.Weeks - 1, made + p.Shelf);
            for (int t = made; t <= last; t++) best = Math.Max(best, most[q, t] - p.UnitCost);
        }
        return best;
    }
}
