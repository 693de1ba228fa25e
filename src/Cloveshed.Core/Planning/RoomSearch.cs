namespace Cloveshed.Core.Planning;

/// <summary>What a solved master found to be useful: paths (of its spots), fills, whole orders and ways to pack. A new master starts from it.</summary>
internal sealed record Findings(Spot[] Spots, IReadOnlyList<PathColumn> Paths, IReadOnlyList<MasterColumn> Orders)
{
    internal static Findings Of(Master master) => new(master.SpotsHere, RoomSearch.Useful(master), [.. master.Columns.Where(c => c.Kind is ColumnKind.Fill or ColumnKind.Whole or ColumnKind.Pack)]);
}

/// <summary>A room choice that has been tried: the master's value and bound with it, and what it found.</summary>
internal sealed record RoomTrial(RoomChoice Choice, double Value, double Bound, Findings Found, Prices Center, bool Finished);

/// <summary>
/// Finds good weeks for the rooms. The free master says how a room would be emptied if it could open a little in many weeks;
/// windows are halved around that until one week is left, then single rooms are moved by weeks while the plan gets better.
/// </summary>
internal sealed class RoomSearch(PlanningInstance instance, ILinearSolver solver, GenerationLimits limits)
{
    /// <summary>Gap of a trial from which on its prices say something of other room weeks.</summary>
    private const double Settled = 0.01;

    private readonly Dictionary<RoomChoice, RoomTrial> _tried = [];

    internal static int[] Rooms(PlanningInstance instance) =>
        [.. Enumerable.Range(0, instance.Places.Length).Where(p => instance.Places[p].Kind == Seasons.PlaceKind.Sealed)];

    /// <summary>Room weeks read off the free master, whose columns are narrowed on the way.</summary>
    internal RoomChoice FromFree(Master free, Prices center)
    {
        RoomChoice choice = RoomChoice.Free(instance);
        var windows = new Dictionary<int, (int First, int Last)>();
        for (int s = 0; s < free.SpotsHere.Length; s++)
            if (free.SpotsHere[s].Kind == SpotKind.FreeSealed) windows[s] = (instance.AsOf, instance.Weeks);
        for (int turn = 0; turn < 7 && windows.Values.Any(w => w.Last > w.First); turn++)
        {
            foreach (int s in windows.Keys.ToArray()) windows[s] = Narrowed(free, s, windows[s]);
            if (limits.Elapsed() >= limits.Until) continue;
            Hold(free, windows);
            ColumnGeneration.Run(free, limits with { Gap = 2e-3, RoundsAtMost = 1 }, center: center);
        }
        foreach ((int s, (int first, int last)) in windows) choice = choice.With(free.SpotsHere[s].Place, Schedule(free, s, first, last));
        Hold(free, windows.Keys.ToDictionary(s => s, _ => (instance.AsOf, instance.Weeks)));
        return choice;
    }

    private (int, int) Narrowed(Master free, int spot, (int First, int Last) window)
    {
        double[] weight = new double[instance.Weeks + 1];
        for (int k = 0; k < free.ColumnCount; k++)
        {
            MasterColumn c = free.Columns[k];
            if (c.Kind == ColumnKind.Opening && c.A == spot) weight[c.D] += Math.Max(0, free.Values[k]);
        }
        double total = weight.Sum();
        if (total < 1e-6) return window.Last - window.First <= 1 ? (window.First, window.First) : window;
        int width = Math.Max(1, (window.Last - window.First + 1) / 2);
        (double Sum, int First) best = (-1, window.First);
        for (int first = window.First; first + width - 1 <= window.Last; first++)
        {
            double sum = 0;
            for (int t = first; t < first + width; t++) sum += weight[t];
            if (sum > best.Sum + 1e-9) best = (sum, first);
        }
        return (best.First, best.First + width - 1);
    }

    private static void Hold(Master free, IReadOnlyDictionary<int, (int First, int Last)> windows)
    {
        var set = new List<int>();
        var upper = new List<double>();
        for (int k = 0; k < free.ColumnCount; k++)
        {
            MasterColumn c = free.Columns[k];
            if (c.Kind != ColumnKind.Opening) continue;
            (int first, int last) = windows[c.A];
            set.Add(k);
            upper.Add(c.D >= first && c.D <= last ? 1 : 0);
        }
        free.Program.SetColumnBounds(set, [.. set.Select(_ => 0.0)], upper);
    }

    /// <summary>The weeks of a room as the free master uses it: sealed once nearly all of what it holds is in.</summary>
    private RoomSchedule Schedule(Master free, int spot, int first, int last)
    {
        double[] entries = new double[instance.Weeks], exits = new double[instance.Weeks + 1];
        for (int k = 0; k < free.ColumnCount; k++)
        {
            if (free.Columns[k].Path is not { } path || free.Values[k] <= 1e-9) continue;
            for (int i = 0; i < path.Stays.Length; i++)
            {
                if (path.Stays[i].Spot != spot) continue;
                double bins = free.Values[k] * instance.Rows[path.Row].BinsPerMass;
                entries[path.Stays[i].Enter] += bins;
                exits[i + 1 < path.Stays.Length ? path.Stays[i + 1].Enter : path.Exit.Week] += bins;
            }
        }
        InstancePlace place = instance.Places[free.SpotsHere[spot].Place];
        double total = entries.Sum();
        if (place.SealedWeek is { } already)
        {
            int earliest = Math.Max(already + 1, instance.AsOf);
            int open = Math.Clamp(total > 1e-9 && first == last ? first : last, earliest, instance.Weeks);
            return new RoomSchedule(already, open >= instance.Weeks ? null : open);
        }
        if (total < 1e-6 * place.Capacity) return new RoomSchedule(null, null);
        int opened = last;
        double sum = 0;
        int sealedWeek = instance.AsOf;
        for (int t = instance.AsOf; t < Math.Min(opened, instance.Weeks); t++)
        {
            sum += entries[t];
            sealedWeek = t;
            if (sum >= 0.98 * total) break;
        }
        sealedWeek = Math.Max(sealedWeek, EarliestSeal(instance, free.SpotsHere[spot].Place));
        if (sealedWeek >= instance.Weeks) return new RoomSchedule(null, null);
        opened = Math.Max(opened, sealedWeek + 1);
        return new RoomSchedule(sealedWeek, opened >= instance.Weeks ? null : opened);
    }

    /// <summary>Tries a choice: a fresh master under it, from the paths given, to the limits' gap. Remembered.</summary>
    internal RoomTrial Try(RoomChoice choice, IEnumerable<Findings> from, double cutOff, GenerationLimits within, Prices? center = null, Spot[]? centerOf = null)
    {
        lock (_tried)
            if (_tried.TryGetValue(choice, out RoomTrial? known) && (known.Finished || within.Gap >= 1e-3)) return known;
        using Master master = NewMaster(choice, RunCharges.ForBound(instance), from);
        if (center is not null && centerOf is not null) center = PriceMoving.To(instance, centerOf, master.SpotsHere, center);
        GenerationResult result = ColumnGeneration.Run(master, within, cutOff, null, center);
        var trial = new RoomTrial(choice, result.Solved ? result.Value : double.NegativeInfinity, result.Bound, Findings.Of(master), result.Center, result.Solved && result.Gap <= within.Gap);
        lock (_tried) _tried[choice] = trial;
        return trial;
    }

    internal Master NewMaster(RoomChoice choice, RunCharges charges, IEnumerable<Findings> from)
    {
        var master = new Master(instance, choice, charges, solver, grows: true);
        master.AddFills(FirstPaths.Fills(instance));
        (int weeks, int places) = FirstPaths.Every(instance, master.SpotsHere);
        master.AddPaths(FirstPaths.Of(instance, master.SpotsHere, charges, weeks, places));
        foreach (Findings found in from)
        {
            master.AddPaths(found.Paths.Select(p => PathMoving.To(instance, found.Spots, master.SpotsHere, charges, p)).OfType<PathColumn>());
            AddOrders(master, found);
        }
        return master;
    }

    internal static void AddOrders(Master master, Findings found)
    {
        master.AddFills(found.Orders.Where(c => c.Kind == ColumnKind.Fill).Select(c => (c.A, c.B, c.D)));
        master.AddPacks(found.Orders.Where(c => c.Kind == ColumnKind.Pack).Select(c => new PackArc(c.A, c.B, c.C, c.D)));
        master.AddWholes(found.Orders.Where(c => c.Kind == ColumnKind.Whole).Select(c => (c.A, c.Products!, c.D)));
    }

    /// <summary>The paths of a master that are used or nearly so.</summary>
    internal static List<PathColumn> Useful(Master master)
    {
        double[] values = master.Values, reduced = master.ReducedCosts;
        double near = master.Nearly;
        var useful = new List<PathColumn>();
        for (int k = 0; k < master.ColumnCount; k++)
            if (master.Columns[k].Path is { } path && (values[k] > 1e-9 || reduced[k] > -near)) useful.Add(path);
        return useful;
    }

    /// <summary>Moves single rooms by weeks while the plan gets better, two trials at a time.</summary>
    internal RoomTrial Improve(RoomTrial start, GenerationLimits within, int trialsAtMost, Action<RoomTrial>? better)
    {
        RoomTrial best = start;
        int[] steps = [1, -1, 2, -2, 4, -4, 8, -8];
        bool found = true;
        int left = trialsAtMost;
        while (found && left > 0 && within.Elapsed() < within.Until && !within.Cancel.IsCancellationRequested)
        {
            found = false;
            RoomChoice[] near = [.. Neighbours(best.Choice, steps).Where(c => !_tried.ContainsKey(c)).Distinct()];
            if (best.Bound - best.Value < Settled * Math.Abs(best.Value)) near = RoomPromise.Best(instance, near, best.Found.Spots, best.Center, best.Value, within);
            for (int k = 0; k < near.Length && !found; k += within.Threads)
            {
                if (within.Elapsed() >= within.Until || within.Cancel.IsCancellationRequested) break;
                if (left <= 0) break;
                RoomChoice[] batch = near[k..Math.Min(near.Length, k + Math.Min(left, within.Threads))];
                left -= batch.Length;
                var trials = new RoomTrial[batch.Length];
                Parallel.For(0, batch.Length, new ParallelOptions { MaxDegreeOfParallelism = within.Threads }, i =>
                    trials[i] = Try(batch[i], [best.Found], best.Value, within with { Threads = 1 }, best.Center));
                foreach (RoomTrial trial in trials.OrderByDescending(t => t.Value))
                    if (trial.Value > best.Value + 1e-5 * Math.Abs(best.Value))
                    {
                        best = trial;
                        found = true;
                        better?.Invoke(best);
                        break;
                    }
            }
        }
        return best;
    }

    /// <summary>A room can't be sealed before the last lot that is dug straight into it has come in.</summary>
    private static int EarliestSeal(PlanningInstance instance, int place) =>
        instance.Rows.Where(r => r.Place == place && r.FirstMove > r.Start).Select(r => r.Start).Append(instance.AsOf).Max();

    private IEnumerable<RoomChoice> Neighbours(RoomChoice choice, int[] steps)
    {
        int[] rooms = Rooms(instance);
        foreach (int step in steps)
            foreach (int p in rooms)
            {
                RoomSchedule now = choice.OfPlace[p] ?? new RoomSchedule(null, null);
                foreach (RoomSchedule next in Moved(instance, p, now, step)) yield return choice.With(p, next);
            }
    }

    private static IEnumerable<RoomSchedule> Moved(PlanningInstance instance, int place, RoomSchedule now, int step)
    {
        int weeks = instance.Weeks;
        int? already = instance.Places[place].SealedWeek;
        if (now.Sealed is not { } s)
        {
            // A room that was never sealed: try sealing it early and opening it in the middle or late.
            int early = Math.Max(EarliestSeal(instance, place), Math.Min(weeks - 2, instance.AsOf + Math.Abs(step) * 2));
            if (early >= weeks) yield break;
            if (early >= instance.AsOf && step > 0) yield return new RoomSchedule(early, Math.Min(weeks - 1, early + weeks / 2) is var o && o > early ? o : null);
            yield break;
        }
        int opened = (now.Opened ?? weeks) + step;
        if (opened > Math.Max(s, instance.AsOf - 1) && opened <= weeks) yield return now with { Opened = opened == weeks ? null : opened };
        if (already is not null) yield break;
        int sealedWeek = s + step;
        if (sealedWeek >= EarliestSeal(instance, place) && sealedWeek < (now.Opened ?? weeks)) yield return now with { Sealed = sealedWeek };
        if (step == 4) yield return new RoomSchedule(null, null);
    }
}
