namespace Cloveshed.Core.Planning;

/// <summary>The most that anybody gives: for a mass of a product shipped in a week, and for a mass of a sort packed in one.</summary>
internal sealed class MostGiven
{
    private readonly PlanningInstance _instance;
    private readonly double[,] _most;

    /// <param name="times">How often its gain a mass of an order line, by index, is taken to bring.</param>
    internal MostGiven(PlanningInstance instance, Func<int, double> times)
    {
        _instance = instance;
        _most = new double[instance.Products.Length, instance.Weeks];
        void Give(int product, int week, double gain) => _most[product, week] = Math.Max(_most[product, week], gain);
        foreach (InstanceMarket market in instance.Market) Give(market.Product, market.Week, market.Price);
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            InstanceOrderLine line = instance.OrderLines[i];
            for (int t = Math.Max(0, line.Earliest); t < instance.Weeks; t++)
                foreach (int q in line.Alternatives) Give(q, t, times(i) * line.GainIn(t));
        }
        for (int q = 0; q < instance.Products.Length; q++)
            for (int t = instance.Weeks - 2; t >= 0 && instance.KeepsOn(q); t--) Give(q, t, _most[q, t + 1]);
    }

    /// <summary>By an order, no longer short, or the market; a product that outlasts the season waits for its best week.</summary>
    internal double ForProduct(int product, int week) => _most[product, week];

    /// <summary>Within the shelf lives of the sort's products, packing paid.</summary>
    internal double ForSort(int sort, int kind, int made)
    {
        double best = 0;
        for (int q = 0; q < _instance.Products.Length; q++)
        {
            InstanceProduct p = _instance.Products[q];
            if (p.Sort != sort || (p.Organic && kind == 0 && _instance.OrganicApart)) continue;
            int last = _instance.KeepsOn(q) ? made : Math.Min(_instance.Weeks - 1, made + p.Shelf);
            for (int t = made; t <= last; t++) best = Math.Max(best, _most[q, t] - p.UnitCost);
        }
        return best;
    }
}
