using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>Orders and market of a replay as they stand: what is shipped, and what a week wants by the plan and beyond it.</summary>
internal sealed class Demand
{
    private readonly ReplayShed shed;
    private readonly PlanningInstance instance;
    private readonly Scenario scenario;
    private readonly int[] slotUnits;
    private readonly bool[] ofWhole;

    public Demand(ReplayShed shed, Scenario scenario)
    {
        (this.shed, instance, this.scenario) = (shed, shed.Instance, scenario);
        Shipped = new int[instance.OrderLines.Length];
        OfSlot = new int[shed.Policy.Slots.Length];
        WholeShipped = new bool[instance.WholeOrders.Length];
        slotUnits = [.. shed.Policy.Slots.Select(s => Scaled(s, s.Planned))];
        ofWhole = [.. shed.Policy.Slots.Select(s => instance.WholeOrders.Any(w => w.Lines.Contains(s.Line)))];
    }

    /// <summary>[order line] units shipped.</summary>
    public int[] Shipped { get; }

    /// <summary>[slot] units shipped of it.</summary>
    public int[] OfSlot { get; }

    /// <summary>[whole order] whether it is shipped.</summary>
    public bool[] WholeShipped { get; }

    /// <summary>Units that the plan would have filled by a line's due week, of what is really ordered.</summary>
    public int PlannedOnTime(int line) => shed.Policy.Slots.Where(s => s.Line == line).Sum(s => Scaled(s, s.By[Math.Clamp(instance.OrderLines[line].DueWeek, 0, instance.Weeks - 1)]));

    /// <summary>Planned units of a slot, as many more or fewer as the line is really ordered.</summary>
    public int Scaled(PolicySlot slot, int units)
    {
        int written = instance.OrderLines[slot.Line].Line.Units, really = scenario.OrderUnits[slot.Line];
        return units == 0 || written == really ? units : (int)Math.Round((double)units * really / written, MidpointRounding.AwayFromZero);
    }

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

    /// <summary>Slots of which units are due by a week and not shipped, and what a mass of them gains.</summary>
    public IEnumerable<(int Slot, int Units, double Gain)> Due(int week)
    {
        for (int s = 0; s < shed.Policy.Slots.Length; s++)
        {
            PolicySlot slot = shed.Policy.Slots[s];
            if (slot.FirstWeek > week || ofWhole[s]) continue;
            int units = Math.Min(Scaled(slot, slot.By[week]), slotUnits[s]) - OfSlot[s];
            units = Math.Min(units, scenario.OrderUnits[slot.Line] - Shipped[slot.Line]);
            if (units <= 0) continue;
            double gain = instance.OrderLines[slot.Line].GainIn(week);
            // Too late to be worth a carton; what the plan itself ships this week is shipped.
            if (gain <= instance.Products[slot.Product].UnitCost && slot.By[week] == (week > 0 ? slot.By[week - 1] : 0)) continue;
            yield return (s, units, gain);
        }
    }

    /// <summary>Whole orders that are due by a week and not shipped.</summary>
    public IEnumerable<int> DueWhole(int week)
    {
        for (int o = 0; o < instance.WholeOrders.Length; o++)
        {
            int planned = shed.Policy.WholeWeek[o];
            if (planned < 0 || planned > week || WholeShipped[o] || week < instance.WholeOrders[o].Earliest) continue;
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

    /// <summary>Units of a line that the plan never meant to fill.</summary>
    public int Open(int line, int week)
    {
        InstanceOrderLine l = instance.OrderLines[line];
        if (week < l.Earliest) return 0;
        int really = scenario.OrderUnits[line], planned = shed.Planned[line] >= l.Line.Units ? really : (int)Math.Round((double)shed.Planned[line] * really / Math.Max(1, l.Line.Units));
        return Math.Min(really - planned, really - Shipped[line]);
    }
}
