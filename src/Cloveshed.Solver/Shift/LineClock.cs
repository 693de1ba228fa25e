using Cloveshed.Core;
using Cloveshed.Core.Shift;
using Google.OrTools.Sat;

namespace Cloveshed.Solver.Shift;

/// <summary>From a line's count of worked minutes to the clock that all lines share: for people, and for sorted-out bulbs.</summary>
internal sealed class LineClock(CpModel model, ShiftQuestion question, ShiftTiming timing, IReadOnlyDictionary<string, IntVar> starts)
{
    /// <summary>Parts of a person: what is needed is rounded up, who is there down, by less than the check allows for a half.</summary>
    private const double HeadParts = 100;

    /// <summary>Sorted-out bulbs neither begin nor end before the runs that sort them out.</summary>
    public void Precede()
    {
        Dictionary<string, (IntVar Start, IntVar End)> moments = [];
        (IntVar Start, IntVar End) Moments(ShiftRun run) => moments.TryGetValue(run.Id, out (IntVar, IntVar) known) ? known : moments[run.Id] = (Clock(run, false), Clock(run, true));
        foreach (ShiftRun run in question.Runs)
            foreach (ShiftRun source in question.Runs.Where(source => run.NotBefore.Contains(source.Id)))
            {
                ((IntVar start, IntVar end), (IntVar began, IntVar ended)) = (Moments(run), Moments(source));
                model.Add(start >= began);
                model.Add(end >= ended);
            }
    }

    /// <summary>Lines that run together need no more people than are there; nothing where all lines can run at once at any time.</summary>
    public void Limit()
    {
        double[] limit = HeadLimit.Of(question);
        double all = question.Lines.Where(line => question.Runs.Any(run => run.Line == line.Id)).Sum(line => line.Heads);
        if (limit.All(people => people >= all))
            return;
        long most = (long)Math.Ceiling(all * HeadParts);
        List<(IntervalVar Time, long People)> uses = [.. Absent(limit, most)];
        foreach (ShiftRun run in question.Runs)
        {
            long needed = (long)Math.Ceiling((question.LineOf(run.Line).Heads * HeadParts) - 1e-6);
            if (needed > 0)
                uses.AddRange(Pieces(run).Select(piece => (piece, needed)));
        }

        CumulativeConstraint people = model.AddCumulative(most);
        people.AddDemands(uses.Select(use => use.Time), uses.Select(use => use.People));
    }

    /// <summary>The people who are not there, as if they were busy elsewhere.</summary>
    private IEnumerable<(IntervalVar Time, long People)> Absent(double[] limit, long most)
    {
        for (int from = 0; from < limit.Length;)
        {
            int to = from + 1;
            while (to < limit.Length && limit[to].Equals(limit[from]))
                to++;
            if (limit[from] * HeadParts < most)
                yield return (model.NewFixedSizeIntervalVar(from, to - from, $"absent {from}"), most - (long)Math.Floor((limit[from] * HeadParts) + 1e-6));
            from = to;
        }
    }

    /// <summary>The part of a run in each stretch of its line's working time; its size is 0 where the run is elsewhere.</summary>
    private IEnumerable<IntervalVar> Pieces(ShiftRun run)
    {
        int worked = 0;
        foreach (ShiftWindow window in timing.Hours(run.Line).Windows)
        {
            int until = worked + window.End - window.Start, to = window.Start - worked;
            IntVar start = Within(starts[run.Id], 0, worked, until), end = Within(starts[run.Id], run.Minutes, worked, until), size = model.NewIntVar(0, Math.Min(run.Minutes, until - worked), "");
            yield return model.NewIntervalVar(start + to, size, end + to, $"{run.Id} at {window.Start}");
            worked = until;
        }
    }

    private IntVar Within(IntVar start, int plus, int low, int high)
    {
        IntVar capped = model.NewIntVar(0, high, ""), held = model.NewIntVar(low, high, "");
        model.AddMinEquality(capped, [start + plus, LinearExpr.Constant(high)]);
        model.AddMaxEquality(held, [capped, LinearExpr.Constant(low)]);
        return held;
    }

    /// <summary>The minute of the week at which a run begins, or ends.</summary>
    private IntVar Clock(ShiftRun run, bool end)
    {
        LineHours line = timing.Hours(run.Line);
        int latest = question.Runs.Sum(other => other.Minutes) + (2 * ShiftQuestion.WeekMinutes * 2);
        LinearExpr worked = end ? starts[run.Id] + run.Minutes : starts[run.Id];
        IntVar clock = model.NewIntVar(0, latest, "");
        List<ILiteral> windows = [];
        int before = 0;
        foreach ((ShiftWindow window, bool last) in line.Windows.Select(window => (window, false)).Append((new ShiftWindow(ShiftQuestion.WeekMinutes, ShiftQuestion.WeekMinutes + latest), true)))
        {
            int until = before + window.End - window.Start;
            BoolVar here = model.NewBoolVar("");
            model.Add(worked >= before + (end ? 1 : 0)).OnlyEnforceIf(here);
            if (!last)
                model.Add(worked <= until - (end ? 0 : 1)).OnlyEnforceIf(here);
            model.Add(clock == worked + (window.Start - before)).OnlyEnforceIf(here);
            windows.Add(here);
            before = until;
        }

        model.AddExactlyOne(windows);
        return clock;
    }
}
