using System.Text;
using Cloveshed.SeasonFiles.Layouts;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.SeasonFiles.Csv;

/// <summary>
/// One CSV file being written, cell by cell in the layout's order: RFC 4180 with CRLF, UTF-8 without byte order mark. A row with
/// another number of cells than the layout has is a mistake of ours and is refused.
/// </summary>
internal sealed class CsvText
{
    private readonly FileLayout layout;
    private readonly StringBuilder text = new();
    private int filled;

    public CsvText(FileLayout layout)
    {
        this.layout = layout;
        foreach (Column column in layout.Columns)
            Text(column.Name);
        EndRow();
    }

    public CsvText Text(string? cell)
    {
        if (filled++ > 0)
            text.Append(',');
        AppendCell(text, cell);
        return this;
    }

    /// <summary>One cell, quoted where it must be.</summary>
    public static void AppendCell(StringBuilder text, string? cell)
    {
        if (string.IsNullOrEmpty(cell))
            return;
        // Spaces at either end are part of a cell, but many programs drop them unless it is quoted.
        bool quoted = cell.AsSpan().IndexOfAny(",\"\r\n") >= 0 || char.IsWhiteSpace(cell[0]) || char.IsWhiteSpace(cell[^1]);
        if (quoted)
            text.Append('"').Append(cell.Replace("\"", "\"\"", StringComparison.Ordinal)).Append('"');
        else
            text.Append(cell);
    }

    public CsvText Number(double? cell) => Text(cell is { } number ? NumberText.Of(number) : null);

    public CsvText Money(decimal? cell) => Text(cell is { } number ? NumberText.Of(number) : null);

    public CsvText Whole(int? cell) => Text(cell is { } number ? NumberText.Of(number) : null);

    public CsvText Date(LocalDate? cell) => Text(cell is { } date ? LocalDatePattern.Iso.Format(date) : null);

    public CsvText YesNo(bool? cell) => Text(cell is { } yes ? (yes ? "yes" : "no") : null);

    public CsvText Word<T>(WordList<T> words, T? cell) where T : struct, Enum => Text(cell is { } word ? words.TextOf(word) : null);

    public void EndRow()
    {
        if (filled != layout.Columns.Count)
            throw new InvalidOperationException($"{layout.Name} has {layout.Columns.Count} columns, but a row of {filled} was written.");
        filled = 0;
        text.Append("\r\n");
    }

    public byte[] ToBytes() => Encoding.UTF8.GetBytes(text.ToString());
}
