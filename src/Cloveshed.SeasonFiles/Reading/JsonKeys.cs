using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>The keys of one flat JSON object with the lines on which they stand, so that a fault can name its line.</summary>
internal sealed class JsonKeys
{
    private const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    private readonly Dictionary<string, (int Line, JsonTokenType Kind, string Text)> values = new(StringComparer.Ordinal);
    private readonly string file;
    private readonly FaultList faults;
    private int lineReached = 1, byteReached;

    private JsonKeys(string file, FaultList faults)
    {
        this.file = file;
        this.faults = faults;
    }

    /// <summary>No fault so far.</summary>
    public bool Sound { get; private set; } = true;

    /// <summary>Null when the text is not one JSON object; the fault is reported.</summary>
    public static JsonKeys? Read(string file, ReadOnlySpan<byte> bytes, string[] known, FaultList faults)
    {
        if (bytes.StartsWith("\uFEFF"u8))
            bytes = bytes[3..];
        if (!Utf8.IsValid(bytes))
        {
            faults.Add(FaultRule.NotUtf8, file, LineOfBadText(bytes), null, null);
            return null;
        }
        JsonKeys keys = new(file, faults);
        Utf8JsonReader reader = new(bytes);
        try
        {
            reader.Read();
            if (reader.TokenType != JsonTokenType.StartObject)
            {
                faults.Add(FaultRule.Json, file, 1, null, Encoding.UTF8.GetString(reader.ValueSpan), "no '{' at the start.");
                return null;
            }
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
                keys.TakeKey(ref reader, bytes, known);
            reader.Read(); // what stands after the object is a fault of its own
            return keys;
        }
        catch (JsonException problem)
        {
            int line = (int)(problem.LineNumber ?? 0) + 1;
            faults.Add(FaultRule.Json, file, line, null, LineText(bytes, line), OneLine(problem.Message));
        }
        catch (InvalidOperationException problem) // a string that escapes half of a surrogate pair
        {
            int line = LineOf(bytes, reader.TokenStartIndex);
            faults.Add(FaultRule.Json, file, line, null, LineText(bytes, line), OneLine(problem.Message));
        }
        return null;
    }

    public bool Has(string key) => values.TryGetValue(key, out var value) && value.Kind != JsonTokenType.Null;

    public string? Text(string key, string example, bool needed)
    {
        if (!Given(key, example, needed))
            return null;
        if (values[key].Kind != JsonTokenType.String)
            Fault(FaultRule.JsonKind, key, faults.Language == TextLanguage.Spanish ? "texto" : "text in quotes", example);
        else if (string.IsNullOrWhiteSpace(values[key].Text))
            Fault(FaultRule.CellEmpty, key);
        else
            return values[key].Text;
        return null;
    }

    public decimal? Number(string key, string example, Bounds bounds, bool needed, bool whole = false)
    {
        if (!Given(key, example, needed))
            return null;
        if (values[key].Kind != JsonTokenType.Number)
            Fault(FaultRule.JsonKind, key, faults.Language == TextLanguage.Spanish ? "número" : "number without quotes", example);
        else if (!double.TryParse(values[key].Text, Plain, CultureInfo.InvariantCulture, out double number) || !bounds.Hold(number)
            || !decimal.TryParse(values[key].Text, Plain, CultureInfo.InvariantCulture, out decimal exact))
            Fault(bounds.Rule, key, RangeTexts.Of(bounds, faults.Language));
        else if (whole && exact != decimal.Truncate(exact))
            Fault(FaultRule.Whole, key, RangeTexts.Of(bounds, faults.Language));
        else
            return exact;
        return null;
    }

    /// <summary>A fault of the key's value.</summary>
    public void Fault(FaultRule rule, string key, params ReadOnlySpan<object?> words)
    {
        Sound = false;
        faults.Add(rule, file, values[key].Line, key, values[key].Text, words);
    }

    private bool Given(string key, string example, bool needed)
    {
        if (Has(key))
            return true;
        if (needed)
        {
            Sound = false;
            faults.Add(FaultRule.JsonKeyMissing, file, values.TryGetValue(key, out var empty) ? empty.Line : null, key, null, $"\"{key}\": {example}");
        }
        return false;
    }

    private void TakeKey(ref Utf8JsonReader reader, ReadOnlySpan<byte> bytes, string[] known)
    {
        string key = reader.GetString()!;
        int at = (int)reader.TokenStartIndex;
        lineReached += CsvRows.LineEnds(bytes[byteReached..at]);
        byteReached = at;
        int line = lineReached;
        reader.Read();
        JsonTokenType kind = reader.TokenType;
        string text = kind == JsonTokenType.String ? reader.GetString()! : Encoding.UTF8.GetString(reader.ValueSpan);
        reader.Skip();
        if (Array.IndexOf(known, key) < 0)
            faults.Warn(WarningRule.UnknownKey, file, line, key);
        else if (!values.TryAdd(key, (line, kind, text)))
        {
            Sound = false;
            faults.Add(FaultRule.JsonKeyTwice, file, line, key, text);
        }
    }

    private static int LineOf(ReadOnlySpan<byte> bytes, long at) => 1 + CsvRows.LineEnds(bytes[..(int)at]);

    private static int LineOfBadText(ReadOnlySpan<byte> bytes)
    {
        int at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out int length) == System.Buffers.OperationStatus.Done)
            at += length;
        return LineOf(bytes, at);
    }

    private static string LineText(ReadOnlySpan<byte> bytes, int line)
    {
        string[] lines = Encoding.UTF8.GetString(bytes).ReplaceLineEndings("\n").Split('\n');
        return line <= lines.Length ? lines[line - 1].Trim() : "";
    }

    private static string OneLine(string message) => message.ReplaceLineEndings(" ");
}
