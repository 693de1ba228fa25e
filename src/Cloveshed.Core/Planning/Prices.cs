namespace Cloveshed.Core.Planning;

/// <summary>
/// What each scarce thing is worth, as the master's duals say: per scaled unit. None is negative once repaired; Stand is a
/// difference of free duals. From these alone a path can be priced and a bound computed.
/// </summary>
public sealed class Prices
{
    public Prices(PlanningInstance instance, Spot[] spots)
    {
        int weeks = instance.Weeks;
        Supply = new double[instance.Sorts.Length, instance.SupplyKinds, weeks];
        Available = new double[instance.Products.Length, weeks];
        Hour = new double[instance.Lines.Length, weeks];
        People = new double[weeks];
        Stand = new double[spots.Length, weeks];
        Out = new double[spots.Length, weeks + 1];
        Seed = new double[instance.SeedNeeds.Length];
        AsIs = new double[instance.AsIs.Length, weeks];
        Shared = new double[spots.Length, weeks];
        Blocked = new double[spots.Length, weeks];
        Pin = new double[instance.Pins.Count];
    }

    /// <summary>[sort, supply kind, week]: mass of a size class or clove grade packed in that week.</summary>
    public double[,,] Supply { get; }

    /// <summary>[product, week]: mass of a product to ship in that week.</summary>
    public double[,] Available { get; }

    /// <summary>[line, week]: an hour of the line, its cost included.</summary>
    public double[,] Hour { get; }
    public double[] People { get; }

    /// <summary>[spot, week]: one bin standing at the week's end, its cost included.</summary>
    public double[,] Stand { get; }

    /// <summary>[spot, week]: one bin leaving a room with free weeks; week = Weeks: standing there at the end.</summary>
    public double[,] Out { get; }
    public double[] Seed { get; }
    public double[,] AsIs { get; }

    /// <summary>[free cold spot, week]: one bin of the room's space, shared by the two ways of using it.</summary>
    public double[,] Shared { get; }

    /// <summary>[free cold spot, week]: one bin of cold use that an opening at or before the week rules out.</summary>
    public double[,] Blocked { get; }

    /// <summary>[pin]: one more mass of a pinned run: what it costs to keep to it.</summary>
    public double[] Pin { get; }

    /// <summary>These prices moved toward others: weight 1 gives these, 0 the others.</summary>
    public Prices Toward(Prices other, double weight, PlanningInstance instance, Spot[] spots)
    {
        var mixed = new Prices(instance, spots);
        Mix(Supply, other.Supply, mixed.Supply, weight);
        Mix(Available, other.Available, mixed.Available, weight);
        Mix(Hour, other.Hour, mixed.Hour, weight);
        Mix(People, other.People, mixed.People, weight);
        Mix(Stand, other.Stand, mixed.Stand, weight);
        Mix(Out, other.Out, mixed.Out, weight);
        Mix(Seed, other.Seed, mixed.Seed, weight);
        Mix(AsIs, other.AsIs, mixed.AsIs, weight);
        Mix(Shared, other.Shared, mixed.Shared, weight);
        Mix(Blocked, other.Blocked, mixed.Blocked, weight);
        Mix(Pin, other.Pin, mixed.Pin, weight);
        return mixed;
    }

    private static void Mix(Array a, Array b, Array into, double weight)
    {
        Span<double> x = Flat(a), y = Flat(b), z = Flat(into);
        for (int i = 0; i < z.Length; i++) z[i] = weight * x[i] + (1 - weight) * y[i];
    }

    private static Span<double> Flat(Array a) => System.Runtime.InteropServices.MemoryMarshal.CreateSpan(
        ref System.Runtime.CompilerServices.Unsafe.As<byte, double>(ref System.Runtime.InteropServices.MemoryMarshal.GetArrayDataReference(a)), a.Length);
}
