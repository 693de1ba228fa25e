using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>
/// A length or diameter in whole micrometres, from 0 to 1000 km, both included: fine enough for a drum's hole, wide enough for
/// a field's row. An inch, and a 64th of an inch to half a micrometre, has its place.
/// </summary>
public readonly record struct Length : IComparable<Length>
{
    /// <summary>Millimetres in an inch, exactly. Source: NIST Special Publication 811 (2008), appendix B.</summary>
    public const decimal MillimetresPerInch = 25.4m;

    /// <summary>Millimetres in an international foot (12 in), exactly. Source: NIST Special Publication 811 (2008), appendix B.</summary>
    public const decimal MillimetresPerFoot = 304.8m;

    private const long Bound = 1_000_000_000_000;

    private Length(long micrometres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(micrometres);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(micrometres, Bound);
        Micrometres = micrometres;
    }

    /// <summary>Whole micrometres.</summary>
    public long Micrometres { get; }

    /// <summary>Exact.</summary>
    public static Length FromMicrometres(long micrometres) => new(micrometres);

    /// <summary>Rounded to the nearest micrometre, a half to the even one.</summary>
    public static Length FromMillimetres(decimal millimetres) => Rounded(millimetres, 1000m);

    /// <summary>Rounded to the nearest micrometre, a half to the even one.</summary>
    public static Length FromMetres(decimal metres) => Rounded(metres, 1_000_000m);

    /// <summary>Rounded to the nearest micrometre, a half to the even one; whole inches are exact.</summary>
    public static Length FromInches(decimal inches) => Rounded(inches, MillimetresPerInch * 1000m);

    /// <summary>Rounded to the nearest micrometre, a half to the even one; whole feet are exact.</summary>
    public static Length FromFeet(decimal feet) => Rounded(feet, MillimetresPerFoot * 1000m);

    /// <summary>Millimetres, exact.</summary>
    public decimal ToMillimetres() => Micrometres / 1000m;

    /// <summary>Metres, exact.</summary>
    public decimal ToMetres() => Micrometres / 1_000_000m;

    /// <summary>Inches, to 28 significant digits.</summary>
    public decimal ToInches() => ToMillimetres() / MillimetresPerInch;

    /// <summary>Feet, to 28 significant digits.</summary>
    public decimal ToFeet() => ToMillimetres() / MillimetresPerFoot;

    /// <summary>Shorter.</summary>
    public static bool operator <(Length left, Length right) => left.Micrometres < right.Micrometres;

    /// <summary>Shorter or equal.</summary>
    public static bool operator <=(Length left, Length right) => left.Micrometres <= right.Micrometres;

    /// <summary>Longer.</summary>
    public static bool operator >(Length left, Length right) => left.Micrometres > right.Micrometres;

    /// <summary>Longer or equal.</summary>
    public static bool operator >=(Length left, Length right) => left.Micrometres >= right.Micrometres;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Micrometres.CompareTo(other.Micrometres);

    /// <summary>Millimetres with their unit: "57.15 mm".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{ToMillimetres():0.###} mm");

    private static Length Rounded(decimal amount, decimal micrometres) =>
        amount >= 0 && amount <= Bound / micrometres
            ? new((long)Math.Round(amount * micrometres, MidpointRounding.ToEven))
            : throw new ArgumentOutOfRangeException(nameof(amount), amount, "A length lies between 0 and 1000 km.");
}
