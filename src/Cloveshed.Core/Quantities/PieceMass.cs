using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>
/// The mass of one bulb or clove in whole tenths of a gram, which is finer than a sizer's scale: from 0 to 10 kg, both included.
/// A type of its own so that a bulb's weight is never taken for a load's.
/// </summary>
public readonly record struct PieceMass : IComparable<PieceMass>
{
    private const int Bound = 100_000;

    private PieceMass(int tenths)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(tenths);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(tenths, Bound);
        Tenths = tenths;
    }

    /// <summary>Whole tenths of a gram.</summary>
    public int Tenths { get; }

    /// <summary>Exact.</summary>
    public static PieceMass FromTenths(int tenths) => new(tenths);

    /// <summary>Rounded to the nearest tenth of a gram, a half to the even tenth.</summary>
    public static PieceMass FromGrams(decimal grams) =>
        grams is >= 0 and <= 10_000
            ? new((int)Math.Round(grams * 10m, MidpointRounding.ToEven))
            : throw new ArgumentOutOfRangeException(nameof(grams), grams, "A piece weighs from 0 to 10 000 g.");

    /// <summary>Rounded to the nearest tenth of a gram, a half to the even tenth. Refuses what is not a number.</summary>
    public static PieceMass FromGrams(double grams) =>
        grams is >= 0 and <= 10_000
            ? new((int)Math.Round(grams * 10.0, MidpointRounding.ToEven))
            : throw new ArgumentOutOfRangeException(nameof(grams), grams, "A piece weighs from 0 to 10 000 g.");

    /// <summary>Grams, exact.</summary>
    public decimal ToGrams() => Tenths / 10m;

    /// <summary>The mass of so many pieces of this mass, to the nearest gram, a half to the even gram.</summary>
    public Mass Times(long count) => Mass.FromKilograms(Tenths * (decimal)count / 10_000m);

    /// <summary>Lighter.</summary>
    public static bool operator <(PieceMass left, PieceMass right) => left.Tenths < right.Tenths;

    /// <summary>Lighter or equal.</summary>
    public static bool operator <=(PieceMass left, PieceMass right) => left.Tenths <= right.Tenths;

    /// <summary>Heavier.</summary>
    public static bool operator >(PieceMass left, PieceMass right) => left.Tenths > right.Tenths;

    /// <summary>Heavier or equal.</summary>
    public static bool operator >=(PieceMass left, PieceMass right) => left.Tenths >= right.Tenths;

    /// <inheritdoc/>
    public int CompareTo(PieceMass other) => Tenths.CompareTo(other.Tenths);

    /// <summary>Grams with one decimal and their unit: "45.3 g".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{ToGrams():0.0} g");
}
