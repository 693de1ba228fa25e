namespace Cloveshed.Check;

/// <summary>
/// How far written figures may be from what they should be. Amounts (mass, units, bins, hours) have a millionth of what
/// they are measured against, and a thousandth of a unit for the digits that were written. No figure that is not finite is within anything.
/// </summary>
internal static class Tolerance
{
    public const double Relative = 1e-6;
    public const double Amount = 1e-3;

    /// <summary>Of each share in shares.csv, and of their sum: absolute.</summary>
    public const double Share = 1e-4;

    /// <summary>Of mass ratios, of a path's shares, of life used and of the gap: absolute, for the digits written.</summary>
    public const double Ratio = 1e-6;

    /// <summary>What counts as nothing where an amount is below zero: rounding noise.</summary>
    public const double Noise = 1e-9;

    /// <summary>The least that a path loses in a week, as a share of its weight.</summary>
    public const double LeastWeeklyLoss = 0.0005;

    public static double Of(double scale) => Amount + (Relative * Math.Abs(scale));

    public static bool AtMost(double found, double limit, double scale) =>
        double.IsFinite(found) && double.IsFinite(scale) && found <= limit + Of(scale);

    public static bool Same(double found, double expected, double scale) =>
        double.IsFinite(scale) && Math.Abs(found - expected) <= Of(scale);

    public static bool Same(double found, double expected) => Same(found, expected, expected);

    public static bool IsNothing(double amount, double scale) => AtMost(amount, 0, scale);

    /// <summary>Of money: a unit of it, or a millionth.</summary>
    public static double OfMoney(double value) => Math.Max(1, Relative * Math.Abs(value));
}
