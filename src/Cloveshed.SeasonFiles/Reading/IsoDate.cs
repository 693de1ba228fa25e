using NodaTime;
using NodaTime.Text;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>Dates as ISO 8601 calendar dates in the extended form, yyyy-MM-dd, from 1900 to 2199 so that a slip in the year is seen.</summary>
internal static class IsoDate
{
    public static LocalDate? Read(ReadOnlySpan<byte> cell)
    {
        if (cell.Length != 10 || cell[4] != (byte)'-' || cell[7] != (byte)'-')
            return null;
        if (Digits(cell[..4]) is not (>= 1900 and <= 2199 and int year) || Digits(cell[5..7]) is not (>= 1 and <= 12 and int month)
            || Digits(cell[8..]) is not (>= 1 and int day) || day > CalendarSystem.Iso.GetDaysInMonth(year, month))
            return null;
        return new LocalDate(year, month, day);
    }

    public static string Text(LocalDate date) => LocalDatePattern.Iso.Format(date);

    /// <summary>The Monday of the date's week: the date itself, or the last Monday before it.</summary>
    public static LocalDate MondayOf(LocalDate date) => date.PlusDays(1 - (int)date.DayOfWeek);

    private static int? Digits(ReadOnlySpan<byte> text)
    {
        int number = 0;
        foreach (byte digit in text)
        {
            if (digit is < (byte)'0' or > (byte)'9')
                return null;
            number = number * 10 + (digit - (byte)'0');
        }
        return number;
    }
}
