using System.Globalization;
using System.Text.Json;
using Cloveshed.Check.Reading;

namespace Cloveshed.Check.Season;

/// <summary>
/// Reads the season's folder. It is not the season's own examination: only what the check stands on is read, and a fault in
/// that ends the check, for without it no answer can be judged.
/// </summary>
internal static class SeasonReading
{
    private const int MostWeeks = 1040;

    public static SeasonData? Read(string folder, Findings findings)
    {
        if (Settings(folder, findings) is not SeasonData season)
        {
            return null;
        }

        GarlicReading.Read(folder, season, findings);
        ShedReading.Read(folder, season, findings);
        TradeReading.Read(folder, season, findings);
        return findings.None ? season : null;
    }

    private static SeasonData? Settings(string folder, Findings findings)
    {
        const string file = "season.json";
        if (FileText.Read(folder, file, season: true, findings) is not string text)
        {
            return null;
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            if (document.RootElement.ValueKind == JsonValueKind.Object)
            {
                return Settings(document.RootElement, findings);
            }
        }
        catch (JsonException)
        {
            // Reported below, with the other way of not being an object.
        }

        findings.Add(RuleNames.Season, file, "no JSON object", "a JSON object");
        return null;
    }

    private static SeasonData? Settings(JsonElement root, Findings findings)
    {
        DateOnly? first = Date(root, "first_week");
        double? weeks = Number(root, "weeks");
        double? contract = Number(root, "contract");
        DateOnly? asOf = Text(root, "as_of").Length == 0 ? first : Date(root, "as_of");
        double? endPrice = Text(root, "end_price").Length == 0 ? 0 : Number(root, "end_price");
        Require(first is { DayOfWeek: DayOfWeek.Monday }, root, "first_week", "the date of a Monday", findings);
        Require(weeks is >= 1 and <= MostWeeks && weeks == Math.Floor(weeks.Value), root, "weeks", $"a whole number from 1 to {MostWeeks}", findings);
        Require(asOf is not null, root, "as_of", "a date", findings);
        Require(endPrice is not null, root, "end_price", "a finite number", findings);
        Require(contract is null or 1 or 2, root, "contract", "1 or 2", findings);
        return findings.None ? new SeasonData(new Calendar(first!.Value, (int)weeks!.Value, asOf!.Value), endPrice!.Value, (int)(contract ?? 1)) : null;
    }

    private static void Require(bool holds, JsonElement root, string key, string allowed, Findings findings)
    {
        if (!holds)
        {
            findings.Add(RuleNames.Season, $"season.json {key}", Text(root, key), allowed);
        }
    }

    private static string Text(JsonElement root, string key) =>
        root.TryGetProperty(key, out JsonElement element) && element.ValueKind != JsonValueKind.Null ? element.ToString().Trim() : "";

    private static double? Number(JsonElement root, string key) =>
        double.TryParse(Text(root, key), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? number
            : null;

    private static DateOnly? Date(JsonElement root, string key) =>
        DateOnly.TryParseExact(Text(root, key), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) ? date : null;
}

/// <summary>Rows into look-ups: unsound rows are left out, a key that comes twice is reported.</summary>
internal static class KeyedRows
{
    public static void Add<TKey, TRow>(this Dictionary<TKey, TRow> rows, CsvTable table, CsvRow row, TKey key, TRow value)
        where TKey : notnull
    {
        if (row.Sound && !rows.TryAdd(key, value))
        {
            table.Report(RuleNames.RowTwice, row.Where, $"{key} twice", "each key once");
        }
    }
}
