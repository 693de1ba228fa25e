using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>
/// A temperature in degrees Celsius, from absolute zero to 1000 °C, both included. It is a reading, so it is a double; two
/// readings are compared, never added.
/// </summary>
public readonly record struct Temperature : IComparable<Temperature>
{
    /// <summary>The kelvins of 0 °C, exactly. Source: BIPM, The International System of Units, 9th edition (2019), 2.3.1.</summary>
    public const double KelvinsAtZeroCelsius = 273.15;

    private Temperature(double celsius)
    {
        if (!(celsius is >= -KelvinsAtZeroCelsius and <= 1000))
        {
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "A temperature lies between -273.15 and 1000 °C.");
        }

        Celsius = celsius;
    }

    /// <summary>Degrees Celsius. The default value is 0 °C.</summary>
    public double Celsius { get; }

    /// <summary>As given.</summary>
    public static Temperature FromCelsius(double celsius) => new(celsius);

    /// <summary>°C = (°F - 32) / 1.8, exactly so defined. Source: NIST Special Publication 811 (2008), appendix B.</summary>
    public static Temperature FromFahrenheit(double fahrenheit) => new((fahrenheit - 32) / 1.8);

    /// <summary>From kelvins.</summary>
    public static Temperature FromKelvins(double kelvins) => new(kelvins - KelvinsAtZeroCelsius);

    /// <summary>Degrees Fahrenheit.</summary>
    public double ToFahrenheit() => Celsius * 1.8 + 32;

    /// <summary>Kelvins; never below 0.</summary>
    public double ToKelvins() => Celsius + KelvinsAtZeroCelsius;

    /// <summary>Colder.</summary>
    public static bool operator <(Temperature left, Temperature right) => left.Celsius < right.Celsius;

    /// <summary>Colder or equal.</summary>
    public static bool operator <=(Temperature left, Temperature right) => left.Celsius <= right.Celsius;

    /// <summary>Warmer.</summary>
    public static bool operator >(Temperature left, Temperature right) => left.Celsius > right.Celsius;

    /// <summary>Warmer or equal.</summary>
    public static bool operator >=(Temperature left, Temperature right) => left.Celsius >= right.Celsius;

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => Celsius.CompareTo(other.Celsius);

    /// <summary>Degrees Celsius with two decimals at most: "-0.5 °C".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Celsius:0.##} °C");
}
