using Cloveshed.Core.Keep;
using NodaTime;

namespace Cloveshed.Core.Yard;

/// <summary>
/// The air around curing garlic from a moment on, until the next row's moment. Local time, because bulbs know no zones: rows
/// across a change of the clocks are for the reader to put right.
/// </summary>
/// <param name="TempC">Outside air, °C.</param>
/// <param name="Rh">Its relative humidity, percent.</param>
/// <param name="RainMm">Rain that fell on the garlic in the row's stretch; 0 under a roof.</param>
/// <param name="WindMs">Moving air, m/s; null where not known, which counts as enough.</param>
/// <param name="ForcedC">°C to which outside air is warmed and blown through the garlic; null without.</param>
public sealed record WeatherRow(LocalDateTime From, double TempC, double Rh, double RainMm = 0, double? WindMs = null, double? ForcedC = null)
{
    /// <summary>What the garlic feels: forced air holds the outside air's water at its own temperature, so it is drier.</summary>
    public (double TempC, double Rh) Felt()
    {
        if (ForcedC is not { } warm)
            return (TempC, Rh);
        double rh = Rh * SaturatedAir.PressureKpa(TempC) / SaturatedAir.PressureKpa(warm);
        return (warm, Math.Min(rh, 100));
    }
}

/// <summary>A day of which only the extremes are known.</summary>
public sealed record TypicalDay(double MinC, double MaxC, double RhAtMax, double RhAtMin);

/// <summary>Weather by the hour where only a typical day is known.</summary>
public static class TypicalWeather
{
    private const int ColdestHour = 6, WarmestHour = 15;

    /// <summary>
    /// So many days, hour by hour from midnight. Temperature swings by half cosines between the coldest hour (6) and the
    /// warmest (15; both our defaults). The day's vapour pressure is one: (e(min) x RH at min + e(max) x RH at max) / 2, FAO
    /// Irrigation and Drainage Paper 56 (1998), equation 17; humidity follows from it.
    /// </summary>
    public static IReadOnlyList<WeatherRow> Days(TypicalDay day, LocalDate first, int days)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(day.MaxC, day.MinC, nameof(day));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(days);
        double vapour = VapourKpa(day);
        var rows = new List<WeatherRow>(days * 24);
        for (int d = 0; d < days; d++)
            for (int hour = 0; hour < 24; hour++)
            {
                double tempC = TempAt(day, hour);
                rows.Add(new WeatherRow(first.PlusDays(d).AtMidnight().PlusHours(hour), tempC, Math.Min(100, 100 * vapour / SaturatedAir.PressureKpa(tempC))));
            }

        return rows;
    }

    /// <summary>The day's vapour pressure, kPa.</summary>
    public static double VapourKpa(TypicalDay day) =>
        (SaturatedAir.PressureKpa(day.MinC) * day.RhAtMin + SaturatedAir.PressureKpa(day.MaxC) * day.RhAtMax) / 200;

    private static double TempAt(TypicalDay day, int hour)
    {
        bool rising = hour is >= ColdestHour and < WarmestHour;
        double since = rising ? hour - ColdestHour : (hour - WarmestHour + 24) % 24;
        double length = rising ? WarmestHour - ColdestHour : 24 - (WarmestHour - ColdestHour);
        double part = (1 - Math.Cos(Math.PI * since / length)) / 2;
        return rising ? day.MinC + part * (day.MaxC - day.MinC) : day.MaxC - part * (day.MaxC - day.MinC);
    }
}
