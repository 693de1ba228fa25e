namespace Cloveshed.Core.Planning;

/// <summary>
/// The Lagrangian bound: what the season could return at most, from prices alone. Each block (a row of a lot, an order line, a
/// room's weeks, a line's hours) takes its best at the prices, and what is scarce is bought at them. Any prices give a valid bound,
/// so nothing here trusts the solver: prices below zero are raised, and what products cost is made consistent first.
/// </summary>
internal static class UpperBound
{
    /// <summary>Makes prices usable (standing too: its row is an equality, so any price of it is valid, and the table needs one that is not negative): none negative, no product dearer to have than to make, carry or take from stock.</summary>
    internal static void Repair(PlanningInstance instance, Prices prices)
    {
        int weeks = instance.Weeks;
        foreach (Array a in new Array[] { prices.Supply, prices.Available, prices.Hour, prices.People, prices.Stand, prices.Out, prices.Seed, prices.AsIs, prices.Shared, prices.Blocked, prices.Pin })
            AtLeastZero(a);
        // Cloves beyond a need, which only pins ask for, may be had without limit: they must not be worth more than they cost.
        for (int n = 0; instance.Pins.Count > 0 && n < instance.SeedNeeds.Length; n++) prices.Seed[n] = Math.Min(prices.Seed[n], instance.SeedNeeds[n].ShortCost);
        for (int q = 0; q < instance.Products.Length; q++)
        {
            InstanceProduct p = instance.Products[q];
            bool keepsOn = instance.KeepsOn(q);
            for (int t = instance.AsOf; t < weeks; t++)
            {
                // Without anything to make it from in time, a product is not to be had: infinitely dear, so that no fill counts on it.
                double cheapest = double.PositiveInfinity;
                int first = Math.Max(instance.AsOf, keepsOn ? t : t - p.Shelf);
                for (int o = p.Organic && instance.OrganicApart ? 1 : 0; o < instance.SupplyKinds; o++)
                    for (int made = first; made <= t; made++)
                        cheapest = Math.Min(cheapest, prices.Supply[p.Sort, o, made] + p.UnitCost);
                if (keepsOn && t > instance.AsOf) cheapest = Math.Min(cheapest, prices.Available[q, t - 1]);
                bool stocked = instance.Stock.Any(s => s.Product == q && s.First <= t && t <= s.Last);
                prices.Available[q, t] = stocked ? Math.Min(cheapest, prices.Available[q, t]) : Math.Min(cheapest, Math.Max(prices.Available[q, t], 0));
            }
        }
    }

    /// <summary>All of the bound that is not rows of lots. Prices must have been repaired.</summary>
    internal static double OfAllButPaths(PlanningInstance instance, Spot[] spots, Prices prices)
    {
        int weeks = instance.Weeks;
        double bound = instance.ValueOfNothing;
        foreach (InstanceStock s in instance.Stock)
        {
            double most = 0;
            for (int t = s.First; t <= s.Last; t++) most = Math.Max(most, prices.Available[s.Product, t]);
            bound += s.Mass * most;
        }
        HashSet<int> whole = [.. instance.WholeOrders.SelectMany(o => o.Lines)];
        for (int i = 0; i < instance.OrderLines.Length; i++)
            if (!whole.Contains(i)) bound += instance.OrderLines[i].Mass * Math.Max(0, BestFill(instance, prices, i).Margin);
        for (int o = 0; o < instance.WholeOrders.Length; o++) bound += Math.Max(0, BestWhole(instance, prices, o).Margin);
        foreach (InstanceMarket m in instance.Market) bound += m.Mass * Math.Max(0, m.Price - prices.Available[m.Product, m.Week]);
        for (int n = 0; n < instance.SeedNeeds.Length; n++) bound += instance.SeedNeeds[n].Mass * prices.Seed[n];
        for (int a = 0; a < instance.AsIs.Length; a++)
            for (int t = instance.AsOf; t < weeks; t++)
                if (!double.IsInfinity(instance.AsIs[a].Limit)) bound += instance.AsIs[a].Limit * prices.AsIs[a, t];
        for (int t = instance.AsOf; t < weeks; t++)
        {
            bool limited = !double.IsInfinity(instance.People[t]);
            if (limited) bound += instance.People[t] * prices.People[t];
            for (int i = 0; i < instance.Lines.Length; i++)
            {
                bound += OfHours(instance, prices, i, t);
            }
        }
        for (int p = 0; p < instance.Pins.Count; p++)
            bound += instance.Pins[p].Mass * (Math.Max(0, prices.Pin[p] - RunWishes.MissedPin) - prices.Pin[p]);
        for (int s = 0; s < spots.Length; s++) bound += OfSpot(instance, spots, prices, s);
        return bound;
    }

    /// <summary>What the hours of a line in a week add to the bound.</summary>
    internal static double OfHours(PlanningInstance instance, Prices prices, int line, int week)
    {
        InstanceLine l = instance.Lines[line];
        double people = double.IsInfinity(instance.People[week]) ? 0 : l.Heads * prices.People[week];
        return l.Hours[week] * Math.Max(0, prices.Hour[line, week] - l.Cost - people) + l.Overtime[week] * Math.Max(0, prices.Hour[line, week] - l.OvertimeCost - people);
    }

    private static double OfSpot(PlanningInstance instance, Spot[] spots, Prices prices, int s)
    {
        InstancePlace place = instance.Places[spots[s].Place];
        int cold = spots[s].Kind == SpotKind.FreeSealed ? Array.FindIndex(spots, x => x.Kind == SpotKind.FreeCold && x.Place == spots[s].Place) : s;
        double bound = 0;
        for (int t = instance.AsOf; t < instance.Weeks; t++)
        {
            double taken = place.StandCost;
            if (cold >= 0 && spots[s].Kind != SpotKind.Plain) taken += prices.Shared[cold, t];
            if (spots[s].Kind == SpotKind.FreeCold)
            {
                taken += prices.Blocked[s, t];
                bound += place.Capacity * (prices.Shared[s, t] + prices.Blocked[s, t]);
            }
            bound += place.Capacity * Math.Max(0, prices.Stand[s, t] - taken);
        }
        if (spots[s].Kind != SpotKind.FreeSealed) return bound;
        double bestSchedule = 0;
        foreach (int o in Spots.OpeningWeeks(instance, spots[s].Place).Append(instance.Weeks))
        {
            double most = 0, blocked = 0;
            int last = o == instance.Weeks ? o : Spots.LastWeekOut(instance, spots[s].Place, o);
            for (int t = o; t <= last; t++) most = Math.Max(most, prices.Out[s, t]);
            for (int t = o; cold >= 0 && t < instance.Weeks; t++) blocked += prices.Blocked[cold, t];
            bestSchedule = Math.Max(bestSchedule, place.Capacity * (most - blocked));
        }
        return bound + bestSchedule;
    }

    /// <summary>The best product and week to fill an order line at the prices, and its margin per mass.</summary>
    internal static (double Margin, int Product, int Week) BestFill(PlanningInstance instance, Prices prices, int orderLine) => BestFill(prices, instance.OrderLines[orderLine]);

    internal static (double Margin, int Product, int Week) BestFill(Prices prices, InstanceOrderLine l)
    {
        (double Margin, int Product, int Week) best = (double.NegativeInfinity, -1, -1);
        for (int t = l.Earliest; t < prices.Available.GetLength(1); t++)
        {
            double gain = l.GainIn(t);
            foreach (int q in l.Alternatives)
                if (gain - prices.Available[q, t] > best.Margin) best = (gain - prices.Available[q, t], q, t);
        }
        return best;
    }

    /// <summary>The best week and products of a whole order, and what it then adds.</summary>
    internal static (double Margin, int Week, int[] Products) BestWhole(PlanningInstance instance, Prices prices, int order)
    {
        InstanceWholeOrder whole = instance.WholeOrders[order];
        (double Margin, int Week, int[] Products) best = (double.NegativeInfinity, -1, []);
        for (int t = whole.Earliest; t < instance.Weeks; t++)
        {
            double margin = 0;
            int[] products = new int[whole.Lines.Length];
            for (int k = 0; k < whole.Lines.Length; k++)
            {
                InstanceOrderLine l = instance.OrderLines[whole.Lines[k]];
                int cheapest = l.Product;
                foreach (int q in l.Alternatives)
                    if (prices.Available[q, t] < prices.Available[cheapest, t]) cheapest = q;
                products[k] = cheapest;
                margin += l.Mass * (l.GainIn(t) - prices.Available[cheapest, t]);
            }
            if (margin > best.Margin) best = (margin, t, products);
        }
        return best;
    }

    private static void AtLeastZero(Array array)
    {
        Span<double> values = System.Runtime.InteropServices.MemoryMarshal.CreateSpan(
            ref System.Runtime.CompilerServices.Unsafe.As<byte, double>(ref System.Runtime.InteropServices.MemoryMarshal.GetArrayDataReference(array)), array.Length);
        foreach (ref double v in values) v = Math.Max(0, v);
    }
}
