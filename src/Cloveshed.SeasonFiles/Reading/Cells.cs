using System.Globalization;
using System.Text;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using NodaTime;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>
/// The cells of a table's current row as what they mean. Null means empty or faulty; a fault is reported here, and marks the row.
/// Numbers, dates and words are read without the spaces around them; names and texts exactly as written.
/// </summary>
internal sealed class Cells(Table table, FaultList faults)
{
    /// <summary>Longer texts are a sign of a lost quote, not of a name or reason.</summary>
    public const int LongestText = 2000;

    private const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    public string? Text(Column column)
    {
        if (Given(column).IsEmpty)
            return null;
        ReadOnlySpan<byte> cell = table[column];
        // Counted in UTF-16 letters, of which a byte of UTF-8 never gives more than one.
        if (cell.Length <= LongestText || Encoding.UTF8.GetCharCount(cell) <= LongestText)
            return Encoding.UTF8.GetString(cell);
        table.Fault(FaultRule.TextTooLong, column, LongestText);
        return null;
    }

    public double? Number(Column column)
    {
        ReadOnlySpan<byte> cell = Given(column);
        if (cell.IsEmpty)
            return null;
        if (!double.TryParse(cell, Plain, CultureInfo.InvariantCulture, out double number))
            table.Fault(cell.Contains((byte)',') ? FaultRule.DecimalComma : FaultRule.Number, column);
        else if (!double.IsFinite(number))
            table.Fault(FaultRule.NotFinite, column);
        else if (column.Bounds is { } bounds && !bounds.Hold(number))
            table.Fault(bounds.Rule, column, RangeTexts.Of(bounds, faults.Language));
        else
            return number;
        return null;
    }

    public decimal? Money(Column column)
    {
        if (Number(column) is null)
            return null;
        // The bounds of money lie within decimal, so what the number above accepted is read; digits beyond the 28th are rounded.
        return decimal.Parse(Trimmed(column), Plain, CultureInfo.InvariantCulture);
    }

    public int? Whole(Column column)
    {
        if (Number(column) is not { } number)
            return null;
        if (number == Math.Truncate(number))
            return (int)number;
        table.Fault(FaultRule.Whole, column, RangeTexts.Of(column.Bounds!, faults.Language));
        return null;
    }

    public LocalDate? Date(Column column)
    {
        ReadOnlySpan<byte> cell = Given(column);
        if (cell.IsEmpty)
            return null;
        if (IsoDate.Read(cell) is { } date)
            return date;
        table.Fault(FaultRule.Date, column);
        return null;
    }

    /// <summary>A date that must be a Monday, as the index of its week.</summary>
    public int? Week(Column column, SeasonFrame frame)
    {
        if (Date(column) is not { } date)
            return null;
        if (date.DayOfWeek == IsoDayOfWeek.Monday)
            return frame.WeekOf(date);
        table.Fault(FaultRule.Monday, column, IsoDate.Text(IsoDate.MondayOf(date)));
        return null;
    }

    public bool? YesNo(Column column)
    {
        ReadOnlySpan<byte> cell = Given(column);
        if (cell.IsEmpty)
            return null;
        if (Ascii.EqualsIgnoreCase(cell, "yes"u8))
            return true;
        if (Ascii.EqualsIgnoreCase(cell, "no"u8))
            return false;
        table.Fault(FaultRule.YesNo, column);
        return null;
    }

    public T? Word<T>(Column column, WordList<T> words) where T : struct, Enum
    {
        ReadOnlySpan<byte> cell = Given(column);
        if (cell.IsEmpty)
            return null;
        if (words.Find(cell) is { } word)
            return word;
        table.Fault(FaultRule.Word, column, words.All);
        return null;
    }

    public bool IsEmpty(Column column) => Trimmed(column).IsEmpty;

    /// <summary>A number, date or word as written, without the spaces around it.</summary>
    public string Canonical(Column column) => Encoding.UTF8.GetString(Trimmed(column));

    private ReadOnlySpan<byte> Trimmed(Column column) => table[column].Trim(" \t"u8);

    private ReadOnlySpan<byte> Given(Column column)
    {
        ReadOnlySpan<byte> cell = Trimmed(column);
        if (cell.IsEmpty && column.Needed)
            table.Fault(FaultRule.CellEmpty, column);
        return cell;
    }
}
