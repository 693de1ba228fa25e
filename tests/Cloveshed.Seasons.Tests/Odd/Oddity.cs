using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// One thing that makes a season unusual. Shape changes what is drawn, Change what was drawn; Shows says whether a season has
/// it, so that no oddity is in the list in name only.
/// </summary>
public sealed record Oddity(
    string Name, Func<OddShape, Pcg, OddShape> Shape, Func<Season, Pcg, Season> Change, Func<Season, bool> Shows, bool Large = false)
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Oddity> All { get; } =
        [.. ShapeOddities.All, .. GarlicOddities.All, .. ShedOddities.All, .. TradeOddities.All, .. OrderOddities.All];

    internal static Oddity OfShape(string name, Func<OddShape, OddShape> shape, Func<Season, bool> shows, bool large = false) =>
        new(name, (s, _) => shape(s), (s, _) => s, shows, large);

    internal static Oddity OfSeason(string name, Func<Season, Pcg, Season> change, Func<Season, bool> shows) =>
        new(name, (s, _) => s, change, shows);

    /// <inheritdoc/>
    public override string ToString() => Name;
}
