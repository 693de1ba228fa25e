using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>Finished stock by product, in scaled mass: what spoils first goes out first; nothing goes out after its last week.</summary>
internal sealed class FinishedStock
{
    // A hair of tolerance, in units: what a file's digits may take from a whole unit.
    private const double Hair = 1e-5;

    private readonly PlanningInstance instance;
    private readonly List<(int First, int Last, double Mass)>[] shelves;
    private int week;

    public FinishedStock(PlanningInstance instance)
    {
        this.instance = instance;
        shelves = [.. instance.Products.Select(_ => new List<(int, int, double)>())];
        foreach (InstanceStock s in instance.Stock) shelves[s.Product].Add((s.First, s.Last, s.Mass));
        foreach (var shelf in shelves) shelf.Sort((a, b) => a.Last.CompareTo(b.Last));
    }

    /// <summary>Scaled mass that spoiled unsold.</summary>
    public double Spoiled { get; private set; }

    public void Begin(int at)
    {
        week = at;
        foreach (var shelf in shelves)
        {
            foreach ((_, int last, double mass) in shelf) if (last < at) Spoiled += mass;
            shelf.RemoveAll(s => s.Last < at);
        }
    }

    public void Add(int product, int made, double mass)
    {
        if (mass > 0) shelves[product].Add((made, Math.Min(instance.Weeks - 1, made + instance.Products[product].Shelf), mass));
    }

    /// <summary>Mass that can be shipped in a week, of what is there now.</summary>
    public double Usable(int product, int at)
    {
        double sum = 0;
        foreach ((int first, int last, double mass) in shelves[product]) if (first <= at && last >= at) sum += mass;
        return sum;
    }

    /// <summary>Whole units that can be shipped now.</summary>
    public int Units(int product) => (int)Math.Floor(Usable(product, week) / instance.Products[product].Net + Hair);

    /// <summary>Takes up to so many whole units; the number taken.</summary>
    public int TakeUnits(int product, int units)
    {
        int taken = Math.Min(units, Units(product));
        double left = taken * instance.Products[product].Net;
        List<(int First, int Last, double Mass)> shelf = shelves[product];
        for (int k = 0; k < shelf.Count && left > 0; k++)
        {
            if (shelf[k].First > week) continue;
            double some = Math.Min(left, shelf[k].Mass);
            shelf[k] = shelf[k] with { Mass = shelf[k].Mass - some };
            left -= some;
        }
        shelf.RemoveAll(s => s.Mass <= 0);
        return taken;
    }
}
