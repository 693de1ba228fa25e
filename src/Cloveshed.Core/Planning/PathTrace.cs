namespace Cloveshed.Core.Planning;

/// <summary>Walks forward through a path table with the real state, choosing as the table says, and prices the path so found exactly.</summary>
internal static class PathTrace
{
    internal static PricedPath? Follow(PlanningInstance instance, Spot[] spots, double[,][] keep, double[,][] lifeUsed, int row, int home, bool waiting,
        PricedExit[][] exits, Prices prices, TableSheet sheet)
    {
        InstanceRow r = instance.Rows[row];
        double money = 0, mass = 1, life = r.LifeAtStart;
        int spot = home;
        PricedPath? best = null;
        var stays = new List<Stay> { new(home, r.Start) };
        for (int t = r.Start; t < instance.Weeks; t++)
        {
            if (t >= r.FirstMove && !waiting && spots[spot].Leave[t])
            {
                (double Value, int To) go = (mass * sheet.InWeek(t, spot, life), spot);
                for (int s = 0; s < spots.Length; s++)
                {
                    if (spots[s].Place == spots[spot].Place || !spots[s].Enter[t]) continue;
                    double value = mass * sheet.InWeek(t, s, life) - r.BinsPerMass * (instance.Places[spots[s].Place].MoveInCost + prices.Out[spot, t]);
                    if (value > go.Value + 1e-12) go = (value, s);
                }
                if (go.To != spot)
                {
                    money -= r.BinsPerMass * (instance.Places[spots[go.To].Place].MoveInCost + prices.Out[spot, t]);
                    spot = go.To;
                    waiting = spots[spot].WaitsAWeek;
                    stays.Add(new Stay(spot, t));
                }
            }
            if (spots[spot].Leave[t] && !waiting)
            {
                double sound = PathStates.SoundOf(instance, row, life), bestExit = 0;
                Exit exit = new(ExitKind.Discard, t, -1, 0, -1, -1, -1);
                foreach (PricedExit x in exits[t])
                {
                    double v = mass * (x.PerMass + r.Fresh * sound * x.PerFresh + r.Crack * sound * x.PerCrack);
                    if (v > bestExit) (bestExit, exit) = (v, x.Exit);
                }
                double leave = bestExit - r.BinsPerMass * prices.Out[spot, t];
                // The table is a little high further on, so the walk may pass the best week: it is remembered.
                if (best is null || money + leave > best.Value.Value) best = new PricedPath(money + leave, [.. stays], exit);
            }
            if (!spots[spot].Stand[t]) return best;
            waiting = false;
            money -= r.BinsPerMass * prices.Stand[spot, t];
            mass *= keep[r.Table, spot][t];
            life += lifeUsed[r.Table, spot][t];
        }
        double end = mass * PathStates.SoundOf(instance, row, life) * (r.Fresh + r.Crack) * instance.EndPrice - r.BinsPerMass * prices.Out[spot, instance.Weeks];
        return best is { } found && found.Value >= money + end ? best : new PricedPath(money + end, [.. stays], new Exit(ExitKind.Stand, instance.Weeks, -1, 0, -1, -1, -1));
    }
}
