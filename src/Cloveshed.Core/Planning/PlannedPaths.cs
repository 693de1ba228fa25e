namespace Cloveshed.Core.Planning;

/// <summary>Mass of one path that leaves by one exit, in scaled start mass.</summary>
internal sealed record PlannedExit(PlannedPath Path, Exit Exit, double Mass, PathColumn Column);

/// <summary>A path that the plan uses: a row's mass, its stays and the state week by week.</summary>
internal sealed class PlannedPath(string id, int row, Stay[] stays, double[] massRatio, double[] life)
{
    internal string Id => id;
    internal int Row => row;
    internal Stay[] Stays => stays;
    internal double[] MassRatio => massRatio;
    internal double[] Life => life;
    internal List<PlannedExit> Exits { get; } = [];

    internal int SpotAt(int week)
    {
        int k = 0;
        while (k + 1 < stays.Length && stays[k + 1].Enter <= week) k++;
        return stays[k].Spot;
    }

    /// <summary>Start mass still standing at a week's end.</summary>
    internal double Left(int week) => Exits.Where(e => e.Exit.Week > week).Sum(e => e.Mass);

    /// <summary>Start mass that is still there when a week starts.</summary>
    internal double Before(int week) => Exits.Where(e => e.Exit.Week >= week).Sum(e => e.Mass);
}

/// <summary>
/// The solved master's paths with exactly each row's mass: what the solver left over or took too much, within its tolerance, goes
/// to or comes from the path that carries most. Columns that differ only in where the bins would have gone later are one path.
/// </summary>
internal static class PlannedPaths
{
    /// <summary>Scaled mass of a row that counts as nothing: solver dust.</summary>
    internal static double Negligible(double rowMass) => Math.Min(1e-6, 1e-7 * rowMass);

    internal static List<PlannedPath> Of(Master master)
    {
        PlanningInstance instance = master.Instance;
        var columns = new List<(PathColumn Path, double Mass)>[instance.Rows.Length];
        for (int r = 0; r < columns.Length; r++) columns[r] = [];
        for (int k = 0; k < master.ColumnCount; k++)
            if (master.Columns[k].Path is { } path && master.Values[k] > Negligible(instance.Rows[path.Row].Mass)) columns[path.Row].Add((path, master.Values[k]));
        var planned = new List<PlannedPath>();
        for (int row = 0; row < columns.Length; row++)
        {
            List<(PathColumn Path, double Mass)> mine = columns[row];
            int largest = 0;
            for (int k = 1; k < mine.Count; k++) if (mine[k].Mass > mine[largest].Mass) largest = k;
            mine[largest] = (mine[largest].Path, mine[largest].Mass + instance.Rows[row].Mass - mine.Sum(c => c.Mass));
            var here = new List<PlannedPath>();
            foreach ((PathColumn column, double mass) in mine.OrderByDescending(c => c.Path.Stays.Length).ThenBy(c => c.Path.Exit.Week))
            {
                PlannedPath? path = here.FirstOrDefault(p => Follows(p.Stays, column.Stays, column.Exit.Week));
                if (path is null)
                {
                    (double[] ratio, double[] life) = PathStates.Along(instance, master.SpotsHere, row, column.Stays);
                    path = new PlannedPath($"P{planned.Count + here.Count + 1:00000}", row, column.Stays, ratio, life);
                    here.Add(path);
                }
                int same = path.Exits.FindIndex(e => e.Exit == column.Exit);
                if (same >= 0) path.Exits[same] = path.Exits[same] with { Mass = path.Exits[same].Mass + mass };
                else path.Exits.Add(new PlannedExit(path, column.Exit, mass, column));
            }
            planned.AddRange(here);
        }
        return planned;
    }

    /// <summary>Whether the shorter stays are the beginning of the longer, and what follows starts after the exit week.</summary>
    private static bool Follows(Stay[] longer, Stay[] shorter, int exitWeek)
    {
        if (shorter.Length > longer.Length) return false;
        for (int k = 0; k < shorter.Length; k++) if (longer[k] != shorter[k]) return false;
        return longer.Length == shorter.Length || longer[shorter.Length].Enter > exitWeek;
    }
}
