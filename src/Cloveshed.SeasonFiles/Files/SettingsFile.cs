using System.Text;
using System.Text.Json;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using NodaTime;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>season.json: what the season is, and when.</summary>
internal static class SettingsFile
{
    public const string FileName = "season.json";

    /// <summary>The contracts that this program reads and writes: from the second on buyers' terms count.</summary>
    public static readonly Bounds Contracts = new(1, 2);

    private static readonly string[] Keys =
        ["contract", "name", "first_week", "weeks", "mass_unit", "currency", "as_of", "end_price", "seed"];

    public static void Read(ReadOnlyMemory<byte> bytes, SeasonDraft draft)
    {
        JsonKeys? found = JsonKeys.Read(FileName, bytes.Span, Keys, draft.Faults);
        if (found is null)
            return;
        decimal? contract = found.Number("contract", "1", Bounds.AnyWhole, needed: false);
        if (contract is { } given && (!Contracts.Hold((double)given) || given != decimal.Truncate(given)))
        {
            found.Fault(FaultRule.Contract, "contract");
            contract = null;
        }
        string? name = found.Text("name", "\"Harvest 2026\"", needed: true);
        LocalDate? first = Date(found, "first_week", needed: true);
        if (first is { } day && day.DayOfWeek != IsoDayOfWeek.Monday)
        {
            found.Fault(FaultRule.Monday, "first_week", IsoDate.Text(IsoDate.MondayOf(day)));
            first = null;
        }
        int? weeks = (int?)found.Number("weeks", "52", Bounds.SeasonWeeks, needed: true, whole: true);
        MassUnit? unit = ReadUnit(found);
        string? currency = found.Text("currency", "\"USD\"", needed: true);
        if (currency is not null && (currency.Length != 3 || currency.Any(letter => letter is < 'A' or > 'Z')))
            found.Fault(FaultRule.Currency, "currency");
        bool asOfFaulty = false;
        LocalDate? asOf = found.Has("as_of") ? Date(found, "as_of", needed: false) : first;
        if (asOf is { } it && first is { } start && weeks is { } length && it > start.PlusDays(7 * length - 1))
        {
            found.Fault(FaultRule.AsOfAfterSeason, "as_of", IsoDate.Text(start.PlusDays(7 * length - 1)));
            asOfFaulty = true;
        }
        decimal endPrice = found.Number("end_price", "0.25", Bounds.Money, needed: false) ?? 0;
        int? seed = (int?)found.Number("seed", "1", Bounds.Seed, needed: false, whole: true);
        SeasonSettings? settings = found.Sound && !asOfFaulty
            ? new SeasonSettings(name!, first!.Value, weeks!.Value, unit!.Value, currency!, asOf!.Value, endPrice, seed) { Contract = (int)(contract ?? 1) }
            : null;
        draft.Frame = new SeasonFrame(first, weeks, asOfFaulty ? null : asOf, settings) { Contract = (int?)contract ?? (found.Has("contract") ? null : 1) };
    }

    private static LocalDate? Date(JsonKeys found, string key, bool needed)
    {
        if (found.Text(key, "\"2026-10-05\"", needed) is not { } text)
            return null;
        if (IsoDate.Read(Encoding.UTF8.GetBytes(text)) is { } date)
            return date;
        found.Fault(FaultRule.Date, key);
        return null;
    }

    private static MassUnit? ReadUnit(JsonKeys found)
    {
        if (found.Text("mass_unit", "\"lb\"", needed: true) is not { } text)
            return null;
        if (Words.MassUnits.Find(Encoding.UTF8.GetBytes(text)) is { } unit)
            return unit;
        found.Fault(FaultRule.Word, "mass_unit", Words.MassUnits.All);
        return null;
    }

    public static byte[] Write(Season season)
    {
        SeasonSettings settings = season.Settings;
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, JsonText.Written))
        {
            json.WriteStartObject();
            json.WriteNumber("contract", settings.Contract);
            json.WriteString("name", settings.Name);
            json.WriteString("first_week", IsoDate.Text(settings.FirstWeek));
            json.WriteNumber("weeks", settings.Weeks);
            json.WriteString("mass_unit", Words.MassUnits.TextOf(settings.MassUnit));
            json.WriteString("currency", settings.Currency);
            json.WriteString("as_of", IsoDate.Text(settings.AsOf));
            json.WriteNumber("end_price", settings.EndPrice);
            if (settings.Seed is { } seed)
                json.WriteNumber("seed", seed);
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }
}
