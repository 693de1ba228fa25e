using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>
/// A part of a whole, from 0 to 1, both included. A sum that passes 1 is refused, not cut: shares that add to 1.02 are a fault
/// to be found. Whoever adds many computed shares decides how much rounding to forgive before making one.
/// </summary>
public readonly record struct Share : IComparable<Share>
{
    private Share(double value)
    {
        if (!(value is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A share lies between 0 and 1.");
        }

        Value = value;
    }

    /// <summary>Nothing.</summary>
    public static Share None => default;

    /// <summary>All of it.</summary>
    public static Share All { get; } = new(1);

    /// <summary>0 to 1.</summary>
    public double Value { get; }

    /// <summary>As given.</summary>
    public static Share From(double value) => new(value);

    /// <summary>From percent, 0 to 100.</summary>
    public static Share FromPercent(double percent) => new(percent / 100);

    /// <summary>Percent, 0 to 100.</summary>
    public double ToPercent() => Math.Min(100, Value * 100);

    /// <summary>What is left of the whole: 1 minus this.</summary>
    public Share Rest() => new(1 - Value);

    /// <summary>The share of a share: what is fresh of what is sound.</summary>
    public static Share operator *(Share left, Share right) => new(left.Value * right.Value);

    /// <summary>Smaller.</summary>
    public static bool operator <(Share left, Share right) => left.Value < right.Value;

    /// <summary>Smaller or equal.</summary>
    public static bool operator <=(Share left, Share right) => left.Value <= right.Value;

    /// <summary>Larger.</summary>
    public static bool operator >(Share left, Share right) => left.Value > right.Value;

    /// <summary>Larger or equal.</summary>
    public static bool operator >=(Share left, Share right) => left.Value >= right.Value;

    /// <inheritdoc/>
    public int CompareTo(Share other) => Value.CompareTo(other.Value);

    /// <summary>As a number of 0 to 1 with four decimals at most: "0.8125".</summary>
    public override string ToString() => Value.ToString("0.####", CultureInfo.InvariantCulture);
}
