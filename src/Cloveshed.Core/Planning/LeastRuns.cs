namespace Cloveshed.Core.Planning;

/// <summary>Which runs are under their line's least mass-in without finishing a row of their lot: judged from the rows as they will be written.</summary>
internal static class LeastRuns
{
    internal static List<(int Lot, int Line, int Week)> Broken(PlanningInstance instance, IReadOnlyList<PlannedPath> paths, IReadOnlyList<PlannedRun> runs)
    {
        ILookup<int, PlannedPath> byRow = paths.ToLookup(p => p.Row);
        return
        [
            .. runs.Where(r => r.Path is not null).GroupBy(r => (r.Lot, r.Line, r.Week))
                .Where(g => g.Sum(r => r.MassIn) < instance.Lines[g.Key.Line].MinRun * (1 - 1e-7)
                    && !g.Select(r => r.Path!.Row).Distinct().Any(row => byRow[row].All(p => p.Left(g.Key.Week) <= 0)))
                .Select(g => g.Key),
        ];
    }

    internal static List<(int Lot, int Line, int Week)> Broken(Master master)
    {
        List<PlannedPath> paths = PlannedPaths.Of(master);
        return Broken(master.Instance, paths, RunRows.Of(master.Instance, paths));
    }
}
