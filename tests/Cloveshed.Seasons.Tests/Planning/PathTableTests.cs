using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// The table that bounds what a row's pounds can be worth, against its slower twin: every sequence of places tried, week by week.
/// At any prices it is never lower, and higher by little (docs/formulas/planning.md says why).
/// </summary>
public sealed class PathTableTests
{
    /// <summary>What the table may be too high by, of what a row's pound is worth: ten times what it comes to on the demo season.</summary>
    private const double Little = 0.005;

    public static TheoryData<ulong> Seeds => [.. Enumerable.Range(1, 12).Select(i => (ulong)i)];

    [Theory, MemberData(nameof(Seeds))]
    public void It_is_never_under_the_best_of_all_sequences_and_over_it_by_little(ulong seed)
    {
        var pcg = new Pcg(seed, 7);
        Season season = OddSeasons.Make(new OddShape { Weeks = 10 }, [], pcg);
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season, Beliefs.Default.Lots), Beliefs.Default);
        Spot[] spots = Spots.Of(instance, RoomChoice.Free(instance));
        Prices prices = Drawn(instance, spots, pcg);
        var search = new PathSearch(instance, spots);
        var table = new PathTable(instance, spots);
        RunCharges charges = RunCharges.ForBound(instance);
        int moved = 0;
        for (int row = 0; row < instance.Rows.Length; row++)
        {
            PricedExit[][] exits = [.. Enumerable.Range(0, instance.Weeks).Select(t => Exits.Of(instance, charges, prices, instance.Rows[row].Lot, t))];
            RowSearch exact = search.Best(row, exits, prices, SearchDepth.Exact, 1, double.NegativeInfinity);
            (double bound, PricedPath? path) = table.Best(row, exits, prices);
            double best = Assert.Single(exact.Paths).Value, slack = 1e-9 * Math.Max(1, Math.Abs(best));
            Assert.Equal(best, exact.Bound, slack);
            Assert.True(bound >= best - slack, $"row {row}: the table says {bound}, a path is worth {best}");
            Assert.True(bound <= best + Little * Math.Max(1, Math.Abs(best)), $"row {row}: the table says {bound}, no path is worth more than {best}");
            if (path is { } found) Assert.True(found.Value <= best + slack, $"row {row}: a path of {found.Value}, none is worth more than {best}");
            moved += exact.Paths[0].Stays.Length > 1 ? 1 : 0;
        }
        TestContext.Current.SendDiagnosticMessage("{0} of {1} best paths move", moved, instance.Rows.Length);
    }

    /// <summary>Prices near those of real plans: a pound of a class about 1 (that is how masses and money are scaled), dearer as the season goes on, standing and hours a part of it.</summary>
    internal static Prices Drawn(PlanningInstance instance, Spot[] spots, Pcg pcg)
    {
        var prices = new Prices(instance, spots);
        for (int t = 0; t < instance.Weeks; t++)
        {
            for (int k = 0; k < instance.Sorts.Length; k++)
                for (int o = 0; o < instance.SupplyKinds; o++) prices.Supply[k, o, t] = pcg.Between(0.3, 1.2) * (1 + 0.05 * t);
            for (int i = 0; i < instance.Lines.Length; i++) prices.Hour[i, t] = pcg.Between(0, 0.2) * instance.Lines[i].Rate;
            for (int s = 0; s < spots.Length; s++)
            {
                prices.Stand[s, t] = pcg.Between(0, 0.01);
                if (spots[s].Kind == SpotKind.FreeSealed) prices.Out[s, t] = pcg.Between(0, 0.05);
            }
        }
        return prices;
    }
}
