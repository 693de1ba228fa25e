using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Answers;

/// <summary>
/// summary.json. A number that is not finite (the bound of a search that was stopped before it had one) is null in the file and
/// not-a-number when read back, since JSON has no such numbers (RFC 8259, section 6).
/// </summary>
internal static class SummaryFile
{
    public const string FileName = "summary.json";

    public static byte[] Write(PlanSummary summary)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, JsonText.Written))
        {
            json.WriteStartObject();
            Number(json, "value", summary.Value);
            Number(json, "bound", summary.Bound);
            Number(json, "gap", summary.Gap);
            Number(json, "gap_of_revenue", summary.GapOfRevenue);
            Number(json, "gap_given_rooms", summary.GapGivenRooms);
            Number(json, "seconds", summary.Seconds);
            json.WriteString("status", Words.PlanStatuses.TextOf(summary.Status));
            Number(json, "revenue", summary.Revenue);
            Numbers(json, "revenues", summary.Revenues);
            Numbers(json, "costs", summary.Costs);
            Numbers(json, "fill_share", summary.FillShares);
            json.WriteStartArray("defaults_used");
            foreach (DefaultUsed used in summary.Defaults)
                Default(json, used);
            json.WriteEndArray();
            json.WriteStartArray("warnings");
            foreach (string warning in summary.Warnings)
                json.WriteStringValue(warning);
            json.WriteEndArray();
            json.WriteString("version", summary.Version);
            json.WriteString("input_digest", summary.InputDigest);
            Numbers(json, "model", summary.Model);
            json.WriteStartArray("sizes");
            foreach (LotSizes lot in summary.Sizes)
                Lot(json, lot);
            json.WriteEndArray();
            json.WriteStartArray("size_totals");
            foreach (SizeTotal total in summary.SizeTotals)
                Total(json, total);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    /// <summary>Null when the text is not a summary of ours; the fault is reported.</summary>
    public static PlanSummary? Read(ReadOnlyMemory<byte> bytes, FaultList faults)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(bytes);
            JsonElement top = document.RootElement;
            return new PlanSummary(
                Number(top, "value"), Number(top, "bound"), Number(top, "gap"), Number(top, "gap_of_revenue"), Number(top, "gap_given_rooms"),
                Number(top, "seconds"), Status(top), Number(top, "revenue"), Numbers(top, "revenues"), Numbers(top, "costs"),
                Numbers(top, "fill_share"), [.. top.GetProperty("defaults_used").EnumerateArray().Select(Default)],
                [.. top.GetProperty("warnings").EnumerateArray().Select(Text)], Text(top.GetProperty("version")),
                Text(top.GetProperty("input_digest")), Numbers(top, "model"))
            {
                // Answers of before have none.
                Sizes = top.TryGetProperty("sizes", out JsonElement sizes) ? [.. sizes.EnumerateArray().Select(Lot)] : [],
                SizeTotals = top.TryGetProperty("size_totals", out JsonElement totals) ? [.. totals.EnumerateArray().Select(Total)] : [],
            };
        }
        catch (JsonException problem)
        {
            faults.Add(FaultRule.Json, FileName, (int)(problem.LineNumber ?? 0) + 1, null, null, problem.Message.ReplaceLineEndings(" "));
        }
        catch (Exception problem) when (problem is KeyNotFoundException or InvalidOperationException or FormatException)
        {
            faults.Add(FaultRule.Json, FileName, null, null, null, problem.Message.ReplaceLineEndings(" "));
        }
        return null;
    }

    private static void Default(Utf8JsonWriter json, DefaultUsed used)
    {
        json.WriteStartObject();
        json.WriteString("name", used.Name);
        json.WriteString("value", used.Value);
        json.WriteString("why", used.Why);
        Number(json, "minus_fifth", used.MinusFifth);
        Number(json, "plus_fifth", used.PlusFifth);
        json.WriteEndObject();
    }

    private static DefaultUsed Default(JsonElement used) => new(
        Text(used.GetProperty("name")), Text(used.GetProperty("value")), Text(used.GetProperty("why")),
        NumberOrNull(used, "minus_fifth"), NumberOrNull(used, "plus_fifth"));

    private static void Lot(Utf8JsonWriter json, LotSizes lot)
    {
        json.WriteStartObject();
        json.WriteString("lot", lot.Lot.Text);
        json.WriteString("how", lot.How);
        Number(json, "mean_g", lot.MeanG);
        Number(json, "mean_low80", lot.MeanLow80);
        Number(json, "mean_high80", lot.MeanHigh80);
        json.WriteStartArray("classes");
        foreach (SizeShare size in lot.Classes)
        {
            json.WriteStartObject();
            json.WriteString("class", size.Class.Text);
            Number(json, "share", size.Share);
            Number(json, "low80", size.Low80);
            Number(json, "high80", size.High80);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static LotSizes Lot(JsonElement lot) => new(
        new LotId(Text(lot.GetProperty("lot"))), Text(lot.GetProperty("how")), Number(lot, "mean_g"), Number(lot, "mean_low80"), Number(lot, "mean_high80"),
        [
            .. lot.GetProperty("classes").EnumerateArray().Select(size => new SizeShare(
                new SizeClassId(Text(size.GetProperty("class"))), Number(size, "share"), Number(size, "low80"), Number(size, "high80"))),
        ]);

    private static void Total(Utf8JsonWriter json, SizeTotal total)
    {
        json.WriteStartObject();
        json.WriteString("class", total.Class.Text);
        Number(json, "mass", total.Mass);
        Number(json, "low80", total.Low80);
        Number(json, "high80", total.High80);
        json.WriteEndObject();
    }

    private static SizeTotal Total(JsonElement total) =>
        new(new SizeClassId(Text(total.GetProperty("class"))), Number(total, "mass"), Number(total, "low80"), Number(total, "high80"));

    private static void Number(Utf8JsonWriter json, string key, double? number)
    {
        json.WritePropertyName(key);
        if (number is { } value && double.IsFinite(value))
            json.WriteRawValue(NumberText.Of(value));
        else
            json.WriteNullValue();
    }

    private static void Numbers(Utf8JsonWriter json, string key, IReadOnlyDictionary<string, double> numbers)
    {
        json.WriteStartObject(key);
        foreach ((string name, double number) in numbers)
            Number(json, name, number);
        json.WriteEndObject();
    }

    private static PlanStatus Status(JsonElement top) =>
        Words.PlanStatuses.Find(System.Text.Encoding.UTF8.GetBytes(Text(top.GetProperty("status"))))
            ?? throw new FormatException($"status is none of {Words.PlanStatuses.All}.");

    private static string Text(JsonElement element) => element.GetString() ?? throw new FormatException("A text is null.");

    private static double Number(JsonElement top, string key) => NumberOrNull(top, key) ?? double.NaN;

    private static double? NumberOrNull(JsonElement top, string key) =>
        top.GetProperty(key) is { ValueKind: not JsonValueKind.Null } number ? number.GetDouble() : null;

    private static Dictionary<string, double> Numbers(JsonElement top, string key) =>
        top.GetProperty(key).EnumerateObject().ToDictionary(
            number => number.Name, number => number.Value.ValueKind == JsonValueKind.Null ? double.NaN : number.Value.GetDouble());
}
