using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>
/// A mass of garlic, bins or pallets in whole grams. It may be negative, because a difference or a correction is a mass too;
/// that a weighed load is not negative is for the fact that records it to require.
/// </summary>
/// <remarks>
/// Whole grams let the parts of a split add up to the whole without an allowance. A pound entered with two decimals comes back
/// with the same two decimals: half a gram is 0.0011 lb. The default value is 0 g.
/// </remarks>
public readonly record struct Mass : IComparable<Mass>
{
    /// <summary>Grams in a pound, exactly. Source: NIST Special Publication 811 (2008), appendix B; NIST Handbook 44, appendix C.</summary>
    public const decimal GramsPerPound = 453.59237m;

    /// <summary>The same in kilograms, for computations in doubles.</summary>
    public const double KilogramsPerPound = (double)(GramsPerPound / 1000m);

    /// <summary>Grams in a short ton of 2000 lb, exactly. Source: NIST Handbook 44, appendix C.</summary>
    public const decimal GramsPerShortTon = 907_184.74m;

    private const long Bound = 1_000_000_000_000_000;

    private Mass(Int128 grams)
    {
        if (grams < -Bound || grams > Bound)
        {
            throw new ArgumentOutOfRangeException(nameof(grams), grams, "A mass lies between -1e15 and 1e15 g (a billion tonnes), both included.");
        }

        Grams = (long)grams;
    }

    /// <summary>The smallest mass: -1e15 g.</summary>
    public static Mass Min { get; } = new(-Bound);

    /// <summary>The largest mass: 1e15 g.</summary>
    public static Mass Max { get; } = new(Bound);

    /// <summary>No mass.</summary>
    public static Mass Zero => default;

    /// <summary>Whole grams.</summary>
    public long Grams { get; }

    /// <summary>Exact.</summary>
    public static Mass FromGrams(long grams) => new(grams);

    /// <summary>Rounded to the nearest gram, a half to the even gram.</summary>
    public static Mass FromKilograms(decimal kilograms) => Rounded(kilograms, 1000m);

    /// <summary>Rounded to the nearest gram, a half to the even gram.</summary>
    public static Mass FromPounds(decimal pounds) => Rounded(pounds, GramsPerPound);

    /// <summary>Short tons of 2000 lb, rounded to the nearest gram, a half to the even gram.</summary>
    public static Mass FromShortTons(decimal tons) => Rounded(tons, GramsPerShortTon);

    /// <summary>
    /// The result of a computation brought back to whole grams: to the nearest, a half to even, as the double nearest to the
    /// product has it. Refuses what is not a number.
    /// </summary>
    public static Mass FromPounds(double pounds) => Rounded(pounds * (double)GramsPerPound);

    /// <summary>As <see cref="FromPounds(double)"/>, from kilograms.</summary>
    public static Mass FromKilograms(double kilograms) => Rounded(kilograms * 1000.0);

    /// <summary>Pounds, to 28 significant digits; not rounded for showing.</summary>
    public decimal ToPounds() => Grams / GramsPerPound;

    /// <summary>Kilograms, exact.</summary>
    public decimal ToKilograms() => Grams / 1000m;

    /// <summary>Short tons of 2000 lb, to 28 significant digits.</summary>
    public decimal ToShortTons() => Grams / GramsPerShortTon;

    /// <summary>The sum; refused beyond the bounds.</summary>
    public static Mass operator +(Mass left, Mass right) => new((Int128)left.Grams + right.Grams);

    /// <summary>The difference, which may be negative; refused beyond the bounds.</summary>
    public static Mass operator -(Mass left, Mass right) => new((Int128)left.Grams - right.Grams);

    /// <summary>The opposite mass.</summary>
    public static Mass operator -(Mass mass) => new(-(Int128)mass.Grams);

    /// <summary>A whole number of times; refused beyond the bounds. Fractions are for allocation, which loses no gram.</summary>
    public static Mass operator *(Mass mass, long count) => new((Int128)mass.Grams * count);

    /// <summary>Less.</summary>
    public static bool operator <(Mass left, Mass right) => left.Grams < right.Grams;

    /// <summary>Less or equal.</summary>
    public static bool operator <=(Mass left, Mass right) => left.Grams <= right.Grams;

    /// <summary>More.</summary>
    public static bool operator >(Mass left, Mass right) => left.Grams > right.Grams;

    /// <summary>More or equal.</summary>
    public static bool operator >=(Mass left, Mass right) => left.Grams >= right.Grams;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Grams.CompareTo(other.Grams);

    /// <summary>Grams with their unit, for logs and messages: "1361 g".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Grams} g");

    private static Mass Rounded(decimal amount, decimal grams) =>
        Math.Abs(amount) > Bound ? new(Int128.MaxValue) : new((Int128)Math.Round(amount * grams, MidpointRounding.ToEven));

    private static Mass Rounded(double grams) =>
        double.IsFinite(grams) && Math.Abs(grams) <= Bound
            ? new((long)Math.Round(grams, MidpointRounding.ToEven))
            : throw new ArgumentOutOfRangeException(nameof(grams), grams, "A mass is a finite number within its bounds.");
}
