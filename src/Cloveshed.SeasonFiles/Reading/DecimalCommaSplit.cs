using System.Globalization;
using System.Text;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>
/// A row with one field too many may hold a number written with a decimal comma, which split it in two. It is taken for that when
/// joining two neighbouring runs of digits at a number's column makes every other cell look as its column should; where several
/// joints do, the one with the fewest decimals.
/// </summary>
internal static class DecimalCommaSplit
{
    public static (Column Column, string Value)? Find(FileLayout layout, int[] fieldOfColumn, CsvRows rows, int fieldsInHeader)
    {
        if (rows.Count != fieldsInHeader + 1 || rows.Kept < rows.Count)
            return null;
        (Column Column, string Value)? best = null;
        int fewest = int.MaxValue;
        foreach (Column column in layout.Columns)
        {
            int at = fieldOfColumn[column.Ordinal];
            if (at < 0 || column.Shape != CellShape.Number || !Digits(rows[at], signed: true) || !Digits(rows[at + 1], signed: false))
                continue;
            bool othersFit = layout.Columns.All(other => fieldOfColumn[other.Ordinal] is var field
                && (field < 0 || field == at || Fits(other, rows[field < at ? field : field + 1])));
            if (!othersFit || rows[at + 1].Length >= fewest)
                continue;
            fewest = rows[at + 1].Length;
            best = (column, $"{Encoding.UTF8.GetString(rows[at])},{Encoding.UTF8.GetString(rows[at + 1])}");
        }
        return best;
    }

    private static bool Digits(ReadOnlySpan<byte> cell, bool signed)
    {
        cell = cell.Trim((byte)' ');
        if (signed && cell.Length > 0 && cell[0] == (byte)'-')
            cell = cell[1..];
        return cell.Length > 0 && cell.IndexOfAnyExceptInRange((byte)'0', (byte)'9') < 0;
    }

    private static bool Fits(Column column, ReadOnlySpan<byte> cell)
    {
        cell = cell.Trim((byte)' ');
        if (cell.IsEmpty)
            return !column.Needed;
        return column.Shape switch
        {
            CellShape.Number => double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out _),
            CellShape.Date => cell.Length == 10 && cell[4] == (byte)'-' && cell[7] == (byte)'-',
            CellShape.YesNo => Ascii.EqualsIgnoreCase(cell, "yes"u8) || Ascii.EqualsIgnoreCase(cell, "no"u8),
            _ => true,
        };
    }
}
