using NodaTime;

namespace Cloveshed.Core.Yard;

/// <summary>A published limit that curing passes.</summary>
public enum CuringRule
{
    /// <summary>Air over 45 °C: some cloves go yellow, soft and sticky, early harvests worst (Bayat et al., Acta Hort. 877, 2010).</summary>
    OverFortyFive,

    /// <summary>Over 46 °C: above the published artificial cure of 43 to 46 °C (110 to 115 °F; WFLO Commodity Storage Manual, Garlic, 2018).</summary>
    OverPublishedCure,

    /// <summary>43 °C and more for over 12 hours: the published artificial cure lasts 8 to 12 hours (WFLO 2018).</summary>
    LongHeat,

    /// <summary>Mean humidity over 70% while curing: it is to be kept under (Perennia, Nova Scotia, 2021).</summary>
    Damp,

    /// <summary>More than three weeks to cure: the air is too humid (Perennia, Nova Scotia, 2021).</summary>
    Slow,

    /// <summary>Gaps of more than 6 hours between rows: the weather is not by the hour.</summary>
    Gaps,
}

/// <summary>A limit that was passed.</summary>
/// <param name="Amount">Hours over the temperature, mean humidity in percent, days, or the longest gap in hours, as the rule has it.</param>
/// <param name="Limit">What it is held against, in the same unit.</param>
/// <param name="First">When it happens first.</param>
public sealed record CuringWarning(CuringRule Rule, double Amount, double Limit, LocalDateTime First);

/// <summary>Published limits of heat, time and damp, held against the weather up to the cured date (all of it where that is not reached).</summary>
public static class CuringWarnings
{
    /// <summary>°C and hours of the published artificial cure (WFLO 2018: 110 to 115 °F, 8 to 12 h).</summary>
    public const double CureFromC = 43, CureToC = 46, CureMostHours = 12;

    /// <summary>°C over which early bulbs are harmed (Bayat et al. 2010).</summary>
    public const double HarmC = 45;

    /// <summary>Percent, and days.</summary>
    public const double DampRh = 70, SlowDays = 21;

    private const double LongestGap = 6;

    /// <summary>Pure.</summary>
    public static IReadOnlyList<CuringWarning> Of(IReadOnlyList<WeatherRow> weather, LocalDateTime? curedAt)
    {
        int rows = weather.Count(row => curedAt is null || row.From <= curedAt);
        double overHarm = 0, overCure = 0, hot = 0, hours = 0, damp = 0, gap = 0;
        LocalDateTime start = weather[0].From, firstHarm = start, firstCure = start, firstHot = start, firstGap = start;
        for (int i = 0; i < rows; i++)
        {
            double each = Curing.Hours(weather, i);
            (double tempC, double rh) = weather[i].Felt();
            Count(tempC > HarmC, each, weather[i].From, ref overHarm, ref firstHarm);
            Count(tempC > CureToC, each, weather[i].From, ref overCure, ref firstCure);
            Count(tempC >= CureFromC, each, weather[i].From, ref hot, ref firstHot);
            hours += each;
            damp += each * rh;
            if (each > Math.Max(gap, LongestGap))
                (gap, firstGap) = (each, weather[i].From);
        }

        double days = curedAt is { } at ? Period.Between(start, at, PeriodUnits.Seconds).Seconds / 86400.0 : hours / 24;
        var warnings = new List<CuringWarning>();
        if (overHarm > 0)
            warnings.Add(new CuringWarning(CuringRule.OverFortyFive, overHarm, HarmC, firstHarm));
        if (overCure > 0)
            warnings.Add(new CuringWarning(CuringRule.OverPublishedCure, overCure, CureToC, firstCure));
        if (hot > CureMostHours)
            warnings.Add(new CuringWarning(CuringRule.LongHeat, hot, CureMostHours, firstHot));
        if (damp / hours > DampRh)
            warnings.Add(new CuringWarning(CuringRule.Damp, damp / hours, DampRh, start));
        if (days > SlowDays)
            warnings.Add(new CuringWarning(CuringRule.Slow, days, SlowDays, start));
        if (gap > LongestGap)
            warnings.Add(new CuringWarning(CuringRule.Gaps, gap, LongestGap, firstGap));
        return warnings;
    }

    private static void Count(bool yes, double hours, LocalDateTime at, ref double sum, ref LocalDateTime first)
    {
        if (!yes)
            return;
        if (sum == 0)
            first = at;
        sum += hours;
    }
}
