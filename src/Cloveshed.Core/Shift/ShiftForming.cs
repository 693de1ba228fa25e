using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Shift;

/// <summary>From a season and its plan to one week's question.</summary>
public static class ShiftForming
{
    /// <summary>An overrun costs at least this for each hour, so that it is never as good as a shift.</summary>
    private const double LeastOverrunPerHour = 60;

    /// <summary>A part of a unit is an expectation of nothing to pack.</summary>
    private const double LeastUnits = 0.5;

    /// <summary>Weeks for which sorted-out bulbs wait for the cracker, this one not counted.</summary>
    private const int SortedWaits = 2;

    private const int DayStartMinute = 6 * 60, MostDays = 7, WorkDays = 5;

    /// <summary>Pure. A week without runs is a question without runs.</summary>
    public static ShiftQuestion Of(Season season, PlanAnswer plan, int week)
    {
        RunRow[] rows = [.. plan.Runs.Where(row => row.Week == week)];
        List<ShiftDefault> defaults = [];
        IReadOnlyList<ShiftRow> shifts = season.Shifts;
        if (!shifts.Any(row => row.Kind == ShiftKind.Work))
        {
            defaults.Add(ShiftDefault.ShiftsOfLines);
            shifts = [.. shifts, .. season.Lines.SelectMany(line => OfLine(season, line, week))];
        }

        if (season.Setups.Count == 0)
            defaults.Add(ShiftDefault.SetupsOfLines);
        if (!shifts.Any(row => row.Kind == ShiftKind.Dock))
            defaults.Add(ShiftDefault.DockAtDaysEnd);
        ShiftLine[] lines = [.. season.Lines.Select(line => new ShiftLine(
            line.Id, line.Mode, line.Heads, (double)line.CostPerHour, Math.Max(LeastOverrunPerHour, (double)(line.OvertimeCostPerHour ?? line.CostPerHour)), line.SetupHours * 60))];
        return new ShiftQuestion(season.Settings, week, lines, Runs(season, plan, rows, week), season.Setups, shifts, DockBook.Needs(season, plan, week), defaults);
    }

    private static IReadOnlyList<ShiftRun> Runs(Season season, PlanAnswer plan, RunRow[] rows, int week)
    {
        // One run in runs.csv may have a row for each place from which its lot comes.
        IGrouping<(string Run, LineId Line), RunRow>[] runs = [.. rows.GroupBy(row => (row.Run, row.Line))];
        ILookup<string, MadeRow> made = plan.Made.Where(row => row.Week == week).ToLookup(row => row.Run);
        Dictionary<LineId, Seasons.Line> lines = season.Lines.ToDictionary(line => line.Id);
        return [.. runs.Where(run => lines.ContainsKey(run.Key.Line)).Select(run =>
        {
            RunRow any = run.First();
            LotRow[] standing = [.. season.Lots.Where(row => row.Lot == any.Lot)];
            double mass = run.Sum(row => row.MassIn);
            RunMakes[] makes = [.. made[run.Key.Run].GroupBy(row => row.Product).Select(group => new RunMakes(group.Key, group.Sum(row => row.Units)))
                .Where(row => row.Units > 0).OrderBy(row => row.Product.Text, StringComparer.Ordinal)];
            return new ShiftRun(
                run.Key.Run, run.Key.Line, any.Mode, any.Lot, standing.Length > 0 ? standing[0].Variety : null, standing.Length > 0 && standing[0].Organic, any.FromSorted,
                [.. run.Select(row => row.Place).OfType<PlaceId>().Distinct()], mass, run.Sum(row => Bins(standing, row)),
                Math.Max(1, (int)Math.Ceiling((mass / lines[run.Key.Line].RatePerHour * 60) - 1e-6)), CutSet(season, any.Mode, makes), makes,
                any.FromSorted ? Sources(plan, rows, any, week) : []);
        })];
    }

    /// <summary>Bins stand for mass at the start: one lot's bins are taken as equally full.</summary>
    private static double Bins(LotRow[] standing, RunRow run) =>
        standing.Sum(row => row.Net) is > 0 and double net ? run.MassAtStart / net * standing.Sum(row => row.Bins) : 0;

    /// <summary>The classes or grades of what the run makes, in the order of the chart; the mode where it makes no product.</summary>
    private static string CutSet(Season season, LineMode mode, RunMakes[] makes)
    {
        HashSet<string> from = [.. makes.Where(row => row.Units >= LeastUnits).Select(row => season.Products.FirstOrDefault(product => product.Id == row.Product)?.From).OfType<string>()];
        string[] names = mode == LineMode.Fresh
            ? [.. season.Sizes.Where(size => from.Contains(size.Id.Text)).Select(size => size.Code ?? size.Id.Text)]
            : [.. season.CloveGrades.Where(grade => from.Contains(grade.Id.Text)).Select(grade => grade.Id.Text)];
        return names.Length > 0 ? string.Join('+', names) : mode switch { LineMode.Fresh => "fresh", LineMode.Crack => "crack", _ => "seed" };
    }

    /// <summary>
    /// The fresh runs of this week without which there are too few sorted-out bulbs of the lot: none where what was sorted out before and not yet
    /// run is enough.
    /// </summary>
    private static IReadOnlyList<string> Sources(PlanAnswer plan, RunRow[] rows, RunRow run, int week)
    {
        double needed = rows.Where(row => row.FromSorted && row.Lot == run.Lot).Sum(row => row.MassIn);
        double before = plan.Sorted.Where(row => row.Lot == run.Lot && row.Week < week && row.Week >= week - SortedWaits).Sum(row => row.Mass);
        double ran = plan.Runs.Where(row => row.FromSorted && row.Lot == run.Lot && row.Week < week && row.Week >= week - SortedWaits).Sum(row => row.MassIn);
        return Math.Max(0, before - ran) >= needed * (1 - 1e-9)
            ? [] : [.. rows.Where(row => !row.FromSorted && row.Lot == run.Lot && row.Mode == LineMode.Fresh).Select(row => row.Run).Distinct()];
    }

    /// <summary>A line's hours and overtime in equal days from 06:00, Monday to Friday, or to Sunday where days would be longer than days are.</summary>
    private static ShiftRow[] OfLine(Season season, Seasons.Line line, int week)
    {
        LineWeek? other = season.LineWeeks.FirstOrDefault(row => row.Line == line.Id && row.Week == week);
        double hours = other is null ? line.HoursPerWeek + line.OvertimeHours : other.Hours + other.OvertimeOf(line);
        if (hours <= 0)
            return [];
        int days = hours / WorkDays > 24 ? MostDays : WorkDays, minutes = Math.Min(ShiftQuestion.DayMinutes, (int)Math.Ceiling((hours * 60 / days) - 1e-6));
        return [.. Enumerable.Range(0, days).Select(day => new ShiftRow(
            ShiftKind.Work, "", line.Id, week, (IsoDayOfWeek)(day + 1), DayStartMinute, DayStartMinute + minutes, null))];
    }
}
