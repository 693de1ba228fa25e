using Cloveshed.Pictures.Promise;
using CsCheck;

namespace Cloveshed.Pictures.Tests.Promise;

public class PromiseTests
{
    [Fact]
    public void What_is_packed_is_shipped_sold_or_left()
    {
        PromiseFacts facts = PromiseFacts.From(HandSeason.Make(), HandAnswer.Make());
        Assert.All(facts.Rows, row => Assert.True(row.Left > -1e-6, $"{row.Product} ships {-row.Left} more than it packs"));
        Assert.Equal(HandAnswer.Make().Fills.Sum(f => f.Units), facts.Rows.Sum(r => r.Shipped));
        Assert.Equal(HandAnswer.Make().Sales.Sum(f => f.Units), facts.Rows.Sum(r => r.Sold));
    }

    /// <summary>By hand: 100 packed in week 0 and 50 in week 2, good for two weeks more; 30 ship in week 1, 20 sell in week 3.</summary>
    [Fact]
    public void On_hand_is_split_by_who_takes_it()
    {
        var batches = new ProductBatches(2);
        batches.Add(0, 100);
        batches.Add(2, 50);
        batches.Take(1, 30, forOrder: true);
        batches.Take(3, 20, forOrder: false);
        Assert.Equal((30, 0, 70), batches.OnHandAfter(0));
        Assert.Equal((0, 0, 70), batches.OnHandAfter(1));
        // The 70 may still ship in week 2 but not after it; 20 of the newer 50 are sold in week 3.
        Assert.Equal((0, 20, 30), batches.OnHandAfter(2));
        Assert.Equal((0, 0, 30), batches.OnHandAfter(3));
        Assert.Equal((0, 0, 0), batches.OnHandAfter(4));
    }

    /// <summary>season-files: what a run makes can ship from its week until shelf_weeks weeks after it; 0 is that week only.</summary>
    [Theory]
    [InlineData(2, 2, 4)]
    [InlineData(2, 3, 0)]
    [InlineData(0, 0, 4)]
    [InlineData(0, 1, 0)]
    public void The_last_week_of_the_shelf_life_still_ships(int shelf, int week, double taken)
    {
        var batches = new ProductBatches(shelf);
        batches.Add(0, 10);
        batches.Take(week, 4, forOrder: true);
        Assert.Equal(taken, batches.Taken);
    }

    [Fact]
    public void Nothing_is_on_hand_twice() =>
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 50].Array[12], Gen.Int[0, 50].Array[12]).Sample((shelf, made, taken) =>
        {
            var batches = new ProductBatches(shelf);
            for (int w = 0; w < 12; w++)
            {
                batches.Add(w, made[w]);
            }
            for (int w = 0; w < 12; w++)
            {
                batches.Take(w, taken[w], forOrder: w % 2 == 0);
            }
            for (int w = 0; w < 12; w++)
            {
                (double orders, double market, double free) = batches.OnHandAfter(w);
                Assert.True(orders + market + free <= made.Take(w + 1).Skip(Math.Max(0, w + 1 - Math.Max(1, shelf + 1))).Sum() + 1e-9);
                Assert.True(orders >= 0 && market >= 0 && free >= 0);
            }
        });
}
