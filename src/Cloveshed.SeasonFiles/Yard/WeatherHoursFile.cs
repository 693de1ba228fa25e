using Cloveshed.Core.Yard;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using Cloveshed.SeasonFiles.Rooms;
using Cloveshed.SeasonFiles.Weighing;
using NodaTime;

namespace Cloveshed.SeasonFiles.Yard;

/// <summary>at, temp_c, rh, rain_mm, wind_ms, forced_c: the weather of one place by the hour, in any order of columns and rows.</summary>
public static class WeatherHoursFile
{
    /// <summary>Two years by the hour; a longer file comes in parts.</summary>
    public const int MostRows = 20_000;

    // 500 mm of rain in an hour has never fallen, nor has 100 m/s of wind dried garlic; 80 °C cooks it.
    private static readonly Bounds Rain = new(0, 500), Wind = new(0, 100), Forced = new(-40, 80, FaultRule.CelsiusRange);

    /// <summary>Every fault at once; with any, no row. Rows come back in the order of time, by the shed's clock.</summary>
    /// <param name="here">For moments without an offset, and to which the others are brought.</param>
    /// <param name="latest">How far ahead a forecast may reach.</param>
    public static FileReading<IReadOnlyList<WeatherRow>> Parse(string name, ReadOnlyMemory<byte> bytes, TimeZoneInfo here, DateTimeOffset latest, TextLanguage language) =>
        OneFile.Parse<IReadOnlyList<WeatherRow>>(name, bytes, language, (all, faults) => Parse(name, all, here, latest, faults));

    private static List<WeatherRow>? Parse(string name, ReadOnlyMemory<byte> bytes, TimeZoneInfo here, DateTimeOffset latest, FaultList faults)
    {
        FileLayout layout = new(name, needed: true, MostRows);
        Column at = layout.NeededText("at"), temp = layout.NeededNumber("temp_c", Bounds.Celsius), rh = layout.NeededNumber("rh", Bounds.Percent);
        Column rain = layout.Number("rain_mm", Rain), wind = layout.Number("wind_ms", Wind), forced = layout.Number("forced_c", Forced);
        Table table = new(layout, bytes, faults);
        RowKeys keys = new(at);
        List<WeatherRow> rows = [];
        while (table.Next())
        {
            Cells cells = table.Cells;
            DateTimeOffset? when = ReadingsFile.Moment(table, at, here, latest);
            LocalDateTime local = when is { } moment ? LocalDateTime.FromDateTime(TimeZoneInfo.ConvertTime(moment, here).DateTime) : default;
            keys.Take(table, when is null ? null : local.ToString("uuuu-MM-dd'T'HH:mm", System.Globalization.CultureInfo.InvariantCulture));
            double? tempC = cells.Number(temp), humidity = cells.Number(rh), fell = cells.Number(rain), blew = cells.Number(wind), warmed = cells.Number(forced);
            if (table.RowSound)
                rows.Add(new WeatherRow(local, tempC!.Value, humidity!.Value, fell ?? 0, blew, warmed));
        }

        OneFile.NeedRows(table, rows.Count, "weather", faults);
        return faults.Count == 0 ? [.. rows.OrderBy(row => row.From)] : null;
    }
}
