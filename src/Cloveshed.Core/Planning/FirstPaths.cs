using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// Paths to begin with, spread over the season: from such a start the first prices are near the last ones, from "everything
/// stands" they are not. Also one way out for every row, so that the first master has a solution.
/// </summary>
internal static class FirstPaths
{
    /// <summary>About so many paths to run are begun with: more of them make the first solves long.</summary>
    private const double About = 9000;

    /// <summary>Of all pairs of a place and a week every so many: three weeks in a season or more, and where there are very many rows, not every place for each of them.</summary>
    internal static (int Weeks, int Places) Every(PlanningInstance instance, Spot[] spots)
    {
        double every = 1.5 * spots.Length * instance.Weeks * instance.Rows.Length / About;
        int most = Math.Max(2, instance.Weeks / 3), weeks = (int)Math.Clamp(every, Math.Max(2, instance.Weeks / 9), most);
        return (weeks, (int)Math.Clamp(every / most, 1, Math.Max(1, spots.Length / 2)));
    }

    internal static IEnumerable<PathColumn> Of(PlanningInstance instance, Spot[] spots, RunCharges charges, int everyWeeks, int everyPlaces = 1) =>
        Of(instance, spots, everyWeeks, everyPlaces, (lot, week, turn) => ExitsAt(instance, charges, lot, week, turn));

    private static IEnumerable<PathColumn> Of(PlanningInstance instance, Spot[] spots, int everyWeeks, int everyPlaces, Func<int, int, int, IEnumerable<Exit>> exitsAt)
    {
        for (int row = 0; row < instance.Rows.Length; row++)
        {
            InstanceRow r = instance.Rows[row];
            int count = 0;
            for (int s = 0; s < spots.Length; s++)
            {
                bool home = spots[s].Place == r.Place;
                if (!home && (s + row) % everyPlaces != 0) continue;
                if (!home && (r.FirstMove >= instance.Weeks || !spots[s].Enter[r.FirstMove])) continue;
                Stay[][] ways = home ? [[new Stay(s, r.Start)]] : [.. Home(spots, r).Select(h => new[] { new Stay(h, r.Start), new Stay(s, r.FirstMove) })];
                foreach (Stay[] stays in ways)
                {
                    if (home) foreach (PathColumn path in WaysOut(instance, spots, row, stays)) yield return path;
                    for (int t = stays[^1].Enter + (row + 3 * s) % everyWeeks; t < instance.Weeks; t += everyWeeks)
                        if (MayLeave(instance, spots, r, stays, t))
                            foreach (Exit exit in exitsAt(r.Lot, t, count++)) yield return PathStates.Column(instance, spots, row, stays, exit);
                }
            }
        }
    }

    private static IEnumerable<int> Home(Spot[] spots, InstanceRow r)
    {
        // The cold use of a room can be left at once; a sealed stay can't, so it is not a way from home to elsewhere.
        for (int s = 0; s < spots.Length; s++)
            if (spots[s].Place == r.Place && spots[s].Kind != SpotKind.FreeSealed && spots[s].Leave[r.FirstMove]) yield return s;
    }

    internal static bool MayLeave(PlanningInstance instance, Spot[] spots, InstanceRow r, Stay[] stays, int week)
    {
        Spot last = spots[stays[^1].Spot];
        if (!last.Leave[week]) return false;
        for (int t = stays[^1].Enter; t < week; t++)
            if (!last.Stand[t]) return false;
        if (last.Kind != SpotKind.FreeSealed || week > stays[^1].Enter) return true;
        return instance.Places[last.Place].SealedWeek is { } w && r.Start > w;
    }

    internal static IEnumerable<PathColumn> WaysOut(PlanningInstance instance, Spot[] spots, int row, Stay[] stays)
    {
        InstanceRow r = instance.Rows[row];
        for (int t = r.Start; t < instance.Weeks; t++)
            if (MayLeave(instance, spots, r, stays, t))
            {
                yield return PathStates.Column(instance, spots, row, stays, new Exit(ExitKind.Discard, t, -1, 0, -1, -1, -1));
                break;
            }
        bool stands = true;
        for (int t = r.Start; t < instance.Weeks; t++) stands &= spots[stays[^1].Spot].Stand[t];
        if (stands) yield return PathStates.Column(instance, spots, row, stays, new Exit(ExitKind.Stand, instance.Weeks, -1, 0, -1, -1, -1));
    }

    private static IEnumerable<Exit> ExitsAt(PlanningInstance instance, RunCharges charges, int lot, int week, int turn)
    {
        int[] lines = [.. Enumerable.Range(0, instance.Lines.Length).Where(i => !double.IsInfinity(charges[lot, i, week]))];
        int[] fresh = [.. lines.Where(i => instance.Lines[i].Mode == LineMode.Fresh)], crack = [.. lines.Where(i => instance.Lines[i].Mode == LineMode.Crack)];
        int sortedLine = Array.FindIndex(instance.Lines, l => l.Mode == LineMode.Crack);
        if (sortedLine >= 0 && double.IsInfinity(charges.OfSorted(sortedLine, week))) sortedLine = -1;
        ulong all = 0;
        for (int k = 0; k < instance.Sorts.Length && !instance.Sorts[k].Clove; k++) if (instance.Sorts[k].Packed) all |= 1UL << k;
        if (fresh.Length > 0) yield return new Exit(ExitKind.Fresh, week, fresh[turn % fresh.Length], all, sortedLine, sortedLine < 0 ? -1 : week, -1);
        if (crack.Length > 0 && turn % 2 == 0) yield return new Exit(ExitKind.Crack, week, crack[turn / 2 % crack.Length], 0, -1, -1, -1);
    }

    /// <summary>On-time fills by the ordered product, and every whole order once.</summary>
    internal static IEnumerable<(int, int, int)> Fills(PlanningInstance instance)
    {
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            InstanceOrderLine l = instance.OrderLines[i];
            int last = Math.Min(instance.Weeks - 1, Math.Max(l.Earliest, l.DueWeek));
            for (int t = Math.Max(l.Earliest, last - 2); t <= last; t++) yield return (i, l.Product, t);
        }
    }
}
