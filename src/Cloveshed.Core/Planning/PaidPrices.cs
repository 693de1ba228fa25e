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
        // The last carton of an order that ships whole brings all of it.
        double[] whole = [.. instance.OrderLines.Select(_ => 1.0)];
        foreach (InstanceWholeOrder order in instance.WholeOrders)
            foreach (int line in order.Lines)
                whole[line] = order.Lines.Sum(l => instance.OrderLines[l].Mass * (instance.OrderLines[l].Price + instance.OrderLines[l].Short))
                    / Math.Max(1e-12, instance.OrderLines[line].Mass * (instance.OrderLines[line].Price + instance.OrderLines[line].Short));
        var most = new MostGiven(instance, line => whole[line]);
        for (int q = 0; q < instance.Products.Length; q++)
            for (int t = 0; t < instance.Weeks; t++) paid.Available[q, t] = Math.Min(paid.Available[q, t], most.ForProduct(q, t));
        for (int k = 0; k < instance.Sorts.Length; k++)
            for (int o = 0; o < instance.SupplyKinds; o++)
                for (int made = 0; made < instance.Weeks; made++) paid.Supply[k, o, made] = Math.Min(paid.Supply[k, o, made], most.ForSort(k, o, made));
        return paid;
    }
}
