using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Shift;

/// <summary>
/// Holds a schedule against a week's question, by the minute and without the model that made it. Every breach is told, with what was found,
/// what is allowed, and when. Late units and overruns are no breaches: they are costs.
/// </summary>
public static class ShiftCheck
{
    /// <summary>Of people: rows may have halves, so that sums of them are not exact.</summary>
    public const double HeadSlack = 1e-6;

    /// <summary>Of money that is told: a hundredth, or a millionth of large sums.</summary>
    private const double MoneySlack = 0.01, LargeMoneySlack = 1e-6;

    /// <summary>A schedule without claims of cost.</summary>
    public static IReadOnlyList<ShiftBreach> Breaches(ShiftQuestion question, ShiftSchedule schedule) => Breaches(question, schedule, null);

    /// <summary>A schedule, and the costs that are told of it where some are.</summary>
    public static IReadOnlyList<ShiftBreach> Breaches(ShiftQuestion question, ShiftSchedule schedule, ShiftCosts? told)
    {
        List<ShiftBreach> breaches = [];
        Dictionary<string, ShiftRun> runs = question.Runs.ToDictionary(run => run.Id);
        Dictionary<LineId, MinuteBook> books = question.Lines.ToDictionary(line => line.Id, line => new MinuteBook(question, line));
        foreach (ShiftRun run in question.Runs.Where(run => schedule.Runs.Count(placed => placed.Run == run.Id) is not 1))
            breaches.Add(new ShiftBreach(ShiftRule.EachOnce, run.Line, run.Id, null, null, schedule.Runs.Count(placed => placed.Run == run.Id), 1));
        foreach (PlacedRun placed in schedule.Runs.Where(placed => !runs.ContainsKey(placed.Run)))
            breaches.Add(new ShiftBreach(ShiftRule.EachOnce, placed.Line, placed.Run, null, placed.Start, 1, 0));
        PlacedRun[] known = [.. schedule.Runs.Where(placed => runs.ContainsKey(placed.Run))];
        foreach (PlacedRun placed in known)
        {
            ShiftRun run = runs[placed.Run];
            if (placed.Line != run.Line)
                breaches.Add(new ShiftBreach(ShiftRule.OwnLine, placed.Line, run.Id, null, placed.Start, 0, 0, run.Line.Text));
            else
                breaches.AddRange(OfRun(books[run.Line], run, placed));
        }

        foreach (ShiftLine line in question.Lines)
            breaches.AddRange(OfLine(question, line, books[line.Id], [.. known.Where(placed => placed.Line == line.Id && runs[placed.Run].Line == line.Id).OrderBy(placed => placed.Start).ThenBy(placed => placed.End)], runs));
        breaches.AddRange(People(question, known, runs, books));
        breaches.AddRange(Sources(known, runs));
        if (told is not null)
            breaches.AddRange(Claims(question, known, runs, books, told));
        return breaches;
    }

    private static IEnumerable<ShiftBreach> OfRun(MinuteBook book, ShiftRun run, PlacedRun placed)
    {
        foreach ((int minute, int shown) in new[] { (placed.Start, placed.Start), (placed.End - 1, placed.End) })
            if (book[minute] is var use and not MinuteUse.Work)
                yield return new ShiftBreach(
                    use switch { MinuteUse.Break => ShiftRule.NotInBreak, MinuteUse.Maintenance => ShiftRule.NotInMaintenance, MinuteUse.Cleaning => ShiftRule.Cleaned, _ => ShiftRule.InShift },
                    run.Line, run.Id, null, shown, shown, Nearest(book, minute) + (minute == shown ? 0 : 1), use is MinuteUse.Off ? null : book.Name(minute));
        int worked = book.Worked(placed.Start, placed.End);
        if (worked != run.Minutes)
            yield return new ShiftBreach(ShiftRule.Length, run.Line, run.Id, null, placed.Start, worked, run.Minutes);
    }

    /// <summary>The next worked minute; there is always one, after the week's end.</summary>
    private static int Nearest(MinuteBook book, int minute)
    {
        while (book[minute] != MinuteUse.Work)
            minute++;
        return minute;
    }

    private static IEnumerable<ShiftBreach> OfLine(ShiftQuestion question, ShiftLine line, MinuteBook book, PlacedRun[] placed, Dictionary<string, ShiftRun> runs)
    {
        for (int at = 0; at < placed.Length; at++)
        {
            (PlacedRun next, ShiftRun run) = (placed[at], runs[placed[at].Run]);
            double travel = run.Places.Select(place => Minutes(question, SetupKind.Travel, line.Id, place.Text, null)).DefaultIfEmpty(0).Max();
            if (at == 0)
            {
                // The line's week begins with its first worked minute; before it nobody brings bins.
                int waited = book.Worked(0, Math.Max(0, next.Start));
                if (waited + 1e-9 < travel)
                    yield return new ShiftBreach(ShiftRule.Bins, line.Id, run.Id, null, next.Start, waited, travel);
                continue;
            }

            (PlacedRun before, ShiftRun former) = (placed[at - 1], runs[placed[at - 1].Run]);
            if (next.Start < before.End)
            {
                yield return new ShiftBreach(ShiftRule.OneAtATime, line.Id, run.Id, former.Id, next.Start, next.Start, before.End);
                continue;
            }

            int between = book.Worked(before.End, next.Start);
            double setUp = SetUpMinutes(question, line, former, run);
            if (between + 1e-9 < setUp)
                yield return new ShiftBreach(!former.Organic && run.Organic ? ShiftRule.CleanOut : ShiftRule.SetUp, line.Id, run.Id, former.Id, next.Start, between, Math.Ceiling(setUp - 1e-9));
            if (between + 1e-9 < travel)
                yield return new ShiftBreach(ShiftRule.Bins, line.Id, run.Id, former.Id, next.Start, between, travel);
        }
    }

    private static double SetUpMinutes(ShiftQuestion question, ShiftLine line, ShiftRun before, ShiftRun next)
    {
        if (question.Setups.Count == 0)
            return line.SetupMinutes;
        double minutes = 0;
        if (before.Variety != next.Variety)
            minutes += Minutes(question, SetupKind.Variety, line.Id, before.Variety?.Text ?? "", next.Variety?.Text ?? "");
        if (before.Organic != next.Organic)
            minutes += Minutes(question, SetupKind.Organic, line.Id, before.Organic ? "organic" : "conventional", next.Organic ? "organic" : "conventional");
        if (before.CutSet != next.CutSet)
            minutes += Minutes(question, SetupKind.Cuts, line.Id, before.CutSet, next.CutSet);
        return minutes;
    }

    /// <summary>Looks from the row that says most to the one that says least; 0 where there is none.</summary>
    private static double Minutes(ShiftQuestion question, SetupKind kind, LineId line, string? from, string? to)
    {
        foreach ((LineId? onLine, string? wasFrom, string? isTo) in new (LineId?, string?, string?)[]
            { (line, from, to), (line, from, null), (line, null, to), (line, null, null), (null, from, to), (null, from, null), (null, null, to), (null, null, null) })
            foreach (SetupRow row in question.Setups)
                if (row.Kind == kind && row.Line == onLine && row.From == wasFrom && row.To == isTo)
                    return row.Minutes;
        return 0;
    }

    /// <summary>One breach for each stretch of time in which too many are needed, at its worst minute.</summary>
    private static IEnumerable<ShiftBreach> People(ShiftQuestion question, PlacedRun[] known, Dictionary<string, ShiftRun> runs, Dictionary<LineId, MinuteBook> books)
    {
        double[] people = MinuteBook.People(question), needed = new double[people.Length];
        string?[] run = new string?[people.Length], other = new string?[people.Length];
        foreach (PlacedRun placed in known.Where(placed => books.ContainsKey(placed.Line)).OrderBy(placed => placed.Start))
            for (int minute = Math.Max(0, placed.Start); minute < Math.Min(placed.End, people.Length); minute++)
                if (books[placed.Line][minute] == MinuteUse.Work)
                    (needed[minute], other[minute], run[minute]) = (needed[minute] + question.LineOf(runs[placed.Run].Line).Heads, run[minute], placed.Run);
        for (int minute = 0; minute < people.Length; minute++)
        {
            if (people[minute] < 0 || needed[minute] <= people[minute] + HeadSlack)
                continue;
            int worst = minute;
            for (; minute < people.Length && people[minute] >= 0 && needed[minute] > people[minute] + HeadSlack; minute++)
                if (needed[minute] - people[minute] > needed[worst] - people[worst])
                    worst = minute;
            yield return new ShiftBreach(ShiftRule.Heads, runs[run[worst]!].Line, run[worst], other[worst], worst, needed[worst], people[worst]);
        }
    }

    private static IEnumerable<ShiftBreach> Sources(PlacedRun[] known, Dictionary<string, ShiftRun> runs)
    {
        foreach (PlacedRun placed in known)
            foreach (PlacedRun source in known.Where(source => runs[placed.Run].NotBefore.Contains(source.Run)))
                if (placed.Start < source.Start)
                    yield return new ShiftBreach(ShiftRule.SortedFirst, placed.Line, placed.Run, source.Run, placed.Start, placed.Start, source.Start);
                else if (placed.End < source.End)
                    yield return new ShiftBreach(ShiftRule.SortedFirst, placed.Line, placed.Run, source.Run, placed.End, placed.End, source.End);
    }

    private static IEnumerable<ShiftBreach> Claims(ShiftQuestion question, PlacedRun[] known, Dictionary<string, ShiftRun> runs, Dictionary<LineId, MinuteBook> books, ShiftCosts told)
    {
        double late = question.Needs.Sum(need =>
        {
            double ready = known.Sum(placed => runs[placed.Run].Makes.Where(makes => makes.Product == need.Product).Sum(makes =>
                makes.Units * Math.Min(runs[placed.Run].Minutes, books[runs[placed.Run].Line].Worked(placed.Start, Math.Min(placed.End, need.Minute))) / runs[placed.Run].Minutes));
            return Math.Max(0, need.Units - ready) is > 1e-6 and double missing ? missing * need.CostPerUnit : 0;
        });
        double overrun = known.Sum(placed => Math.Max(0, placed.End - Math.Max(placed.Start, 7 * 1440)) * question.LineOf(runs[placed.Run].Line).OverrunPerHour / 60);
        double changeover = 0;
        foreach (ShiftLine line in question.Lines)
        {
            PlacedRun[] inOrder = [.. known.Where(placed => placed.Line == line.Id).OrderBy(placed => placed.Start).ThenBy(placed => placed.End)];
            for (int at = 1; at < inOrder.Length; at++)
                changeover += Money(question, line, runs[inOrder[at - 1].Run], runs[inOrder[at].Run]);
        }

        foreach ((string what, double said, double is_) in new[] { ("late", told.Late, late), ("overrun", told.Overrun, overrun), ("changeover", told.Changeover, changeover) })
            if (!(Math.Abs(said - is_) <= Math.Max(MoneySlack, LargeMoneySlack * Math.Abs(is_))))
                yield return new ShiftBreach(ShiftRule.Costs, null, null, null, null, said, is_, what);
    }

    private static double Money(ShiftQuestion question, ShiftLine line, ShiftRun before, ShiftRun next)
    {
        if (question.Setups.Count == 0)
            return line.SetupMinutes / 60 * line.CostPerHour;
        double cost = 0;
        foreach ((SetupKind kind, string from, string to) in new[]
            {
                (SetupKind.Variety, before.Variety?.Text ?? "", next.Variety?.Text ?? ""), (SetupKind.Cuts, before.CutSet, next.CutSet),
                (SetupKind.Organic, before.Organic ? "organic" : "conventional", next.Organic ? "organic" : "conventional"),
            })
        {
            SetupRow? most = null;
            int said = -1;
            foreach (SetupRow row in question.Setups.Where(row => from != to && row.Kind == kind && (row.Line ?? line.Id) == line.Id && (row.From ?? from) == from && (row.To ?? to) == to))
            {
                int says = (row.Line is null ? 0 : 4) + (row.From is null ? 0 : 2) + (row.To is null ? 0 : 1);
                if (says > said)
                    (most, said) = (row, says);
            }

            cost += (double)(most?.Cost ?? 0);
        }

        return cost + (Math.Ceiling(SetUpMinutes(question, line, before, next) - 1e-9) / 60 * line.CostPerHour);
    }
}
