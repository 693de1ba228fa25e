global using static Cloveshed.Core.Tests.Written;

namespace Cloveshed.Core.Tests;

/// <summary>How numbers in test data are written.</summary>
internal static class Written
{
    public static System.Globalization.CultureInfo Invariant => System.Globalization.CultureInfo.InvariantCulture;
}
