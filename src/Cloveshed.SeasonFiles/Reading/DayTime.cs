using System.Globalization;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>A time of day as a cell has it: hours:minutes on a clock of 24 hours, as minutes after midnight.</summary>
internal static class DayTime
{
    public const int MinutesOfDay = 1440;

    /// <summary>Null where the cell is empty or faulty.</summary>
    /// <param name="endOfDay">Whether 24:00 will do.</param>
    public static int? Read(Table table, Cells cells, Column column, bool endOfDay)
    {
        if (cells.Text(column) is null)
            return null;
        string[] parts = cells.Canonical(column).Split(':');
        if (parts.Length == 2 && parts[0].Length is 1 or 2 && parts[^1].Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int hours) && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int minutes)
            && minutes < 60 && (hours < 24 || (endOfDay && hours == 24 && minutes == 0)))
            return (hours * 60) + minutes;
        table.Fault(FaultRule.TimeOfDay, column);
        return null;
    }

    /// <summary>Minutes of the next day as that day's time, except its first, which is this one's 24:00.</summary>
    public static string Text(int minute) =>
        (minute > MinutesOfDay ? minute - MinutesOfDay : minute) is var shown ? string.Create(CultureInfo.InvariantCulture, $"{shown / 60:00}:{shown % 60:00}") : "";
}
