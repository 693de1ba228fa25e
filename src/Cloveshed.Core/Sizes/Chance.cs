using System.Numerics;

namespace Cloveshed.Core.Sizes;

/// <summary>
/// Seeded random numbers that are the same on every machine and in every version: xoshiro256** filled from splitmix64
/// (D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47 (2021) 36).
/// </summary>
public sealed class Chance
{
    private ulong a, b, c, d;

    /// <summary>One stream for each seed.</summary>
    public Chance(long seed)
    {
        ulong state = unchecked((ulong)seed);
        a = Split(ref state);
        b = Split(ref state);
        c = Split(ref state);
        d = Split(ref state);
    }

    /// <summary>64 random bits.</summary>
    public ulong Bits()
    {
        unchecked
        {
            ulong result = BitOperations.RotateLeft(b * 5, 7) * 9, shifted = b << 17;
            c ^= a;
            d ^= b;
            b ^= c;
            a ^= d;
            c ^= shifted;
            d = BitOperations.RotateLeft(d, 45);
            return result;
        }
    }

    /// <summary>Uniform between 0 and 1, neither included: 53 bits, half a step from either end.</summary>
    public double Uniform() => ((Bits() >> 11) + 0.5) * (1.0 / (1UL << 53));

    /// <summary>Standard normal, by the polar method (G. Marsaglia and T. A. Bray, SIAM Review 6 (1964) 260).</summary>
    public double Normal()
    {
        while (true)
        {
            double x = 2 * Uniform() - 1, y = 2 * Uniform() - 1, s = x * x + y * y;
            if (s is > 0 and < 1)
                return x * Math.Sqrt(-2 * Math.Log(s) / s);
        }
    }

    /// <summary>Gamma of this shape and scale 1 (G. Marsaglia and W. W. Tsang, ACM Trans. Math. Softw. 26 (2000) 363).</summary>
    public double Gamma(double shape)
    {
        if (shape < 1)
            return Gamma(shape + 1) * Math.Pow(Uniform(), 1 / shape);
        double e = shape - 1.0 / 3, f = 1 / Math.Sqrt(9 * e);
        while (true)
        {
            double x = Normal(), v = 1 + f * x;
            if (v <= 0)
                continue;
            v = v * v * v;
            if (Math.Log(Uniform()) < 0.5 * x * x + e - e * v + e * Math.Log(v))
                return e * v;
        }
    }

    private static ulong Split(ref ulong state)
    {
        unchecked
        {
            ulong z = state += 0x9E3779B97F4A7C15;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
