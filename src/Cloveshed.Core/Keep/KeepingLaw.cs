using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Keep;

/// <summary>
/// How garlic keeps. Weight goes with the drying power of the air. Life is used by two clocks: sprouting, fastest at 5 to
/// 18 °C and slow both in the cold and in warmth, and decay, which grows with temperature and with humidity over 70%.
/// Life used 1 is, by our definition, the week by which a fifth of the sound bulbs is lost.
/// It describes whole bulbs for eating; planting stock has its own rule, and rooms with an atmosphere are deadly to enter.
/// </summary>
public static class KeepingLaw
{
    /// <summary>What a season's contract allows a week to take, ends excluded at the bottom and included at the top.</summary>
    private const double LeastLoss = 0.00051, MostLoss = 0.2;

    /// <summary>Ordinary air, percent.</summary>
    public const double AirO2 = 20.9, AirCo2 = 0.04;

    /// <summary>More carbon dioxide than this may injure after 4 to 6 months (Cantwell et al., Acta Hort.), so more is not counted as better.</summary>
    private const double UsefulCo2 = 15;

    /// <summary>More humid air than this brings mould and roots at any temperature (WFLO Commodity Storage Manual, Garlic, 2018).</summary>
    private const double DryEnough = 70;

    /// <summary>The sound share lost when life used is 1.</summary>
    public const double LostAtEndOfLife = 0.2;

    // A fraction of early losses, so that no life is free of charge; our default, no published value.
    private const double EarlyShare = 0.02;

    // Beyond three lives hardly a bulb is sound, and the Weibull would underflow to nothing: from there the tail is a power
    // of the same slope, which stays positive.
    private const double TailFrom = 3;

    /// <summary>One week of one lot in one climate.</summary>
    /// <param name="weeksSinceHarvest">0 in the week of harvest; before that counts as 0.</param>
    public static WeekOfKeeping Week(KeepingParameters p, KeepingTraits traits, Climate climate, int weeksSinceHarvest) =>
        new(WeightLoss(p, traits, climate, weeksSinceHarvest), LifeUsed(p, traits, climate));

    /// <summary>Share of its weight that a lot loses in a week.</summary>
    public static double WeightLoss(KeepingParameters p, KeepingTraits traits, Climate climate, int weeksSinceHarvest)
    {
        double loss = p.LossBase + p.LossPerKpa * SaturatedAir.DeficitKpa(climate.TempC, climate.Rh);
        if (!traits.Cured && weeksSinceHarvest < p.UncuredLossWeeks)
            loss *= p.UncuredLossFactor;
        return WithinContract(loss);
    }

    /// <summary>A weekly loss between the least and the most that a season's contract allows.</summary>
    internal static double WithinContract(double loss) => Math.Clamp(loss, LeastLoss, MostLoss);

    /// <summary>Share of its storage life that a lot uses in a week.</summary>
    public static double LifeUsed(KeepingParameters p, KeepingTraits traits, Climate climate)
    {
        (double sprout, double decay) = Medium(p, traits, climate);
        return (sprout + decay) / LifeFactor(p, traits.Keeps);
    }

    /// <summary>The same by its two clocks: the share used by sprouting and the share used by decay.</summary>
    public static (double Sprout, double Decay) LifeUsedByClock(KeepingParameters p, KeepingTraits traits, Climate climate)
    {
        (double sprout, double decay) = Medium(p, traits, climate);
        double factor = LifeFactor(p, traits.Keeps);
        return (sprout / factor, decay / factor);
    }

    // Of the life of a variety that keeps medium.
    private static (double Sprout, double Decay) Medium(KeepingParameters p, KeepingTraits traits, Climate climate)
    {
        double sprout = Sprouting(p, climate.TempC) * Atmosphere(p.Co2Sprout, p.LowO2, climate);
        if (traits.Inhibitor)
            sprout *= p.InhibitorShare;
        double decay = Decay(p, climate.TempC, climate.Rh) * Atmosphere(p.Co2Decay, p.LowO2, climate);
        if (!traits.Cured)
            decay *= p.UncuredDecayFactor;
        return (sprout, decay);
    }

    /// <summary>The sprouting clock in air: a week's use of the life of a variety that keeps medium. Rises through the cold edge, falls through the warm one.</summary>
    public static double Sprouting(KeepingParameters p, double tempC) =>
        p.SproutPeak
        / (1 + Math.Exp((p.SproutColdEdgeC - tempC) / p.SproutColdWidthC))
        / (1 + Math.Exp((tempC - p.SproutWarmEdgeC) / p.SproutWarmWidthC));

    /// <summary>The decay clock in air of a cured lot, likewise.</summary>
    public static double Decay(KeepingParameters p, double tempC, double rh) =>
        p.DecayAtZero * Math.Exp(tempC / 10 * Math.Log(p.DecayQ10) + Math.Max(0, rh - DryEnough) / 10 * p.DecayPerTenRh);

    /// <summary>Share of the sound bulbs still sound when this much life is used: 1 at 0, 0.8 at 1, falling, always positive.</summary>
    public static double SoundShare(KeepingParameters p, double lifeUsed)
    {
        double end = -Math.Log(1 - LostAtEndOfLife);
        if (lifeUsed <= 0)
            return 1;
        double at = Math.Min(lifeUsed, TailFrom);
        double power = Math.Pow(at, p.Shape);
        double sound = Math.Exp(-end * ((1 - EarlyShare) * power + EarlyShare * at));
        if (lifeUsed <= TailFrom)
            return sound;
        double tail = end * ((1 - EarlyShare) * p.Shape * power + EarlyShare * at);
        return sound * Math.Pow(TailFrom / lifeUsed, tail);
    }

    // 1 in air; less carbon dioxide or more oxygen than air is taken as air, so that an atmosphere never keeps worse.
    private static double Atmosphere(double co2Effect, double lowO2, Climate climate)
    {
        double co2 = Math.Clamp(climate.Co2, AirCo2, UsefulCo2) - AirCo2;
        double o2Missing = 1 - Math.Clamp(climate.O2, 0, AirO2) / AirO2;
        return Math.Exp(-co2Effect * co2 / 10) * (1 - lowO2 * o2Missing);
    }

    private static double LifeFactor(KeepingParameters p, KeepClass keeps) => keeps switch
    {
        KeepClass.Short => p.ShortLife,
        KeepClass.Long => 1 + p.LongGain,
        _ => 1,
    };
}
