using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Dock;
using Cloveshed.Web.Tests.Today;
using CsCheck;

namespace Cloveshed.Web.Tests.Dock;

/// <summary>First made, first shipped: what fills an order line.</summary>
public sealed class FillTraceTests
{
    private static readonly OrderId Order = new("O");

    private static readonly Gen<(int Week, int Units)[]> Amounts = Gen.Select(Gen.Int[0, 9], Gen.Int[1, 80]).Array[0, 8];

    [Fact]
    public void A_worked_trace()
    {
        FillTrace trace = FillTrace.Of(HandDay.Season, HandDay.Answer());
        // The stock of M30 (made in the week of 31 August) may ship for two weeks: in week 2 it is too old.
        Assert.Equal([new FillSource("R1", 2, HandDay.L1, 70)], Assert.Single(trace.Of(new OrderId("O1"), "1")).Sources);
        Assert.Equal([[new FillSource("R1", 2, HandDay.L1, 30)], [new FillSource("R2", 4, HandDay.L1, 15)]], trace.Of(new OrderId("O1"), "2").Select(fill => fill.Sources));
        Assert.Equal(40, trace.StockLeft[HandDay.Season.Stock[0]]);
        Assert.Equal(100, trace.OfRun("R1").Sum(pair => pair.Source.Units));
        Assert.Equal(115, trace.OfLot(HandDay.L1).Sum(pair => pair.Source.Units));
    }

    [Fact]
    public void Stock_goes_before_what_is_made_and_orders_before_the_market()
    {
        PlanAnswer answer = Answer([(0, 10)], [(0, 25)]) with { Sales = [new SaleRow(0, HandDay.M30, 20)] };
        FillTrace trace = FillTrace.Of(HandDay.Season, answer);
        // 40 of stock: 25 to the order and 15 to the market, which then takes 5 of the 10 that were made.
        Assert.Equal([new FillSource(null, -1, new LotId("L0"), 25)], Assert.Single(trace.Fills, fill => fill.Fill.Line == "0").Sources);
        Assert.Equal(0, trace.StockLeft[HandDay.Season.Stock[0]]);
    }

    [Fact]
    public void Nothing_is_shipped_twice_before_it_is_made_or_past_its_shelf_life() => Gen.Select(Amounts, Amounts).Sample((made, shipped) =>
    {
        FillTrace trace = FillTrace.Of(HandDay.Season, Answer(made, shipped));
        bool within = trace.Fills.All(fill => fill.Untraced >= 0 && fill.Sources.All(source => source.Units > 0 && source.Made <= fill.Fill.Week && source.Made + 2 >= fill.Fill.Week)
            && fill.Sources.Sum(source => source.Units) <= fill.Fill.Units + 1e-6);
        bool once = trace.Fills.SelectMany(fill => fill.Sources).Where(source => source.Run is not null).GroupBy(source => source.Run)
            .All(run => run.Sum(source => source.Units) <= made[int.Parse(run.Key![1..], System.Globalization.CultureInfo.InvariantCulture)].Units + 1e-6);
        return within && once && trace.Fills.Count == shipped.Length;
    });

    /// <summary>The oldest first is the best that any order of taking can do when the shelf life of all is alike: what a flow could ship is shipped.</summary>
    [Fact]
    public void What_can_be_filled_from_what_there_is_is_filled() => Gen.Select(Amounts, Amounts).Sample((made, shipped) =>
    {
        double traced = FillTrace.Of(HandDay.Season, Answer(made, shipped)).Fills.Sum(fill => fill.Sources.Sum(source => source.Units));
        return Math.Abs(traced - MostThatCanShip([(-1, 40), .. made], shipped)) < 1e-6;
    });

    /// <summary>
    /// Of units that could go out, the most that can: by the max-flow min-cut theorem (L. R. Ford and D. R. Fulkerson, 1956, from memory) the least over all sets of ship weeks
    /// of what the weeks outside the set ask and what was made for those inside, each week's own and of the two weeks before.
    /// </summary>
    private static double MostThatCanShip((int Week, int Units)[] made, (int Week, int Units)[] shipped)
    {
        // Weeks -2 to 11, moved to begin at 0.
        int[] supply = new int[14], demand = new int[14];
        foreach ((int week, int units) in made)
        {
            supply[week + 2] += units;
        }

        foreach ((int week, int units) in shipped)
        {
            demand[week + 2] += units;
        }

        double least = double.MaxValue;
        for (int kept = 0; kept < 1 << 10; kept++)
        {
            // Weeks in the set are limited by their sources, the others by what is asked.
            double cut = 0;
            bool[] used = new bool[14];
            for (int week = 0; week < 10; week++)
            {
                if ((kept >> week & 1) == 0)
                {
                    cut += demand[week + 2];
                    continue;
                }

                for (int source = week; source <= week + 2; source++)
                {
                    used[source] = true;
                }
            }

            for (int source = 0; source < 14; source++)
            {
                cut += used[source] ? supply[source] : 0;
            }

            least = Math.Min(least, cut);
        }

        return least;
    }

    private static PlanAnswer Answer((int Week, int Units)[] made, (int Week, int Units)[] shipped) => HandDay.Answer() with
    {
        Made = [.. made.Select((one, at) => new MadeRow($"R{at}", one.Week, HandDay.M30, HandDay.L1, one.Units, one.Units * 30))],
        Fills = [.. shipped.Select((one, at) => new FillRow(Order, $"{at}", one.Week, HandDay.M30, one.Units))],
        Sales = [],
    };
}
