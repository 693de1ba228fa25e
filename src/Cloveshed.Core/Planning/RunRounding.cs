using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// From a master whose set-ups are spread over the pounds to one in which each run that is made pays its set-up in full and
/// reaches its least mass-in, and in which whole orders are whole. Room weeks are held.
/// </summary>
internal sealed class RunRounding(PlanningInstance instance, ILinearSolver solver, GenerationLimits limits)
{
    private const double Nothing = 1e-7;

    /// <summary>Charges are made anew from the last runs so many times, and paths looked for so many times under each.</summary>
    private const int Slopes = 4, Rounds = 2;

    private static readonly Dictionary<int, InstanceOrderLine> Unchanged = [];

    /// <summary>A master solved with decided runs and whole orders.</summary>
    internal Master Round(Master start)
    {
        RoomChoice choice = start.Choice;
        Findings found = Findings.Of(start);
        RunCharges bound = RunCharges.ForBound(instance);
        Dictionary<(int, int, int), double> runs = MassIn(start);
        Master last = start;
        for (int turn = 0; turn < Slopes && limits.Elapsed() < limits.Until; turn++)
        {
            Master master = last.Under(Sloped(bound, runs));
            PlaceWeeks.Slope(master, last);
            // New charges move most of what is run: where the master is large, that is quicker from nothing.
            if (!Grow(master, master.IsLarge ? LinearMethod.InteriorPoint : LinearMethod.WarmSimplex))
            {
                master.Dispose();
                break;
            }
            if (!ReferenceEquals(last, start)) last.Dispose();
            last = master;
            found = Findings.Of(master);
            runs = MassIn(master);
        }
        HashSet<(int, int, int)> open = [.. runs.Keys];
        Master decided = Decide(choice, found, open, runs, bound, last);
        if (!ReferenceEquals(last, start)) last.Dispose();
        return decided;
    }

    /// <summary>Solves and lets in what pays, a few times: at first as asked for, then from where the master stands.</summary>
    private bool Grow(Master master, LinearMethod first)
    {
        for (int round = 0; ; round++)
        {
            bool solved = round == 0 && first != LinearMethod.WarmSimplex && master.Solve(first, 120) == LinearStatus.Optimal;
            if (!solved && master.Solve(LinearMethod.WarmSimplex, 120) != LinearStatus.Optimal) return false;
            if (round == Rounds || limits.Over || ColumnGeneration.Round(master, limits, Unchanged).Added == 0) return true;
        }
    }

    private Master Decide(RoomChoice choice, Findings found, HashSet<(int Lot, int Line, int Week)> open, Dictionary<(int, int, int), double> runs, RunCharges bound, Master sloped)
    {
        var least = new Dictionary<(int, int, int), double>();
        foreach ((int lot, int line, int week) in open)
            if (lot >= 0 && instance.Lines[line].MinRun > 0 && runs[(lot, line, week)] >= 0.6 * instance.Lines[line].MinRun) least[(lot, line, week)] = instance.Lines[line].MinRun;
        for (int turn = 0; ; turn++)
        {
            KeepWithinHours(open, least, runs);
            RunCharges charges = Exact(bound, open);
            var decided = new DecidedRuns(SetUps(open), least);
            var master = new Master(instance, choice, charges, solver, decided);
            master.AddFills(FirstPaths.Fills(instance));
            RoomSearch.AddOrders(master, found);
            master.AddPaths(FirstPaths.Of(instance, master.SpotsHere, charges, Math.Max(2, instance.Weeks / 4)));
            master.AddPaths(found.Paths.Select(p => WithoutClosedCracker(p, charges)).Where(p => MayRun(p, charges)));
            PlaceWeeks.Decide(master, sloped);
            LinearStatus status = master.Solve(master.IsLarge ? LinearMethod.InteriorPoint : LinearMethod.ColdSimplex, 120);
            if (status == LinearStatus.Infeasible && least.Count > 0)
            {
                // The least runs can't all be reached together: give up the smaller half of them.
                foreach (var run in least.Keys.OrderBy(r => runs.GetValueOrDefault(r)).Take((least.Count + 1) / 2).ToArray())
                {
                    least.Remove(run);
                    open.Remove(run);
                }
                master.Dispose();
                continue;
            }
            if (status != LinearStatus.Optimal)
            {
                master.Dispose();
                throw new InvalidOperationException($"The plan with decided runs could not be solved ({status}).");
            }
            if (turn == 0 && Grow(master, LinearMethod.WarmSimplex)) found = Findings.Of(master);
            Dictionary<(int Lot, int Line, int Week), double> now = MassIn(master);
            List<(int Lot, int Line, int Week)> small = LeastRuns.Broken(master);
            bool unused = open.Any(r => !now.ContainsKey(r));
            if (small.Count == 0 && (!unused || turn >= 3))
            {
                // Making orders whole moves pounds about, so the least runs are looked at once more.
                WholeOrders(master);
                small = LeastRuns.Broken(master);
                if (small.Count == 0) return master;
            }
            foreach (var run in small) open.Remove(run);
            open.IntersectWith(now.Keys);
            foreach (var run in least.Keys.Where(r => !open.Contains(r)).ToArray()) least.Remove(run);
            runs = now;
            master.Dispose();
        }
    }

    /// <summary>Whole orders that the linear model ships in parts are shipped whole where that is nearly so, else not at all.</summary>
    private static void WholeOrders(Master master)
    {
        for (int turn = 0; turn < 12; turn++)
        {
            var parts = new List<(int Column, double Share)>();
            for (int k = 0; k < master.ColumnCount; k++)
                if (master.Columns[k].Kind == ColumnKind.Whole && master.Values[k] > Nothing && master.Values[k] < 1 - Nothing) parts.Add((k, master.Values[k]));
            if (parts.Count == 0) return;
            // Products may differ between parts of one order in one week; together they are that week's whole order.
            var byWeek = parts.GroupBy(p => (master.Columns[p.Column].A, master.Columns[p.Column].D)).Select(g => (g.Key, Sum: g.Sum(x => x.Share), Columns: g.Select(x => x.Column).ToArray()))
                .OrderByDescending(g => g.Sum).ToList();
            var split = byWeek.Where(g => g.Sum < 1 - 1e-6).ToList();
            if (split.Count == 0) return;
            (int order, int week) = split[0].Key;
            bool up = split[0].Sum >= 0.5 && turn < 8;
            var set = new List<int>();
            var lower = new List<double>();
            var upper = new List<double>();
            for (int k = 0; k < master.ColumnCount; k++)
            {
                if (master.Columns[k].Kind != ColumnKind.Whole) continue;
                bool here = split.Where(g => up ? g.Key == split[0].Key : g.Sum < 0.5 || turn >= 8).Any(g => g.Key.A == master.Columns[k].A);
                if (!here) continue;
                bool stays = up && master.Columns[k].D == week;
                set.Add(k);
                lower.Add(stays && k == split[0].Columns[0] ? 1 : 0);
                upper.Add(stays ? 1 : 0);
            }
            master.Program.SetColumnBounds(set, lower, upper);
            LinearStatus status = master.Solve(LinearMethod.DualSimplex, 60);
            if (status == LinearStatus.Optimal) continue;
            // It can't be had whole: leave that order out.
            int[] out1 = [.. Enumerable.Range(0, master.ColumnCount).Where(k => master.Columns[k].Kind == ColumnKind.Whole && master.Columns[k].A == order)];
            master.Program.SetColumnBounds(out1, [.. out1.Select(_ => 0.0)], [.. out1.Select(_ => 0.0)]);
            status = master.Solve(LinearMethod.ColdSimplex, 60);
            if (status != LinearStatus.Optimal) throw new InvalidOperationException($"The plan could not be solved after leaving a whole order out ({status}).");
        }
    }

    /// <summary>Where the cracker no longer takes the sorted-out bulbs, they are let go; the run itself stays possible.</summary>
    private static PathColumn WithoutClosedCracker(PathColumn p, RunCharges charges) =>
        p.Exit.SortedLine >= 0 && double.IsInfinity(charges.OfSorted(p.Exit.SortedLine, p.Exit.SortedWeek))
            ? p with { Exit = p.Exit with { SortedLine = -1, SortedWeek = -1 } } : p;

    private bool MayRun(PathColumn p, RunCharges charges) =>
        (p.Exit.Line < 0 || !double.IsInfinity(charges[instance.Rows[p.Row].Lot, p.Exit.Line, p.Exit.Week]))
        && (p.Exit.SortedLine < 0 || !double.IsInfinity(charges.OfSorted(p.Exit.SortedLine, p.Exit.SortedWeek)));

    /// <summary>Scaled mass-in by lot, line and week; sorted-out bulbs of all lots together under lot -1, as they share one set-up.</summary>
    internal static Dictionary<(int Lot, int Line, int Week), double> MassIn(Master master)
    {
        var mass = new Dictionary<(int, int, int), double>();
        void Add((int, int, int) key, double value)
        {
            if (value > Nothing) mass[key] = mass.GetValueOrDefault(key) + value;
        }
        for (int k = 0; k < master.ColumnCount; k++)
        {
            if (master.Columns[k].Path is not { Exit.Line: >= 0 } p) continue;
            Add((master.Instance.Rows[p.Row].Lot, p.Exit.Line, p.Exit.Week), master.Values[k] * p.MassRatio);
            if (p.Exit.SortedLine >= 0) Add((-1, p.Exit.SortedLine, p.Exit.SortedWeek), master.Values[k] * FreshRuns.SortedOut(master.Instance, p));
        }
        return mass;
    }

    /// <summary>Charges whose slope is what the last plan's runs really paid per mass; runs far too small are not allowed again.</summary>
    private RunCharges Sloped(RunCharges bound, Dictionary<(int, int, int), double> runs)
    {
        RunCharges charges = bound.Copy();
        for (int i = 0; i < instance.Lines.Length; i++)
        {
            InstanceLine line = instance.Lines[i];
            for (int t = instance.AsOf; t < instance.Weeks; t++)
            {
                double week = RunCharges.MostInAWeek(instance, i, t);
                if (!double.IsInfinity(bound.OfSorted(i, t)))
                    charges.SetSorted(i, t, 1 / line.Rate + line.SetUp / (runs.TryGetValue((-1, i, t), out double sorted) ? Math.Min(week, sorted) : week / 2));
                for (int l = 0; l < instance.Lots.Length; l++)
                {
                    if (double.IsInfinity(bound[l, i, t])) continue;
                    double most = Math.Min(instance.Lots[l].Mass, week);
                    double run = runs.TryGetValue((l, i, t), out double mass) ? Math.Max(mass, Math.Min(line.MinRun, most)) : Math.Max(most * 0.5, Math.Min(line.MinRun, most));
                    charges[l, i, t] = 1 / line.Rate + (run > 0 ? line.SetUp / run : 0);
                }
            }
        }
        return charges;
    }

    private RunCharges Exact(RunCharges bound, HashSet<(int, int, int)> open)
    {
        RunCharges charges = bound.Copy();
        for (int i = 0; i < instance.Lines.Length; i++)
            for (int t = 0; t < instance.Weeks; t++)
            {
                charges.SetSorted(i, t, open.Contains((-1, i, t)) ? 1 / instance.Lines[i].Rate : double.PositiveInfinity);
                for (int l = 0; l < instance.Lots.Length; l++)
                    charges[l, i, t] = open.Contains((l, i, t)) ? 1 / instance.Lines[i].Rate : double.PositiveInfinity;
            }
        return charges;
    }

    private double[,] SetUps(HashSet<(int Lot, int Line, int Week)> open)
    {
        double[,] hours = new double[instance.Lines.Length, instance.Weeks];
        foreach ((_, int line, int week) in open) hours[line, week] += instance.Lines[line].SetUp;
        return hours;
    }

    /// <summary>Closes the smallest runs of a line and week, or of a week's people, whose set-ups alone would not fit.</summary>
    private void KeepWithinHours(HashSet<(int Lot, int Line, int Week)> open, Dictionary<(int, int, int), double> least, Dictionary<(int, int, int), double> runs)
    {
        double Needed(int line, IEnumerable<(int Lot, int Line, int Week)> some) => some.Sum(r => instance.Lines[line].SetUp + least.GetValueOrDefault(r) / instance.Lines[line].Rate);
        foreach (var group in open.GroupBy(r => (r.Line, r.Week)).ToArray())
        {
            InstanceLine line = instance.Lines[group.Key.Line];
            var kept = group.OrderByDescending(r => runs.GetValueOrDefault(r)).ToList();
            while (kept.Count > 0 && Needed(group.Key.Line, kept) > line.Hours[group.Key.Week] + line.Overtime[group.Key.Week] - 1e-6) Close(kept, open, least);
        }
        foreach (var group in open.GroupBy(r => r.Week).ToArray())
        {
            if (double.IsInfinity(instance.People[group.Key])) continue;
            var kept = group.OrderByDescending(r => runs.GetValueOrDefault(r)).ToList();
            while (kept.Count > 0 && kept.GroupBy(r => r.Line).Sum(g => Needed(g.Key, g) * instance.Lines[g.Key].Heads) > instance.People[group.Key] - 1e-6) Close(kept, open, least);
        }
    }

    private static void Close(List<(int, int, int)> kept, HashSet<(int, int, int)> open, Dictionary<(int, int, int), double> least)
    {
        open.Remove(kept[^1]);
        least.Remove(kept[^1]);
        kept.RemoveAt(kept.Count - 1);
    }
}
