namespace Cloveshed.Core.Planning;

/// <summary>A way to have a product in a week: packed of one kind of supply in the week it is made, shipped in the same or a later one.</summary>
internal readonly record struct PackArc(int Product, int Supply, int Made, int Week);

/// <summary>
/// The ways to pack. There are many (products, weeks and weeks of shelf life), few are ever used, and each costs the solver time: a
/// master that column generation works on begins with what ships in the week it is made and is given others as they pay.
/// </summary>
internal static class PackArcs
{
    internal static IEnumerable<PackArc> All(PlanningInstance instance)
    {
        for (int q = 0; q < instance.Products.Length; q++)
            foreach (int o in Supplies(instance, q))
                for (int made = instance.AsOf; made < instance.Weeks; made++)
                    for (int t = made; t <= LastWeek(instance, q, made); t++) yield return new PackArc(q, o, made, t);
    }

    internal static IEnumerable<PackArc> First(PlanningInstance instance)
    {
        for (int q = 0; q < instance.Products.Length; q++)
            for (int t = instance.AsOf; t < instance.Weeks; t++) yield return new PackArc(q, Supplies(instance, q)[0], t, t);
    }

    /// <summary>Those that the prices say would pay: the product is dearer than what it is made of and the packing. Prices as the master gave them, not repaired.</summary>
    internal static IEnumerable<PackArc> Paying(PlanningInstance instance, Prices prices) =>
        All(instance).Where(arc => prices.Available[arc.Product, arc.Week] > Cost(instance, prices, arc) + 1e-7);

    /// <summary>The cheapest way to pack a product for a week.</summary>
    internal static PackArc Cheapest(PlanningInstance instance, Prices prices, int product, int week)
    {
        PackArc best = new(product, Supplies(instance, product)[0], week, week);
        int first = instance.KeepsOn(product) ? week : Math.Max(instance.AsOf, week - instance.Products[product].Shelf);
        foreach (int o in Supplies(instance, product))
            for (int made = first; made <= week; made++)
                if (new PackArc(product, o, made, week) is var arc && Cost(instance, prices, arc) < Cost(instance, prices, best)) best = arc;
        return best;
    }

    private static double Cost(PlanningInstance instance, Prices prices, PackArc arc) =>
        prices.Supply[instance.Products[arc.Product].Sort, arc.Supply, arc.Made] + instance.Products[arc.Product].UnitCost;

    private static int[] Supplies(PlanningInstance instance, int product) =>
        !instance.SortApart[instance.Products[product].Sort] ? [0] : instance.Products[product].Organic ? [1] : [0, 1];

    // What outlasts the season is carried on week by week: far fewer columns than one per pair of weeks.
    private static int LastWeek(PlanningInstance instance, int product, int made) =>
        instance.KeepsOn(product) ? made : Math.Min(instance.Weeks - 1, made + instance.Products[product].Shelf);
}
