using System.Globalization;

namespace Cloveshed.Check.Reading;

/// <summary>
/// A row, read cell by cell. A cell that cannot be read is reported and the row is no longer sound; the caller then leaves it out.
/// Numbers, dates and words are read without the spaces around them; names exactly as written.
/// </summary>
internal sealed class CsvRow(CsvTable table, CsvRecord record)
{
    public bool Sound { get; private set; } = true;

    public int Line => record.Line;

    public string Where => $"{table.File} line {record.Line}";

    public string Text(string column) => NameOrEmpty(column).Trim();

    public string NameOrEmpty(string column) => table.Column(column) is int at ? record.Cells[at] : "";

    public string Name(string column) =>
        Text(column).Length > 0 ? NameOrEmpty(column) : Refuse(RuleNames.UnknownName, column, "a name", "");

    /// <summary>A finite number of zero or more; less than zero by noise is zero.</summary>
    public double Amount(string column) => AtLeastZero(column, Finite(column));

    public double? AmountOrNull(string column) => Text(column).Length == 0 ? null : Amount(column);

    public double AmountOr(string column, double empty) => AmountOrNull(column) ?? empty;

    /// <summary>A finite number of either sign.</summary>
    public double Finite(string column) =>
        double.TryParse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? number
            : Refuse(RuleNames.Number, column, "a finite number", 0d);

    public double? FiniteOrNull(string column) => Text(column).Length == 0 ? null : Finite(column);

    public double FiniteOr(string column, double empty) => FiniteOrNull(column) ?? empty;

    /// <summary>A whole number of zero or more.</summary>
    public double Whole(string column)
    {
        double amount = Amount(column);
        return Math.Floor(amount).Equals(amount) ? amount : Refuse(RuleNames.WholeNumber, column, "a whole number", 0d);
    }

    public bool Flag(string column, bool empty) => Text(column).ToUpperInvariant() switch
    {
        "" => empty,
        "YES" or "Y" or "TRUE" or "1" => true,
        "NO" or "N" or "FALSE" or "0" => false,
        _ => Refuse(RuleNames.Word, column, "yes or no", false),
    };

    public string OneOf(string column, params string[] words)
    {
        string text = Text(column);
        return Array.Find(words, word => word.Equals(text, StringComparison.OrdinalIgnoreCase))
            ?? Refuse(RuleNames.Word, column, string.Join(" or ", words), words[0]);
    }

    public DateOnly Date(string column) =>
        DateOnly.TryParseExact(Text(column), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date)
            ? date
            : Refuse(RuleNames.Week, column, "a date such as 2026-08-03", DateOnly.MinValue);

    public DateOnly? DateOrNull(string column) => Text(column).Length == 0 ? null : Date(column);

    public void NotSound() => Sound = false;

    private double AtLeastZero(string column, double number) =>
        number >= 0 ? number : number >= -Tolerance.Noise ? 0 : Refuse(RuleNames.Number, column, "zero or more", 0d);

    private T Refuse<T>(string rule, string column, string allowed, T instead)
    {
        Sound = false;
        table.Report(rule, Where, $"{column} {(Text(column).Length == 0 ? "empty" : Text(column))}", allowed);
        return instead;
    }
}
