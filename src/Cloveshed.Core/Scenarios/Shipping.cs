using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>Orders and market of a replay: what is due, what is shipped of it, and what is missing.</summary>
internal sealed class Shipping
{
    private readonly ReplayShed shed;
    private readonly PlanningInstance instance;
    private readonly Scenario scenario;
    private readonly Till till;
    private readonly int[] slotShipped, slotUnits;
    private readonly int[] sold;
    private readonly bool[] wholeShipped;

    public Shipping(ReplayShed shed, Scenario scenario, Till till)
    {
        (this.shed, instance, this.scenario, this.till) = (shed, shed.Instance, scenario, till);
        Shipped = new int[instance.OrderLines.Length];
        OnTime = new int[instance.OrderLines.Length];
        slotShipped = new int[shed.Policy.Slots.Length];
        sold = new int[instance.Market.Length];
        wholeShipped = new bool[instance.WholeOrders.Length];
        slotUnits = [.. shed.Policy.Slots.Select(s => Scaled(s, s.Planned))];
    }

    /// <summary>[order line] units shipped, and shipped by the due week.</summary>
    public int[] Shipped { get; }
    public int[] OnTime { get; }
    public List<(int Line, int Product, int Week, int Units)> Fills { get; } = [];
    public List<(int Market, int Units)> Sales { get; } = [];

    /// <summary>Units that the plan would have filled by a line's due week, of what is really ordered.</summary>
    public int PlannedOnTime(int line) => shed.Policy.Slots.Where(s => s.Line == line).Sum(s => Scaled(s, s.By[Math.Clamp(instance.OrderLines[line].DueWeek, 0, instance.Weeks - 1)]));

    // Planned units of a slot, as many more or fewer as the line is really ordered.
    private int Scaled(PolicySlot slot, int units)
    {
        int written = instance.OrderLines[slot.Line].Line.Units, really = scenario.OrderUnits[slot.Line];
        return units == 0 || written == really ? units : (int)Math.Round((double)units * really / written, MidpointRounding.AwayFromZero);
    }

    private bool IsWhole(int line) => instance.WholeOrders.Any(w => w.Lines.Contains(line));

    /// <summary>What a week should make, from what is due and in stock at its start.</summary>
    public WeekNeeds Needs(int week, FinishedStock stock)
    {
        var needs = new WeekNeeds(instance);
        double[] least = [.. instance.Products.Select(_ => double.PositiveInfinity)];
        void Want(int product, int units, double gain)
        {
            if (units <= 0) return;
            needs.Wanted[product] += units * instance.Products[product].Net;
            least[product] = Math.Min(least[product], gain);
        }
        foreach ((int slot, int units, double gain) in Due(week)) Want(shed.Policy.Slots[slot].Product, units, gain);
        foreach (int o in DueWhole(week))
            foreach (int line in instance.WholeOrders[o].Lines)
            {
                // A line may be planned of several products; what is ordered beyond those is of the first.
                int left = scenario.OrderUnits[line];
                foreach (PolicySlot slot in shed.Policy.Slots.Where(slot => slot.Line == line))
                {
                    int units = Math.Min(left, Scaled(slot, slot.Planned));
                    Want(slot.Product, units, instance.OrderLines[line].GainIn(week));
                    left -= units;
                }
                Want(ProductOf(line), left, instance.OrderLines[line].GainIn(week));
            }
        for (int m = 0; m < instance.Market.Length; m++)
            if (instance.Market[m].Week == week) Want(instance.Market[m].Product, Math.Min(shed.Policy.Sales[m], scenario.MarketUnits[m]), instance.Market[m].Price);
        for (int q = 0; q < least.Length; q++)
        {
            needs.Wanted[q] = Math.Max(0, needs.Wanted[q] + shed.Policy.StockAfter[q][week] - stock.Usable(q, week));
            needs.Margin[q] = (double.IsInfinity(least[q]) ? shed.Policy.Worth[q][week] : least[q]) - instance.Products[q].UnitCost;
        }
        return needs;
    }

    private int ProductOf(int line)
    {
        foreach (PolicySlot s in shed.Policy.Slots) if (s.Line == line) return s.Product;
        return instance.OrderLines[line].Product;
    }

    private IEnumerable<(int Slot, int Units, double Gain)> Due(int week)
    {
        for (int s = 0; s < shed.Policy.Slots.Length; s++)
        {
            PolicySlot slot = shed.Policy.Slots[s];
            if (slot.FirstWeek > week || IsWholeSlot[s]) continue;
            int units = Math.Min(Scaled(slot, slot.By[week]), slotUnits[s]) - slotShipped[s];
            units = Math.Min(units, scenario.OrderUnits[slot.Line] - Shipped[slot.Line]);
            if (units <= 0) continue;
            double gain = instance.OrderLines[slot.Line].GainIn(week);
            // Too late to be worth a carton; what the plan itself ships this week is shipped.
            if (gain <= instance.Products[slot.Product].UnitCost && slot.By[week] == (week > 0 ? slot.By[week - 1] : 0)) continue;
            yield return (s, units, gain);
        }
    }

    private bool[] IsWholeSlot => isWholeSlot ??= [.. shed.Policy.Slots.Select(s => IsWhole(s.Line))];
    private bool[]? isWholeSlot;

    private IEnumerable<int> DueWhole(int week)
    {
        for (int o = 0; o < instance.WholeOrders.Length; o++)
        {
            int planned = shed.Policy.WholeWeek[o];
            if (planned < 0 || planned > week || wholeShipped[o] || week < instance.WholeOrders[o].Earliest) continue;
            if (planned < week && instance.WholeOrders[o].Lines.Sum(l => scenario.OrderUnits[l] * instance.Products[instance.OrderLines[l].Product].Net * (instance.OrderLines[l].GainIn(week) - instance.Products[instance.OrderLines[l].Product].UnitCost)) <= 0) continue;
            yield return o;
        }
    }

    /// <summary>Mass of bulb products beyond the plan that lines left short and the market would take now, by product.</summary>
    public double[] Beyond(int week)
    {
        double[] mass = new double[instance.Products.Length];
        foreach (int line in shed.OpenLines)
            if (Open(line, week) is > 0 and var units && instance.OrderLines[line].GainIn(week) > instance.Products[instance.OrderLines[line].Product].UnitCost)
                mass[instance.OrderLines[line].Product] += units * instance.Products[instance.OrderLines[line].Product].Net;
        for (int m = 0; m < instance.Market.Length; m++)
            if (instance.Market[m].Week == week && instance.Market[m].Price > instance.Products[instance.Market[m].Product].UnitCost)
                mass[instance.Market[m].Product] += Math.Max(0, scenario.MarketUnits[m] - shed.Policy.Sales[m]) * instance.Products[instance.Market[m].Product].Net;
        return mass;
    }

    // Units of a line that the plan never meant to fill.
    private int Open(int line, int week)
    {
        InstanceOrderLine l = instance.OrderLines[line];
        if (week < l.Earliest) return 0;
        int really = scenario.OrderUnits[line], planned = shed.Planned[line] >= l.Line.Units ? really : (int)Math.Round((double)shed.Planned[line] * really / Math.Max(1, l.Line.Units));
        return Math.Min(really - planned, really - Shipped[line]);
    }

    public void Ship(int week, FinishedStock stock)
    {
        foreach (int o in DueWhole(week).OrderByDescending(o => instance.WholeOrders[o].Lines.Sum(l => instance.OrderLines[l].GainIn(week) * instance.OrderLines[l].Mass)).ToArray()) ShipWhole(o, week, stock);
        (int Slot, int Units, double Gain)[] due = [.. Due(week).OrderByDescending(d => d.Gain)];
        foreach ((int slot, int units, _) in due) ShipSlot(slot, shed.Policy.Slots[slot].Product, units, week, stock);
        // Others of what may fill a line, once those that were planned have theirs.
        foreach ((int slot, int units, double gain) in due)
        {
            int left = units;
            PolicySlot s = shed.Policy.Slots[slot];
            if (Scaled(s, s.By[week]) - slotShipped[slot] <= 0) continue;
            left = Math.Min(left, Math.Min(Scaled(s, s.By[week]) - slotShipped[slot], scenario.OrderUnits[s.Line] - Shipped[s.Line]));
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
        foreach (int line in shed.OpenLines.Where(l => Open(l, week) > 0).OrderByDescending(l => instance.OrderLines[l].GainIn(week)))
            foreach (int q in instance.OrderLines[line].Alternatives)
            {
                int units = Math.Min(Open(line, week), Spare(q, week, stock));
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
            IEnumerable<(int Product, int Units)> ways = shed.Policy.Slots.Where(s => s.Line == line).Select(s => (s.Product, Scaled(s, s.Planned)))
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
        wholeShipped[order] = true;
        foreach ((int line, int q, int units) in takes) Ship(line, q, stock.TakeUnits(q, units), week);
    }

    private int ShipSlot(int slot, int product, int units, int week, FinishedStock stock)
    {
        int taken = units > 0 ? stock.TakeUnits(product, units) : 0;
        slotShipped[slot] += taken;
        Ship(shed.Policy.Slots[slot].Line, product, taken, week);
        return taken;
    }

    private void Ship(int line, int product, int units, int week)
    {
        if (units <= 0) return;
        InstanceOrderLine l = instance.OrderLines[line];
        double mass = units * instance.Products[l.Product].Net;
        Shipped[line] += units;
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
        for (int i = 0; i < Shipped.Length; i++)
            till.Add(MoneyKind.Short, instance.Weeks - 1, (scenario.OrderUnits[i] - Shipped[i]) * instance.Products[instance.OrderLines[i].Product].Net * instance.OrderLines[i].Short);
    }
}
