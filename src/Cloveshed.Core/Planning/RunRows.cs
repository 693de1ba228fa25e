using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>One run of a path or of sorted-out bulbs: everything that leaves one path over one line in one week.</summary>
internal sealed class PlannedRun(int number, int week, int line, int lot, PlannedPath? path)
{
    internal int Number => number;
    internal string Id => $"R{number + 1:00000}";
    internal int Week => week;
    internal int Line => line;
    internal int Lot => lot;

    /// <summary>Null where sorted-out bulbs are run.</summary>
    internal PlannedPath? Path => path;

    /// <summary>Scaled start mass and mass as weighed.</summary>
    internal double StartMass { get; set; }
    internal double MassIn { get; set; }

    /// <summary>Scaled mass sorted out, and packed mass by sort that the plan wants packed.</summary>
    internal double SortedOut { get; set; }
    internal List<Source> Sources { get; } = [];

    /// <summary>Scaled cloves by seed need.</summary>
    internal Dictionary<int, double> SeedCloves { get; } = [];
    internal double Hours { get; set; }
    internal double OvertimeHours { get; set; }
}

/// <summary>Runs of a plan with what comes out of each, and the hours that they take.</summary>
internal static class RunRows
{
    internal static List<PlannedRun> Of(PlanningInstance instance, IReadOnlyList<PlannedPath> paths)
    {
        var runs = new List<PlannedRun>();
        var sorted = new SortedDictionary<(int Week, int Line, int Lot), double>();
        var ordered = paths.SelectMany(p => p.Exits).Where(e => e.Exit.Line >= 0 && e.Mass > 0)
            .GroupBy(e => (e.Exit.Week, e.Exit.Line, instance.Rows[e.Path.Row].Lot, e.Path)).OrderBy(g => g.Key.Week).ThenBy(g => g.Key.Line).ThenBy(g => g.Key.Lot).ThenBy(g => g.Key.Path.Id, StringComparer.Ordinal);
        foreach (var group in ordered)
        {
            (int week, int line, int lot, PlannedPath path) = group.Key;
            var run = new PlannedRun(runs.Count, week, line, lot, path);
            double[] packed = new double[instance.Sorts.Length];
            double ratio = path.MassRatio[week];
            double sound = PathStates.SoundOf(instance, path.Row, path.Life[week]);
            double fresh = instance.Rows[path.Row].Fresh * sound, crack = instance.Rows[path.Row].Crack * sound;
            foreach (PlannedExit e in group)
            {
                run.StartMass += e.Mass;
                run.MassIn += e.Mass * ratio;
                if (e.Exit.Kind == ExitKind.Seed)
                    run.SeedCloves[e.Exit.Need] = run.SeedCloves.GetValueOrDefault(e.Exit.Need) + e.Mass * ratio * fresh * instance.KeptSeed;
                if (e.Exit.Kind != ExitKind.Fresh) continue;
                for (int k = 0; k < instance.Sorts.Length && !instance.Sorts[k].Clove; k++)
                    if ((e.Exit.Packed >> k & 1) != 0) packed[k] += e.Mass * ratio * fresh * instance.KeptFresh * instance.Lots[lot].SortShares[k];
                if (e.Exit.SortedLine >= 0)
                {
                    var key = (e.Exit.SortedWeek, e.Exit.SortedLine, lot);
                    sorted[key] = sorted.GetValueOrDefault(key) + e.Mass * FreshRuns.SortedOut(instance, e.Column);
                }
            }
            switch (instance.Lines[line].Mode)
            {
                case LineMode.Fresh:
                    for (int k = 0; k < packed.Length; k++)
                        if (packed[k] > 0) run.Sources.Add(new Source(run.Number, lot, k, instance.SupplyOf(lot), week, packed[k]));
                    run.SortedOut = run.MassIn * (fresh * instance.KeptFresh + crack);
                    break;
                case LineMode.Crack:
                    Cloves(instance, run, run.MassIn * (fresh + crack) * instance.KeptCrack);
                    break;
                case LineMode.Seed:
                    break;
                default:
                    throw new InvalidOperationException($"Nothing is known to come out of line {instance.Lines[line].Id}.");
            }
            runs.Add(run);
        }
        foreach (((int week, int line, int lot), double mass) in sorted)
        {
            if (mass * instance.MassScale < 1e-6) continue;
            var run = new PlannedRun(runs.Count, week, line, lot, null) { MassIn = mass };
            Cloves(instance, run, mass * instance.KeptCrack);
            runs.Add(run);
        }
        Hours(instance, runs);
        return runs;
    }

    private static void Cloves(PlanningInstance instance, PlannedRun run, double cloves)
    {
        for (int k = 0; k < instance.Sorts.Length; k++)
            if (instance.Sorts[k].Clove && instance.Sorts[k].Packed && instance.Lots[run.Lot].SortShares[k] > 0)
                run.Sources.Add(new Source(run.Number, run.Lot, k, instance.SupplyOf(run.Lot), run.Week, cloves * instance.Lots[run.Lot].SortShares[k]));
    }

    /// <summary>Regular hours before overtime, unless overtime is the cheaper; a set-up stands with the first row of its lot.</summary>
    private static void Hours(PlanningInstance instance, List<PlannedRun> runs)
    {
        foreach (var group in runs.GroupBy(r => (r.Line, r.Week)))
        {
            InstanceLine line = instance.Lines[group.Key.Line];
            bool overtimeFirst = line.OvertimeCost < line.Cost;
            double first = overtimeFirst ? line.Overtime[group.Key.Week] : line.Hours[group.Key.Week];
            var setUp = new HashSet<int>();
            foreach (PlannedRun run in group)
            {
                double needed = run.MassIn / line.Rate + (setUp.Add(run.Path is null ? -1 : run.Lot) ? line.SetUp : 0);
                double inFirst = Math.Min(needed, first);
                first -= inFirst;
                (run.Hours, run.OvertimeHours) = overtimeFirst ? (needed - inFirst, inFirst) : (inFirst, needed - inFirst);
            }
            // Where there is no overtime, what exceeds the regular hours can only be the solver's tolerance.
            if (!overtimeFirst && line.Overtime[group.Key.Week] == 0)
                foreach (PlannedRun run in group)
                {
                    run.Hours += run.OvertimeHours;
                    run.OvertimeHours = 0;
                }
        }
    }
}
