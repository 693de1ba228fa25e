using System.Collections;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger;

/// <summary>A row of a season's file as it reads now.</summary>
/// <param name="Row">Its number in the file: 1, 2, 3 as entered, for good. A row that is dropped leaves its number unused.</param>
/// <param name="Cells">By column, exactly as entered; only the columns that were entered.</param>
/// <param name="Fact">The fact that set it last; a change or drop corrects that one.</param>
/// <param name="Seq">That fact's number.</param>
public sealed record SeasonRow(string File, int Row, IReadOnlyDictionary<string, string> Cells, Guid Fact, long Seq);

/// <summary>The cells of one row, over the columns that all rows of the file share.</summary>
internal sealed class RowCells(SeasonTable table, string?[] cells) : IReadOnlyDictionary<string, string>
{
    /// <summary>By the column's place in the contract; null where it was not entered.</summary>
    public IReadOnlyList<string?> ByOrdinal => cells;

    public SeasonTable Table => table;

    public string this[string key] => TryGetValue(key, out string? cell) ? cell : throw new KeyNotFoundException($"{table.File} row without {key}.");

    public IEnumerable<string> Keys => this.Select(pair => pair.Key);

    public IEnumerable<string> Values => this.Select(pair => pair.Value);

    public int Count => cells.Count(cell => cell is not null);

    public bool ContainsKey(string key) => TryGetValue(key, out _);

    public bool TryGetValue(string key, [MaybeNullWhen(false)] out string value)
    {
        int ordinal = table.OrdinalOf(key);
        value = ordinal < 0 ? null : cells[ordinal];
        return value is not null;
    }

    public IEnumerator<KeyValuePair<string, string>> GetEnumerator()
    {
        for (int ordinal = 0; ordinal < cells.Length; ordinal++)
            if (cells[ordinal] is { } cell)
                yield return new(table.Columns[ordinal], cell);
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>One file of the current season.</summary>
/// <param name="HasColumn">By the column's place in the contract: whether the file has it.</param>
/// <param name="Slots">By row number less one; null where the row was dropped.</param>
internal sealed record FileRows(SeasonTable Table, ImmutableArray<bool> HasColumn, ImmutableArray<SeasonRow?> Slots)
{
    public byte[] Render() => Table.Write(HasColumn, Slots.Where(row => row is not null).Select(row => ((RowCells)row!.Cells).ByOrdinal));
}

/// <summary>The rows of the current season, file by file in the contract's order.</summary>
public sealed class SeasonRows
{
    internal SeasonRows(Guid opened, string settings, ImmutableDictionary<string, FileRows> files)
    {
        Opened = opened;
        Settings = settings;
        Tables = files;
    }

    /// <summary>The fact that opened the season.</summary>
    public Guid Opened { get; }

    /// <summary>season.json as entered.</summary>
    public string Settings { get; }

    /// <summary>The files that the season has, season.json left out, in the contract's order.</summary>
    public IEnumerable<string> Files => SeasonTable.All.Where(table => Tables.ContainsKey(table.File)).Select(table => table.File);

    internal ImmutableDictionary<string, FileRows> Tables { get; }

    /// <summary>The rows of a file in their order; none where the season has no such file.</summary>
    public IEnumerable<SeasonRow> Of(string file) =>
        Tables.TryGetValue(file, out FileRows? rows) ? rows.Slots.OfType<SeasonRow>() : [];

    /// <summary>One row; null where it was dropped or never was.</summary>
    public SeasonRow? Find(string file, int row) =>
        Tables.TryGetValue(file, out FileRows? rows) && row >= 1 && row <= rows.Slots.Length ? rows.Slots[row - 1] : null;

    /// <summary>The columns that a file has, in the contract's order.</summary>
    public IReadOnlyList<string> ColumnsOf(string file) =>
        Tables.TryGetValue(file, out FileRows? rows) ? [.. rows.Table.Columns.Where((_, ordinal) => rows.HasColumn[ordinal])] : [];

    /// <summary>How many rows all files have together.</summary>
    public int Count => Tables.Values.Sum(rows => rows.Slots.Count(row => row is not null));
}
