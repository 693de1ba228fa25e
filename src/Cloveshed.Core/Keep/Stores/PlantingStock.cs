namespace Cloveshed.Core.Keep.Stores;

/// <summary>
/// Bulbs kept for planting go by a rule of their own: about 10 °C and 65 to 70% humidity; under about 5 °C rough bulbs with
/// side shoots that mature early, over about 18 °C late sprouting and late maturity (USDA AH-66 as an extension newsletter of
/// 2011 quotes it; British Columbia Ministry of Agriculture, Garlic).
/// </summary>
public static class PlantingStock
{
    /// <summary>°C published as best, and between which the crop is not harmed.</summary>
    public const double BestC = 10, ColdestC = 5, WarmestC = 18;

    /// <summary>Percent, published.</summary>
    public const double DriestRh = 65, DampestRh = 70;

    /// <summary>Life is known to within this factor; our default, no published value.</summary>
    public const double Band = 1.5;

    // A shoot that wakes within the clove is what planting wants, so less of sprouting counts against seed; our default, no published value.
    private const double SproutCounts = 0.3;

    // °C under the best, and over the warmest, that take fitness down by e; our defaults, no published value. Bulbs kept at -3 °C were fit to
    // plant after 6 months (Volk et al., HortScience 39(3), 2004): with the cold's slow clocks, so they are here.
    private const double ColdStep = 9, WarmStep = 7;

    /// <summary>Days that seed of a variety that keeps medium stays fit to plant.</summary>
    public static double LifeDays(KeepingParameters p, KeepingTraits traits, Climate climate)
    {
        double sprout = KeepingLaw.Sprouting(p, climate.TempC) * SproutCounts, decay = KeepingLaw.Decay(p, climate.TempC, climate.Rh);
        if (!traits.Cured)
            decay *= p.UncuredDecayFactor;
        double unfit = Math.Max(0, (BestC - climate.TempC) / ColdStep) + Math.Max(0, (climate.TempC - WarmestC) / WarmStep);
        return 7 / (sprout + decay) * Math.Exp(-unfit);
    }
}
