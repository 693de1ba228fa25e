using System.Diagnostics;
using System.Globalization;
using Cloveshed.Core.Shift;
using Google.OrTools.Sat;

namespace Cloveshed.Solver.Shift;

/// <summary>
/// Puts a week's runs in order by constraint programming, in two stages: least lateness and overrun, then, at no more of that, least changeover.
/// It begins from the greedy sequence, and never gives a worse one. Every schedule that it finds is put as early as it can be.
/// </summary>
public sealed class CpShiftScheduler : IShiftScheduler
{
    /// <summary>Of the time, for the first stage; the second gets what is left of all of it.</summary>
    private const double FirstShare = 0.6;

    /// <summary>Money that no one sees.</summary>
    private const double Nothing = 0.005;

    /// <inheritdoc/>
    public ShiftAnswer Schedule(ShiftQuestion question, ShiftSearch search)
    {
        Stopwatch clock = Stopwatch.StartNew();
        ShiftTiming timing = new(question);
        ShiftSchedule best = GreedySequence.Of(question, timing);
        ShiftCosts greedy = ShiftCosts.Of(question, timing, best), costs = greedy;
        if (question.Runs.Count == 0)
            return new ShiftAnswer(best, costs, 0, 0, ShiftStatus.Proven, clock.Elapsed.TotalSeconds, greedy);
        ShiftModel model = new(question, timing);
        void Take(ShiftSchedule found)
        {
            ShiftSchedule forward = timing.Forward(found);
            ShiftCosts cost = ShiftCosts.Of(question, timing, forward);
            bool lessFirst = cost.First < costs.First - Nothing, sameFirst = cost.First <= costs.First + Nothing;
            // An order is kept only as one that holds: the two views of a week must agree before a person sees it.
            if ((lessFirst || (sameFirst && cost.Changeover < costs.Changeover - Nothing)) && ShiftCheck.Breaches(question, forward).Count == 0)
                (best, costs) = (forward, cost);
        }

        model.Hint(best);
        model.Model.Minimize(model.First);
        Stage first = Solve(model, search, search.Seconds * FirstShare, relaxed: 0);
        if (first.Found)
            Take(model.Read(first.Solver));
        double firstBound = Math.Max(0, first.Bound / ShiftModel.FirstParts), changeBound = 0;
        bool proven = first.Proven;
        if (first.Found && !search.Cancel.IsCancellationRequested)
        {
            model.Model.Add(model.First <= first.Solver.Value(model.First));
            model.Hint(model.Read(first.Solver));
            model.Model.Minimize(model.Change);
            Stage second = Solve(model, search, Math.Max(1, search.Seconds - clock.Elapsed.TotalSeconds), relaxed: 1);
            if (second.Found)
                Take(model.Read(second.Solver));
            changeBound = Math.Max(0, second.Bound / ShiftModel.ChangeParts);
            proven &= second.Proven;
        }
        else
            proven = false;
        ShiftStatus status = proven ? ShiftStatus.Proven : search.Cancel.IsCancellationRequested ? ShiftStatus.Cancelled : ShiftStatus.TimeReached;
        return new ShiftAnswer(best, costs, firstBound, changeBound, status, clock.Elapsed.TotalSeconds, greedy);
    }

    private sealed record Stage(CpSolver Solver, bool Found, bool Proven, double Bound);

    /// <remarks>
    /// The first stage goes without linear relaxations: of the settings tried on the demo's hardest weeks this one proved most of them. Its costs
    /// hang on starts by "if begun", which a relaxation does not see; those of the second are the ways of a round trip, which it sees well.
    /// </remarks>
    private static Stage Solve(ShiftModel model, ShiftSearch search, double seconds, int relaxed)
    {
        CpSolver solver = new()
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture,
                $"linearization_level:{relaxed},num_workers:{search.Threads},random_seed:{search.Seed},max_time_in_seconds:{seconds}{(search.Effort is { } effort ? $",max_deterministic_time:{effort}" : "")}"),
        };
        using CancellationTokenRegistration stop = search.Cancel.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model.Model);
        return status switch
        {
            CpSolverStatus.Optimal => new Stage(solver, true, true, solver.BestObjectiveBound),
            CpSolverStatus.Feasible => new Stage(solver, true, false, solver.BestObjectiveBound),
            CpSolverStatus.Unknown => new Stage(solver, false, false, 0),
            // There is always a schedule: all of it after the week. A model that has none is a mistake of ours.
            _ => throw new InvalidOperationException($"The model of a week is {status}: {model.Model.Validate()}"),
        };
    }
}
