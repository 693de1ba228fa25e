namespace Cloveshed.SeasonFiles.Layouts;

/// <summary>What a cell looks like; used to guess where a decimal comma has split a row.</summary>
internal enum CellShape { Text, Number, Date, YesNo }

/// <summary>One column: its name, its place in the layout, whether it must be there and filled, and the bounds of its numbers.</summary>
internal sealed record Column(string Name, int Ordinal, bool Needed, CellShape Shape, Bounds? Bounds = null);

/// <summary>
/// One CSV file's columns, in the order in which we write them (they are read in any order), and the most rows that we read.
/// Reading and writing share it, so that the two cannot drift apart.
/// </summary>
internal sealed class FileLayout(string name, bool needed, int rowLimit = FileLayout.ManyRows, int contract = 1)
{
    /// <summary>A hundred seasons' worth of the largest lists; what is longer is not a season, and a plan of it would not end.</summary>
    public const int ManyRows = 200_000;

    private readonly List<Column> columns = [];

    public string Name { get; } = name;

    /// <summary>Whether a season without this file is refused.</summary>
    public bool Needed { get; } = needed;

    public int RowLimit { get; } = rowLimit;

    /// <summary>The contract from which the file is known.</summary>
    public int Contract { get; } = contract;

    public IReadOnlyList<Column> Columns => columns;

    public Column Text(string column) => Add(column, false, CellShape.Text, null);

    public Column NeededText(string column) => Add(column, true, CellShape.Text, null);

    public Column Number(string column, Bounds bounds) => Add(column, false, CellShape.Number, bounds);

    public Column NeededNumber(string column, Bounds bounds) => Add(column, true, CellShape.Number, bounds);

    public Column Date(string column) => Add(column, false, CellShape.Date, null);

    public Column NeededDate(string column) => Add(column, true, CellShape.Date, null);

    public Column YesNo(string column) => Add(column, false, CellShape.YesNo, null);

    /// <summary>The same columns under another name: a chart may be called as its owner likes.</summary>
    public FileLayout Called(string other)
    {
        FileLayout renamed = new(other, Needed, RowLimit);
        renamed.columns.AddRange(columns);
        return renamed;
    }

    /// <summary>The columns before this one, as an earlier contract had them.</summary>
    public FileLayout Before(Column column)
    {
        FileLayout shorter = new(Name, Needed, RowLimit, Contract);
        shorter.columns.AddRange(columns.Take(column.Ordinal));
        return shorter;
    }

    private Column Add(string column, bool mustBeFilled, CellShape shape, Bounds? bounds)
    {
        Column added = new(column, columns.Count, mustBeFilled, shape, bounds);
        columns.Add(added);
        return added;
    }
}
