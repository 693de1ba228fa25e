namespace Cloveshed.Core.Shift;

/// <summary>
/// The sequence that a lead makes by hand: each line takes next what the dock needs first, of runs that it needs at the same dock the one
/// with the shorter set-up, then the shorter run. What no dock needs comes after it, and last what waits for bulbs that are yet to
/// be sorted out.
/// </summary>
public static class GreedySequence
{
    /// <summary>Pure.</summary>
    public static ShiftSchedule Of(ShiftQuestion question, ShiftTiming timing)
    {
        Dictionary<LineId, IReadOnlyList<ShiftRun>> lines = [];
        foreach (ShiftLine line in question.Lines)
        {
            List<ShiftRun> left = [.. question.Runs.Where(run => run.Line == line.Id)], order = [];
            while (left.Count > 0)
            {
                ShiftRun next = left.OrderBy(run => run.NotBefore.Count > 0).ThenBy(run => FirstDock(question, run)).ThenBy(run => order.Count == 0 ? timing.Setups.First(run).Gap : timing.Setups.Between(order[^1], run).Gap)
                    .ThenBy(run => run.Minutes).ThenBy(run => run.Id, StringComparer.Ordinal).First();
                order.Add(next);
                left.Remove(next);
            }

            lines[line.Id] = order;
        }

        return timing.ByLine(lines);
    }

    private static int FirstDock(ShiftQuestion question, ShiftRun run) =>
        question.Needs.Where(need => run.Makes.Any(makes => makes.Product == need.Product)).Select(need => need.Minute).DefaultIfEmpty(int.MaxValue).Min();
}
