using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Web.Setup;

/// <summary>season.json between its text and the fields of a form. Keys that no field shows stay as they are.</summary>
public static class SettingsText
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Each key's value as text.</summary>
    public static Dictionary<string, string> Values(string text)
    {
        Dictionary<string, string> values = new(StringComparer.Ordinal);
        foreach ((string key, JsonNode? value) in JsonNode.Parse(text)!.AsObject())
        {
            if (value is JsonValue)
            {
                values[key] = value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : value.ToJsonString();
            }
        }

        return values;
    }

    /// <summary>The text with these values; an empty one takes its key out, and one that is as it was leaves it as it was.</summary>
    public static string With(string text, IReadOnlyDictionary<string, string> values)
    {
        JsonObject settings = JsonNode.Parse(text)!.AsObject();
        Dictionary<string, string> was = Values(text);
        foreach (ColumnGuide guide in ColumnGuides.Settings)
        {
            string now = values.GetValueOrDefault(guide.Name, "").Trim();
            if (now == was.GetValueOrDefault(guide.Name, ""))
            {
                continue;
            }

            if (now.Length == 0)
            {
                settings.Remove(guide.Name);
            }
            else
            {
                settings[guide.Name] = guide.Kind is ColumnKind.Number or ColumnKind.Whole ? Number(now) : now;
            }
        }

        return settings.ToJsonString(Written) + "\n";
    }

    /// <summary>What is no number is written as text, and the reader says so.</summary>
    private static JsonNode Number(string text) =>
        decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) ? JsonValue.Create(number) : JsonValue.Create(text);
}
