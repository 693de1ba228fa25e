namespace Cloveshed.Core.Planning;

/// <summary>
/// What room weeks could be worth, by the prices that other room weeks had: close to a bound, and thousands of times cheaper than a trial. Trials are
/// then made in the order of what they promise, and those that promise less than is had already are not made at all.
/// </summary>
internal static class RoomPromise
{
    /// <summary>The choices that promise more than a value, best first.</summary>
    internal static RoomChoice[] Best(PlanningInstance instance, IReadOnlyList<RoomChoice> choices, Spot[] spots, Prices prices, double moreThan, GenerationLimits limits)
    {
        double[] promise = new double[choices.Count];
        // Ways out depend on nothing that a room choice changes.
        PricedExit[][][] exits = Exits.OfAll(instance, RunCharges.ForBound(instance), prices, limits.Threads);
        Parallel.For(0, choices.Count, new ParallelOptions { MaxDegreeOfParallelism = limits.Threads }, k =>
            promise[k] = limits.Over ? double.NegativeInfinity : Of(instance, choices[k], spots, prices, exits));
        return [.. Enumerable.Range(0, choices.Count).Where(k => promise[k] > moreThan).OrderByDescending(k => promise[k]).ThenBy(k => k).Select(k => choices[k])];
    }

    private static double Of(PlanningInstance instance, RoomChoice choice, Spot[] from, Prices prices, PricedExit[][][] exits)
    {
        Spot[] spots = Spots.Of(instance, choice);
        Prices at = PriceMoving.To(instance, from, spots, prices);
        UpperBound.Repair(instance, at);
        var search = new OneMoveSearch(instance, spots);
        var charges = new StandingCharges(instance, spots, at);
        double worth = UpperBound.OfAllButPaths(instance, spots, at);
        for (int row = 0; row < instance.Rows.Length; row++)
            worth += instance.Rows[row].Mass * search.Best(row, exits[instance.Rows[row].Lot], at, charges, 0, 0).Bound;
        return worth;
    }
}
