using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;

namespace Cloveshed.Web.Plan.Week;

/// <summary>A line in one shift: what is on its sheet.</summary>
/// <param name="Name">As shifts.csv calls it; empty where there is no such file.</param>
/// <param name="Breaks">What stops the line in it: breaks and maintenance.</param>
/// <param name="Runs">Those that run in it, whole or in part, in their order.</param>
public sealed record ShiftSheet(ShiftLine Line, string Name, ShiftWindow Time, IReadOnlyList<(ShiftRow Row, ShiftWindow Time)> Breaks, ShiftWindow? Cleaning, IReadOnlyList<SheetRun> Runs)
{
    /// <summary>By line, then by time. Shifts in which a line runs nothing have no sheet; what runs over has one of its own.</summary>
    public static IReadOnlyList<ShiftSheet> Of(WeekSight week, WeekTimes times) =>
        [.. week.Question.Lines.SelectMany(line => Shared([.. Shifts(week, line).OrderBy(shift => shift.Time.Start).Select(shift => Sheet(week, times, line, shift.Name, shift.Time)).Where(sheet => sheet.Runs.Count > 0)]))];

    /// <summary>Each run knows the pieces in which it stands on the line's sheets.</summary>
    private static IEnumerable<ShiftSheet> Shared(ShiftSheet[] sheets)
    {
        ILookup<string, int> pieces = sheets.SelectMany(sheet => sheet.Runs).ToLookup(run => run.Run.Id, run => run.Minutes);
        Dictionary<string, int> at = [];
        foreach (ShiftSheet sheet in sheets)
        {
            yield return sheet with
            {
                Runs = [.. sheet.Runs.Select(run =>
                {
                    int piece = at[run.Run.Id] = at.TryGetValue(run.Run.Id, out int before) ? before + 1 : 0;
                    return run with { Pieces = [.. pieces[run.Run.Id]], Piece = piece };
                })],
            };
        }
    }

    private static IEnumerable<(string Name, ShiftWindow Time)> Shifts(WeekSight week, ShiftLine line)
    {
        // A row of this week may say again when a shift is, with other people: it is one shift.
        HashSet<ShiftWindow> seen = [];
        foreach (ShiftRow row in week.Question.Shifts.Where(row => row.Kind == ShiftKind.Work && (row.Line is null || row.Line == line.Id)))
        {
            foreach (ShiftWindow time in LineHours.Times(row, week.Question.Week).Where(seen.Add))
            {
                yield return (row.Name, time);
            }
        }

        yield return ("", new ShiftWindow(ShiftQuestion.WeekMinutes, int.MaxValue));
    }

    private static ShiftSheet Sheet(WeekSight week, WeekTimes times, ShiftLine line, string name, ShiftWindow time)
    {
        bool Within(ShiftWindow other) => other.Start < time.End && other.End > time.Start;
        IReadOnlyList<PlacedRun> placed = times.Schedule.Of(line.Id);
        List<SheetRun> runs = [];
        foreach ((int at, PlacedRun run) in placed.Index())
        {
            // Two shifts without a stop between them are one stretch of work: what runs on is cut where the shift ends.
            ShiftWindow[] worked = [.. week.Timing.Hours(line.Id).Windows.Append(new ShiftWindow(ShiftQuestion.WeekMinutes, int.MaxValue))
                .Select(window => new ShiftWindow(Math.Max(Math.Max(window.Start, time.Start), run.Start), Math.Min(Math.Min(window.End, time.End), run.End))).Where(window => window.Start < window.End)];
            if (worked.Length == 0)
            {
                continue;
            }

            ShiftRun what = week.Question.Runs.First(one => one.Id == run.Run);
            SetUp setUp = at == 0 ? week.Timing.Setups.First(what) : week.Timing.Setups.Between(week.Question.Runs.First(one => one.Id == placed[at - 1].Run), what);
            runs.Add(new SheetRun(what, setUp, at == 0, worked[0].Start, worked[^1].End, run.Start >= time.Start && run.Start < time.End, run.End > time.Start && run.End <= time.End, worked.Sum(window => window.End - window.Start)));
        }

        return new ShiftSheet(
            line, name, time,
            [.. week.Question.Shifts.Where(row => row.Kind is ShiftKind.Break or ShiftKind.Maintenance && (row.Line is null || row.Line == line.Id))
                .SelectMany(row => LineHours.Times(row, week.Question.Week).Where(Within).Select(stop => (row, stop))).OrderBy(stop => stop.stop.Start)],
            week.Timing.Hours(line.Id).Cleanings.Where(Within).Select(cleaning => (ShiftWindow?)cleaning).FirstOrDefault(), runs);
    }
}

/// <summary>A run in a shift.</summary>
/// <param name="First">The line's first of the week.</param>
/// <param name="From">Of what of it runs in the shift, in minutes of the week.</param>
/// <param name="Begins">It begins in this shift; else it goes on from the one before.</param>
/// <param name="Ends">It ends in this shift; else it goes on in the next.</param>
/// <param name="Minutes">For which it runs in the shift.</param>
public sealed record SheetRun(ShiftRun Run, SetUp SetUp, bool First, int From, int To, bool Begins, bool Ends, int Minutes)
{
    /// <summary>Minutes of every shift in which it runs, in order of time.</summary>
    public IReadOnlyList<int> Pieces { get; init; } = [Minutes];

    /// <summary>Which of them this is.</summary>
    public int Piece { get; init; }

    /// <summary>What is expected of it in this shift.</summary>
    /// <param name="mass">Of the whole run, in whole units of the reader's mass.</param>
    public RunShare Share(long mass) => RunShares.Of(Run, Pieces, mass)[Piece];
}
