using NodaTime;

namespace Cloveshed.Core.Keep.Clocks;

/// <summary>One reading of a place's air; gases null where not read.</summary>
public sealed record ClimateReading(LocalDateTime At, double TempC, double Rh, double? O2 = null, double? Co2 = null);

/// <summary>A lot stood in a place from one moment (included) to another (excluded).</summary>
public sealed record LotStay(PlaceId Place, LocalDateTime From, LocalDateTime To);

/// <summary>Where a lot stood, and what was read there.</summary>
/// <param name="Stays">In the order of time, without overlap.</param>
/// <param name="Readings">By place, in the order of time.</param>
/// <param name="Otherwise">The air of a place at a moment where nothing was read; and its gases where only these were not.</param>
/// <param name="HoldHours">How long a reading holds after it was taken; our default of 6.</param>
public sealed record HistoryQuestion(
    KeepingTraits Traits, LocalDate Harvested, IReadOnlyList<LotStay> Stays, IReadOnlyDictionary<PlaceId, IReadOnlyList<ClimateReading>> Readings,
    Func<PlaceId, LocalDateTime, Climate> Otherwise, KeepingParameters P, double HoldHours = 6);

/// <summary>The clocks after a history, and how much of it rests on readings.</summary>
public sealed record HistoryAnswer(LotClocks Clocks, double HoursRead, double HoursAssumed, double ColdestC, double WarmestC);

/// <summary>Weight and life used hour by hour along the places where a lot really stood.</summary>
public static class LotHistory
{
    /// <summary>Pure. Each hour has the last reading before its middle that still holds, else what is assumed of the place.</summary>
    public static HistoryAnswer Of(HistoryQuestion question)
    {
        LotClocks clocks = LotClocks.Fresh;
        double read = 0, assumed = 0, coldest = double.PositiveInfinity, warmest = double.NegativeInfinity;
        LocalDateTime before = LocalDateTime.FromDateTime(DateTime.MinValue);
        foreach (LotStay stay in question.Stays)
        {
            if (stay.To < stay.From || stay.From < before)
                throw new ArgumentException($"Stays follow each other in time: {stay.Place} from {stay.From} to {stay.To} comes after {before}.", nameof(question));
            before = stay.To;
            IReadOnlyList<ClimateReading> readings = question.Readings.GetValueOrDefault(stay.Place) ?? [];
            int next = 0;
            for (LocalDateTime at = stay.From; at < stay.To;)
            {
                LocalDateTime end = LocalDateTime.Min(at.PlusHours(1), stay.To);
                double hours = Hours(at, end);
                LocalDateTime middle = at.PlusSeconds((long)(hours * 1800));
                while (next < readings.Count && readings[next].At <= middle)
                    next++;
                ClimateReading? last = next > 0 && Hours(readings[next - 1].At, middle) <= question.HoldHours ? readings[next - 1] : null;
                Climate climate = question.Otherwise(stay.Place, at);
                if (last is not null)
                    climate = new Climate(last.TempC, last.Rh, last.O2 ?? climate.O2, last.Co2 ?? climate.Co2);
                (read, assumed) = last is null ? (read, assumed + hours) : (read + hours, assumed);
                (coldest, warmest) = (Math.Min(coldest, climate.TempC), Math.Max(warmest, climate.TempC));
                int weeks = Math.Max(0, Period.DaysBetween(question.Harvested, at.Date)) / 7;
                clocks = clocks.After(question.P, question.Traits, climate, hours, weeks);
                at = end;
            }
        }

        return new HistoryAnswer(clocks, read, assumed, coldest, warmest);
    }

    private static double Hours(LocalDateTime from, LocalDateTime to) => Period.Between(from, to, PeriodUnits.Seconds).Seconds / 3600.0;
}
