using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>
/// A tiny season that needs one thing of the contract, with the value of its best plan worked out by hand. Low and High are
/// that value where nothing has to be kept (a row's path starts at its full weight, so a run in its first week is exact), and
/// bounds around it where something has to, because how much garlic loses is the keeping rules' own matter.
/// </summary>
/// <param name="Why">The arithmetic.</param>
public sealed record Feature(string Name, Season Season, double Low, double High, string Why)
{
    /// <summary>The sum of rounding that an answer's digits may carry: a hundredth of money and a millionth.</summary>
    public double Slack => 0.01 + 1e-6 * Math.Max(Math.Abs(Low), Math.Abs(High));

    internal static Feature Exactly(string name, Season season, double value, string why) => new(name, season, value, value, why);

    internal static Feature Between(string name, Season season, double low, double high, string why) => new(name, season, low, high, why);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Feature> All { get; } =
    [
        .. FreshFeatures.All, .. CrackFeatures.All, .. SeedFeatures.All, .. KeepFeatures.All, .. OrderFeatures.All, .. SupplyFeatures.All,
        .. LineFeatures.All, .. LotFeatures.All,
    ];

    /// <inheritdoc/>
    public override string ToString() => Name;
}
