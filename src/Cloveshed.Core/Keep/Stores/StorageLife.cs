using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Keep.Stores;

/// <summary>What is kept.</summary>
public enum GarlicForm
{
    /// <summary>Whole cured bulbs for eating.</summary>
    Bulb,

    /// <summary>Whole bulbs for planting.</summary>
    Seed,

    /// <summary>Peeled cloves in sealed bags.</summary>
    Peeled,
}

/// <summary>How long garlic keeps in one climate.</summary>
/// <param name="Keeps">How long the variety keeps; null where that is not known.</param>
/// <param name="Inhibitor">A sprout inhibitor was applied in the field (bulbs only).</param>
public sealed record StorageQuestion(GarlicForm Form, Climate Climate, KeepClass? Keeps = null, bool Inhibitor = false, bool Cured = true);

/// <summary>Storage life and what goes with it.</summary>
/// <param name="LifeDays">Whole bulbs: until a fifth of the sound ones is lost. Seed: while it is fit to plant. Peeled: while it can be sold.</param>
/// <param name="LifeDaysLow">Nine in ten last longer (peeled: the shortest published).</param>
/// <param name="LifeDaysHigh">One in ten lasts longer (peeled: the longest published).</param>
/// <param name="WeightLossPerWeek">Share.</param>
/// <param name="Respiration">In air, mL of CO2 per kg and hour.</param>
public sealed record StorageAnswer(
    double LifeDays, double LifeDaysLow, double LifeDaysHigh, double WeightLossPerWeek, RespirationRate Respiration, IReadOnlyList<KeepCaution> Cautions);

/// <summary>
/// Storage life by published figures. Of a variety whose class is known it is the keeping law that the season plan uses. Without
/// a class it is garlic as the handbooks speak of it: over 9 months at -1 to 0 °C, 1 to 2 months at 20 to 30 °C (UC Davis Produce
/// Facts; USDA AH-66), and the band reaches over what other sources publish of other garlic.
/// </summary>
public static class StorageLife
{
    /// <summary>
    /// Life of varieties that keep long over that of medium ones. The plan's factor (1.21) takes "over 9 months" for 9 at -0.5 °C; this is the
    /// least, to two decimals, at which it is over 9 months of 31 days up to 0 °C. All other published lives of long keepers hold with it.
    /// </summary>
    public const double LongLife = 1.38;

    /// <summary>
    /// Life is known to within this factor either way, with four chances in five: e^(1.533 s), s the standard deviation of the
    /// residuals of the published rows (10 rows, 6 numbers fitted; 1.533 is Student's t for 4).
    /// </summary>
    public const double Band = 1.31;

    /// <summary>°C up to which the handbooks' long cold life is taken, and from which their short warm one; our default, no published value between.</summary>
    private const double ColdUpTo = 1, WarmFrom = 6;

    /// <summary>Pure.</summary>
    public static StorageAnswer Of(StorageQuestion question, KeepingParameters p)
    {
        Climate climate = question.Climate;
        IReadOnlyList<KeepCaution> cautions = KeepCautions.Of(question);
        if (question.Form == GarlicForm.Peeled)
        {
            PeeledLife peeled = PeeledCloves.Life(climate);
            return new StorageAnswer(peeled.Days, peeled.Low, peeled.High, PeeledCloves.WeightLossPerWeek, PeeledCloves.MlCo2PerKgHour(climate.TempC), cautions);
        }

        var traits = new KeepingTraits(KeepClass.Medium, question.Inhibitor && question.Form == GarlicForm.Bulb, question.Cured);
        double loss = KeepingLaw.WeightLoss(p, traits, climate, 0);
        RespirationRate breath = Respiration.MlCo2PerKgHour(climate.TempC);
        if (question.Form == GarlicForm.Seed)
        {
            double days = PlantingStock.LifeDays(p, traits, climate) * Factor(p, question.Keeps ?? KeepClass.Medium);
            return new StorageAnswer(days, days / PlantingStock.Band, days * PlantingStock.Band, loss, breath, cautions);
        }

        double medium = 7 / KeepingLaw.LifeUsed(p, traits, climate);
        if (question.Keeps is { } keeps)
        {
            double days = medium * Factor(p, keeps);
            return new StorageAnswer(days, days / Band, days * Band, loss, breath, cautions);
        }

        double general = medium * Unknown(p, climate.TempC);
        return new StorageAnswer(general, Math.Min(general, medium) / Band, Math.Max(general, medium * LongLife) * Band, loss, breath, cautions);
    }

    private static double Factor(KeepingParameters p, KeepClass keeps) => keeps switch
    {
        KeepClass.Short => p.ShortLife,
        KeepClass.Long => LongLife,
        _ => 1,
    };

    /// <summary>Of garlic of no named class over a medium variety: long in the cold, short in warmth, and a straight line of the logarithm between.</summary>
    private static double Unknown(KeepingParameters p, double tempC)
    {
        double warm = Math.Clamp((tempC - ColdUpTo) / (WarmFrom - ColdUpTo), 0, 1);
        return Math.Pow(LongLife, 1 - warm) * Math.Pow(p.ShortLife, warm);
    }
}
