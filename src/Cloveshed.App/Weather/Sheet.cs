using System.Globalization;
using System.Text;
using Cloveshed.App.Words;
using Cloveshed.SeasonFiles.Csv;

namespace Cloveshed.App.Weather;

/// <summary>Why a file is refused: one line that says where, what was found, what was expected, and what to do.</summary>
internal sealed class SheetRefused(string message) : Exception(message);

/// <summary>One cell, with where it stands.</summary>
internal sealed record SheetCell(int Line, string Column, string Text);

/// <summary>A row: the cells of the columns that were asked for; a missing or empty cell is null.</summary>
internal sealed class SheetRow(int line, Dictionary<string, SheetCell> cells)
{
    public int Line { get; } = line;

    public SheetCell? this[string column] => cells.GetValueOrDefault(column);
}

/// <summary>
/// A CSV file whose columns may go by several names: header row, then rows. Names are compared without case, and spaces, points, slashes and
/// brackets count as underscores, so that "Temp (C)" is temp_c.
/// </summary>
internal sealed class Sheet
{
    private const int MostRows = 200_000;

    private Sheet(string file, IReadOnlyList<SheetRow> rows, IReadOnlySet<string> columns, IReadOnlyList<string> unknown) =>
        (File, Rows, Columns, Unknown) = (file, rows, columns, unknown);

    public string File { get; }

    public IReadOnlyList<SheetRow> Rows { get; }

    /// <summary>The columns found, by the first of their names.</summary>
    public IReadOnlySet<string> Columns { get; }

    /// <summary>Columns of the file that nobody asked for, as written.</summary>
    public IReadOnlyList<string> Unknown { get; }

    /// <param name="known">Each column's names, the first being the one it goes by here.</param>
    public static Sheet Read(string file, IReadOnlyList<string[]> known, Phrasebook phrases)
    {
        byte[] bytes;
        try
        {
            bytes = System.IO.File.ReadAllBytes(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new SheetRefused(phrases.Say(Phrase.SheetUnreadable, file, problem.Message.ReplaceLineEndings(" ")));
        }

        CsvRows rows = new(bytes);
        if (!Next(rows))
        {
            throw new SheetRefused(phrases.Say(Phrase.SheetEmpty, file, string.Join(",", known.Select(names => names[0]))));
        }

        Sound(rows, file, phrases);
        string[] header = [.. Enumerable.Range(0, rows.Kept).Select(field => Encoding.UTF8.GetString(rows[field]).Trim())];
        if (header.Length == 1 && header[0].IndexOfAny([';', '\t']) >= 0)
        {
            throw new SheetRefused(phrases.Say(Phrase.SheetSeparator, file, rows.Line, header[0]));
        }

        string?[] columns = [.. header.Select(name => known.FirstOrDefault(names => names.Contains(Plain(name), StringComparer.Ordinal))?[0])];
        for (int field = 0; field < header.Length; field++)
        {
            if (columns[field] is { } column && Array.IndexOf(columns, column) < field)
            {
                throw new SheetRefused(phrases.Say(Phrase.SheetTwice, file, rows.Line, header[Array.IndexOf(columns, column)], header[field], column));
            }
        }

        var read = new List<SheetRow>();
        while (Next(rows))
        {
            Sound(rows, file, phrases);
            if (rows.Count != header.Length)
            {
                throw new SheetRefused(phrases.Say(Phrase.SheetFields, file, rows.Line, rows.Count, header.Length));
            }

            if (read.Count == MostRows)
            {
                throw new SheetRefused(phrases.Say(Phrase.SheetLong, file, rows.Line, MostRows));
            }

            var cells = new Dictionary<string, SheetCell>(StringComparer.Ordinal);
            for (int field = 0; field < header.Length; field++)
            {
                string text = Encoding.UTF8.GetString(rows[field]).Trim();
                if (columns[field] is { } column && text.Length > 0)
                {
                    cells.Add(column, new SheetCell(rows.Line, header[field], text));
                }
            }

            read.Add(new SheetRow(rows.Line, cells));
        }

        return new Sheet(file, read, columns.OfType<string>().ToHashSet(StringComparer.Ordinal), [.. header.Where((name, field) => columns[field] is null && name.Length > 0)]);
    }

    /// <summary>The cell, or a refusal that says that the column, or the cell, is missing.</summary>
    public SheetCell Needed(SheetRow row, string column, Phrase example, Phrasebook phrases) =>
        row[column] ?? throw new SheetRefused(Columns.Contains(column)
            ? phrases.Say(Phrase.SheetCellEmpty, File, row.Line, column, phrases[example])
            : phrases.Say(Phrase.SheetColumnMissing, File, column, phrases[example]));

    /// <summary>A number from low to high, both included.</summary>
    public double Number(SheetCell cell, double low, double high, Phrasebook phrases) =>
        double.TryParse(cell.Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out double number)
            && number >= low && number <= high
            ? number
            : throw Refused(cell, phrases.Say(Phrase.NumberFrom, low.ToString(CultureInfo.InvariantCulture), high.ToString(CultureInfo.InvariantCulture)), phrases[Phrase.SheetMendNumber], phrases);

    public SheetRefused Refused(SheetCell cell, string expected, string remedy, Phrasebook phrases) =>
        new(phrases.Say(Phrase.SheetCellFault, File, cell.Line, cell.Column, cell.Text.Length > 60 ? cell.Text[..60] + "..." : cell.Text, expected, remedy));

    /// <summary>Lower case, and underscores for all that is neither letter nor digit; none at the ends.</summary>
    internal static string Plain(string name)
    {
        StringBuilder plain = new();
        foreach (char c in name)
        {
            if (char.IsLetterOrDigit(c))
            {
                plain.Append(char.ToLowerInvariant(c));
            }
            else if (plain.Length > 0 && plain[^1] != '_' && c != '°')
            {
                plain.Append('_');
            }
        }

        return plain.ToString().TrimEnd('_');
    }

    private static bool Next(CsvRows rows)
    {
        while (rows.Next())
        {
            if (!rows.IsBlank)
            {
                return true;
            }
        }

        return false;
    }

    private static void Sound(CsvRows rows, string file, Phrasebook phrases)
    {
        if (rows.Breach != CsvBreach.None)
        {
            throw new SheetRefused(phrases.Say(rows.Breach == CsvBreach.NotUtf8 ? Phrase.SheetNotUtf8 : Phrase.SheetQuote, file, rows.Line));
        }
    }
}
