using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// Hours: together they cover mass in over rate and the set-ups; they stay within the line's week, and, times heads, within the
/// people of the week. Minimum runs.
/// </summary>
internal static class HoursRules
{
    public static void Check(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        var personHours = new Dictionary<int, double>();
        foreach (IGrouping<(string OnLine, int Week), RunRow> group in answer.Runs.GroupBy(row => (row.OnLine, row.Week)))
        {
            Line line = season.Lines[group.Key.OnLine];
            int week = group.Key.Week;
            double hours = LineWeek(season, line, week, [.. group], findings);
            personHours[week] = personHours.GetValueOrDefault(week) + (hours * line.Heads);
        }

        foreach ((int week, double hours) in personHours)
        {
            if (season.People.TryGetValue(week, out double people) && !Tolerance.AtMost(hours, people, people))
            {
                findings.Over(RuleNames.PeopleOver, $"runs.csv week {season.Calendar.Show(week)}", "person-hours", hours, people);
            }
        }

        MinRuns(season, answer, tracks, findings);
    }

    private static double LineWeek(SeasonData season, Line line, int week, RunRow[] rows, Findings findings)
    {
        string where = $"runs.csv line {line.Name}, week {season.Calendar.Show(week)}";
        double hours = rows.Sum(row => row.Hours);
        double overtime = rows.Sum(row => row.Overtime);
        RunRow[] running = [.. rows.Where(row => row.MassIn > Tolerance.Noise)];
        int setups = running.Where(row => !row.Sorted).Select(row => row.Lot).Distinct().Count() + (running.Any(row => row.Sorted) ? 1 : 0);
        double massIn = running.Sum(row => row.MassIn);
        double needed = (massIn > 0 ? massIn / line.RatePerHour : 0) + (setups * line.SetupHours);
        if (!Tolerance.AtMost(needed, hours + overtime, needed))
        {
            findings.Under(RuleNames.HoursShort, where, "hours and overtime together", hours + overtime, needed);
        }

        (double mostHours, double mostOvertime) = season.HoursOf(line, week);
        if (!Tolerance.AtMost(hours, mostHours, mostHours))
        {
            findings.Over(RuleNames.HoursOver, where, "hours", hours, mostHours);
        }

        if (!Tolerance.AtMost(overtime, mostOvertime, mostOvertime))
        {
            findings.Over(RuleNames.OvertimeOver, where, "overtime_hours", overtime, mostOvertime);
        }

        return hours + overtime;
    }

    // A run that finishes a row of lots.csv may be small: after that week nothing of the row is left anywhere.
    private static void MinRuns(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        var leftOfRow = new Dictionary<LotRow, double[]>();
        foreach (PathTrack track in tracks.All.Where(track => track.Row is not null))
        {
            double[] left = leftOfRow.TryGetValue(track.Row!, out double[]? known) ? known : leftOfRow[track.Row!] = new double[season.Weeks];
            for (int week = 0; week < season.Weeks; week++)
            {
                left[week] += track.Left[week];
            }
        }

        foreach (var group in answer.Runs.Where(row => !row.Sorted).GroupBy(row => (row.Lot, row.OnLine, row.Week)))
        {
            double massIn = group.Sum(row => row.MassIn);
            double least = season.Lines[group.Key.OnLine].MinRun;
            bool finishes = group.Select(row => tracks.Find(row.Path)?.Row).OfType<LotRow>()
                .Any(row => Tolerance.IsNothing(leftOfRow[row][group.Key.Week], row.Net));
            if (massIn > Tolerance.Noise && !finishes && !Tolerance.AtMost(least, massIn, least))
            {
                findings.Under(
                    RuleNames.MinRun, $"runs.csv lot {group.Key.Lot}, line {group.Key.OnLine}, week {season.Calendar.Show(group.Key.Week)}",
                    "mass_in", massIn, least);
            }
        }
    }
}
