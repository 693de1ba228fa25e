using Cloveshed.Core;
using Cloveshed.Core.Shift;
using Google.OrTools.Sat;

namespace Cloveshed.Solver.Shift;

/// <summary>
/// A week's runs as a model of whole numbers. A run's start is counted in its line's worked minutes, in which a line is one machine without
/// breaks: its order is a round trip through its runs, and set-ups are the ways between them. Docks and the week's end are constants on that
/// count; only people, and sorted-out bulbs, need the clock.
/// </summary>
/// <remarks>
/// Rounding is to the good of the cost, so that a bound of the model is one of the week: units made are rounded up, units needed and money down.
/// </remarks>
internal sealed class ShiftModel
{
    /// <summary>Parts of a unit, and of money per unit of the first stage; parts of money in the second.</summary>
    public const double UnitParts = 1e4, FirstParts = 1e8, ChangeParts = 1e4;

    private readonly ShiftQuestion question;
    private readonly ShiftTiming timing;
    private readonly Dictionary<string, IntVar> starts = [];
    private readonly Dictionary<(string, string), BoolVar> next = [];
    private readonly Dictionary<(string, int), IntVar> done = [];
    private readonly List<(string? From, string? To, BoolVar Arc)> arcs = [];

    public ShiftModel(ShiftQuestion question, ShiftTiming timing)
    {
        (this.question, this.timing) = (question, timing);
        foreach (ShiftLine line in question.Lines)
            Sequence([.. question.Runs.Where(run => run.Line == line.Id)], timing.Hours(line.Id));
        First = LinearExpr.Sum([.. Overruns(), .. Docks()]);
        Change = LinearExpr.Sum(next.Select(pair => (LinearExpr)pair.Value * Floor(Between(pair.Key).Cost * ChangeParts)));
        LineClock clock = new(Model, question, timing, starts);
        clock.Precede();
        clock.Limit();
    }

    public CpModel Model { get; } = new();

    /// <summary>Lateness and overrun, in parts of money.</summary>
    public LinearExpr First { get; }

    /// <summary>Changeover, in parts of money.</summary>
    public LinearExpr Change { get; }

    /// <summary>Where the search may begin.</summary>
    public void Hint(ShiftSchedule schedule)
    {
        Model.ClearHints();
        HashSet<(string?, string?)> follows = [];
        foreach (ShiftLine line in question.Lines)
        {
            PlacedRun[] placed = [.. schedule.Of(line.Id)];
            for (int at = 0; at <= placed.Length; at++)
                follows.Add((at == 0 ? null : placed[at - 1].Run, at == placed.Length ? null : placed[at].Run));
            foreach (PlacedRun run in placed)
                Model.AddHint(starts[run.Run], timing.Hours(line.Id).Worked(run.Start));
        }

        foreach ((string? from, string? to, BoolVar arc) in arcs)
            Model.AddHint(arc, follows.Contains((from, to)));
    }

    /// <summary>The times that a solution means.</summary>
    public ShiftSchedule Read(CpSolver solver) => new([.. question.Runs.Select(run =>
    {
        LineHours line = timing.Hours(run.Line);
        int start = (int)solver.Value(starts[run.Id]);
        return new PlacedRun(run.Id, run.Line, line.StartAt(start), line.EndAt(start + run.Minutes));
    })]);

    private SetUp Between((string From, string To) pair) => timing.Setups.Between(question.Runs.First(run => run.Id == pair.From), question.Runs.First(run => run.Id == pair.To));

    private void Sequence(ShiftRun[] runs, LineHours line)
    {
        if (runs.Length == 0)
            return;
        int latest = line.Total + runs.Sum(run => run.Minutes + runs.Select(other => other == run ? timing.Setups.First(run).Gap : timing.Setups.Between(other, run).Gap).Max());
        CircuitConstraint tour = Model.AddCircuit();
        foreach (ShiftRun run in runs)
            starts[run.Id] = Model.NewIntVar(timing.Setups.First(run).Gap, latest, $"start {run.Id}");
        Model.AddNoOverlap(runs.Select(run => Model.NewFixedSizeIntervalVar(starts[run.Id], run.Minutes, run.Id)));
        for (int at = 0; at < runs.Length; at++)
        {
            Arc(tour, 0, at + 1, null, runs[at].Id);
            Arc(tour, at + 1, 0, runs[at].Id, null);
            for (int to = 0; to < runs.Length; to++)
                if (to != at)
                {
                    BoolVar arc = next[(runs[at].Id, runs[to].Id)] = Arc(tour, at + 1, to + 1, runs[at].Id, runs[to].Id);
                    Model.Add(starts[runs[to].Id] >= starts[runs[at].Id] + (runs[at].Minutes + timing.Setups.Between(runs[at], runs[to]).Gap)).OnlyEnforceIf(arc);
                }
        }
    }

    private BoolVar Arc(CircuitConstraint tour, int tail, int head, string? from, string? to)
    {
        BoolVar arc = Model.NewBoolVar($"{from} then {to}");
        tour.AddArc(tail, head, arc);
        arcs.Add((from, to, arc));
        return arc;
    }

    private IEnumerable<LinearExpr> Overruns()
    {
        foreach (ShiftRun run in question.Runs)
        {
            int total = timing.Hours(run.Line).Total;
            IntVar over = Model.NewIntVar(0, run.Minutes, $"over {run.Id}");
            BoolVar whole = Model.NewBoolVar($"after the week {run.Id}");
            Model.Add(over == run.Minutes).OnlyEnforceIf(whole);
            Model.Add(over >= starts[run.Id] + (run.Minutes - total)).OnlyEnforceIf(whole.Not());
            Model.Add(starts[run.Id] <= total).OnlyEnforceIf(whole.Not());
            yield return over * Floor(question.LineOf(run.Line).OverrunPerHour / 60 * FirstParts);
        }
    }

    private IEnumerable<LinearExpr> Docks()
    {
        foreach (DockNeed need in question.Needs)
        {
            long units = Floor(need.Units * UnitParts);
            IntVar missing = Model.NewIntVar(0, Math.Max(0, units), $"short {need.Product} {need.Minute}");
            LinearExpr made = LinearExpr.Sum(question.Runs.SelectMany(run => run.Makes.Where(makes => makes.Product == need.Product)
                .Select(makes => (LinearExpr)Done(run, need.Minute) * (long)Math.Ceiling(makes.Units / run.Minutes * UnitParts))));
            Model.Add(missing + made >= units);
            yield return missing * Floor(need.CostPerUnit * FirstParts / UnitParts);
        }
    }

    /// <summary>Worked minutes of a run that lie before a minute of the clock.</summary>
    private IntVar Done(ShiftRun run, int minute)
    {
        if (done.TryGetValue((run.Id, minute), out IntVar? known))
            return known;
        int until = timing.Hours(run.Line).Worked(minute);
        IntVar worked = Model.NewIntVar(0, Math.Min(run.Minutes, until), $"done {run.Id} {minute}");
        BoolVar begun = Model.NewBoolVar($"begun {run.Id} {minute}");
        Model.Add(worked + starts[run.Id] <= until).OnlyEnforceIf(begun);
        Model.Add(worked == 0).OnlyEnforceIf(begun.Not());
        return done[(run.Id, minute)] = worked;
    }

    private static long Floor(double amount) => (long)Math.Floor(amount + 1e-9);
}
