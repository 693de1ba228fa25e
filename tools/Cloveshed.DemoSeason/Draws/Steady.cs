namespace Cloveshed.DemoSeason.Draws;

/// <summary>
/// ln and exp from additions, products and quotients only. The platform's own may differ in the last bit between machines,
/// which would now and then turn a rounded figure of the committed season; these cannot.
/// Relative error below 1e-14 over the range that the season uses (checked against the platform's in the tests).
/// </summary>
public static class Steady
{
    // ln 2 in two parts, so that the multiple of it is taken off without loss.
    private const double Ln2High = 0.693147180369123816490;
    private const double Ln2Low = 1.90821492927058770002e-10;

    /// <summary>e to the x, for x in about -700 to 700.</summary>
    public static double Exp(double x)
    {
        double k = Math.Floor((x / (Ln2High + Ln2Low)) + 0.5);
        double r = x - (k * Ln2High) - (k * Ln2Low);
        double sum = 1;
        for (int n = 16; n >= 1; n--)
        {
            sum = 1 + (r * sum / n);
        }

        return Math.ScaleB(sum, (int)k);
    }

    /// <summary>The natural logarithm of a positive, normal number.</summary>
    public static double Ln(double x)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(x);
        int exponent = Math.ILogB(x);
        double m = Math.ScaleB(x, -exponent);
        if (m > 1.4142135623730951)
        {
            m /= 2;
            exponent++;
        }

        double s = (m - 1) / (m + 1);
        double s2 = s * s;
        double sum = 0;
        for (int n = 25; n >= 1; n -= 2)
        {
            sum = (sum * s2) + (1.0 / n);
        }

        return (exponent * Ln2High) + ((exponent * Ln2Low) + (2 * s * sum));
    }
}
