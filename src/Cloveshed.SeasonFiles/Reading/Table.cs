using System.Text;
using System.Text.Unicode;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>
/// One CSV file being read by its layout: the header row when it is made, then row by row. It reports what is wrong with rows as
/// rows; <see cref="Cells"/> what is wrong with a cell.
/// </summary>
internal sealed class Table
{
    private readonly CsvRows rows;
    private readonly FaultList faults;
    private readonly int[] fieldOfColumn;
    private readonly List<int> blankLines = [];
    private int blankCount, rowsRead, fieldsInHeader;
    private bool open;

    public Table(FileLayout layout, ReadOnlyMemory<byte> bytes, FaultList faults)
    {
        Layout = layout;
        this.faults = faults;
        rows = new CsvRows(bytes);
        fieldOfColumn = new int[layout.Columns.Count];
        Array.Fill(fieldOfColumn, -1);
        open = ReadHeader();
        Cells = new Cells(this, faults);
        SomeLost = !open;
    }

    public FileLayout Layout { get; }

    public Cells Cells { get; }

    /// <summary>The physical line on which the row starts.</summary>
    public int Line => rows.Line;

    /// <summary>No fault in this row so far.</summary>
    public bool RowSound { get; private set; }

    /// <summary>Rows were lost whole, so that a name that is missing may have been in one of them.</summary>
    public bool SomeLost { get; private set; }

    /// <summary>Moves to the next row that has the header's number of fields.</summary>
    public bool Next()
    {
        while (open && rows.Next())
        {
            RowSound = true;
            if (rows.IsBlank)
            {
                blankCount++;
                if (blankLines.Count < FaultList.KeptPerFile)
                    blankLines.Add(rows.Line);
                continue;
            }
            ReportBlanks();
            if (++rowsRead > Layout.RowLimit)
            {
                Lose(FaultRule.TooManyRows, null, null, Layout.RowLimit);
                open = false;
            }
            else if (rows.Breach != CsvBreach.None)
                LoseBroken();
            else if (rows.Count != fieldsInHeader)
                LoseUneven();
            else
                return true;
        }
        return false;
    }

    /// <summary>The column's bytes in this row; empty where the file hasn't the column.</summary>
    public ReadOnlySpan<byte> this[Column column] => fieldOfColumn[column.Ordinal] is >= 0 and int field ? rows[field] : default;

    /// <summary>The header row could be read as one, and names some of the columns.</summary>
    public bool HasColumns => fieldOfColumn.Any(at => at >= 0);

    /// <summary>Whether the file has this column.</summary>
    public bool Has(Column column) => fieldOfColumn[column.Ordinal] >= 0;

    /// <summary>A fault of this row.</summary>
    public void Fault(FaultRule rule, string? column, string? value, params ReadOnlySpan<object?> words)
    {
        RowSound = false;
        faults.Add(rule, Layout.Name, Line, column, value, words);
    }

    /// <summary>A fault of a column's cell in this row.</summary>
    public void Fault(FaultRule rule, Column column, params ReadOnlySpan<object?> words) =>
        Fault(rule, column.Name, Start(this[column]), words);

    public void Warn(WarningRule rule, Column column, params ReadOnlySpan<object?> words) =>
        faults.Warn(rule, Layout.Name, Line, column.Name, words);

    private bool ReadHeader()
    {
        bool any = rows.Next();
        while (any && rows.IsBlank)
            any = rows.Next();
        if (!any)
        {
            faults.Add(FaultRule.FileEmpty, Layout.Name, null, null, null, string.Join(",", Layout.Columns.Select(column => column.Name)));
            return false;
        }
        if (rows.Breach != CsvBreach.None)
        {
            LoseBroken();
            return false;
        }
        fieldsInHeader = rows.Count;
        string[] names = [.. Enumerable.Range(0, rows.Kept).Select(field => Start(rows[field]).Trim())];
        if (OtherSeparator(names) is { } separator)
        {
            Fault(FaultRule.Separator, null, string.Join(',', names), separator);
            return false;
        }
        return FindColumns(names);
    }

    private bool FindColumns(string[] names)
    {
        bool sound = true;
        for (int field = 0; field < names.Length; field++)
        {
            Column? column = Layout.Columns.FirstOrDefault(known => known.Name == names[field]);
            if (Array.IndexOf(names, names[field]) < field)
            {
                if (column is null)
                    continue;
                Fault(FaultRule.ColumnTwice, names[field], names[field]);
                sound = false;
            }
            else if (column is null)
                faults.Warn(WarningRule.UnknownColumn, Layout.Name, Line, names[field]);
            else
                fieldOfColumn[column.Ordinal] = field;
        }
        foreach (Column column in Layout.Columns)
            if (column.Needed && fieldOfColumn[column.Ordinal] < 0)
            {
                Fault(FaultRule.ColumnMissing, column.Name, null);
                sound = false;
            }
        return sound;
    }

    /// <summary>A header in which a known column is joined to another by a semicolon or tab was saved with that separator.</summary>
    private string? OtherSeparator(string[] names)
    {
        foreach (char separator in ";\t|")
            if (names.Any(name => name.Contains(separator, StringComparison.Ordinal)
                && name.Split(separator).Any(part => Layout.Columns.Any(column => column.Name == part.Trim().Trim('"')))))
                return separator == '\t' ? "tab" : separator.ToString();
        return null;
    }

    private void ReportBlanks()
    {
        foreach (int line in blankLines)
            faults.Add(FaultRule.EmptyRow, Layout.Name, line, null, null);
        faults.CountMore(blankCount - blankLines.Count);
        blankLines.Clear();
        blankCount = 0;
    }

    private void LoseBroken()
    {
        FaultRule rule = rows.Breach switch
        {
            CsvBreach.QuoteInField => FaultRule.QuoteInField,
            CsvBreach.TextAfterQuote => FaultRule.TextAfterQuote,
            CsvBreach.QuoteNeverClosed => FaultRule.QuoteNeverClosed,
            _ => FaultRule.NotUtf8,
        };
        int field = rule == FaultRule.NotUtf8 ? FirstBadField() : rows.BreachField;
        string? column = Layout.Columns.FirstOrDefault(known => fieldOfColumn[known.Ordinal] == field)?.Name;
        Lose(rule, column, field < rows.Kept ? Start(rows[field]) : null);
    }

    private int FirstBadField()
    {
        int field = 0;
        while (field < rows.Kept && Utf8.IsValid(rows[field]))
            field++;
        return field;
    }

    private void LoseUneven()
    {
        if (DecimalCommaSplit.Find(Layout, fieldOfColumn, rows, fieldsInHeader) is { } split)
            Lose(FaultRule.DecimalComma, split.Column.Name, split.Value);
        else
            Lose(FaultRule.FieldCount, null, RowStart(), fieldsInHeader, rows.Count);
    }

    private string RowStart() => string.Join(',', Enumerable.Range(0, Math.Min(rows.Kept, 40)).Select(field => Start(rows[field])));

    /// <summary>As much of a cell as a fault shows, and more: cells may be as large as the file.</summary>
    private static string Start(ReadOnlySpan<byte> cell) => Encoding.UTF8.GetString(cell[..Math.Min(cell.Length, 1024)]);

    private void Lose(FaultRule rule, string? column, string? value, params ReadOnlySpan<object?> words)
    {
        SomeLost = true;
        Fault(rule, column, value, words);
    }
}
