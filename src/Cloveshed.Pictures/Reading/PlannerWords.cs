using System.Globalization;
using System.Text.RegularExpressions;
using Cloveshed.Core.Planning;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Pictures.Reading;

/// <summary>
/// Tells the planner's remarks from their English words, as they stand in an answer's files, and says them in the reader's
/// language, with days and money as the reader writes them. What no remark says (a season's name may hold anything) stays as written.
/// </summary>
public static class PlannerWords
{
    private static readonly LocalDatePattern Day = LocalDatePattern.Create(Remarks.DayPattern, CultureInfo.InvariantCulture);

    private static readonly (Remark Remark, Regex Words)[] Known = [.. Enum.GetValues<Remark>().Select(r => (r, Pattern(Remarks.Words(r))))];

    /// <summary>The remarks in the reader's language, each said once; null where one of them is not the planner's.</summary>
    public static string? Told(string words, Reader reader)
    {
        var said = new List<string>();
        foreach (string part in words.Split(Remarks.Between))
        {
            if (Told(part) is not { } remark)
            {
                return null;
            }
            string text = reader.Say(Key(remark.Remark), [.. remark.Values.Select(v => Read(v.Text, v.Kind, reader))]);
            if (!said.Contains(text))
            {
                said.Add(text);
            }
        }
        return string.Join(Remarks.Between, said);
    }

    /// <summary>The reader's words for a remark stand under its name.</summary>
    internal static Say Key(Remark remark) => Enum.Parse<Say>("Remark" + remark);

    /// <summary>The remark and its values in order, or null.</summary>
    internal static (Remark Remark, IReadOnlyList<(string Text, string Kind)> Values)? Told(string part)
    {
        foreach ((Remark remark, Regex words) in Known)
        {
            if (words.Match(part) is { Success: true } found)
            {
                string[] kinds = [.. Remarks.Slot().Matches(Remarks.Words(remark)).OrderBy(s => s.Groups["at"].Value, StringComparer.Ordinal).Select(s => s.Groups["kind"].Value)];
                (string Text, string Kind)[] values = [.. kinds.Select((kind, i) => (found.Groups["v" + i.ToString(CultureInfo.InvariantCulture)].Value, kind))];
                if (values.All(v => v.Kind != "day" || Day.Parse(v.Text).Success))
                {
                    return (remark, values);
                }
            }
        }
        return null;
    }

    private static string Read(string text, string kind, Reader reader) => kind switch
    {
        "day" => reader.DayYear(Day.Parse(text).Value),
        "percent" => reader.Percent(Number(text[..^1]) / 100, 0),
        "money" => reader.Price(Number(text)),
        "count" => reader.Number(Number(text), 0),
        _ => text,
    };

    internal static LocalDate DayOf(string text) => Day.Parse(text).Value;

    internal static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static Regex Pattern(string words)
    {
        string pattern = "";
        int from = 0;
        foreach (Match slot in Remarks.Slot().Matches(words))
        {
            string value = slot.Groups["kind"].Value switch
            {
                "day" => @"\d{1,2} (?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) \d{4}",
                "percent" => @"\d+%",
                "money" => @"-?\d+\.\d\d",
                "count" => @"\d+",
                _ => ".+",
            };
            pattern += Regex.Escape(words[from..slot.Index]) + $"(?<v{slot.Groups["at"].Value}>{value})";
            from = slot.Index + slot.Length;
        }
        return new Regex("^" + pattern + Regex.Escape(words[from..]) + "$", RegexOptions.CultureInvariant | RegexOptions.Singleline);
    }
}
