using System.Globalization;

namespace Cloveshed.SeasonFiles.Csv;

/// <summary>Numbers as season and answer files carry them: invariant, shortest text that reads back to the same number, never an exponent.</summary>
internal static class NumberText
{
    /// <summary>Refuses what is not finite: a file has no way to say it, and a plan no reason to hold it.</summary>
    public static string Of(double number)
    {
        if (!double.IsFinite(number))
            throw new ArgumentOutOfRangeException(nameof(number), number, "Only finite numbers can be written to a file.");
        if (number == 0)
            return "0"; // also for negative zero
        string text = number.ToString("R", CultureInfo.InvariantCulture);
        int exponentAt = text.IndexOf('E', StringComparison.Ordinal);
        return exponentAt < 0
            ? text
            : Spread(text[..exponentAt], int.Parse(text.AsSpan(exponentAt + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture));
    }

    public static string Of(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    public static string Of(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>1.25 and -3 becomes 0.00125.</summary>
    private static string Spread(string mantissa, int exponent)
    {
        string sign = mantissa[0] == '-' ? "-" : "";
        string digits = mantissa[sign.Length..];
        int point = digits.IndexOf('.', StringComparison.Ordinal);
        int whole = (point < 0 ? digits.Length : point) + exponent;
        digits = digits.Replace(".", "", StringComparison.Ordinal);
        if (whole <= 0)
            return sign + "0." + new string('0', -whole) + digits;
        return digits.Length <= whole
            ? sign + digits.PadRight(whole, '0')
            : sign + digits[..whole] + "." + digits[whole..];
    }
}
