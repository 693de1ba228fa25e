using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Microsoft.AspNetCore.Http;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Setup;

/// <summary>The fields of a row's form: how a cell is shown in one, and what was sent is as a cell.</summary>
public static class RowForm
{
    /// <summary>Names of the other fields.</summary>
    public const string Reason = "reason", Day = "day", Next = "next", Seen = "seen", List = "list";

    /// <summary>Characters of a reason.</summary>
    public const int LongestReason = 400;

    public static string Field(ColumnGuide guide) => "c." + guide.Name;

    /// <summary>The cell as its field shows it: without the spaces that the reader does not count, and words as the contract lists them.</summary>
    public static string Shown(ColumnGuide guide, string cell) => guide.Kind switch
    {
        ColumnKind.Word => guide.Words.FirstOrDefault(word => word.Equals(cell.Trim(), StringComparison.OrdinalIgnoreCase)) ?? cell.Trim(),
        ColumnKind.YesNo => cell.Trim().ToLowerInvariant(),
        ColumnKind.Text or ColumnKind.Name => cell.ReplaceLineEndings(""),
        _ => cell.Trim(),
    };

    /// <summary>
    /// The cells as sent. A field that still shows what it showed leaves its cell exactly as it was entered; one that is empty and
    /// was not there stays out.
    /// </summary>
    public static IReadOnlyDictionary<string, string> Cells(IFormCollection form, IReadOnlyList<ColumnGuide> columns, IReadOnlyDictionary<string, string>? was)
    {
        Dictionary<string, string> cells = new(StringComparer.Ordinal);
        foreach (ColumnGuide guide in columns)
        {
            string sent = form[Field(guide)].ToString();
            string? had = was?.GetValueOrDefault(guide.Name);
            if (had is not null && Shown(guide, had) == sent)
            {
                cells[guide.Name] = had;
            }
            else if (had is not null || sent.Trim().Length > 0)
            {
                cells[guide.Name] = sent.Trim();
            }
        }

        return cells;
    }

    /// <summary>
    /// When it happened: now, unless another day was given; then noon of that day. Null where the day is none or still to come.
    /// </summary>
    public static DateTimeOffset? Happened(IFormCollection form, DateTimeOffset now)
    {
        string text = form[Day].ToString().Trim();
        LocalDate today = new(now.Year, now.Month, now.Day);
        if (text.Length == 0)
        {
            return now;
        }

        return LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var day } && day <= today
            ? day == today ? now : new DateTimeOffset(day.Year, day.Month, day.Day, 12, 0, 0, now.Offset) : null;
    }
}
