using Cloveshed.Pictures.Reading;

namespace Cloveshed.Web.Plan;

/// <summary>How near a plan is to the best that could be.</summary>
internal static class GapWords
{
    /// <summary>A gap under a millionth is the rounding of the figures, not something left to find.</summary>
    public const double Proven = 1e-6;

    /// <summary>With as many decimals as it takes to see it.</summary>
    public static string Share(double share, Reader reader) =>
        double.IsFinite(share) ? reader.Percent(share, share < Proven ? 0 : share < 0.001 ? 3 : share < 0.01 ? 2 : 1) : "–";
}
