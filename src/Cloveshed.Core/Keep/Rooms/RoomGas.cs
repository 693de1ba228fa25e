namespace Cloveshed.Core.Keep.Rooms;

/// <summary>A shut room whose oxygen the garlic itself breathes down.</summary>
/// <param name="RoomM3">Inside, empty.</param>
/// <param name="LeakPerDay">Share of the room's free air exchanged with the outside in a day.</param>
/// <param name="ScrubbedTo">Percent of carbon dioxide above which a scrubber takes it out; null without one.</param>
public sealed record RoomGasQuestion(double Tonnes, double RoomM3, double TempC, double O2, double Co2, double LeakPerDay = 0, double? ScrubbedTo = null);

/// <summary>A day's end.</summary>
public readonly record struct RoomGasDay(double Days, double O2, double Co2);

/// <summary>Oxygen drawn down and carbon dioxide made.</summary>
public static class RoomGas
{
    /// <summary>kg per m³ of a bulb itself: 930.45 (Akola 2024); bins' wood is left out.</summary>
    public const double BulbDensity = 930.45;

    /// <summary>Percent of oxygen under which breathing no longer goes by the published rates, falling to nothing at none; our default, no published value.</summary>
    private const double SlowsUnderO2 = 2;

    /// <summary>m³ of carbon dioxide made in a day: published low and high. As much oxygen is taken (a respiratory quotient of 1; ours).</summary>
    public static (double Low, double High) CarbonDioxideM3PerDay(double tonnes, double tempC)
    {
        RespirationRate rate = Respiration.MlCo2PerKgHour(tempC);
        // mL per kg and hour are L per tonne and hour: x 24 / 1000 for m³ a day.
        return (rate.Low * tonnes * 0.024, rate.High * tonnes * 0.024);
    }

    /// <summary>Free air, m³; refused where the garlic would fill the room.</summary>
    public static double FreeM3(double tonnes, double roomM3)
    {
        double free = roomM3 - tonnes * 1000 / BulbDensity;
        return free > 0 ? free : throw new ArgumentOutOfRangeException(nameof(tonnes), tonnes, $"So much garlic does not fit into {roomM3} m³.");
    }

    /// <summary>Pure: hour by hour, a value for each day's end and the start, at the middle published rate.</summary>
    public static IReadOnlyList<RoomGasDay> Days(RoomGasQuestion question, int days)
    {
        double free = FreeM3(question.Tonnes, question.RoomM3);
        (double low, double high) = CarbonDioxideM3PerDay(question.Tonnes, question.TempC);
        double perHour = (low + high) / 2 / free / 24 * 100, leak = question.LeakPerDay / 24;
        (double o2, double co2) = (question.O2, question.Co2);
        var course = new List<RoomGasDay> { new(0, o2, co2) };
        for (int hour = 1; hour <= days * 24; hour++)
        {
            double breathed = Math.Min(o2, perHour * Math.Min(1, o2 / SlowsUnderO2));
            o2 += leak * (KeepingLaw.AirO2 - o2) - breathed;
            co2 += leak * (KeepingLaw.AirCo2 - co2) + breathed;
            if (question.ScrubbedTo is { } most)
                co2 = Math.Min(co2, most);
            if (hour % 24 == 0)
                course.Add(new RoomGasDay(hour / 24, o2, co2));
        }

        return course;
    }

    /// <summary>First day's end with oxygen at the target or under it; null if not within a year.</summary>
    public static double? DaysToO2(RoomGasQuestion question, double target)
    {
        foreach (RoomGasDay day in Days(question, 365))
            if (day.O2 <= target)
                return day.Days;
        return null;
    }
}
