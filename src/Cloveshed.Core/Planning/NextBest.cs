namespace Cloveshed.Core.Planning;

/// <summary>The choice that comes next to a planned one.</summary>
/// <param name="Exit">What it ends in, and in which week.</param>
/// <param name="Worth">What a scaled start mass is worth as planned, in scaled money.</param>
/// <param name="Cost">What a scaled start mass is worth less by it, in scaled money; negative where the plan, made whole, left the better choice.</param>
public readonly record struct NextChoice(Exit Exit, double Worth, double Cost);

/// <summary>
/// What the next best choice for a planned run's garlic would have cost: the most that the same row is worth at the plan's prices by any way that the plan does not
/// take for it (another week, another line, sold or thrown away as it is, or kept to the end), against what it is worth as planned. It is the reduced cost of the
/// best path not taken, good for small changes: what the plan would then do otherwise with the hours and orders set free is in the prices as far as prices go.
/// </summary>
/// <remarks>
/// A pinned run is valued without what the pin adds, so that a hold that costs money says so. Other weeks are searched over all storage paths of one move;
/// other lines in the same week are valued along the planned path and along the best of the search.
/// </remarks>
public static class NextBest
{
    /// <param name="exits">[week] of the row's lot, at these prices.</param>
    /// <param name="found">Good paths of the row over all exits at the same prices, one for each week at least.</param>
    /// <param name="stays">Of the planned path.</param>
    /// <param name="planned">Its exit, over a line.</param>
    /// <param name="taken">All weeks and lines (-1: none) in which the plan takes from the row, this one too: where a lot is run in several weeks these are as good as each other, and no other choice.</param>
    /// <returns>Null where nothing else can be done with the row.</returns>
    public static NextChoice? Of(PlanningInstance instance, Spot[] spots, Prices prices, PricedExit[][] exits, IReadOnlyList<PricedPath> found, int row, Stay[] stays, Exit planned, IReadOnlySet<(int Week, int Line)> taken)
    {
        bool Same(Exit exit) => exit.Week == planned.Week && exit.Line == planned.Line;
        bool Taken(Exit exit) => taken.Contains((exit.Week, exit.Line));
        double held = instance.Pins.Count > 0 && instance.PinOf(instance.Rows[row].Lot, planned.Line, planned.Week) is var pin and >= 0 ? prices.Pin[pin] : 0;
        double here = double.NegativeInfinity;
        (double Value, Exit Exit)? best = null;
        void Take(double value, Exit exit)
        {
            if (best is null || value > best.Value.Value) best = (value, exit);
        }

        foreach (PricedExit exit in exits[planned.Week])
        {
            bool same = Same(exit.Exit);
            double value = Along(instance, spots, prices, row, stays, same ? exit with { PerMass = exit.PerMass - held } : exit);
            if (!Taken(exit.Exit)) Take(value, exit.Exit);
            if (same && exit.Exit.Kind == planned.Kind && (planned.Kind != ExitKind.Seed || exit.Exit.Need == planned.Need)) here = Math.Max(here, value);
        }
        foreach (PricedPath path in found)
        {
            if (!Taken(path.Exit)) Take(path.Value, path.Exit);
            else if (path.Exit.Week < instance.Weeks)
                foreach (PricedExit exit in exits[path.Exit.Week])
                    if (!Taken(exit.Exit)) Take(Along(instance, spots, prices, row, path.Stays, exit), exit.Exit);
        }
        return best is { } other && !double.IsNegativeInfinity(here) ? new NextChoice(other.Exit, here, here - other.Value) : null;
    }

    /// <summary>What a scaled start mass of a row is worth along stays to an exit: what comes out at these prices, less standing, moving and leaving.</summary>
    public static double Along(PlanningInstance instance, Spot[] spots, Prices prices, int row, Stay[] stays, PricedExit exit)
    {
        InstanceRow r = instance.Rows[row];
        (double[] mass, double[] life) = PathStates.Along(instance, spots, row, stays);
        int week = exit.Exit.Week, stay = 0;
        double money = 0;
        for (int t = r.Start; t < week; t++)
        {
            while (stay + 1 < stays.Length && stays[stay + 1].Enter <= t)
            {
                money -= r.BinsPerMass * (instance.Places[spots[stays[stay + 1].Spot].Place].MoveInCost + prices.Out[stays[stay].Spot, t]);
                stay++;
            }
            money -= r.BinsPerMass * prices.Stand[stays[stay].Spot, t];
        }
        while (stay + 1 < stays.Length && stays[stay + 1].Enter <= week)
        {
            money -= r.BinsPerMass * (instance.Places[spots[stays[stay + 1].Spot].Place].MoveInCost + prices.Out[stays[stay].Spot, week]);
            stay++;
        }
        double sound = PathStates.SoundOf(instance, row, life[week]);
        return money + mass[week] * (exit.PerMass + r.Fresh * sound * exit.PerFresh + r.Crack * sound * exit.PerCrack) - r.BinsPerMass * prices.Out[stays[stay].Spot, week];
    }
}
