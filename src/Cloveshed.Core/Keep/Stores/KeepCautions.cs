namespace Cloveshed.Core.Keep.Stores;

/// <summary>Something about a climate that a person should know. The figures behind each are in <see cref="KeepCautions"/> and <see cref="Rooms.AtmosphereLimits"/>.</summary>
public enum KeepRule
{
    /// <summary>Oxygen under 19.5%: a hazardous atmosphere (OSHA 29 CFR 1910.146(b)).</summary>
    OxygenDeficient,

    /// <summary>Oxygen over 23.5%: a hazardous atmosphere (same).</summary>
    OxygenEnriched,

    /// <summary>Carbon dioxide over 4%: immediately dangerous to life or health (NIOSH).</summary>
    CarbonDioxideDangerous,

    /// <summary>Over 3%: above the short-term limit.</summary>
    CarbonDioxideShortTerm,

    /// <summary>Over 0.5%: above the limit for a working day.</summary>
    CarbonDioxideDay,

    /// <summary>Over 15% may injure garlic after 4 to 6 months.</summary>
    CarbonDioxideInjures,

    /// <summary>Low oxygen without carbon dioxide helps little.</summary>
    LowOxygenAlone,

    /// <summary>Under -0.8 °C garlic may freeze.</summary>
    MayFreeze,

    /// <summary>5 to 18 °C: sprouts fastest.</summary>
    SproutingZone,

    /// <summary>Over 70% humidity: mould, sprouts and roots at any temperature.</summary>
    Damp,

    /// <summary>Under 60%: dries out more than it need.</summary>
    Dry,

    /// <summary>Temperature outside of everything that was published and fitted.</summary>
    BeyondPublished,

    /// <summary>Seed under 5 °C: rough bulbs.</summary>
    SeedTooCold,

    /// <summary>Seed over 18 °C: sprouts and matures late.</summary>
    SeedTooWarm,

    /// <summary>Seed outside of 65 to 70% humidity.</summary>
    SeedHumidity,

    /// <summary>Atmospheres and inhibitors are not for seed.</summary>
    SeedAtmosphere,

    /// <summary>Peeled cloves in sealed bags over 5 °C: germs that make poison without air can grow.</summary>
    PeeledTooWarm,

    /// <summary>Peeled cloves are to be kept cold without a break.</summary>
    PeeledKeepCold,
}

/// <summary>A caution with its figures.</summary>
/// <param name="Found">The value found, and <paramref name="Limit"/> the one it passes, in °C or percent.</param>
public sealed record KeepCaution(KeepRule Rule, double Found, double Limit);

/// <summary>What to be careful of in a climate, people first, then the garlic.</summary>
public static class KeepCautions
{
    /// <summary>Percent: best humidity (UC Davis; USDA AH-66), over whose upper end mould comes at any temperature (WFLO 2018).</summary>
    public const double DriestRh = 60, DampestRh = 70;

    /// <summary>°C: the highest freezing point (WFLO 2018). Research stores of -2 and -3 °C are known, so lower is a warning, not an error.</summary>
    public const double FreezingC = -0.8;

    /// <summary>°C between which sprouting is fastest (UC Davis; USDA AH-66).</summary>
    public const double SproutFromC = 5, SproutToC = 18;

    /// <summary>°C between which a life is published: -3 (Volk et al. 2004) to 30 (UC Davis); peeled cloves 0 to 10.</summary>
    public const double ColdestC = -3, WarmestC = 30, WarmestPeeledC = 10;

    /// <summary>Percent of carbon dioxide that may injure after 4 to 6 months (Cantwell et al., Acta Hort.).</summary>
    public const double InjuringCo2 = 15;

    /// <summary>°C above which peeled cloves are not to be: 41 °F, the usual limit of chilled food in the United States (FDA Food Code 3-501.16, from memory).</summary>
    public const double PeeledMostC = 5;

    /// <summary>Pure.</summary>
    public static IReadOnlyList<KeepCaution> Of(StorageQuestion question)
    {
        Climate air = question.Climate;
        double t = air.TempC;
        var found = new List<KeepCaution>();
        void If(bool so, KeepRule rule, double value, double limit)
        {
            if (so)
                found.Add(new KeepCaution(rule, value, limit));
        }

        If(air.O2 < Rooms.AtmosphereLimits.LeastO2, KeepRule.OxygenDeficient, air.O2, Rooms.AtmosphereLimits.LeastO2);
        If(air.O2 > Rooms.AtmosphereLimits.MostO2, KeepRule.OxygenEnriched, air.O2, Rooms.AtmosphereLimits.MostO2);
        double ppm = air.Co2 * 10_000;
        if (ppm >= Rooms.AtmosphereLimits.DangerousCo2Ppm)
            If(true, KeepRule.CarbonDioxideDangerous, air.Co2, Rooms.AtmosphereLimits.DangerousCo2Ppm / 10_000.0);
        else if (ppm > Rooms.AtmosphereLimits.ShortTermCo2Ppm)
            If(true, KeepRule.CarbonDioxideShortTerm, air.Co2, Rooms.AtmosphereLimits.ShortTermCo2Ppm / 10_000.0);
        else
            If(ppm > Rooms.AtmosphereLimits.WorkdayCo2Ppm, KeepRule.CarbonDioxideDay, air.Co2, Rooms.AtmosphereLimits.WorkdayCo2Ppm / 10_000.0);
        If(t < FreezingC, KeepRule.MayFreeze, t, FreezingC);
        if (question.Form == GarlicForm.Peeled)
        {
            If(t > PeeledMostC, KeepRule.PeeledTooWarm, t, PeeledMostC);
            If(true, KeepRule.PeeledKeepCold, t, PeeledMostC);
            If(t > WarmestPeeledC, KeepRule.BeyondPublished, t, WarmestPeeledC);
            return found;
        }

        If(t < ColdestC, KeepRule.BeyondPublished, t, ColdestC);
        If(t > WarmestC, KeepRule.BeyondPublished, t, WarmestC);
        If(air.Co2 > InjuringCo2, KeepRule.CarbonDioxideInjures, air.Co2, InjuringCo2);
        if (question.Form == GarlicForm.Seed)
        {
            If(t < PlantingStock.ColdestC, KeepRule.SeedTooCold, t, PlantingStock.ColdestC);
            If(t > PlantingStock.WarmestC, KeepRule.SeedTooWarm, t, PlantingStock.WarmestC);
            If(air.Rh < PlantingStock.DriestRh, KeepRule.SeedHumidity, air.Rh, PlantingStock.DriestRh);
            If(air.Rh > PlantingStock.DampestRh, KeepRule.SeedHumidity, air.Rh, PlantingStock.DampestRh);
            If(air.O2 < Rooms.AtmosphereLimits.LeastO2 || air.Co2 > 1, KeepRule.SeedAtmosphere, air.O2, Rooms.AtmosphereLimits.LeastO2);
            return found;
        }

        If(t is >= SproutFromC and <= SproutToC, KeepRule.SproutingZone, t, t - SproutFromC < SproutToC - t ? SproutFromC : SproutToC);
        If(air.Rh > DampestRh, KeepRule.Damp, air.Rh, DampestRh);
        If(air.Rh < DriestRh, KeepRule.Dry, air.Rh, DriestRh);
        If(air.O2 < Rooms.AtmosphereLimits.LeastO2 && air.Co2 < 5, KeepRule.LowOxygenAlone, air.Co2, 5);
        return found;
    }
}
