using Cloveshed.Core.Planning;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Solver.Tests;

public sealed class LinearProgramTests
{
    // max 3x + 5y, x <= 4, 2y <= 12, 3x + 2y <= 18: the worked example of Hillier & Lieberman, Introduction to Operations
    // Research, ch. 3 (from memory): optimum 36 at (2, 6), shadow prices 0, 3/2, 1.
    [Theory]
    [InlineData(LinearMethod.InteriorPoint)]
    [InlineData(LinearMethod.WarmSimplex)]
    [InlineData(LinearMethod.ColdSimplex)]
    public void Textbook_maximum_and_its_shadow_prices(LinearMethod method)
    {
        using ILinearProgram lp = Textbook();
        Assert.Equal(LinearStatus.Optimal, lp.Solve(method, 10));
        Assert.Equal(36, lp.Objective, 9);
        Assert.Equal([2.0, 6.0], lp.ColumnValues.Select(v => Math.Round(v, 9)));
        Assert.Equal([0.0, 1.5, 1.0], lp.RowDuals.Select(v => Math.Round(v, 9) + 0.0));
    }

    [Fact]
    public void Prices_from_the_middle_bound_the_textbook_maximum_closely_and_claim_nothing()
    {
        using ILinearProgram lp = Textbook();
        Assert.Equal(LinearStatus.Near, lp.Solve(LinearMethod.Central, 10));
        double[] price = [.. lp.RowDuals.Select(d => Math.Max(0, d))];
        // Weak duality, with x at most 4 and y at most 6 whatever the prices: no prices bound below the maximum.
        double bound = price[0] * 4 + price[1] * 12 + price[2] * 18 + Math.Max(0, 3 - price[0] - 3 * price[2]) * 4 + Math.Max(0, 5 - 2 * price[1] - 2 * price[2]) * 6;
        Assert.InRange(bound, 36, 36 * 1.05);
        Assert.Equal(LinearStatus.Optimal, lp.Solve(LinearMethod.InteriorPoint, 10));
        Assert.Equal(36, lp.Objective, 9);
    }

    [Fact]
    public void A_column_added_and_one_deleted_keep_the_rest()
    {
        using ILinearProgram lp = Textbook();
        lp.Solve(LinearMethod.WarmSimplex, 10);
        var batch = new ColumnBatch();
        batch.Open(7, 0, 1);
        batch.Entry(2, 1);
        lp.AddColumns(batch);
        Assert.Equal(LinearStatus.Optimal, lp.Solve(LinearMethod.WarmSimplex, 10));
        Assert.Equal(36 + 7 - 1, lp.Objective, 9);
        lp.DeleteColumns([2]);
        Assert.Equal(LinearStatus.Optimal, lp.Solve(LinearMethod.WarmSimplex, 10));
        Assert.Equal(36, lp.Objective, 9);
    }

    [Fact]
    public void Whole_numbers_when_asked()
    {
        using ILinearProgram lp = Textbook();
        lp.SetRowBounds(2, double.NegativeInfinity, 17);
        lp.SetIntegral([0, 1], true);
        MixedResult result = lp.SolveMixed(10, 0, null, null, 1);
        Assert.Equal(LinearStatus.Optimal, result.Status);
        Assert.Equal(33, result.Objective, 6);
        Assert.Equal(33, result.Bound, 6);
    }

    private static ILinearProgram Textbook()
    {
        ILinearProgram lp = new HighsSolver().NewProgram();
        double free = double.NegativeInfinity;
        lp.AddRows([free, free, free], [4, 12, 18]);
        var batch = new ColumnBatch();
        batch.Open(3, 0, double.PositiveInfinity);
        batch.Entry(0, 1);
        batch.Entry(2, 3);
        batch.Open(5, 0, double.PositiveInfinity);
        batch.Entry(1, 2);
        batch.Entry(2, 2);
        lp.AddColumns(batch);
        return lp;
    }
}
