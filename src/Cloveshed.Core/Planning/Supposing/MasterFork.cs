namespace Cloveshed.Core.Planning.Supposing;

/// <summary>
/// A solved master made anew of a changed season, to be solved on from where the old one stands: what is alike is carried over by name with its place in the basis, paths of changed
/// lots are carried where the same places and weeks are open to them, and given ways to begin with. The old one is not touched.
/// </summary>
internal static class MasterFork
{
    /// <param name="of">The season that the old master is of, changed.</param>
    /// <param name="changed">[row] Whether ways of a row are to be looked for anew.</param>
    /// <param name="taken">Scaled mass that ways to run of the new master took in the old one, by column.</param>
    internal static Master Of(Master old, LinearBasis stands, SupposedSeason of, ILinearSolver solver, out bool[] changed, out Dictionary<int, double> taken)
    {
        PlanningInstance before = old.Instance, now = InstanceBuilding.Build(of.Season, of.Known, of.Beliefs, of.Wishes, before);
        RunCharges charges = RunCharges.ForBound(now);
        var master = new Master(now, RoomChoice.Of(now, of.Rooms), charges, solver, grows: true);
        bool rooms = !master.Choice.Equals(old.Choice);
        bool[] anew = changed = [.. now.Rows.Select(row => rooms || of.Lots.Contains(now.Lots[row.Lot].Id))];
        Dictionary<(LotId, int), int> rowOf = now.Rows.Select((row, k) => ((now.Lots[row.Lot].Id, row.Place), k)).ToDictionary(one => one.Item1, one => one.k);
        var from = new Dictionary<PathColumn, int>(ReferenceEqualityComparer.Instance);
        var paths = new List<PathColumn>();
        for (int k = 0; k < old.ColumnCount; k++)
        {
            if (old.Columns[k].Path is not { } path) continue;
            InstanceRow row = before.Rows[path.Row];
            if (!rowOf.TryGetValue((before.Lots[row.Lot].Id, row.Place), out int here)) continue;
            PathColumn? same = anew[here] ? Started(now.Rows[here], path with { Row = here }) is { } started ? PathMoving.To(now, old.SpotsHere, master.SpotsHere, charges, started) : null
                : path with { Row = here };
            if (same is null || !from.TryAdd(same, k)) continue;
            paths.Add(same);
        }
        master.AddPaths(paths);
        // They pay nowhere, but may stand in the basis.
        if (old.Columns.Any(c => c.Kind is ColumnKind.Dear or ColumnKind.Empty))
        {
            master.Loosen(true);
            master.Loosen(false);
        }
        if (anew.Contains(true))
        {
            (int weeks, int places) = FirstPaths.Every(now, master.SpotsHere);
            master.AddPaths(FirstPaths.Of(now, master.SpotsHere, charges, weeks, places).Where(path => anew[path.Row]));
        }
        RoomSearch.AddOrders(master, Findings.OrdersOf(old));
        master.AddFills(FirstPaths.Fills(now).Where(fill => fill.Item1 >= before.OrderLines.Length));
        master.Program.Restore(BasisMoving.To(old, stands, master, from));
        taken = [];
        for (int k = 0; k < master.ColumnCount; k++)
            if (master.Columns[k].Path is { Exit.Line: >= 0 } path && from.TryGetValue(path, out int was) && old.Values[was] > 1e-9) taken[k] = old.Values[was];
        return master;
    }

    /// <summary>A path of the new master as it is in the old one; null where it is no path, or of what is changed.</summary>
    internal static PathColumn? Back(Master now, Master old, bool[] changed, int column)
    {
        if (ReferenceEquals(now, old)) return now.Columns[column].Path;
        if (now.Columns[column].Path is not { } path || changed[path.Row]) return null;
        InstanceRow row = now.Instance.Rows[path.Row];
        LotId lot = now.Instance.Lots[row.Lot].Id;
        int was = Array.FindIndex(old.Instance.Rows, r => r.Place == row.Place && old.Instance.Lots[r.Lot].Id == lot);
        return was < 0 ? null : path with { Row = was };
    }

    /// <summary>The path from another first week on; null where what comes after would be before a bin may move.</summary>
    private static PathColumn? Started(InstanceRow row, PathColumn path)
    {
        if (path.Stays[0].Enter == row.Start) return path;
        if (path.Exit.Week < row.Start || (path.Stays.Length > 1 && path.Stays[1].Enter < row.FirstMove)) return null;
        return path with { Stays = [path.Stays[0] with { Enter = row.Start }, .. path.Stays[1..]] };
    }
}
