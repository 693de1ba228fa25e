namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// PCG-XSH-RR 64/32 (O'Neill 2014): the same seed gives the same season on every machine and every runtime, which
/// <see cref="Random"/> does not promise. Its first outputs are checked against the reference's demo program.
/// </summary>
public sealed class Pcg
{
    private const ulong Multiplier = 6364136223846793005UL;
    private readonly ulong _increment;
    private ulong _state;

    /// <summary>Starts at a seed; generators of different streams are independent.</summary>
    public Pcg(ulong seed, ulong stream = 54)
    {
        _increment = (stream << 1) | 1;
        Step();
        _state = unchecked(_state + seed);
        Step();
    }

    /// <summary>32 bits.</summary>
    public uint Bits()
    {
        ulong old = _state;
        Step();
        uint shifted = (uint)((((old >> 18) ^ old) >> 27) & 0xFFFFFFFF);
        int turn = (int)(old >> 59);
        return (shifted >> turn) | (shifted << (-turn & 31));
    }

    /// <summary>A whole number from low to high, both included.</summary>
    public int Whole(int low, int high) => low + (int)(((ulong)Bits() * (ulong)((long)high - low + 1)) >> 32);

    /// <summary>A number from low (included) to high (excluded).</summary>
    public double Between(double low, double high) => low + (high - low) * (Bits() / 4294967296.0);

    /// <summary>A number whose logarithm is even between those of low and high: sheds differ by factors, not by sums.</summary>
    public double Factor(double low, double high) => Math.Exp(Between(Math.Log(low), Math.Log(high)));

    /// <summary>Money from low to high, in hundredths.</summary>
    public decimal Money(double low, double high) => Math.Round((decimal)Between(low, high), 2);

    /// <summary>True with the probability.</summary>
    public bool Chance(double probability) => Between(0, 1) < probability;

    /// <summary>One of them.</summary>
    public T Pick<T>(IReadOnlyList<T> of) => of[Whole(0, of.Count - 1)];

    /// <summary>All of them in a drawn order.</summary>
    public T[] Shuffled<T>(IEnumerable<T> of)
    {
        T[] all = [.. of];
        for (int i = all.Length - 1; i > 0; i--)
        {
            int j = Whole(0, i);
            (all[i], all[j]) = (all[j], all[i]);
        }
        return all;
    }

    /// <summary>A standard normal by the polar form's plain cousin (Box and Muller 1958).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Between(0, 1))) * Math.Cos(2 * Math.PI * Between(0, 1));

    private void Step() => _state = unchecked(_state * Multiplier + _increment);
}
