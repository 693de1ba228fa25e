using Cloveshed.Core.Sizes;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Scenarios;

/// <summary>
/// Chance by key instead of by order: what is drawn for a lot in a scenario depends on the seed, the scenario's number and the lot's name,
/// and on nothing that was drawn before. So two plans meet the same season (common random numbers), on any number of threads. Keys are
/// mixed by splitmix64 (S. Vigna's finalizer, from memory); names by 64-bit FNV-1a (from memory).
/// </summary>
public readonly struct KeyedChance
{
    private const ulong Golden = 0x9E3779B97F4A7C15;
    private readonly ulong key;

    private KeyedChance(ulong key) => this.key = key;

    /// <summary>Of one scenario of a seed.</summary>
    public static KeyedChance Of(long seed, int scenario) => new KeyedChance(Mix(unchecked((ulong)seed + Golden))).For(scenario);

    /// <summary>The chance of one thing by name.</summary>
    public KeyedChance For(string name)
    {
        ulong hash = 0xCBF29CE484222325;
        foreach (char c in name) hash = unchecked((hash ^ c) * 0x100000001B3);
        return new(Mix(key ^ hash));
    }

    /// <summary>The chance of one thing by number.</summary>
    public KeyedChance For(int number) => new(Mix(unchecked(key + (ulong)(uint)number * Golden + 1)));

    /// <summary>Uniform between 0 and 1, neither included.</summary>
    public double Uniform() => ((Mix(key) >> 11) + 0.5) * (1.0 / (1UL << 53));

    /// <summary>Standard normal, by the inverse of its distribution function: one key, one number.</summary>
    public double Normal() => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Uniform());

    /// <summary>
    /// Shares drawn around shares: Dirichlet of strength x shares, by gammas over their sum (L. Devroye, Non-Uniform Random Variate
    /// Generation, 1986, ch. XI.4, from memory). A share of 0 stays 0; infinite strength gives the shares.
    /// </summary>
    public double[] Dirichlet(ReadOnlySpan<double> shares, double strength)
    {
        double[] drawn = shares.ToArray();
        if (double.IsPositiveInfinity(strength)) return drawn;
        var chance = new Chance(unchecked((long)Mix(key)));
        double sum = 0;
        for (int k = 0; k < drawn.Length; k++)
        {
            if (drawn[k] > 0) drawn[k] = chance.Gamma(strength * drawn[k]);
            sum += drawn[k];
        }
        if (!(sum > 0)) return shares.ToArray();
        for (int k = 0; k < drawn.Length; k++) drawn[k] /= sum;
        return drawn;
    }

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z += Golden;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
