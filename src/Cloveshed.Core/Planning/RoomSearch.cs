namespace Cloveshed.Core.Planning;

/// <summary>What a solved master found to be useful: paths (of its spots), fills, whole orders and ways to pack. A new master starts from it.</summary>
internal sealed record Findings(Spot[] Spots, IReadOnlyList<PathColumn> Paths, IReadOnlyList<MasterColumn> Orders)
{
    internal static Findings Of(Master master) => OrdersOf(master) with { Paths = RoomSearch.Useful(master) };

    /// <summary>All but paths.</summary>
    internal static Findings OrdersOf(Master master) => new(master.SpotsHere, [], [.. master.Columns.Where(c => c.Kind is ColumnKind.Fill or ColumnKind.Whole or ColumnKind.Pack)]);
}

/// <summary>A room choice that has been tried: the master's value and bound with it, and what it found.</summary>
internal sealed record RoomTrial(RoomChoice Choice, double Value, double Bound, Findings Found, Prices Center, bool Settled);

/// <summary>
/// Finds good weeks for the rooms. The free master says how a room would be filled and emptied if it could open a little in many weeks; what other weeks
/// would be worth at its prices, and at those of every choice tried since, says what to try next. In small seasons single rooms are then moved by weeks
/// while the plan gets better.
/// </summary>
internal sealed class RoomSearch(PlanningInstance instance, ILinearSolver solver)
{
    /// <summary>Gap of a trial from which on its prices say something of other room weeks.</summary>
    private const double Settled = 0.01;

    private readonly Dictionary<RoomChoice, RoomTrial> _tried = [];

    internal static int[] Rooms(PlanningInstance instance) =>
        [.. Enumerable.Range(0, instance.Places.Length).Where(p => instance.Places[p].Kind == Seasons.PlaceKind.Sealed)];

    /// <summary>The weeks of a room as the free master uses it: sealed once nearly all of what it holds is in.</summary>
    private RoomSchedule Schedule(Master free, int spot)
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
            int mid = Middle(exits, total, earliest);
            return new RoomSchedule(already, mid >= instance.Weeks ? null : mid);
        }
        if (total < 1e-6 * place.Capacity) return new RoomSchedule(null, null);
        int opened = Middle(exits, total, instance.AsOf);
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

    /// <summary>The week by which half of what a room holds has left it.</summary>
    private int Middle(double[] exits, double total, int earliest)
    {
        double gone = 0;
        for (int t = 0; t < exits.Length; t++)
            if ((gone += exits[t]) >= 0.5 * total && total > 1e-9) return Math.Clamp(t, earliest, instance.Weeks);
        return instance.Weeks;
    }

    /// <summary>Tries a choice: a fresh master under it, from the paths given, to the limits' gap. Remembered.</summary>
    private RoomTrial Try(RoomChoice choice, IEnumerable<Findings> from, double cutOff, GenerationLimits within, Prices center)
    {
        (RoomTrial trial, Master? master) = TryKeeping(choice, from, cutOff, within, center, null, null);
        master?.Dispose();
        return trial;
    }

    /// <summary>The same, and the master that it was tried with; null where it is remembered.</summary>
    private (RoomTrial Trial, Master? Master) TryKeeping(RoomChoice choice, IEnumerable<Findings> from, double cutOff, GenerationLimits within, Prices center, Spot[]? centerOf, Func<int, SpaceRent?>? anew)
    {
        lock (_tried)
            if (_tried.TryGetValue(choice, out RoomTrial? known)) return (known, null);
        Master master = NewMaster(choice, RunCharges.ForBound(instance), from);
        if (centerOf is not null) center = PriceMoving.To(instance, centerOf, master.SpotsHere, center, anew);
        GenerationResult result = ColumnGeneration.RunNearly(master, within, cutOff, center);
        var trial = new RoomTrial(choice, result.Solved ? result.Value : double.NegativeInfinity, result.Bound, Findings.Of(master), result.Center, result.Solved && result.Settled);
        lock (_tried) _tried[choice] = trial;
        return (trial, master);
    }

    internal Master NewMaster(RoomChoice choice, RunCharges charges, IEnumerable<Findings> from)
    {
        var master = new Master(instance, choice, charges, solver, grows: true);
        master.AddFills(FirstPaths.Fills(instance));
        // Findings are a better beginning than paths spread over the season; what is left of these is a way out for every row.
        (int weeks, int places) = from.Any() && master.IsLarge ? (instance.Weeks, 1) : FirstPaths.Every(instance, master.SpotsHere);
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

    /// <summary>
    /// Room weeks guessed from the free master's prices and from those of the weeks tried since, until nothing promises more: each time one choice about the
    /// best and, with a second thread, one anywhere.
    /// </summary>
    /// <param name="root">The free master's own result.</param>
    /// <param name="better">Told of each trial that is the best so far, and whether it is the first.</param>
    /// <returns>The best trial, and the master that it was tried with, as it stands.</returns>
    internal (RoomTrial Best, Master Master) Guess(Master free, GenerationResult root, GenerationLimits within, int trialsAtMost, Action<RoomTrial, bool> better)
    {
        Findings freely = Findings.Of(free);
        RoomChoice asFree = RoomChoice.Free(instance);
        foreach ((int s, Spot spot) in free.SpotsHere.Index().Where(x => x.Item.Kind == SpotKind.FreeSealed)) asFree = asFree.With(spot.Place, Schedule(free, s));
        RoomCut.Weeks[] sealings = [.. Rooms(instance).Select(p => new RoomCut.Weeks(p, SealingWeeks(p, asFree.OfPlace[p]?.Sealed), new RoomWays(instance, p)))];
        var guess = new RoomGuess(sealings.ToDictionary(r => r.Place, r => RoomCut.Compared(instance, r)));
        RoomCut learnt = RoomCut.Of(instance, sealings, free.SpotsHere, root.Center, null, root.Value, within);
        guess.Learn(learnt, asFree);
        RoomTrial? best = null;
        Master? kept = null;
        RoomTrial[] trials = [];
        for (int left = Math.Max(1, trialsAtMost); left > 0 && (best is null || (!within.Over && trialsAtMost > 0));)
        {
            foreach (RoomTrial trial in trials.Where(t => double.IsFinite(t.Value)))
            {
                RoomCut cut = RoomCut.Of(instance, sealings, trial.Found.Spots, trial.Center, trial.Choice, trial.Value, within);
                guess.Learn(cut, trial.Choice);
                if (ReferenceEquals(trial, best)) learnt = cut;
            }
            RoomChoice[] batch = Proposals(guess, best, asFree, Math.Min(left, within.Threads));
            if (batch.Length == 0 && best is null) batch = [asFree];
            if (batch.Length == 0) break;
            left -= batch.Length;
            var tried = new (RoomTrial Trial, Master? Master)[batch.Length];
            (Findings found, Prices center, double value) = best is null ? (freely, root.Center, double.NegativeInfinity) : (best.Found, best.Center, best.Value);
            Parallel.For(0, batch.Length, new ParallelOptions { MaxDegreeOfParallelism = within.Threads }, i =>
                tried[i] = TryKeeping(batch[i], [found], value, within with { Threads = Math.Max(1, within.Threads / batch.Length) }, center, found.Spots, p => Anew(learnt, best?.Choice, batch[i], p)));
            foreach ((RoomTrial trial, Master? master) in tried)
            {
                if (best is not null && trial.Value <= best.Value)
                {
                    master?.Dispose();
                    continue;
                }
                kept?.Dispose();
                bool first = best is null;
                (best, kept) = (trial, master);
                better(best, first);
            }
            trials = [.. tried.Select(t => t.Trial)];
        }
        return (best!, kept!);
    }

    /// <summary>The space of a room whose weeks are others than those that the prices are of is worth what is learnt of these weeks, paid when it is sealed.</summary>
    private SpaceRent? Anew(RoomCut learnt, RoomChoice? of, RoomChoice choice, int place) =>
        choice.OfPlace[place] is { Sealed: { } week } weeks && of?.OfPlace[place] != weeks && learnt.Rent(place, weeks) is { } rent ? new SpaceRent(Math.Max(week, instance.AsOf), rent) : null;

    /// <summary>Weeks within which the prices of a choice tell most of others.</summary>
    private const int Nearby = 4;

    private RoomChoice[] Proposals(RoomGuess guess, RoomTrial? best, RoomChoice asFree, int count)
    {
        var proposed = new List<RoomChoice>();
        double moreThan = best is null ? double.NegativeInfinity : best.Value + 1e-5 * Math.Abs(best.Value);
        bool Known(RoomChoice c) => _tried.ContainsKey(c) || proposed.Contains(c);
        while (proposed.Count < count)
        {
            RoomChoice? next = best is not null && proposed.Count == 0 ? guess.Next(best.Choice, Known, moreThan, Nearby) : null;
            next ??= guess.Next(best?.Choice ?? asFree, Known, moreThan, null);
            if (next is null) break;
            proposed.Add(next);
        }
        return [.. proposed];
    }

    /// <summary>The weeks in which a room's sealing is thought of: those about the week in which the free master has it nearly filled.</summary>
    private int[] SealingWeeks(int place, int? asFree)
    {
        if (instance.Places[place].SealedWeek is { } already) return [already];
        int earliest = EarliestSeal(instance, place), middle = Math.Clamp(asFree ?? earliest + 4, earliest, Math.Max(earliest, instance.Weeks - 2));
        return [.. Enumerable.Range(Math.Max(earliest, middle - 6), 13).Where(s => s < instance.Weeks - 1)];
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
