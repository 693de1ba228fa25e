using System.Globalization;
using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Ledger.Facts;

/// <summary>
/// A fact's body being read. What is missing or of another form throws <see cref="BodyFault"/>: an append then says so, and in a
/// stored fact it is damage.
/// </summary>
internal readonly struct Body(JsonElement element)
{
    public static Body Of(string text) => new(JsonElement.Parse(text));

    public string Text(string key) => Optional(key, JsonValueKind.String) is { } value ? value.GetString()! : throw new BodyFault(key, "a text");

    public string? TextOrNone(string key) => Optional(key, JsonValueKind.String)?.GetString();

    public double Number(string key) => NumberOrNone(key) ?? throw new BodyFault(key, "a number");

    public double? NumberOrNone(string key) => Optional(key, JsonValueKind.Number)?.GetDouble();

    public long Whole(string key) => Optional(key, JsonValueKind.Number) is { } value && value.TryGetInt64(out long whole) ? whole : throw new BodyFault(key, "a whole number");

    public int? WholeOrNone(string key) => Has(key) ? checked((int)Whole(key)) : null;

    public Guid Id(string key) =>
        Guid.TryParseExact(Text(key), "D", out Guid id) ? id : throw new BodyFault(key, "the id of a fact");

    public LocalDate Date(string key) =>
        LocalDatePattern.Iso.Parse(Text(key)) is { Success: true, Value: var date } ? date : throw new BodyFault(key, "a date such as 2026-10-05");

    public MassUnit Unit(string key) => TextOrNone(key) switch
    {
        "lb" or null => MassUnit.Pound,
        "kg" => MassUnit.Kilogram,
        _ => throw new BodyFault(key, "lb or kg"),
    };

    public string Sha256(string key) => Text(key) is { Length: 64 } digest && digest.All(char.IsAsciiHexDigitLower)
        ? digest : throw new BodyFault(key, "a SHA-256 in lower-case hexadecimal");

    /// <summary>Cells by column; the columns must be the file's.</summary>
    public RowCells Cells(SeasonTable table)
    {
        string?[] cells = new string?[table.Columns.Count];
        foreach (JsonProperty cell in (Optional("cells", JsonValueKind.Object) ?? throw new BodyFault("cells", "an object of texts by column")).EnumerateObject())
        {
            int ordinal = table.OrdinalOf(cell.Name);
            if (ordinal < 0 || cell.Value.ValueKind != JsonValueKind.String)
                throw new BodyFault($"cells.{cell.Name}", $"a text in one of the columns {string.Join(", ", table.Columns)}");
            cells[ordinal] = cell.Value.GetString();
        }
        return new RowCells(table, cells);
    }

    /// <summary>The columns of each file as season.opened lists them.</summary>
    public IEnumerable<(SeasonTable Table, bool[] HasColumn)> Columns()
    {
        foreach (JsonProperty file in (Optional("columns", JsonValueKind.Object) ?? throw new BodyFault("columns", "an object of column lists by file")).EnumerateObject())
        {
            SeasonTable table = SeasonTable.Of(file.Name) ?? throw new BodyFault($"columns.{file.Name}", "a file of a season");
            bool[] has = new bool[table.Columns.Count];
            if (file.Value.ValueKind != JsonValueKind.Array)
                throw new BodyFault($"columns.{file.Name}", "a list of columns");
            foreach (JsonElement column in file.Value.EnumerateArray())
            {
                int ordinal = column.ValueKind == JsonValueKind.String ? table.OrdinalOf(column.GetString()!) : -1;
                if (ordinal < 0)
                    throw new BodyFault($"columns.{file.Name}", $"some of the columns {string.Join(", ", table.Columns)}");
                has[ordinal] = true;
            }
            yield return (table, has);
        }
    }

    /// <summary>A list of texts; none where the key is not there.</summary>
    public IEnumerable<string> TextsOrNone(string key)
    {
        if (Optional(key, JsonValueKind.Array) is not { } list)
            return [];
        return list.EnumerateArray().All(item => item.ValueKind == JsonValueKind.String)
            ? [.. list.EnumerateArray().Select(item => item.GetString()!)] : throw new BodyFault(key, "a list of texts");
    }

    /// <summary>An object within the body; null where the key is not there.</summary>
    public Body? PartOrNone(string key) => Optional(key, JsonValueKind.Object) is { } part ? new Body(part) : null;

    /// <summary>A list of objects; none where the key is not there.</summary>
    public IReadOnlyList<Body> PartsOrNone(string key)
    {
        if (Optional(key, JsonValueKind.Array) is not { } list)
            return [];
        return list.EnumerateArray().All(item => item.ValueKind == JsonValueKind.Object)
            ? [.. list.EnumerateArray().Select(item => new Body(item))] : throw new BodyFault(key, "a list of objects");
    }

    /// <summary>An object of numbers by key; none where the key is not there.</summary>
    public IReadOnlyList<(string Key, double Value)> NumbersOrNone(string key)
    {
        if (Optional(key, JsonValueKind.Object) is not { } part)
            return [];
        return part.EnumerateObject().All(member => member.Value.ValueKind == JsonValueKind.Number)
            ? [.. part.EnumerateObject().Select(member => (member.Name, member.Value.GetDouble()))] : throw new BodyFault(key, "an object of numbers");
    }

    /// <summary>Yes or no, which must be said.</summary>
    public bool Flag(string key) => element.TryGetProperty(key, out JsonElement value) && value.ValueKind is JsonValueKind.True or JsonValueKind.False
        ? value.GetBoolean() : throw new BodyFault(key, "true or false");

    /// <summary>A moment with the offset of its place.</summary>
    public DateTimeOffset Moment(string key)
    {
        string text = Text(key);
        return NodaTime.Text.OffsetDateTimePattern.ExtendedIso.Parse(text) is { Success: true, Value: var moment }
            ? moment.ToDateTimeOffset() : throw new BodyFault(key, "a moment with its offset, such as 2026-10-05T14:30:00-05:00");
    }

    /// <summary>A list of whole numbers.</summary>
    public IReadOnlyList<long> Wholes(string key) =>
        Optional(key, JsonValueKind.Array) is { } list && list.EnumerateArray().All(item => item.ValueKind == JsonValueKind.Number && item.TryGetInt64(out _))
            ? [.. list.EnumerateArray().Select(item => item.GetInt64())] : throw new BodyFault(key, "a list of whole numbers");

    /// <summary>A list of numbers.</summary>
    public IReadOnlyList<double> Numbers(string key) =>
        Optional(key, JsonValueKind.Array) is { } list && list.EnumerateArray().All(item => item.ValueKind == JsonValueKind.Number)
            ? [.. list.EnumerateArray().Select(item => item.GetDouble())] : throw new BodyFault(key, "a list of numbers");

    /// <summary>Boxes of a sizer's setting: a list of {class, last, min_g}.</summary>
    public IReadOnlyList<SetBox> Boxes(string key)
    {
        if (Optional(key, JsonValueKind.Array) is not { } list)
            throw new BodyFault(key, "a list of boxes");
        List<SetBox> boxes = [];
        foreach (JsonElement item in list.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.Object)
                throw new BodyFault(key, "a list of {class, last, min_g}");
            Body box = new(item);
            boxes.Add(new SetBox(box.Text("class"), box.Text("last"), box.Number("min_g")));
        }
        return boxes;
    }

    private bool Has(string key) => element.TryGetProperty(key, out JsonElement value) && value.ValueKind != JsonValueKind.Null;

    private JsonElement? Optional(string key, JsonValueKind kind)
    {
        if (!element.TryGetProperty(key, out JsonElement value) || value.ValueKind == JsonValueKind.Null)
            return null;
        return value.ValueKind == kind ? value : throw new BodyFault(key, kind == JsonValueKind.String ? "a text" : kind == JsonValueKind.Number ? "a number" : kind == JsonValueKind.Array ? "a list" : "an object");
    }
}

/// <summary>A body is not of its kind's form: which key, and what it should hold.</summary>
internal sealed class BodyFault(string key, string expected) : Exception($"{key} should be {expected}")
{
    public string Key => key;

    public string Expected => expected;
}
