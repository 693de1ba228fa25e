using System.Globalization;

namespace Cloveshed.Core.Tests.Quantities;

/// <summary>Agreement with a referee that reckons in doubles: to 1 part in 1e12.</summary>
internal static class Near
{
    public static void Assert(double expected, double actual) =>
        Xunit.Assert.True(
            Math.Abs(expected - actual) <= 1e-12 * Math.Max(1e-6, Math.Abs(expected)),
            string.Create(CultureInfo.InvariantCulture, $"expected {expected:R}, found {actual:R}"));
}

/// <summary>Runs a test under a culture with a comma for the decimal point, and puts the old one back.</summary>
internal static class InCulture
{
    public static void Of(string name, Action test)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
        try
        {
            test();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
