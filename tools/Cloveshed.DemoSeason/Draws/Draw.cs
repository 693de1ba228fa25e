namespace Cloveshed.DemoSeason.Draws;

/// <summary>
/// A stream of draws that gives the same numbers on every machine and with every version of .NET: SplitMix64 for the bits
/// (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014), our own ln and exp for the shapes.
/// Each matter draws from its own named stream, so that a change in one file of the season leaves the others as they were.
/// </summary>
public sealed class Draw
{
    private ulong state;

    public Draw(ulong seed) => state = seed;

    /// <summary>The stream of one matter, such as "orders"; the name is folded in by FNV-1a over its characters.</summary>
    public static Draw For(ulong seed, string matter)
    {
        ArgumentNullException.ThrowIfNull(matter);
        ulong hash = 14695981039346656037UL;
        foreach (char c in matter)
        {
            hash = unchecked((hash ^ c) * 1099511628211UL);
        }

        return new Draw(unchecked(seed ^ hash));
    }

    public ulong Bits()
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>Uniform in [0, 1), from the upper 53 bits.</summary>
    public double Share() => (Bits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Uniform in [low, high).</summary>
    public double Between(double low, double high) => low + ((high - low) * Share());

    /// <summary>A whole number from low to high, both included. The bias of the product method is below 1e-9 here.</summary>
    public int Whole(int low, int high) => low + (int)(Share() * (high - low + 1));

    public bool Chance(double p) => Share() < p;

    /// <summary>Normal by the polar method of Marsaglia; the second value of each pair is thrown away, for simplicity.</summary>
    public double Normal(double mean, double sd)
    {
        while (true)
        {
            double u = (2 * Share()) - 1;
            double v = (2 * Share()) - 1;
            double s = (u * u) + (v * v);
            if (s is > 0 and < 1)
            {
                return mean + (sd * u * Math.Sqrt(-2 * Steady.Ln(s) / s));
            }
        }
    }

    /// <summary>A factor with median 1 whose logarithm has the given standard deviation.</summary>
    public double Factor(double sd) => Steady.Exp(Normal(0, sd));

    public T Pick<T>(IReadOnlyList<T> of)
    {
        ArgumentNullException.ThrowIfNull(of);
        return of[Whole(0, of.Count - 1)];
    }

    /// <summary>An index drawn in proportion to the weights.</summary>
    public int Weighted(IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        double left = Share() * weights.Sum();
        for (int i = 0; i < weights.Count - 1; i++)
        {
            left -= weights[i];
            if (left < 0)
            {
                return i;
            }
        }

        return weights.Count - 1;
    }
}
