using Cloveshed.Check.Rules;
using CsCheck;

namespace Cloveshed.Check.Tests;

/// <summary>Shelf life as a matter of who may serve whom; the referee hands out every unit in every way.</summary>
public class SupplyFlowTests
{
    [Fact]
    public void The_oldest_goes_first_so_that_the_younger_is_left()
    {
        var flow = new SupplyFlow(4);
        flow.Add(0, 3, 5);
        flow.Add(1, 1, 5);
        flow.Take(1, 5);
        flow.Take(3, 5);
        Assert.Null(flow.FirstShort());
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(4, false)]
    public void What_one_week_leaves_the_next_may_take(double next, bool served)
    {
        var flow = new SupplyFlow(4);
        flow.Add(0, 3, 5);
        flow.Take(0, 2);
        flow.Take(1, next);
        Assert.Equal(served, flow.FirstShort() is null);
    }

    [Fact]
    public void What_is_missing_is_named_in_its_week_and_whether_it_came_in_time()
    {
        var late = new SupplyFlow(4);
        late.Add(0, 1, 5);
        late.Take(2, 5);
        Assert.Equal((2, 5, true), late.FirstShort());

        var few = new SupplyFlow(4);
        few.Add(0, 1, 5);
        few.Take(1, 6);
        Assert.Equal((1, 1, false), few.FirstShort());
    }

    [Fact]
    public void It_finds_a_way_if_and_only_if_there_is_one()
    {
        Gen<(int First, int Weeks)[]> supplies = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 2]).Array[0, 5];
        Gen<int[]> takings = Gen.Int[0, 3].Array[0, 5];
        Gen.Select(supplies, takings).Sample(
            (units, weeks) =>
            {
                var flow = new SupplyFlow(4);
                foreach ((int first, int good) in units)
                {
                    flow.Add(first, first + good, 1);
                }

                foreach (int week in weeks)
                {
                    flow.Take(week, 1);
                }

                Assert.Equal(CanServe(units, weeks, 0, 0), flow.FirstShort() is null);
            });
    }

    // Every way of giving the takings, one after the other, a unit that is there in their week.
    private static bool CanServe((int First, int Weeks)[] units, int[] weeks, int next, int used)
    {
        if (next == weeks.Length)
        {
            return true;
        }

        for (int unit = 0; unit < units.Length; unit++)
        {
            bool there = units[unit].First <= weeks[next] && weeks[next] <= units[unit].First + units[unit].Weeks;
            if (there && (used & (1 << unit)) == 0 && CanServe(units, weeks, next + 1, used | (1 << unit)))
            {
                return true;
            }
        }

        return false;
    }
}
