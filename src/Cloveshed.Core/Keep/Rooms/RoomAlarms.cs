using NodaTime;

namespace Cloveshed.Core.Keep.Rooms;

/// <summary>How a reading came: written by hand, from a file, from a device.</summary>
public enum ReadingSource
{
    /// <summary>Somebody read an instrument.</summary>
    Hand,

    /// <summary>From a CSV file.</summary>
    File,

    /// <summary>A device with a key.</summary>
    Device,
}

/// <summary>A room's air at a moment; null where not read. °C and percent.</summary>
public sealed record RoomReading(LocalDateTime At, double? TempC, double? Rh, double? O2, double? Co2, ReadingSource Source, string Who);

/// <summary>Limits of a room; defaults are the published best of garlic.</summary>
/// <param name="ColdestC">-0.8 °C, the highest freezing point (WFLO 2018); lower where the shed means it.</param>
/// <param name="WarmestC">0.5 °C over the published 0; ours.</param>
/// <param name="MostO2">Percent in a sealed room over which air is getting in; ours.</param>
/// <param name="MostCo2">15%: more may injure after 4 to 6 months (Cantwell et al., Acta Hort.).</param>
/// <param name="LeastCo2">5%: what slows sprouting is 5% and more (same); under it the atmosphere is not doing its work.</param>
/// <param name="QuietHours">Hours without a reading after which a room is unwatched; ours.</param>
public sealed record RoomLimits(
    double ColdestC = -0.8, double WarmestC = 0.5, double DriestRh = 60, double DampestRh = 70, double LeastO2 = 0.5, double MostO2 = 5,
    double LeastCo2 = 5, double MostCo2 = 15, double QuietHours = 24);

/// <summary>What is wrong in a room; what to do is said beside each on screen.</summary>
public enum RoomAlarmKind
{
    /// <summary>People could be in air that kills: nobody goes in; doors locked and tagged; call who answers for the room.</summary>
    DeadlyAir,

    /// <summary>May freeze: look at the coldest corner, raise the set point.</summary>
    TooCold,

    /// <summary>Look at doors, fans, defrost and load.</summary>
    TooWarm,

    /// <summary>Dries out: raise the coil's temperature, shorten the fans' hours.</summary>
    TooDry,

    /// <summary>Mould: lower the humidity, look for sweating.</summary>
    TooDamp,

    /// <summary>Under what was tried: let air in by the scrubber or the breather, from outside.</summary>
    OxygenTooLow,

    /// <summary>A leak: look for it from outside.</summary>
    OxygenTooHigh,

    /// <summary>The atmosphere does little: look for a leak, feed less to the scrubber.</summary>
    CarbonDioxideTooLow,

    /// <summary>May injure: scrub.</summary>
    CarbonDioxideTooHigh,

    /// <summary>No reading for too long: read it, look at the device.</summary>
    Unwatched,
}

/// <param name="Value">What was read, in °C, percent or (unwatched) hours since the last reading, and <paramref name="Limit"/> what it passed.</param>
/// <param name="Since">First of the unbroken run of readings over the limit.</param>
/// <summary>An alarm with its figures.</summary>
public sealed record RoomAlarm(RoomAlarmKind Kind, double Value, double Limit, LocalDateTime Since);

/// <summary>A room, its readings in the order of time, and now.</summary>
public sealed record RoomAlarmQuestion(RoomState State, IReadOnlyList<RoomReading> Readings, RoomLimits Limits, LocalDateTime Now);

/// <summary>Readings held against limits: people first.</summary>
public static class RoomAlarms
{
    /// <summary>Pure. An empty room is only watched for air that kills.</summary>
    public static IReadOnlyList<RoomAlarm> Of(RoomAlarmQuestion question)
    {
        var alarms = new List<RoomAlarm>();
        RoomLimits limits = question.Limits;
        void Over(RoomAlarmKind kind, Func<RoomReading, double?> of, double limit, bool under = false)
        {
            RoomReading[] read = [.. question.Readings.Where(r => of(r) is not null)];
            bool Passed(RoomReading r) => under ? of(r)!.Value < limit : of(r)!.Value > limit;
            if (read.Length == 0 || !Passed(read[^1]))
                return;
            int first = read.Length - 1;
            while (first > 0 && Passed(read[first - 1]))
                first--;
            alarms.Add(new RoomAlarm(kind, of(read[^1])!.Value, limit, read[first].At));
        }

        if (!RoomStates.MayBeDeadly(question.State))
        {
            // Where people are at work: any passing is an alarm.
            Over(RoomAlarmKind.DeadlyAir, r => r.O2, AtmosphereLimits.LeastO2, under: true);
            Over(RoomAlarmKind.DeadlyAir, r => r.O2, AtmosphereLimits.MostO2);
            Over(RoomAlarmKind.DeadlyAir, r => r.Co2, AtmosphereLimits.WorkdayCo2Ppm / 10_000.0);
        }

        if (question.State == RoomState.Empty)
            return alarms;
        Over(RoomAlarmKind.TooCold, r => r.TempC, limits.ColdestC, under: true);
        // While bins come in and cool, warm is no alarm.
        if (question.State is RoomState.Sealed or RoomState.Holding)
            Over(RoomAlarmKind.TooWarm, r => r.TempC, limits.WarmestC);
        Over(RoomAlarmKind.TooDry, r => r.Rh, limits.DriestRh, under: true);
        Over(RoomAlarmKind.TooDamp, r => r.Rh, limits.DampestRh);
        if (question.State == RoomState.Sealed)
        {
            Over(RoomAlarmKind.OxygenTooLow, r => r.O2, limits.LeastO2, under: true);
            Over(RoomAlarmKind.OxygenTooHigh, r => r.O2, limits.MostO2);
            Over(RoomAlarmKind.CarbonDioxideTooLow, r => r.Co2, limits.LeastCo2, under: true);
            Over(RoomAlarmKind.CarbonDioxideTooHigh, r => r.Co2, limits.MostCo2);
        }

        LocalDateTime? last = question.Readings.Count > 0 ? question.Readings[^1].At : null;
        double quiet = last is { } at ? Period.Between(at, question.Now, PeriodUnits.Minutes).Minutes / 60.0 : double.PositiveInfinity;
        if (quiet > limits.QuietHours)
            alarms.Add(new RoomAlarm(RoomAlarmKind.Unwatched, quiet, limits.QuietHours, last ?? question.Now));
        return alarms;
    }
}
