namespace Cloveshed.Core.Keep.Clocks;

/// <summary>
/// A lot's three clocks: weight over its weight at the start, and the shares of its storage life that sprouting and decay have
/// used. Life used is the sum of the two.
/// </summary>
public readonly record struct LotClocks(double WeightRatio, double Sprout, double Decay)
{
    /// <summary>Nothing lost, nothing used.</summary>
    public static LotClocks Fresh { get; } = new(1, 0, 0);

    /// <summary>Share of its storage life used; over 1 for a lot past it.</summary>
    public double Life => Sprout + Decay;

    /// <summary>After so many hours in a climate.</summary>
    /// <param name="weeksSinceHarvest">At the start of the stretch.</param>
    public LotClocks After(KeepingParameters p, KeepingTraits traits, Climate climate, double hours, int weeksSinceHarvest)
    {
        const double HoursPerWeek = 168;
        double loss = KeepingLaw.WeightLoss(p, traits, climate, weeksSinceHarvest);
        (double sprout, double decay) = KeepingLaw.LifeUsedByClock(p, traits, climate);
        double weeks = hours / HoursPerWeek;
        return new LotClocks(WeightRatio * Math.Pow(1 - loss, weeks), Sprout + sprout * weeks, Decay + decay * weeks);
    }
}

/// <summary>How a lot began its storage.</summary>
/// <param name="CuringQuality">1: necks tight, skins dry and whole; 0: not cured at all.</param>
/// <param name="InjuredShare">Share of bulbs cut, bruised or shattered.</param>
public sealed record LotCondition(double CuringQuality, double InjuredShare)
{
    /// <summary>As the published lives are of: well cured, sound.</summary>
    public static LotCondition Good { get; } = new(1, 0);
}

/// <summary>Shares of a lot's bulbs; they sum to 1.</summary>
public readonly record struct BulbShares(double Sound, double Sprouted, double Decayed);

/// <summary>
/// What the clocks have left of the bulbs. Losses are Weibull in life used; decay begins ahead in a badly cured lot, and runs
/// faster in injured bulbs. How far ahead and how much faster are our defaults, no published value (directions: WFLO Commodity Storage
/// Manual, Garlic, 2018).
/// </summary>
public static class BulbLosses
{
    /// <summary>Life that decay has used at the start of a lot that is not cured at all.</summary>
    public const double UncuredHeadStart = 0.2;

    /// <summary>Times as fast as in whole bulbs decay runs in injured ones.</summary>
    public const double InjuredHaste = 3;

    /// <summary>Pure. Lost bulbs are sprouted or decayed in the proportion in which the two clocks used their life.</summary>
    public static BulbShares Of(KeepingParameters p, LotCondition condition, double sprout, double decay)
    {
        double ahead = (1 - condition.CuringQuality) * UncuredHeadStart;
        BulbShares whole = Kind(p, sprout, ahead + decay);
        if (condition.InjuredShare <= 0)
            return whole;
        BulbShares injured = Kind(p, sprout, ahead + InjuredHaste * decay);
        double i = condition.InjuredShare;
        return new BulbShares((1 - i) * whole.Sound + i * injured.Sound, (1 - i) * whole.Sprouted + i * injured.Sprouted, (1 - i) * whole.Decayed + i * injured.Decayed);
    }

    private static BulbShares Kind(KeepingParameters p, double sprout, double decay)
    {
        double life = sprout + decay;
        double sound = KeepingLaw.SoundShare(p, life);
        double sprouted = life > 0 ? (1 - sound) * sprout / life : 0;
        return new BulbShares(sound, sprouted, 1 - sound - sprouted);
    }
}
