namespace Cloveshed.Core.Keep.Air;

/// <summary>Whether cold bulbs sweat in air that meets them.</summary>
public enum SweatRisk
{
    /// <summary>The bulbs are warmer than the air's dew point by more than the margin.</summary>
    Dry,

    /// <summary>Within the margin: a cold corner or a draught may sweat.</summary>
    Near,

    /// <summary>At or under the dew point: water settles on them.</summary>
    Sweats,
}

/// <summary>Bulbs, and the air that they meet.</summary>
/// <param name="BulbC">Of the coldest bulbs that the air reaches, °C.</param>
/// <param name="MarginC">How near to the dew point counts as near; our default of 2 °C, no published value.</param>
public sealed record SweatQuestion(double BulbC, MoistAir Air, double MarginC = 2);

/// <summary>Whether they sweat, and what would keep them dry.</summary>
/// <param name="DewPointC">Of the air; null for dry air.</param>
/// <param name="WarmToC">Bulbs that are at least so warm are out of the margin: what they are to be warmed to, in dry air, before they meet this air.</param>
/// <param name="DryAirRh">The most humid air of this temperature, percent, in which these bulbs stay out of the margin.</param>
public sealed record SweatAnswer(SweatRisk Risk, double? DewPointC, double WarmToC, double DryAirRh);

/// <summary>Condensation on cold bulbs: water on skins brings mould, and a sealed box keeps it there. The dew point decides; no source needed.</summary>
public static class Sweating
{
    /// <summary>Pure.</summary>
    public static SweatAnswer Of(SweatQuestion question)
    {
        MoistAir air = question.Air;
        double dryRh = Math.Clamp(100 * SaturatedAir.PressureKpa(question.BulbC - question.MarginC) / SaturatedAir.PressureKpa(air.TempC), 0, 100);
        if (air.DewPointC is not { } dew)
            return new SweatAnswer(SweatRisk.Dry, null, MoistAir.ColdestC, dryRh);
        SweatRisk risk = question.BulbC <= dew ? SweatRisk.Sweats : question.BulbC <= dew + question.MarginC ? SweatRisk.Near : SweatRisk.Dry;
        return new SweatAnswer(risk, dew, dew + question.MarginC, dryRh);
    }
}
