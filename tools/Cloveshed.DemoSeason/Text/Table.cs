using System.Globalization;
using System.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Text;

/// <summary>One CSV file in the making: a header and rows, RFC 4180 quoting, line feeds, invariant figures.</summary>
public sealed class Table
{
    private readonly StringBuilder text = new();
    private readonly int columns;

    public Table(params string[] header)
    {
        ArgumentNullException.ThrowIfNull(header);
        columns = header.Length;
        Line(header);
    }

    public int Rows { get; private set; }

    /// <summary>Adds a row. A cell is text, a date, a whole number, a decimal, yes/no or null for empty; never a double.</summary>
    public void Row(params object?[] cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        if (cells.Length != columns)
        {
            throw new ArgumentException($"A row of {cells.Length} cells in a table of {columns} columns.", nameof(cells));
        }

        Line(cells.Select(Cell));
        Rows++;
    }

    public override string ToString() => text.ToString();

    /// <summary>Rounds half away from zero, so that a figure is written one way.</summary>
    public static decimal Round(double value, int places) => decimal.Round((decimal)value, places, MidpointRounding.AwayFromZero);

    private void Line(IEnumerable<string> cells) => text.AppendJoin(',', cells.Select(Quoted)).Append('\n');

    private static string Cell(object? cell) => cell switch
    {
        null => "",
        string s => s,
        int i => i.ToString(CultureInfo.InvariantCulture),
        decimal d => d.ToString("0.######", CultureInfo.InvariantCulture),
        bool b => b ? "yes" : "no",
        LocalDate date => date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture),
        _ => throw new ArgumentException($"A cell cannot be a {cell.GetType().Name}.", nameof(cell)),
    };

    private static string Quoted(string s) =>
        s.AsSpan().IndexOfAny(",\"\n") >= 0 ? $"\"{s.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : s;
}
