using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>Relative humidity of air in percent, from 0 to 100, both included.</summary>
public readonly record struct Humidity : IComparable<Humidity>
{
    private Humidity(double percent)
    {
        if (!(percent is >= 0 and <= 100))
        {
            throw new ArgumentOutOfRangeException(nameof(percent), percent, "A relative humidity lies between 0 and 100 percent.");
        }

        Percent = percent;
    }

    /// <summary>Percent of the vapour pressure at saturation over water.</summary>
    public double Percent { get; }

    /// <summary>As given.</summary>
    public static Humidity FromPercent(double percent) => new(percent);

    /// <summary>From a share of 0 to 1.</summary>
    public static Humidity FromShare(Share share) => new(share.ToPercent());

    /// <summary>As a share of 0 to 1.</summary>
    public Share ToShare() => Share.FromPercent(Percent);

    /// <summary>Drier.</summary>
    public static bool operator <(Humidity left, Humidity right) => left.Percent < right.Percent;

    /// <summary>Drier or equal.</summary>
    public static bool operator <=(Humidity left, Humidity right) => left.Percent <= right.Percent;

    /// <summary>More humid.</summary>
    public static bool operator >(Humidity left, Humidity right) => left.Percent > right.Percent;

    /// <summary>More humid or equal.</summary>
    public static bool operator >=(Humidity left, Humidity right) => left.Percent >= right.Percent;

    /// <inheritdoc/>
    public int CompareTo(Humidity other) => Percent.CompareTo(other.Percent);

    /// <summary>Percent with one decimal at most: "62.5 % RH".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Percent:0.#} % RH");
}
