using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>Ships what is due of a week's stock: orders by what they gain, then the market, then what the plan leaves short.</summary>
internal sealed class Shipping(ReplayShed shed, Scenario scenario, Demand demand, Till till)
{
    private readonly PlanningInstance instance = shed.Instance;
    private readonly int[] sold = new int[shed.Instance.Market.Length];

    /// <summary>[order line] units shipped by the due week.</summary>
    public int[] OnTime { get; } = new int[shed.Instance.OrderLines.Length];
    public List<(int Line, int Product, int Week, int Units)> Fills { get; } = [];
    public List<(int Market, int Units)> Sales { get; } = [];

    public void Ship(int week, FinishedStock stock)
    {
        foreach (int o in demand.DueWhole(week).OrderByDescending(o => instance.WholeOrders[o].Lines.Sum(l => instance.OrderLines[l].GainIn(week) * instance.OrderLines[l].Mass)).ToArray()) ShipWhole(o, week, stock);
        (int Slot, int Units, double Gain)[] due = [.. demand.Due(week).OrderByDescending(d => d.Gain)];
        foreach ((int slot, int units, _) in due) ShipSlot(slot, shed.Policy.Slots[slot].Product, units, week, stock);
        // Others of what may fill a line, once those that were planned have theirs.
        foreach ((int slot, int units, double gain) in due)
        {
            int left = units;
            PolicySlot s = shed.Policy.Slots[slot];
            if (demand.Scaled(s, s.By[week]) - demand.OfSlot[slot] <= 0) continue;
            left = Math.Min(left, demand.Scaled(s, s.By[week]) - demand.OfSlot[slot]);
            foreach (int q in instance.OrderLines[s.Line].Alternatives)
                if (left > 0 && q != s.Product && gain > shed.Policy.Worth[q][week])
                    left -= ShipSlot(slot, q, Math.Min(left, Spare(q, week, stock)), week, stock);
        }
        for (int m = 0; m < instance.Market.Length; m++)
            if (instance.Market[m].Week == week) Sell(m, Math.Min(shed.Policy.Sales[m], scenario.MarketUnits[m]), week, stock);
        Surplus(week, stock);
    }

    // Whole units beyond what the plan means to have in stock.
    private int Spare(int product, int week, FinishedStock stock) =>
        (int)Math.Floor((stock.Usable(product, week) - shed.Policy.StockAfter[product][week]) / instance.Products[product].Net + 1e-5);

    private void Surplus(int week, FinishedStock stock)
    {
        foreach (int line in shed.OpenLines.Where(l => demand.Open(l, week) > 0).OrderByDescending(l => instance.OrderLines[l].GainIn(week)))
            foreach (int q in instance.OrderLines[line].Alternatives)
            {
                int units = Math.Min(demand.Open(line, week), Spare(q, week, stock));
                if (units > 0 && instance.OrderLines[line].GainIn(week) > instance.Products[q].UnitCost) Ship(line, q, stock.TakeUnits(q, units), week);
            }
        for (int m = 0; m < instance.Market.Length; m++)
            if (instance.Market[m].Week == week && instance.Market[m].Price > instance.Products[instance.Market[m].Product].UnitCost)
                Sell(m, Math.Min(scenario.MarketUnits[m] - sold[m], Spare(instance.Market[m].Product, week, stock)), week, stock);
    }

    private void ShipWhole(int order, int week, FinishedStock stock)
    {
        InstanceWholeOrder o = instance.WholeOrders[order];
        int[] left = [.. instance.Products.Select((_, q) => stock.Units(q))];
        var takes = new List<(int Line, int Product, int Units)>();
        foreach (int line in o.Lines)
        {
            int wanted = scenario.OrderUnits[line];
            // As planned first, then what else may fill it.
            IEnumerable<(int Product, int Units)> ways = shed.Policy.Slots.Where(s => s.Line == line).Select(s => (s.Product, demand.Scaled(s, s.Planned)))
                .Concat(instance.OrderLines[line].Alternatives.Select(q => (q, wanted)));
            foreach ((int q, int most) in ways)
            {
                int some = Math.Min(Math.Min(most, wanted), left[q]);
                if (some <= 0) continue;
                takes.Add((line, q, some));
                left[q] -= some;
                wanted -= some;
            }
            if (wanted > 0) return;
        }
        demand.WholeShipped[order] = true;
        foreach ((int line, int q, int units) in takes) Ship(line, q, stock.TakeUnits(q, units), week);
    }

    private int ShipSlot(int slot, int product, int units, int week, FinishedStock stock)
    {
        // Slots of one line, each scaled to what is really ordered and rounded, may be a unit more than the line together.
        int line = shed.Policy.Slots[slot].Line;
        units = Math.Min(units, scenario.OrderUnits[line] - demand.Shipped[line]);
        int taken = units > 0 ? stock.TakeUnits(product, units) : 0;
        demand.OfSlot[slot] += taken;
        Ship(line, product, taken, week);
        return taken;
    }

    private void Ship(int line, int product, int units, int week)
    {
        if (units <= 0) return;
        InstanceOrderLine l = instance.OrderLines[line];
        double mass = units * instance.Products[l.Product].Net;
        demand.Shipped[line] += units;
        if (week <= l.DueWeek) OnTime[line] += units;
        Fills.Add((line, product, week, units));
        till.Add(MoneyKind.Orders, week, mass * l.Price);
        till.Add(MoneyKind.Late, week, mass * l.Late * Math.Max(0, week - l.DueWeek));
    }

    private void Sell(int market, int units, int week, FinishedStock stock)
    {
        if (units <= 0) return;
        InstanceMarket m = instance.Market[market];
        int taken = stock.TakeUnits(m.Product, units);
        if (taken == 0) return;
        sold[market] += taken;
        Sales.Add((market, taken));
        till.Add(MoneyKind.Market, week, taken * instance.Products[m.Product].Net * m.Price);
    }

    /// <summary>Short costs, at the season's end.</summary>
    public void Close()
    {
        for (int i = 0; i < demand.Shipped.Length; i++)
            till.Add(MoneyKind.Short, instance.Weeks - 1, (scenario.OrderUnits[i] - demand.Shipped[i]) * instance.Products[instance.OrderLines[i].Product].Net * instance.OrderLines[i].Short);
    }
}
