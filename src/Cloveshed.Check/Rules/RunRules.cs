using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>Each row of runs.csv by itself: line, mode, hold, ready; and the rows of one run with each other.</summary>
internal static class RunRules
{
    public static void Check(SeasonData season, AnswerData answer, Findings findings)
    {
        var first = new Dictionary<string, RunRow>();
        foreach (RunRow row in answer.Runs)
        {
            One(season, row, findings);
            if (!first.TryAdd(row.Run, row) && first[row.Run] is RunRow other
                && (row.Week, row.OnLine, row.Mode, row.Sorted) != (other.Week, other.OnLine, other.Mode, other.Sorted))
            {
                findings.Add(RuleNames.RunRows, row.Where, "another week, line, mode or source", $"those of line {other.Line}: one run, one of each");
            }
        }
    }

    private static void One(SeasonData season, RunRow row, Findings findings)
    {
        string mode = season.Lines[row.OnLine].Mode;
        if (row.Mode != mode)
        {
            findings.Add(RuleNames.RunMode, row.Where, $"mode {row.Mode} on line {row.OnLine}", mode);
        }

        if (row.Sorted && mode != "crack")
        {
            findings.Add(RuleNames.RunMode, row.Where, $"sorted-out bulbs on line {row.OnLine} ({mode})", "the cracker");
        }

        if (row.Sorted && !Tolerance.IsNothing(row.MassAtStart, 0))
        {
            findings.NotSame(RuleNames.MassWeighed, row.Where, "mass_at_start of sorted-out bulbs", row.MassAtStart, 0);
        }

        Lot lot = season.Lots[row.Lot];
        if (lot.Hold)
        {
            findings.Add(RuleNames.RunHold, row.Where, $"lot {lot.Name} is run", "no run: the lot is on hold");
        }

        if (lot.Ready is DateOnly ready && row.Week < season.Calendar.WeekOf(ready))
        {
            findings.Add(
                RuleNames.RunReady, row.Where, $"lot {lot.Name} in week {season.Calendar.Show(row.Week)}",
                $"week {season.Calendar.Show(season.Calendar.WeekOf(ready))} or later, the week of its ready date");
        }
    }
}
