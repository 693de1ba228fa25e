namespace Cloveshed.Core.Planning;

/// <summary>
/// Prices found under one room choice, said for the spots of another: what has nothing to do with rooms stays as it is, and a place's week
/// keeps its price whichever way it is used. Any prices bound, so this is a start and no claim.
/// </summary>
internal static class PriceMoving
{
    /// <param name="anew">By place: what its space costs instead of the prices that it had; null: those.</param>
    internal static Prices To(PlanningInstance instance, Spot[] from, Spot[] to, Prices prices, Func<int, SpaceRent?>? anew = null)
    {
        var moved = new Prices(instance, to);
        Copy(prices.Supply, moved.Supply);
        Copy(prices.Available, moved.Available);
        Copy(prices.Hour, moved.Hour);
        Copy(prices.People, moved.People);
        Copy(prices.Seed, moved.Seed);
        Copy(prices.AsIs, moved.AsIs);
        Copy(prices.Pin, moved.Pin);
        for (int s = 0; s < to.Length; s++)
        {
            if (anew?.Invoke(to[s].Place) is { } rent)
            {
                for (int t = 0; t < instance.Weeks; t++) moved.Stand[s, t] = instance.Places[to[s].Place].StandCost;
                moved.Stand[s, rent.Week] += rent.PerBin;
                continue;
            }
            int cold = Array.FindIndex(from, x => x.Place == to[s].Place && x.Kind != SpotKind.FreeSealed), shut = Array.FindIndex(from, x => x.Place == to[s].Place && x.Kind == SpotKind.FreeSealed);
            for (int t = 0; t < instance.Weeks; t++)
            {
                int like = to[s].UnderAtmosphere(t) && shut >= 0 ? shut : cold >= 0 ? cold : shut;
                moved.Stand[s, t] = prices.Stand[like, t];
                (moved.Shared[s, t], moved.Blocked[s, t]) = from[like].Kind == to[s].Kind ? (prices.Shared[like, t], prices.Blocked[like, t]) : (0, 0);
            }
            if (to[s].Kind == SpotKind.FreeSealed && shut >= 0)
                for (int t = 0; t <= instance.Weeks; t++) moved.Out[s, t] = prices.Out[shut, t];
        }
        return moved;
    }

    private static void Copy(Array from, Array to) => Array.Copy(from, to, from.Length);
}
