using Cloveshed.Core.Planning;
using static Cloveshed.Seasons.Tests.Direct.HandMaster;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>The master's other columns and what its rows allow, against the formula written out.</summary>
public sealed class ShedAlgebraTests
{
    private static readonly HandMaster At = new();
    private static readonly MasterRows Rows = At.Rows;
    private static readonly double Unit = 30 / At.Pounds;
    private const int FreeCold = 2, Sealed = 3;

    /// <summary>Dollars for a carton, as the master counts them: for a scaled pound.</summary>
    private static double PerPound(double dollarsPerCarton) => dollarsPerCarton / 30 * At.Pounds / At.Dollars;

    [Fact]
    public void Packing_pays_its_making_and_ships_within_its_shelf_life()
    {
        At.Static(c => c is { Kind: ColumnKind.Pack, A: M30, B: 0, C: 1, D: 2 }).UpTo(double.PositiveInfinity)
            .Is(-PerPound(1.5), (Rows.Supply[M, 0, 1], 1), (Rows.Available[M30, 2], -1));
        At.Static(c => c is { Kind: ColumnKind.Pack, A: L30Organic, B: 1, C: 1, D: 1 }).Is(0, (Rows.Supply[L, 1, 1], 1), (Rows.Available[L30Organic, 1], -1));
        Assert.Equal([1, 2], Weeks(c => c is { Kind: ColumnKind.Pack, A: M30, B: 0, C: 1 }));
        Assert.Equal([1], Weeks(c => c is { Kind: ColumnKind.Pack, A: Cloves, B: 0, C: 1 }));
        Assert.Empty(Weeks(c => c is { Kind: ColumnKind.Pack, A: L30Organic, B: 0 }));
    }

    [Fact]
    public void What_outlasts_the_season_is_carried_on_week_by_week()
    {
        At.Static(c => c is { Kind: ColumnKind.Carry, A: L30, D: 1 }).UpTo(double.PositiveInfinity).Is(0, (Rows.Available[L30, 1], 1), (Rows.Available[L30, 2], -1));
        Assert.Equal([1], Weeks(c => c is { Kind: ColumnKind.Pack, A: L30, B: 0, C: 1 }));
        Assert.Equal([0, 1, 2], Weeks(c => c is { Kind: ColumnKind.Carry, A: L30 }));
        Assert.Empty(Weeks(c => c is { Kind: ColumnKind.Carry, A: M30 }));
    }

    [Fact]
    public void What_keeps_prices_within_limits_costs_more_than_any_order_gains_and_pays_nowhere()
    {
        // The dearest use of a pound of L packed in week 1 is the whole order of L30 in week 2: 25 a carton, and 3 for a carton short.
        At.Static(c => c is { Kind: ColumnKind.Dear, A: L, B: 0, D: 1 }).Is(-PerPound(28) * 1.001, (Rows.Supply[L, 0, 1], -1));
        At.Static(c => c is { Kind: ColumnKind.Empty, A: Yard, D: 1 }).Is(0, (Rows.Stand[Yard, 1], -1), (Rows.Stand[Yard, 2], 1));
    }

    [Fact]
    public void Organic_supply_has_a_row_of_its_own_where_something_organic_is_made_of_it()
    {
        Assert.NotEqual(Rows.Supply[L, 0, 1], Rows.Supply[L, 1, 1]);
        Assert.Equal(Rows.Supply[M, 0, 1], Rows.Supply[M, 1, 1]);
    }

    [Fact]
    public void Stock_ships_until_its_last_week()
    {
        At.Static(c => c is { Kind: ColumnKind.FromStock, A: 0, D: 1 }).Is(0, (Rows.Stock[0], 1), (Rows.Available[M30, 1], -1));
        Assert.Equal([0, 1], Weeks(c => c is { Kind: ColumnKind.FromStock, A: 0 }));
        Assert.Equal(7 * Unit, Rows.Upper[Rows.Stock[0]], 1e-12);
    }

    [Fact]
    public void The_market_takes_whole_units_at_its_price() =>
        At.Static(c => c is { Kind: ColumnKind.Market }).UpTo(9 * Unit).Is(PerPound(12), (Rows.Available[M30, 2], 1));

    [Fact]
    public void A_fill_earns_its_price_spares_the_short_and_pays_for_being_late()
    {
        // Due in week 1, shipped in week 3: two weeks late at 0.75; 2 for a carton short.
        One((batch, columns) => At.Writer.Fill(batch, columns, 0, L30, 3)).UpTo(double.PositiveInfinity)
            .Is(PerPound(20 + 2 - 2 * 0.75), (Rows.OrderLine[0], 1), (Rows.Available[L30, 3], 1));
        Assert.Equal(40 * Unit, Rows.Upper[Rows.OrderLine[0]], 1e-12);
        Assert.Equal([M30, L30, L30Organic], At.Instance.OrderLines[0].Alternatives);
    }

    [Fact]
    public void A_whole_order_takes_all_its_units_in_one_week()
    {
        double gain = 10 * (18 + 2 - 2 * 0.5) + 5 * (25 + 3);
        One((batch, columns) => At.Writer.Whole(batch, columns, 0, [M30, L30], 3)).UpTo(1)
            .Is(gain / At.Dollars - 5 * 0 / At.Dollars, (Rows.WholeOrder[0], 1), (Rows.Available[M30, 3], 10 * Unit), (Rows.Available[L30, 3], 5 * Unit));
        Assert.Equal(1, Rows.Upper[Rows.WholeOrder[0]]);
        Assert.Equal([-1, -1], new[] { Rows.OrderLine[1], Rows.OrderLine[2] });
    }

    [Fact]
    public void Hours_cost_money_and_people()
    {
        At.Static(c => c is { Kind: ColumnKind.Hours, A: Pack, D: 2 }).UpTo(20).Is(-50 / At.Dollars, (Rows.Hour[Pack, 2], -1), (Rows.People[2], 4));
        At.Static(c => c is { Kind: ColumnKind.Overtime, A: Pack, D: 1 }).UpTo(5).Is(-80 / At.Dollars, (Rows.Hour[Pack, 1], -1));
        Assert.Equal(60, Rows.Upper[Rows.People[2]]);
        Assert.Equal([-1, -1, 60.0, -1], Rows.People.Select(r => r < 0 ? -1 : Rows.Upper[r]));
    }

    [Fact]
    public void Standing_costs_by_the_bin_and_is_limited_by_the_place()
    {
        double bin = At.Bins / At.Dollars;
        // 30 a week over 60 bins is half a dollar a bin.
        At.Static(c => c is { Kind: ColumnKind.Standing, A: Cold, D: 1 }).UpTo(60 / At.Bins).Is(-(1 + 0.5) * bin, (Rows.Stand[Cold, 1], 1), (Rows.Stand[Cold, 2], -1));
        At.Static(c => c is { Kind: ColumnKind.Standing, A: Cold, D: 3 }).Is(-(1 + 0.5) * bin, (Rows.Stand[Cold, 3], 1));
        At.Static(c => c is { Kind: ColumnKind.Standing, A: FreeCold, D: 1 }).UpTo(40 / At.Bins).Is(-2 * bin,
            (Rows.Stand[FreeCold, 1], 1), (Rows.Stand[FreeCold, 2], -1), (Rows.Shared[FreeCold, 1], 1), (Rows.Blocked[FreeCold, 1], 1));
        At.Static(c => c is { Kind: ColumnKind.Standing, A: Sealed, D: 1 }).UpTo(40 / At.Bins).Is(-2 * bin,
            (Rows.Stand[Sealed, 1], 1), (Rows.Stand[Sealed, 2], -1), (Rows.Shared[FreeCold, 1], 1));
        Assert.Equal([40 / At.Bins, 40 / At.Bins], new[] { Rows.Upper[Rows.Shared[FreeCold, 1]], Rows.Upper[Rows.Blocked[FreeCold, 1]] });
    }

    [Fact]
    public void A_room_opens_once_in_sum_lets_out_what_it_holds_and_is_no_cold_place_from_then_on()
    {
        double room = 40 / At.Bins;
        At.Static(c => c is { Kind: ColumnKind.Opening, A: Sealed, D: 2 }).UpTo(1).Is(0,
            (Rows.Opening[Sealed, 2], -room), (Rows.OneSchedule[Sealed], 1), (Rows.Blocked[FreeCold, 2], room), (Rows.Blocked[FreeCold, 3], room));
        At.Static(c => c is { Kind: ColumnKind.Opening, A: Sealed, D: 4 }).Is(0, (Rows.Opening[Sealed, 4], -room), (Rows.OneSchedule[Sealed], 1));
        At.Static(c => c is { Kind: ColumnKind.Outflow, A: Sealed, C: 1, D: 2 }).Is(0, (Rows.Opening[Sealed, 1], 1), (Rows.Out[Sealed, 2], -1));
        Assert.Equal([1, 2, 3, 4], Weeks(c => c is { Kind: ColumnKind.Opening, A: Sealed }));
        // Opened in week 1 it is empty at the end of week 2; opened in week 3 it may stand to the end, week 4.
        Assert.Equal([1, 2], Weeks(c => c is { Kind: ColumnKind.Outflow, A: Sealed, C: 1 }));
        Assert.Equal([3, 4], Weeks(c => c is { Kind: ColumnKind.Outflow, A: Sealed, C: 3 }));
        Assert.Equal(1, Rows.Upper[Rows.OneSchedule[Sealed]]);
    }

    [Fact]
    public void Rows_allow_what_there_is()
    {
        Assert.Equal(6000 / At.Pounds, Rows.Upper[Rows.Row[0]], 1e-12);
        Assert.Equal(Rows.Upper[Rows.Row[0]], Rows.Lower[Rows.Row[0]]);
        Assert.Equal(200 / At.Pounds, Rows.Upper[Rows.Seed[0]], 1e-12);
        Assert.Equal(500 / At.Pounds, Rows.Upper[Rows.AsIs[0, 3]], 1e-12);
        Assert.Equal([0.0, 0, 0, 0], new[] { Rows.Upper[Rows.Supply[M, 1, 2]], Rows.Upper[Rows.Available[Cloves, 0]], Rows.Upper[Rows.Hour[Crack, 1]], Rows.Upper[Rows.Stand[Cold, 2]] });
        // No product is made of small bulbs or of the smaller cloves.
        Assert.Equal([-1, -1], new[] { Rows.Supply[0, 0, 1], Rows.Supply[G1, 0, 1] });
        double[,] setUps = new double[3, 4];
        setUps[Pack, 1] = 1.5;
        var decided = new HandMaster(decided: new DecidedRuns(setUps, []));
        Assert.Equal(-1.5, decided.Rows.Upper[decided.Rows.Hour[Pack, 1]]);
    }

    private static int[] Weeks(Func<MasterColumn, bool> which)
    {
        var columns = new List<MasterColumn>();
        At.All(new ColumnBatch(), columns);
        return [.. columns.Where(which).Select(c => c.D)];
    }
}
