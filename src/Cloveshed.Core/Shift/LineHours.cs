using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Shift;

/// <summary>A stretch of time without a stop, in minutes of the week; End is not included.</summary>
public readonly record struct ShiftWindow(int Start, int End);

/// <summary>
/// The minutes of a week in which a line works: its shifts without breaks, maintenance, closed days and the cleaning before food. A run
/// that meets the end of such a stretch stops there and goes on at the next: that is the only way in which it may be split. Beside the clock
/// a line therefore has its own count of worked minutes, in which runs and set-ups have no gaps. After the week's end it is taken to work
/// without a stop: the overrun.
/// </summary>
public sealed class LineHours
{
    private const int Week = ShiftQuestion.WeekMinutes;
    private readonly int[] minutes, before = new int[Week + 1];

    private LineHours(bool[] works, IReadOnlyList<ShiftWindow> cleanings)
    {
        Cleanings = cleanings;
        minutes = [.. Enumerable.Range(0, Week).Where(minute => works[minute])];
        for (int minute = 0; minute < Week; minute++)
            before[minute + 1] = before[minute] + (works[minute] ? 1 : 0);
        List<ShiftWindow> windows = [];
        for (int minute = 0; minute < Week; minute++)
            if (works[minute] && (minute == 0 || !works[minute - 1]))
                windows.Add(new ShiftWindow(minute, minute + 1));
            else if (works[minute])
                windows[^1] = windows[^1] with { End = minute + 1 };
        Windows = windows;
    }

    /// <summary>All worked minutes of the week.</summary>
    public int Total => minutes.Length;

    /// <summary>Without a stop within.</summary>
    public IReadOnlyList<ShiftWindow> Windows { get; }

    /// <summary>When the line is cleaned before food.</summary>
    public IReadOnlyList<ShiftWindow> Cleanings { get; }

    /// <summary>Worked minutes before a minute of the clock.</summary>
    public int Worked(int minute) => minute <= Week ? before[Math.Max(0, minute)] : Total + minute - Week;

    /// <summary>The clock when a run begins that has so many worked minutes before it.</summary>
    public int StartAt(int worked) => worked < Total ? minutes[worked] : Week + worked - Total;

    /// <summary>The clock when a run ends that has so many worked minutes before its end; at least 1.</summary>
    public int EndAt(int worked) => worked <= Total ? minutes[worked - 1] + 1 : Week + worked - Total;

    /// <summary>Of one line.</summary>
    public static LineHours Of(ShiftQuestion question, ShiftLine line)
    {
        bool[] works = new bool[Week];
        foreach (ShiftRow row in question.Shifts.Where(row => row.Kind == ShiftKind.Work && Holds(row, line.Id)))
            Mark(works, question, row, true);
        foreach (ShiftRow row in question.Shifts.Where(row => row.Kind is ShiftKind.Break or ShiftKind.Maintenance or ShiftKind.Closed && Holds(row, line.Id)))
            Mark(works, question, row, false);
        List<ShiftWindow> cleanings = [];
        if (new SetupTable(question).Cleaning(line) is { } cleaning)
            for (int day = 0; day < 7; day++)
                cleanings.AddRange(Clean(works, day, (int)Math.Ceiling(cleaning.Minutes - 1e-9)));
        return new LineHours(works, cleanings);
    }

    /// <summary>The times of a row in the week, cut to it. A row of the Sunday before that ends after midnight reaches into the Monday.</summary>
    public static IEnumerable<ShiftWindow> Times(ShiftRow row, int week)
    {
        for (int day = -1; day < 7; day++)
        {
            bool ofWeek = row.Week is not { } named || named == (day < 0 ? week - 1 : week);
            if (!ofWeek || (row.Day is { } of && of != (IsoDayOfWeek)(((day + 7) % 7) + 1)))
                continue;
            int start = Math.Max(0, (day * ShiftQuestion.DayMinutes) + row.StartMinute), end = Math.Min(Week, (day * ShiftQuestion.DayMinutes) + row.EndMinute);
            if (start < end)
                yield return new ShiftWindow(start, end);
        }
    }

    private static bool Holds(ShiftRow row, LineId line) => row.Line is null || row.Line == line;

    private static void Mark(bool[] works, ShiftQuestion question, ShiftRow row, bool as_)
    {
        foreach (ShiftWindow window in Times(row, question.Week))
            Array.Fill(works, as_, window.Start, window.End - window.Start);
    }

    /// <summary>Takes the first minutes of the day's working time; a day that is shorter is cleaning alone.</summary>
    private static IEnumerable<ShiftWindow> Clean(bool[] works, int day, int minutes)
    {
        List<ShiftWindow> taken = [];
        for (int minute = day * ShiftQuestion.DayMinutes; minute < (day + 1) * ShiftQuestion.DayMinutes && minutes > 0; minute++)
            if (works[minute])
            {
                works[minute] = false;
                minutes--;
                if (taken.Count > 0 && taken[^1].End == minute)
                    taken[^1] = taken[^1] with { End = minute + 1 };
                else
                    taken.Add(new ShiftWindow(minute, minute + 1));
            }

        return taken;
    }
}
