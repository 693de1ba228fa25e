using Cloveshed.Core.Planning;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>Prices that no solver has seen: drawn at large, or some that were found with noise on them.</summary>
internal static class DrawnPrices
{
    /// <summary>Each of them in the order of what the thing could be worth, a third of them nothing; what the master has no row for is not scarce and has none.</summary>
    internal static Prices AtLarge(PlanningInstance instance, Spot[] spots, Pcg pcg)
    {
        var prices = new Prices(instance, spots);
        double One(double most) => pcg.Chance(0.33) ? 0 : pcg.Between(0, most);
        foreach ((int k, int o, int t) in In(prices.Supply)) prices.Supply[k, o, t] = One(2);
        foreach ((int q, int t) in In(prices.Available)) prices.Available[q, t] = One(2);
        foreach ((int i, int t) in In(prices.Hour)) prices.Hour[i, t] = One(0.8 * instance.Lines[i].Rate);
        for (int t = 0; t < instance.Weeks; t++) prices.People[t] = One(instance.Lines.Length > 0 ? instance.Lines[0].Rate * 0.1 : 1);
        foreach ((int s, int t) in In(prices.Stand)) prices.Stand[s, t] = One(0.1);
        foreach ((int s, int t) in In(prices.Out)) prices.Out[s, t] = spots[s].Kind == SpotKind.FreeSealed ? One(0.3) : 0;
        for (int n = 0; n < prices.Seed.Length; n++) prices.Seed[n] = One(instance.SeedNeeds[n].ShortCost);
        foreach ((int a, int t) in In(prices.AsIs)) prices.AsIs[a, t] = double.IsInfinity(instance.AsIs[a].Limit) ? 0 : One(instance.AsIs[a].Price);
        foreach ((int s, int t) in In(prices.Shared)) prices.Shared[s, t] = spots[s].Kind == SpotKind.FreeCold ? One(0.1) : 0;
        foreach ((int s, int t) in In(prices.Blocked)) prices.Blocked[s, t] = spots[s].Kind == SpotKind.FreeCold ? One(0.1) : 0;
        return prices;
    }

    /// <summary>The prices found, each times e to the power of so much noise; some of them nothing, some at large.</summary>
    internal static Prices Near(Prices found, PlanningInstance instance, Spot[] spots, double noise, Pcg pcg)
    {
        Prices prices = found.Toward(AtLarge(instance, spots, pcg), pcg.Chance(0.5) ? 1 : 1 - noise * 0.1, instance, spots);
        double One(double price) => pcg.Chance(0.1 * noise) ? 0 : price * Math.Exp(noise * pcg.Normal());
        foreach ((int k, int o, int t) in In(prices.Supply)) prices.Supply[k, o, t] = One(prices.Supply[k, o, t]);
        foreach (double[,] table in new[] { prices.Available, prices.Hour, prices.Stand, prices.Out, prices.AsIs, prices.Shared, prices.Blocked })
            foreach ((int a, int t) in In(table)) table[a, t] = One(table[a, t]);
        foreach (double[] list in new[] { prices.People, prices.Seed })
            for (int t = 0; t < list.Length; t++) list[t] = One(list[t]);
        return prices;
    }

    private static IEnumerable<(int, int)> In(double[,] table) =>
        from a in Enumerable.Range(0, table.GetLength(0)) from b in Enumerable.Range(0, table.GetLength(1)) select (a, b);

    private static IEnumerable<(int, int, int)> In(double[,,] table) =>
        from a in Enumerable.Range(0, table.GetLength(0)) from b in Enumerable.Range(0, table.GetLength(1)) from c in Enumerable.Range(0, table.GetLength(2)) select (a, b, c);
}
