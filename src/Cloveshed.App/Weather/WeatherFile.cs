using Cloveshed.App.Words;
using Cloveshed.Core.Yard;
using NodaTime;

namespace Cloveshed.App.Weather;

/// <summary>A weather file, read.</summary>
/// <param name="HumidityAsShares">No value of rh was over 1, so they were taken for shares.</param>
internal sealed record WeatherRead(IReadOnlyList<WeatherRow> Rows, Offset? Offset, IReadOnlyList<string> Unknown, bool HumidityAsShares);

/// <summary>WEATHER.csv: time, temp_c, rh, and rain_mm, wind_ms, forced_c where they are known; in the order of time.</summary>
internal static class WeatherFile
{
    /// <summary>The columns and the other names that each may go by.</summary>
    public static IReadOnlyList<string[]> Columns { get; } =
    [
        ["time", "timestamp", "datetime", "date_time", "local_time", "from", "at", "tiempo", "fecha_hora"],
        ["date", "day", "fecha"],
        ["hour", "hora"],
        ["temp_c", "temp", "temperature", "temperature_c", "temp_degc", "t", "t_c", "tair", "tair_c", "air_temp", "air_temp_c", "air_temperature", "air_temperature_c", "dry_bulb", "dry_bulb_c", "celsius", "temperatura"],
        ["temp_f", "temperature_f", "air_temp_f", "air_temperature_f", "dry_bulb_f", "fahrenheit"],
        ["rh", "rh_pct", "rh_percent", "rh_perc", "humidity", "humidity_pct", "relative_humidity", "relative_humidity_pct", "rel_humidity", "humedad"],
        ["rain_mm", "rain", "rainfall", "rainfall_mm", "precip", "precip_mm", "precipitation", "precipitation_mm", "lluvia", "lluvia_mm"],
        ["rain_in", "rainfall_in", "precip_in", "precipitation_in"],
        ["wind_ms", "wind", "wind_m_s", "wind_mps", "wind_speed", "wind_speed_ms", "wind_speed_m_s", "windspeed", "viento"],
        ["wind_kmh", "wind_kph", "wind_km_h", "wind_speed_kmh"],
        ["wind_mph", "wind_speed_mph"],
        ["forced_c", "forced", "forced_air_c", "forced_temp_c", "heated_c"],
        ["forced_f", "forced_air_f", "forced_temp_f", "heated_f"],
    ];

    public static WeatherRead Read(string file, Phrasebook phrases)
    {
        Sheet sheet = Sheet.Read(file, Columns, phrases);
        if (sheet.Rows.Count < 2)
        {
            throw new SheetRefused(phrases.Say(Phrase.SheetTwoRows, file, sheet.Rows.Count));
        }

        Moments moments = new(sheet, phrases);
        var rows = new List<(WeatherRow Row, SheetCell Humidity)>();
        foreach (SheetRow row in sheet.Rows)
        {
            LocalDateTime at = moments.Of(row);
            if (rows.Count > 0 && at <= rows[^1].Row.From)
            {
                throw sheet.Refused((row["time"] ?? row["date"])!, phrases.Say(Phrase.SheetOrderExpected, Moments.Text(rows[^1].Row.From, moments.Offset)), phrases[Phrase.SheetMendOrder], phrases);
            }

            SheetCell humidity = sheet.Needed(row, "rh", Phrase.SheetHumidityExample, phrases);
            rows.Add((new WeatherRow(
                at,
                sheet.Columns.Contains("temp_f") ? Celsius(sheet.Number(sheet.Needed(row, "temp_f", Phrase.SheetTempExample, phrases), -76, 176, phrases))
                    : sheet.Number(sheet.Needed(row, "temp_c", Phrase.SheetTempExample, phrases), -60, 80, phrases),
                sheet.Number(humidity, 0, 100, phrases),
                Given(row, "rain_mm", 0, 1000, 1) ?? Given(row, "rain_in", 0, 40, 25.4) ?? 0,
                Given(row, "wind_ms", 0, 100, 1) ?? Given(row, "wind_kmh", 0, 360, 1 / 3.6) ?? Given(row, "wind_mph", 0, 220, 0.44704),
                Given(row, "forced_c", -20, 80, 1) ?? (row["forced_f"] is { } hot ? Celsius(sheet.Number(hot, -4, 176, phrases)) : null)), humidity));
        }

        bool shares = rows.All(row => row.Row.Rh <= 1) && rows.Any(row => row.Row.Rh > 0);
        return new([.. rows.Select(row => shares ? row.Row with { Rh = row.Row.Rh * 100 } : row.Row)], moments.Offset, sheet.Unknown, shares);

        double? Given(SheetRow row, string column, double low, double high, double factor) =>
            row[column] is { } cell ? sheet.Number(cell, low, high, phrases) * factor : null;
    }

    private static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;
}
