using Cloveshed.Core;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Yard;
using Cloveshed.Ledger.Yard;
using NodaTime;

namespace Cloveshed.Web.Yard;

/// <summary>Sacks of lots that were dug on one day in one place, and what they say.</summary>
/// <param name="Answer">Null where it could not be reckoned: <paramref name="Why"/> says why not.</param>
public sealed record YardSacks(LocalDate Dug, IReadOnlyList<LotId> Lots, IReadOnlyList<SackWeight> Weights, CalibrationAnswer? Answer, SacksLack Why);

/// <summary>Why sacks say nothing yet.</summary>
public enum SacksLack { None, OneWeighing, NoWeather }

/// <summary>What is known of a curing place: its weather, its drying, and the sacks that it rests on.</summary>
/// <param name="Hours">Rows of weather that somebody told; without any, days are as the description, else as the season's files have the place.</param>
/// <param name="Described">Somebody said what the place is.</param>
public sealed record YardSight(Place Place, YardIs? Described, IReadOnlyList<WeatherRow> Hours, YardKnowledge Knowledge, IReadOnlyList<YardSacks> Sacks);

/// <summary>A row of a lot that cures in an open place.</summary>
/// <param name="HoursTold">Of the weather that it is reckoned from, hours that somebody told; the rest are typical days.</param>
public sealed record CuringRow(LotRow Row, CuringAnswer Answer, double HoursTold, double HoursTypical);

/// <summary>Curing of every row that stands in an open place and is not known to be cured, by the weather that the shed has.</summary>
public sealed class CuringBook
{
    /// <summary>Rows dug longer ago than this are no longer shown: whatever their files say, they are cured. Ours, no source.</summary>
    private const int LongestDays = 90;

    /// <summary>Typical days by which the weather is carried on beyond what is told.</summary>
    private const int MostDays = 60;

    private static readonly CuringParameters P = CuringParameters.Default;

    private readonly Season season;
    private readonly YardLog log;

    public CuringBook(Season season, YardLog log, LocalDate today)
    {
        (this.season, this.log) = (season, log);
        Yards = [.. season.Places.Where(place => place.Kind == PlaceKind.Open).Select(Sight)];
        Rows =
        [
            .. season.Lots.Where(row => row.Cured != true && row.Net > 0 && row.Harvested <= today && row.Harvested.PlusDays(LongestDays) >= today && Yards.Any(yard => yard.Place.Id == row.Place))
                .Select(row => Cure(row, Yards.First(yard => yard.Place.Id == row.Place), today)).OrderBy(row => row.Answer.CuredAt ?? LocalDateTime.MaxIsoValue).ThenBy(row => row.Row.Lot.Text, StringComparer.Ordinal),
        ];
    }

    public IReadOnlyList<YardSight> Yards { get; }

    /// <summary>First to be cured on top.</summary>
    public IReadOnlyList<CuringRow> Rows { get; }

    /// <summary>The day that stands for weather nobody told: the description's, else one that has the week's mean air by the season's files, without a swing.</summary>
    public TypicalDay DayOf(YardSight yard, LocalDate day)
    {
        if (yard.Described?.Day is { } described)
        {
            return described;
        }

        Climate air = PlaceClimate.Of(season, yard.Place, season.Settings.WeekOf(day), false, ClimateDefaults.Default);
        return new TypicalDay(air.TempC, air.TempC, air.Rh, air.Rh);
    }

    private CuringRow Cure(LotRow row, YardSight yard, LocalDate today)
    {
        (IReadOnlyList<WeatherRow> weather, double told, double typical) = Weather(yard, row.Harvested, LocalDate.Max(today, row.Harvested));
        CuringAnswer answer = Curing.Of(new CuringQuestion(weather, P, KeepingParameters.Default, yard.Knowledge, yard.Described?.ForcedC ?? CuringParameters.ReferenceC, MostDays));
        return new CuringRow(row, answer, told, typical);
    }

    /// <summary>From noon of the day of digging on: told hours, and typical ones where none was told for six hours; to today's end or as far as a forecast reaches.</summary>
    private (IReadOnlyList<WeatherRow> Rows, double Told, double Typical) Weather(YardSight yard, LocalDate dug, LocalDate today)
    {
        const int Gap = 6;
        LocalDateTime at = dug.AtMidnight().PlusHours(12), end = today.PlusDays(1).AtMidnight();
        WeatherRow[] told = [.. yard.Hours.Where(row => row.From >= at)];
        if (told.Length > 0 && told[^1].From.PlusHours(1) > end)
        {
            end = told[^1].From.PlusHours(1);
        }

        List<WeatherRow> rows = [];
        double hoursTold = 0, hoursTypical = 0;
        int next = 0;
        while (at < end)
        {
            if (next < told.Length && told[next].From < at.PlusHours(1))
            {
                WeatherRow row = told[next++];
                rows.Add(yard.Described is { Roof: true } ? row with { RainMm = 0 } : row);
                LocalDateTime until = next < told.Length && Hours(row.From, told[next].From) <= Gap ? told[next].From : row.From.PlusHours(1);
                hoursTold += Hours(row.From, until);
                at = until;
                continue;
            }

            rows.Add(TypicalWeather.Days(DayOf(yard, at.Date), at.Date, 1)[at.Hour] with { From = at });
            LocalDateTime full = at.Date.AtMidnight().PlusHours(at.Hour + 1), then = next < told.Length ? LocalDateTime.Min(full, told[next].From) : full;
            hoursTypical += Hours(at, then);
            at = then;
        }

        if (rows.Count == 1)
        {
            rows.Add(rows[0] with { From = rows[0].From.PlusHours(1) });
        }

        return (rows, hoursTold, hoursTypical);
    }

    private YardSight Sight(Place place)
    {
        YardSight yard = new(place, log.YardOf(place.Id), log.WeatherOf(place.Id), YardKnowledge.None(P), []);
        List<YardSacks> all = [];
        foreach (IGrouping<LocalDate, LotRow> dug in season.Lots.Where(row => row.Place == place.Id).GroupBy(row => row.Harvested).OrderBy(group => group.Key))
        {
            LotId[] lots = [.. dug.Select(row => row.Lot).Distinct().Where(lot => log.SacksOf(lot).Count > 0)];
            if (lots.Length == 0)
            {
                continue;
            }

            YardSacks sacks = Calibrate(yard, dug.Key, lots);
            all.Add(sacks);
            if (sacks.Answer is { } answer)
            {
                // Each day's sacks start from what the days before left: their numbers are factors on top of it.
                yard = yard with
                {
                    Knowledge = new YardKnowledge(
                        yard.Knowledge.LnRate + answer.Yard.LnRate, answer.Yard.LnRateSd, yard.Knowledge.LnGreen + answer.Yard.LnGreen, answer.Yard.LnGreenSd,
                        yard.Knowledge.LnClove + answer.Yard.LnClove, answer.Yard.LnCloveSd),
                };
            }
        }

        return yard with { Sacks = all };
    }

    private YardSacks Calibrate(YardSight yard, LocalDate dug, LotId[] lots)
    {
        SackWeight[] weights = [.. lots.SelectMany(lot => log.SacksOf(lot).Select(sack => new SackWeight($"{lot} · {sack.Said.Sack}", sack.At, Kilograms(sack.Said))))];
        YardSacks Lacking(SacksLack why) => new(dug, lots, weights, null, why);
        if (!weights.GroupBy(sack => sack.Sack).Any(group => group.Select(sack => sack.At).Distinct().Count() > 1))
        {
            return Lacking(SacksLack.OneWeighing);
        }

        LocalDateTime last = weights.Max(sack => sack.At);
        (IReadOnlyList<WeatherRow> weather, double told, _) = Weather(yard, dug, last.Date);
        SackWeight[] within = [.. weights.Where(sack => sack.At >= weather[0].From)];
        // Drying that nobody saw the weather of says nothing of the yard.
        if (told < 24 || !within.GroupBy(sack => sack.Sack).Any(group => group.Select(sack => sack.At).Distinct().Count() > 1))
        {
            return Lacking(SacksLack.NoWeather);
        }

        CuringParameters prior = yard.Knowledge.In(P) with { RateSd = yard.Knowledge.LnRateSd, GreenSd = yard.Knowledge.LnGreenSd, CloveSd = yard.Knowledge.LnCloveSd };
        return new YardSacks(dug, lots, weights, SackCalibration.Of(new CalibrationQuestion(weather, within, prior, KeepingParameters.Default)), SacksLack.None);
    }

    private static double Kilograms(SackSaid sack) => sack.Unit == MassUnit.Kilogram ? sack.Weight : sack.Weight * Core.Quantities.Mass.KilogramsPerPound;

    private static double Hours(LocalDateTime from, LocalDateTime to) => Period.Between(from, to, PeriodUnits.Seconds).Seconds / 3600.0;
}
