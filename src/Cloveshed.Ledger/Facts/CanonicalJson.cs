using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Cloveshed.Ledger.Facts;

/// <summary>
/// One text for one meaning: JSON by RFC 8785 (JSON Canonicalization Scheme): no white space, keys in the order of their UTF-16
/// code units, numbers as ECMAScript writes a double, strings with the fewest escapes. A key that is there twice is refused.
/// </summary>
internal static class CanonicalJson
{
    private static readonly SearchValues<char> Escaped = SearchValues.Create(
        "\"\\" + new string([.. Enumerable.Range(0, 0x20).Select(code => (char)code)]));

    private static readonly JsonElement One = JsonElement.Parse("1");

    /// <summary>Null where the value has no canonical form: a key twice, half a surrogate pair, a number beyond double.</summary>
    public static string? Of(JsonElement value)
    {
        StringBuilder text = new();
        return Append(text, value) ? text.ToString() : null;
    }

    /// <summary>An object's canonical form with one key more, whose value is 1.</summary>
    public static string? With(JsonElement value, string key)
    {
        StringBuilder text = new();
        return AppendMembers(text, [.. value.EnumerateObject().Select(member => (member.Name, member.Value)), (key, One)]) ? text.ToString() : null;
    }

    /// <summary>A number's text, section 3.2.2.3; null where it is not finite.</summary>
    public static string? Number(double number)
    {
        if (!double.IsFinite(number))
            return null;
        if (number == 0)
            return "0"; // also for negative zero
        // The shortest digits that read back, as .NET gives them since version 3.0; only their layout differs from ECMAScript's.
        string shortest = Math.Abs(number).ToString("R", CultureInfo.InvariantCulture);
        int exponentAt = shortest.IndexOf('E', StringComparison.Ordinal);
        string mantissa = exponentAt < 0 ? shortest : shortest[..exponentAt];
        string digits = mantissa.Replace(".", "", StringComparison.Ordinal).Trim('0');
        int point = PointOf(shortest, mantissa, exponentAt), exponent = point - 1;
        string sign = number < 0 ? "-" : "";
        int length = digits.Length;
        if (length <= point && point <= 21)
            return sign + digits + new string('0', point - length);
        if (0 < point && point <= 21)
            return sign + digits[..point] + "." + digits[point..];
        if (-6 < point && point <= 0)
            return sign + "0." + new string('0', -point) + digits;
        string power = (exponent < 0 ? "e-" : "e+") + Math.Abs(exponent).ToString(CultureInfo.InvariantCulture);
        return sign + digits[0] + (length > 1 ? "." + digits[1..] : "") + power;
    }

    public static void AppendString(StringBuilder text, string value)
    {
        text.Append('"');
        ReadOnlySpan<char> rest = value;
        while (rest.IndexOfAny(Escaped) is >= 0 and int at)
        {
            text.Append(rest[..at]);
            char letter = rest[at];
            text.Append(letter switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\b' => "\\b",
                '\t' => "\\t",
                '\n' => "\\n",
                '\f' => "\\f",
                '\r' => "\\r",
                _ => "\\u" + ((int)letter).ToString("x4", CultureInfo.InvariantCulture),
            });
            rest = rest[(at + 1)..];
        }
        text.Append(rest).Append('"');
    }

    /// <summary>How many digits stand before the point in d.ddd x 10^0 written plainly: 1 for 1.5, 0 for 0.15, -1 for 0.015.</summary>
    private static int PointOf(string shortest, string mantissa, int exponentAt)
    {
        int point = mantissa.IndexOf('.', StringComparison.Ordinal);
        int whole = point < 0 ? mantissa.Length : point;
        int leading = mantissa.Replace(".", "", StringComparison.Ordinal).TakeWhile(digit => digit == '0').Count();
        int power = exponentAt < 0 ? 0 : int.Parse(shortest.AsSpan(exponentAt + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        return whole - leading + power;
    }

    private static bool Append(StringBuilder text, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                return AppendMembers(text, [.. value.EnumerateObject().Select(member => (member.Name, member.Value))]);
            case JsonValueKind.Array:
                text.Append('[');
                bool first = true;
                foreach (JsonElement item in value.EnumerateArray())
                {
                    if (!first)
                        text.Append(',');
                    first = false;
                    if (!Append(text, item))
                        return false;
                }
                text.Append(']');
                return true;
            case JsonValueKind.String:
                return AppendText(text, value);
            case JsonValueKind.Number:
                string? number = value.TryGetDouble(out double read) ? Number(read) : null;
                text.Append(number);
                return number is not null;
            case JsonValueKind.Undefined:
                return false;
            default:
                text.Append(value.GetRawText());
                return true;
        }
    }

    private static bool AppendText(StringBuilder text, JsonElement value)
    {
        try
        {
            AppendString(text, value.GetString()!);
            return true;
        }
        catch (InvalidOperationException) // half a surrogate pair
        {
            return false;
        }
    }

    private static bool AppendMembers(StringBuilder text, List<(string Name, JsonElement Value)> members)
    {
        members.Sort((one, other) => string.CompareOrdinal(one.Name, other.Name));
        text.Append('{');
        for (int at = 0; at < members.Count; at++)
        {
            if (at > 0)
            {
                if (members[at].Name == members[at - 1].Name)
                    return false;
                text.Append(',');
            }
            AppendString(text, members[at].Name);
            text.Append(':');
            if (!Append(text, members[at].Value))
                return false;
        }
        text.Append('}');
        return true;
    }
}
