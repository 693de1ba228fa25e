using System.Text;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Files;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles;

/// <summary>A row exactly as entered. Cells stand at their column's place in <see cref="SeasonTable.Columns"/>; null where the file has not the column.</summary>
/// <param name="Line">The physical line on which the row starts, from 1.</param>
public sealed record EnteredRow(int Line, IReadOnlyList<string?> Cells);

/// <summary>The rows of one file as entered, and which of the contract's columns the file has.</summary>
/// <param name="HasColumn">One for each of <see cref="SeasonTable.Columns"/>.</param>
public sealed record EnteredTable(IReadOnlyList<bool> HasColumn, IReadOnlyList<EnteredRow> Rows);

/// <summary>
/// One CSV file of a season as text: its columns, and its rows cell by cell, for whoever keeps what was entered rather than what it
/// means. The meaning, and every fault, is <see cref="SeasonReader"/>'s.
/// </summary>
public sealed class SeasonTable
{
    private readonly FileLayout layout;
    private readonly Dictionary<string, int> ordinals;

    private SeasonTable(FileLayout layout)
    {
        this.layout = layout;
        Columns = [.. layout.Columns.Select(column => column.Name)];
        ordinals = layout.Columns.ToDictionary(column => column.Name, column => column.Ordinal, StringComparer.Ordinal);
    }

    /// <summary>The CSV files in the contract's order, each after those that it refers to.</summary>
    public static IReadOnlyList<SeasonTable> All { get; } = [.. SeasonFileSet.Tables.Select(file => new SeasonTable(file.Layout))];

    /// <summary>The file of settings, the one that is no table.</summary>
    public const string SettingsName = SettingsFile.FileName;

    /// <summary>The file's name, such as lots.csv.</summary>
    public string File => layout.Name;

    /// <summary>Whether a season without this file is refused.</summary>
    public bool Needed => layout.Needed;

    /// <summary>The contract from which the file is known.</summary>
    public int Contract => layout.Contract;

    /// <summary>In the contract's order.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>Whether the column must be there and filled.</summary>
    public bool IsNeeded(int ordinal) => layout.Columns[ordinal].Needed;

    /// <summary>The column's place in <see cref="Columns"/>; -1 where the contract has no such column.</summary>
    public int OrdinalOf(string column) => ordinals.GetValueOrDefault(column, -1);

    /// <summary>Null for a name that is no table of a season.</summary>
    public static SeasonTable? Of(string file) => All.FirstOrDefault(table => table.File == file);

    /// <summary>
    /// The rows as entered, of a file in which the reader found no fault; columns that the contract does not know are left out. Blank
    /// rows at the end are none.
    /// </summary>
    public EnteredTable Read(ReadOnlyMemory<byte> bytes)
    {
        CsvRows rows = new(bytes);
        bool any = rows.Next();
        while (any && rows.IsBlank)
            any = rows.Next();
        if (!any)
            throw new ArgumentException($"{File} has no header row.", nameof(bytes));
        int[] fieldOf = new int[Columns.Count];
        Array.Fill(fieldOf, -1);
        for (int field = 0; field < rows.Kept; field++)
            if (OrdinalOf(Encoding.UTF8.GetString(rows[field]).Trim()) is >= 0 and int ordinal)
                fieldOf[ordinal] = field;
        List<EnteredRow> read = [];
        while (rows.Next())
        {
            if (rows.IsBlank)
                continue;
            string?[] cells = new string?[fieldOf.Length];
            for (int ordinal = 0; ordinal < cells.Length; ordinal++)
                if (fieldOf[ordinal] is >= 0 and int field)
                    cells[ordinal] = field < rows.Kept ? Encoding.UTF8.GetString(rows[field]) : "";
            read.Add(new EnteredRow(rows.Line, cells));
        }
        return new EnteredTable([.. fieldOf.Select(field => field >= 0)], read);
    }

    /// <summary>RFC 4180 with CRLF, UTF-8 without byte order mark: the columns that the file has, in the contract's order; a missing cell is empty.</summary>
    public byte[] Write(IReadOnlyList<bool> hasColumn, IEnumerable<IReadOnlyList<string?>> rows)
    {
        StringBuilder text = new();
        AppendRow(text, hasColumn, Columns);
        foreach (IReadOnlyList<string?> cells in rows)
            AppendRow(text, hasColumn, cells);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void AppendRow(StringBuilder text, IReadOnlyList<bool> hasColumn, IReadOnlyList<string?> cells)
    {
        bool first = true;
        for (int ordinal = 0; ordinal < hasColumn.Count; ordinal++)
        {
            if (!hasColumn[ordinal])
                continue;
            if (!first)
                text.Append(',');
            first = false;
            CsvText.AppendCell(text, cells[ordinal]);
        }
        text.Append("\r\n");
    }
}
