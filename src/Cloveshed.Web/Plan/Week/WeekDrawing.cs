using Cloveshed.Core.Shift;

namespace Cloveshed.Web.Plan.Week;

/// <summary>
/// Where runs stand in the picture: a column for each day from the first to the last minute that any line works, nights left out, and one for
/// what runs over. In thousandths of the picture's width.
/// </summary>
internal sealed class WeekScale
{
    private readonly List<(int From, int To)> days = [];
    private readonly int total;

    public WeekScale(WeekSight week, ShiftSchedule schedule)
    {
        ShiftWindow[] windows = [.. week.Question.Lines.SelectMany(line => week.Timing.Hours(line.Id).Windows.Concat(week.Timing.Hours(line.Id).Cleanings))];
        for (int day = 0; day < 7; day++)
        {
            (int first, int last) = (day * ShiftQuestion.DayMinutes, (day + 1) * ShiftQuestion.DayMinutes);
            ShiftWindow[] ofDay = [.. windows.Where(window => window.Start < last && window.End > first)];
            if (ofDay.Length > 0)
            {
                days.Add((Math.Max(first, ofDay.Min(window => window.Start)), Math.Min(last, ofDay.Max(window => window.End))));
            }
        }

        int end = schedule.Runs.Select(run => run.End).DefaultIfEmpty(0).Max();
        if (end > ShiftQuestion.WeekMinutes)
        {
            days.Add((ShiftQuestion.WeekMinutes, end));
        }

        total = Math.Max(1, days.Sum(day => day.To - day.From));
    }

    public const double Width = 1000;

    public IReadOnlyList<(int From, int To)> Days => days;

    public double At(int minute)
    {
        int before = 0;
        foreach ((int from, int to) in days)
        {
            if (minute <= to)
            {
                return Width * (before + Math.Max(0, minute - from)) / total;
            }

            before += to - from;
        }

        return Width;
    }
}
