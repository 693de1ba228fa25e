namespace Cloveshed.Core.Planning;

/// <summary>
/// Every way that a row of a small season may go with one move at most, by every way out. Fresh runs are unsplit. What goes further comes from what the linear model found.
/// </summary>
internal static class WaysOfAll
{
    /// <summary>More paths than this and only those that were found are used.</summary>
    private const int AtMost = 3000;

    /// <summary>Null where they are too many.</summary>
    internal static List<PathColumn>? Of(PlanningInstance instance, Spot[] spots, RunCharges charges)
    {
        var free = new Prices(instance, spots);
        List<PathColumn> paths = [.. Enumerable.Range(0, instance.Rows.Length).SelectMany(row => Of(instance, spots, charges, free, row)).Take(AtMost + 1)];
        return paths.Count > AtMost ? null : paths;
    }

    private static IEnumerable<PathColumn> Of(PlanningInstance instance, Spot[] spots, RunCharges charges, Prices free, int row)
    {
        InstanceRow r = instance.Rows[row];
        foreach (Stay[] stays in Stays(instance, spots, r))
        {
            foreach (PathColumn path in FirstPaths.WaysOut(instance, spots, row, stays)) yield return path;
            for (int t = Math.Max(stays[^1].Enter, instance.AsOf); t < instance.Weeks; t++)
                if (FirstPaths.MayLeave(instance, spots, r, stays, t))
                    foreach (PricedExit exit in Exits.Of(instance, charges, free, r.Lot, t)) yield return UnsplitRuns.Of(PathStates.Column(instance, spots, row, stays, exit.Exit));
        }
    }

    private static IEnumerable<Stay[]> Stays(PlanningInstance instance, Spot[] spots, InstanceRow r)
    {
        foreach ((int home, _) in spots.Index().Where(s => s.Item.Place == r.Place))
        {
            Stay[] stays = [new Stay(home, r.Start)];
            yield return stays;
            for (int t = r.FirstMove; t < instance.Weeks; t++)
                if (FirstPaths.MayLeave(instance, spots, r, stays, t))
                    foreach ((int to, Spot spot) in spots.Index())
                        if (spot.Place != r.Place && spot.Enter[t]) yield return [stays[0], new Stay(to, t)];
        }
    }
}
