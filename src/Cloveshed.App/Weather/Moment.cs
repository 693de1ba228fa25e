using System.Globalization;
using Cloveshed.App.Words;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.App.Weather;

/// <summary>
/// Moments of a file as ISO 8601 writes them: 2026-07-20T14:00, with seconds or not, a space for the T, a day alone for its
/// midnight; and either all of a file's moments have an offset from UTC or none has. Offsets are brought to that of the first.
/// </summary>
internal sealed class Moments(Sheet sheet, Phrasebook phrases)
{
    private static readonly OffsetDateTimePattern[] WithOffset =
    [
        .. new[] { "uuuu-MM-dd'T'HH:mm:ss;FFFFFFFFFo<Z+HH:mm>", "uuuu-MM-dd'T'HH:mmo<Z+HH:mm>", "uuuu-MM-dd'T'HH:mm:ss;FFFFFFFFFo<Z+HHmm>", "uuuu-MM-dd'T'HH:mmo<Z+HHmm>" }
            .Select(OffsetDateTimePattern.CreateWithInvariantCulture),
    ];

    private static readonly LocalDateTimePattern[] Plain =
    [
        .. new[] { "uuuu-MM-dd'T'HH:mm:ss;FFFFFFFFF", "uuuu-MM-dd'T'HH:mm", "uuuu-MM-dd'T'HH", "uuuu-MM-dd" }.Select(LocalDateTimePattern.CreateWithInvariantCulture),
    ];

    private SheetCell? first;

    /// <summary>The offset of the file's moments; null where they have none, or before the first was read.</summary>
    public Offset? Offset { get; private set; }

    /// <summary>A row's moment, from its time cell alone or from its day and its time (or hour) of day.</summary>
    public LocalDateTime Of(SheetRow row)
    {
        if (sheet.Columns.Contains("date") && (row["time"] is not null || row["hour"] is not null) && row["date"] is { } day)
        {
            SheetCell clock = (row["time"] ?? row["hour"])!;
            string hours = clock.Text.Length == 1 ? "0" + clock.Text : clock.Text;
            return Read(day with { Text = $"{day.Text}T{(hours.Length == 4 && hours[1] == ':' ? "0" + hours : hours)}" });
        }

        return Read(row["time"] ?? row["date"] ?? sheet.Needed(row, "time", Phrase.SheetTimeExample, phrases));
    }

    private LocalDateTime Read(SheetCell cell)
    {
        string text = cell.Text.Replace(' ', 'T').Replace(',', '.');
        text = text.EndsWith('z') ? text[..^1] + "Z" : text;
        (LocalDateTime Local, Offset? Offset)? found = null;
        foreach (OffsetDateTimePattern pattern in WithOffset)
        {
            if (pattern.Parse(text) is { Success: true } parsed)
            {
                found = (parsed.Value.LocalDateTime, parsed.Value.Offset);
                break;
            }
        }

        foreach (LocalDateTimePattern pattern in found is null ? Plain : [])
        {
            if (pattern.Parse(text) is { Success: true } parsed)
            {
                found = (parsed.Value, null);
                break;
            }
        }

        if (found is not { } moment || moment.Local.Year is < 1900 or > 2199)
        {
            throw sheet.Refused(cell, phrases[Phrase.SheetTimeExpected], phrases[Phrase.SheetMendTime], phrases);
        }

        if (first is null)
        {
            (first, Offset) = (cell, moment.Offset);
        }
        else if (Offset.HasValue != moment.Offset.HasValue)
        {
            throw sheet.Refused(cell, phrases.Say(Phrase.SheetOffsetExpected, first.Line, first.Text), phrases[Phrase.SheetMendTime], phrases);
        }

        return moment.Offset is { } own && Offset is { } common ? moment.Local.PlusSeconds(common.Seconds - own.Seconds) : moment.Local;
    }

    /// <summary>As ISO 8601 writes it, with the file's offset if its moments have one.</summary>
    public static string Text(LocalDateTime moment, Offset? offset)
    {
        string local = moment.ToString("uuuu-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture);
        return offset is { } given ? local + OffsetPattern.CreateWithInvariantCulture("Z+HH:mm").Format(given) : local;
    }
}
