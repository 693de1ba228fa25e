namespace Cloveshed.Core.Planning;

/// <summary>Carries a path from one set of spots to another, as when a room's weeks change.</summary>
internal static class PathMoving
{
    /// <summary>The same places in the same weeks, its exit moved to the nearest week that the room allows; null where there is none.</summary>
    internal static PathColumn? To(PlanningInstance instance, Spot[] from, Spot[] to, RunCharges charges, PathColumn path)
    {
        var stays = new Stay[path.Stays.Length];
        for (int k = 0; k < stays.Length; k++)
        {
            Spot old = from[path.Stays[k].Spot];
            int spot = Find(to, old);
            if (spot < 0) return null;
            stays[k] = new Stay(spot, path.Stays[k].Enter);
        }
        for (int k = 0; k < stays.Length; k++)
        {
            Spot spot = to[stays[k].Spot];
            if (k > 0 && !spot.Enter[stays[k].Enter]) return null;
            int until = k + 1 < stays.Length ? stays[k + 1].Enter : path.Exit.Week;
            if (k + 1 < stays.Length)
            {
                if (!Holds(spot, stays[k].Enter, until) || !spot.Leave[until]) return null;
                continue;
            }
            if (path.Exit.Kind == ExitKind.Stand)
                return Holds(spot, stays[k].Enter, instance.Weeks) ? PathStates.Column(instance, to, path.Row, stays, path.Exit) : null;
            int? week = Nearest(instance, charges, spot, path, stays[k].Enter, until);
            if (week is not { } t) return null;
            int shift = t - path.Exit.Week;
            Exit exit = path.Exit with { Week = t };
            if (exit.SortedLine >= 0)
            {
                int sorted = exit.SortedWeek + shift;
                bool runs = sorted < instance.Weeks && !double.IsInfinity(charges.OfSorted(exit.SortedLine, sorted));
                exit = runs ? exit with { SortedWeek = sorted } : exit with { SortedLine = -1, SortedWeek = -1 };
            }
            if (exit.Kind == ExitKind.Seed && t > instance.SeedNeeds[exit.Need].ByWeek) return null;
            return PathStates.Column(instance, to, path.Row, stays, exit);
        }
        return null;
    }

    private static int Find(Spot[] spots, Spot old)
    {
        int plain = -1;
        for (int s = 0; s < spots.Length; s++)
        {
            if (spots[s].Place != old.Place) continue;
            if (spots[s].Kind == old.Kind) return s;
            if (plain < 0 || spots[s].Kind == SpotKind.FreeSealed) plain = s;
        }
        return plain;
    }

    private static bool Holds(Spot spot, int from, int until)
    {
        for (int t = from; t < until; t++) if (!spot.Stand[t]) return false;
        return true;
    }

    private static int? Nearest(PlanningInstance instance, RunCharges charges, Spot spot, PathColumn path, int enter, int wanted)
    {
        for (int d = 0; d <= 6; d++)
            foreach (int t in d == 0 ? [wanted] : new[] { wanted + d, wanted - d })
            {
                if (t < enter || t >= instance.Weeks || !spot.Leave[t] || !Holds(spot, enter, t)) continue;
                if (path.Exit.Line >= 0 && double.IsInfinity(charges[instance.Rows[path.Row].Lot, path.Exit.Line, t])) continue;
                if (path.Exit.Kind == ExitKind.SoldAsIs && t < instance.Lots[instance.Rows[path.Row].Lot].ReadyWeek) continue;
                return t;
            }
        return null;
    }
}
