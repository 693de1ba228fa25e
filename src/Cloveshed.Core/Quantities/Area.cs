using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>An area of ground in whole square centimetres, from 0 to a million square kilometres, both included.</summary>
public readonly record struct Area : IComparable<Area>
{
    /// <summary>
    /// Square metres in an acre of international feet (43 560 ft² of 0.3048 m), exactly. The acre of survey feet, which was
    /// withdrawn at the end of 2022, is larger by 4 parts in a million. Source: NIST Handbook 44 (2023), appendix C.
    /// </summary>
    public const decimal SquareMetresPerAcre = 4046.8564224m;

    private const long Bound = 10_000_000_000_000_000;

    private Area(long squareCentimetres) => SquareCentimetres = squareCentimetres;

    /// <summary>Whole square centimetres.</summary>
    public long SquareCentimetres { get; }

    /// <summary>Rounded to the nearest square centimetre, a half to the even one.</summary>
    public static Area FromSquareMetres(decimal squareMetres) => Rounded(squareMetres, 10_000m);

    /// <summary>Rounded to the nearest square centimetre, a half to the even one.</summary>
    public static Area FromHectares(decimal hectares) => Rounded(hectares, 100_000_000m);

    /// <summary>Acres of international feet, rounded to the nearest square centimetre, a half to the even one.</summary>
    public static Area FromAcres(decimal acres) => Rounded(acres, SquareMetresPerAcre * 10_000m);

    /// <summary>Square metres, exact.</summary>
    public decimal ToSquareMetres() => SquareCentimetres / 10_000m;

    /// <summary>Hectares, exact.</summary>
    public decimal ToHectares() => SquareCentimetres / 100_000_000m;

    /// <summary>Acres of international feet, to 28 significant digits.</summary>
    public decimal ToAcres() => ToSquareMetres() / SquareMetresPerAcre;

    /// <summary>The sum; refused beyond the bound.</summary>
    public static Area operator +(Area left, Area right) => Rounded(left.SquareCentimetres + right.SquareCentimetres, 1m);

    /// <summary>Smaller.</summary>
    public static bool operator <(Area left, Area right) => left.SquareCentimetres < right.SquareCentimetres;

    /// <summary>Smaller or equal.</summary>
    public static bool operator <=(Area left, Area right) => left.SquareCentimetres <= right.SquareCentimetres;

    /// <summary>Larger.</summary>
    public static bool operator >(Area left, Area right) => left.SquareCentimetres > right.SquareCentimetres;

    /// <summary>Larger or equal.</summary>
    public static bool operator >=(Area left, Area right) => left.SquareCentimetres >= right.SquareCentimetres;

    /// <inheritdoc/>
    public int CompareTo(Area other) => SquareCentimetres.CompareTo(other.SquareCentimetres);

    /// <summary>Square metres with their unit: "4046.8564 m²".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{ToSquareMetres():0.####} m²");

    private static Area Rounded(decimal amount, decimal squareCentimetres) =>
        amount >= 0 && amount <= Bound / squareCentimetres
            ? new((long)Math.Round(amount * squareCentimetres, MidpointRounding.ToEven))
            : throw new ArgumentOutOfRangeException(nameof(amount), amount, "An area lies between 0 and 1 000 000 km².");
}
