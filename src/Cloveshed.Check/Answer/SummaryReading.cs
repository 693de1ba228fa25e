using System.Text.Json;
using Cloveshed.Check.Reading;

namespace Cloveshed.Check.Answer;

/// <summary>Reads summary.json as far as it can be recomputed.</summary>
internal static class SummaryReading
{
    private const string File = "summary.json";

    public static SummaryFigures? Read(string folder, Findings findings)
    {
        if (FileText.Read(folder, File, season: false, findings) is not string text)
        {
            return null;
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            if (document.RootElement is { ValueKind: JsonValueKind.Object } root)
            {
                return new SummaryFigures(
                    Figure(root, "value", findings), Figure(root, "bound", findings), Figure(root, "gap", findings),
                    Figure(root, "gap_of_revenue", findings));
            }
        }
        catch (JsonException fault)
        {
            findings.Add(RuleNames.FileForm, $"{File} line {fault.LineNumber + 1}", "no JSON", "a JSON object");
            return null;
        }

        findings.Add(RuleNames.FileForm, File, "no JSON object", "a JSON object");
        return null;
    }

    private static double? Figure(JsonElement root, string key, Findings findings)
    {
        if (root.TryGetProperty(key, out JsonElement element) && element.ValueKind == JsonValueKind.Number
            && element.TryGetDouble(out double figure) && double.IsFinite(figure))
        {
            return figure;
        }

        findings.Add(RuleNames.Summary, $"{File} {key}", element.ValueKind == JsonValueKind.Undefined ? "no such key" : element.ToString(), "a finite number");
        return null;
    }
}
