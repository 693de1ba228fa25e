using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Air;
using NodaTime;

namespace Cloveshed.Core.Yard;

/// <summary>What a yard knows of its own drying, as logarithms of factors on NeckRate, GreenShare and CloveLoss with their standard deviations.</summary>
public sealed record YardKnowledge(double LnRate, double LnRateSd, double LnGreen, double LnGreenSd, double LnClove = 0, double LnCloveSd = 0)
{
    /// <summary>Before any sack was weighed.</summary>
    public static YardKnowledge None(CuringParameters p) => new(0, p.RateSd, 0, p.GreenSd, 0, p.CloveSd);

    /// <summary>The coefficients with this knowledge in them.</summary>
    public CuringParameters In(CuringParameters p, double rateDeviates = 0)
    {
        double sd = Math.Sqrt(LnRateSd * LnRateSd + p.TimeSd * p.TimeSd);
        return p with
        {
            NeckRate = p.NeckRate * Math.Exp(LnRate + rateDeviates * sd), GreenShare = Math.Min(0.9, p.GreenShare * Math.Exp(LnGreen)),
            CloveLoss = p.CloveLoss * Math.Exp(LnClove),
        };
    }
}

/// <summary>Weather, and what is known of the yard.</summary>
/// <param name="Weather">From the moment of digging, in order of time, at least two rows.</param>
/// <param name="ForcedC">°C of the forced air by which hours are counted where the weather does not cure; 40.6 °C (105 °F) by default.</param>
/// <param name="MostDays">How long typical days (the last day again and again, without rain) are put after the weather's end; 0 for never.</param>
public sealed record CuringQuestion(
    IReadOnlyList<WeatherRow> Weather, CuringParameters P, KeepingParameters Keep, YardKnowledge Yard, double ForcedC = CuringParameters.ReferenceC, int MostDays = 60);

/// <summary>When a lot is cured and what it weighs then.</summary>
/// <param name="CuredAt">First moment at which skins and neck are dry; null if never within the time looked at.</param>
/// <param name="Low80">10% of yards like this one are sooner.</param>
/// <param name="High80">10% are later; null if they are not cured within the time.</param>
/// <param name="BeyondWeather">CuredAt lies after the last row: it rests on typical days.</param>
/// <param name="WeightLoss">Share of the dug weight lost by CuredAt, or by the end of the weather where it is not cured.</param>
/// <param name="LossLow80">10% are under it, by what is known of the yard.</param>
/// <param name="WetThen">Water in the bulb at the same moment, share of its weight.</param>
/// <param name="ForcedHours">Hours in forced air that would finish it from the end of the weather; 0 when cured by then, null when even that does not (damp weather).</param>
/// <param name="RewetAfter">Rain after CuredAt made it wet again.</param>
public sealed record CuringAnswer(
    LocalDateTime? CuredAt, LocalDateTime? Low80, LocalDateTime? High80, bool BeyondWeather, double WeightLoss, double LossLow80, double LossHigh80,
    double WetThen, double? ForcedHours, bool RewetAfter, IReadOnlyList<CuringPoint> Track, IReadOnlyList<CuringWarning> Warnings)
{
    /// <summary>After the weather's end, hour by hour on typical days, until it is cured or for as long as is looked; empty where the weather cures it.</summary>
    public IReadOnlyList<CuringPoint> Ahead { get; init; } = [];
}

/// <summary>A moment of the track: water in skins and neck (share of their weight) and weight over dug weight.</summary>
public readonly record struct CuringPoint(LocalDateTime At, double SkinWet, double NeckWet, double MassRatio);

/// <summary>From weather to the cured date.</summary>
public static class Curing
{
    /// <summary>A standard normal falls under this with a chance of nine in ten.</summary>
    private const double Ninth = 1.2815515655446004;

    /// <summary>Pure.</summary>
    public static CuringAnswer Of(CuringQuestion question)
    {
        IReadOnlyList<WeatherRow> weather = question.Weather;
        if (weather.Count < 2)
            throw new ArgumentException("Curing needs weather over time: two rows or more.", nameof(question));
        for (int i = 1; i < weather.Count; i++)
            if (weather[i].From <= weather[i - 1].From)
                throw new ArgumentException($"Weather is in order of time: {weather[i].From} comes after {weather[i - 1].From}.", nameof(question));

        CuringParameters p = question.Yard.In(question.P);
        Passage middle = Through(question, p, keepTrack: true);
        Passage quick = Through(question, question.Yard.In(question.P, Ninth), keepTrack: false), slow = Through(question, question.Yard.In(question.P, -Ninth), keepTrack: false);
        CuringState then = middle.CuredState ?? middle.AtEnd;
        CuringParameters Green(double deviates) => p with { GreenShare = Math.Min(0.9, p.GreenShare * Math.Exp(deviates * question.Yard.LnGreenSd)) };
        return new CuringAnswer(
            middle.CuredAt, quick.CuredAt, slow.CuredAt, middle.CuredAt > middle.End, 1 - CuringLaw.MassRatio(p, then),
            1 - CuringLaw.MassRatio(Green(-Ninth), then), 1 - CuringLaw.MassRatio(Green(Ninth), then), CuringLaw.Wet(p, then),
            middle.CuredAt <= middle.End ? 0 : ForcedHours(question, p, middle.AtEnd), middle.Rewet, middle.Track,
            CuringWarnings.Of(weather, middle.CuredAt)) { Ahead = middle.Ahead };
    }

    /// <summary>Hours that each row stands for: to the next row; the last as long as the one before it.</summary>
    internal static double Hours(IReadOnlyList<WeatherRow> weather, int row)
    {
        int i = Math.Min(row, weather.Count - 2);
        return Period.Between(weather[i].From, weather[i + 1].From, PeriodUnits.Ticks).Ticks / (double)NodaConstants.TicksPerHour;
    }

    private sealed record Passage(LocalDateTime? CuredAt, CuringState? CuredState, CuringState AtEnd, LocalDateTime End, bool Rewet, IReadOnlyList<CuringPoint> Track, IReadOnlyList<CuringPoint> Ahead);

    private static Passage Through(CuringQuestion question, CuringParameters p, bool keepTrack)
    {
        IReadOnlyList<WeatherRow> weather = question.Weather;
        CuringState state = CuringLaw.Dug(p);
        LocalDateTime? curedAt = null;
        CuringState? curedState = null;
        bool rewet = false;
        List<CuringPoint> track = [], ahead = [];
        void Go(WeatherRow row, LocalDateTime from, double hours)
        {
            CuringState next = CuringLaw.After(p, question.Keep, state, row, hours);
            if (curedAt is null && CuringLaw.Cured(p, next))
            {
                double into = Moment(p, question.Keep, state, row, hours);
                curedAt = from.PlusSeconds((long)Math.Round(into * 3600));
                curedState = CuringLaw.After(p, question.Keep, state, row, into);
            }
            else if (curedAt is not null && !CuringLaw.Cured(p, next) && row.RainMm > 0)
            {
                rewet = true;
            }

            state = next;
        }

        for (int i = 0; i < weather.Count; i++)
        {
            if (keepTrack)
                track.Add(Point(p, weather[i].From, state));
            Go(weather[i], weather[i].From, Hours(weather, i));
        }

        LocalDateTime end = weather[^1].From.PlusSeconds((long)Math.Round(Hours(weather, weather.Count - 1) * 3600));
        CuringState atEnd = state;
        bool rewetInWeather = rewet;
        if (keepTrack)
            track.Add(Point(p, end, state));
        WeatherRow[] day = LastDay(weather, end);
        LocalDateTime at = end, last = end.PlusDays(question.MostDays);
        while (curedAt is null && at < last)
            for (int i = 0; i < day.Length && curedAt is null; i++)
            {
                double hours = 24.0 / day.Length;
                Go(day[i], at, hours);
                at = at.PlusSeconds((long)Math.Round(hours * 3600));
                if (keepTrack)
                    ahead.Add(Point(p, at, state));
            }

        return new Passage(curedAt, curedState, atEnd, end, rewetInWeather, track, ahead);
    }

    /// <summary>The last 24 hours again, dry, in 24 equal stretches; less weather than a day is repeated as it is.</summary>
    private static WeatherRow[] LastDay(IReadOnlyList<WeatherRow> weather, LocalDateTime end)
    {
        LocalDateTime first = weather[0].From;
        var day = new WeatherRow[24];
        for (int hour = 0; hour < 24; hour++)
        {
            LocalDateTime at = end.PlusHours(hour - 24);
            while (at < first)
                at = at.PlusSeconds(Math.Max(1, Period.Between(first, end, PeriodUnits.Seconds).Seconds));
            day[hour] = weather.Last(row => row.From <= at) with { RainMm = 0 };
        }

        return day;
    }

    // Within a row skins and neck go one way only, so the moment is found by halving.
    private static double Moment(CuringParameters p, KeepingParameters keep, CuringState state, WeatherRow row, double hours)
    {
        double low = 0, high = hours;
        for (int i = 0; i < 40; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = CuringLaw.Cured(p, CuringLaw.After(p, keep, state, row, middle)) ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static double? ForcedHours(CuringQuestion question, CuringParameters p, CuringState state)
    {
        IReadOnlyList<WeatherRow> weather = question.Weather;
        double hours = 0, water = 0;
        for (int i = 0; i < weather.Count; i++)
        {
            double each = Hours(weather, i);
            hours += each;
            water += each * MoistAir.Of(weather[i].TempC, weather[i].Rh).HumidityRatio;
        }

        // Outside air with the mean water of the weather, warmed.
        double most = MoistAir.SaturatedRatio(question.ForcedC, MoistAir.StandardPressurePa);
        double rh = MoistAir.Holding(question.ForcedC, Math.Min(water / hours, most)).Rh;
        var row = new WeatherRow(weather[^1].From, question.ForcedC, rh);
        const double Longest = 24 * 30;
        return CuringLaw.Cured(p, CuringLaw.After(p, question.Keep, state, row, Longest)) ? Moment(p, question.Keep, state, row, Longest) : null;
    }

    private static CuringPoint Point(CuringParameters p, LocalDateTime at, CuringState state) =>
        new(at, state.Skin / (1 + state.Skin), state.Neck / (1 + state.Neck), CuringLaw.MassRatio(p, state));
}
