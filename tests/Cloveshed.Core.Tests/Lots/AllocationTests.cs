using System.Numerics;
using Cloveshed.Core.Lots;
using CsCheck;

namespace Cloveshed.Core.Tests.Lots;

public class AllocationTests
{
    private static readonly Gen<Weighted[]> Takers = Gen.Select(
        Gen.OneOf(Gen.Long[0, 20], Gen.Long[0, 1_000_000], Gen.Long[0, long.MaxValue / 50]).Array[1, 12], Gen.Shuffle(Keys(12)),
        (weights, keys) => weights.Select((weight, i) => new Weighted(keys[i], weight)).ToArray())
        .Where(takers => takers.Any(taker => taker.Weight > 0));

    private static readonly Gen<long> AnyTotal = Gen.OneOf(Gen.Long[-100, 100], Gen.Long[-1_000_000_000_000, 1_000_000_000_000]);

    private static readonly Gen<long> CountedTotal = Gen.Long[-200, 200];

    public static TheoryData<string> Rules => ["largest remainder", "growing"];

    /// <summary>
    /// The apportionment bill of 1792: 120 seats by Hamilton's rule over the census of 1790, and the quotas printed with it.
    /// Source (seen): For All Practical Purposes, 10th edition, chapter 14, table 14.5; populations of the census of 1790 (seen).
    /// </summary>
    [Theory]
    [InlineData("Connecticut", 236_841, 7.860, 8)]
    [InlineData("Delaware", 55_540, 1.843, 2)]
    [InlineData("Georgia", 70_835, 2.351, 2)]
    [InlineData("Kentucky", 68_705, 2.280, 2)]
    [InlineData("Maryland", 278_514, 9.243, 9)]
    [InlineData("Massachusetts", 475_327, 15.774, 16)]
    [InlineData("New Hampshire", 141_822, 4.707, 5)]
    [InlineData("New Jersey", 179_570, 5.959, 6)]
    [InlineData("New York", 331_589, 11.004, 11)]
    [InlineData("North Carolina", 353_523, 11.732, 12)]
    [InlineData("Pennsylvania", 432_879, 14.366, 14)]
    [InlineData("Rhode Island", 68_446, 2.271, 2)]
    [InlineData("South Carolina", 206_236, 6.844, 7)]
    [InlineData("Vermont", 85_533, 2.839, 3)]
    [InlineData("Virginia", 630_560, 20.926, 21)]
    public void The_bill_of_1792(string state, long people, double quota, long seats)
    {
        Assert.Equal(3_615_920, CensusOf1790.Sum(taker => taker.Weight));
        Assert.Contains(new Weighted(state, people), CensusOf1790);
        Assert.Equal(quota, 120.0 * people / 3_615_920, 0.0006);
        Assert.Equal(seats, Allocation.ByLargestRemainder(120, CensusOf1790).Single(got => got.Key == state).Amount);
    }

    /// <summary>
    /// The smallest usual example of the Alabama paradox (widely printed, source of origin not seen): weights 6, 6 and 2 get 4, 4 and
    /// 2 of 10, but 5, 5 and 1 of 11. The growing rule exists because of it.
    /// </summary>
    [Fact]
    public void A_larger_total_can_take_back_by_largest_remainder_and_never_when_growing()
    {
        Weighted[] takers = [new("a", 6), new("b", 6), new("c", 2)];
        Assert.Equal([4, 4, 2], Allocation.ByLargestRemainder(10, takers).Select(got => got.Amount));
        Assert.Equal([5, 5, 1], Allocation.ByLargestRemainder(11, takers).Select(got => got.Amount));
        long[] before = [0, 0, 0];
        for (long total = 1; total <= 140; total++)
        {
            long[] now = [.. Allocation.Growing(total, takers).Select(got => got.Amount)];
            Assert.Equal(1, now.Zip(before, (a, b) => a - b).Sum(change => change is 0 or 1 ? change : 99));
            before = now;
        }

        Assert.Equal([60, 60, 20], before);
    }

    [Theory, MemberData(nameof(Rules))]
    public void Parts_total_exactly_what_was_split(string rule) =>
        Gen.Select(Totals(rule), Takers).Sample((total, takers) =>
            Split(rule, total, takers).Sum(got => got.Amount) == total);

    [Theory, MemberData(nameof(Rules))]
    public void Each_part_is_the_exact_share_rounded_down_or_up(string rule) =>
        Gen.Select(Totals(rule), Takers).Sample((total, takers) =>
        {
            BigInteger whole = takers.Aggregate(BigInteger.Zero, (sum, taker) => sum + taker.Weight);
            return Split(rule, total, takers).Zip(takers).All(pair =>
                BigInteger.Abs(pair.First.Amount * whole - (BigInteger)total * pair.Second.Weight) < whole);
        });

    [Theory, MemberData(nameof(Rules))]
    public void The_order_of_the_list_does_not_matter(string rule) =>
        Gen.Select(Totals(rule), Takers, Gen.Int[0, 1000]).Sample((total, takers, seed) =>
        {
            Weighted[] shuffled = [.. takers.OrderBy(taker => (taker.Key[0] * 7919 + seed * 104_729) % 1009)];
            return Split(rule, total, takers).ToHashSet().SetEquals(Split(rule, total, shuffled));
        });

    [Theory, MemberData(nameof(Rules))]
    public void The_heavier_never_gets_less(string rule) =>
        Gen.Select(Gen.Long[0, 200], Takers).Sample((total, takers) =>
        {
            (Allotted Got, Weighted Taker)[] parts = [.. Split(rule, total, takers).Zip(takers)];
            return parts.All(one => parts.All(other => one.Taker.Weight <= other.Taker.Weight || one.Got.Amount >= other.Got.Amount));
        });

    [Theory, MemberData(nameof(Rules))]
    public void No_weight_gets_nothing_and_a_negative_total_mirrors(string rule) =>
        Gen.Select(Totals(rule), Takers).Sample((total, takers) =>
        {
            IReadOnlyList<Allotted> there = Split(rule, total, takers), back = Split(rule, -total, takers);
            return there.Zip(takers).All(pair => pair.Second.Weight > 0 || pair.First.Amount == 0)
                && there.Zip(back).All(pair => pair.First.Amount == -pair.Second.Amount);
        });

    [Theory, MemberData(nameof(Rules))]
    public void A_split_by_the_weights_of_the_whole_gives_the_weights(string rule) =>
        Gen.Long[0, 40].Array[1, 8].Where(weights => weights.Sum() > 0).Sample(weights =>
        {
            Weighted[] takers = [.. weights.Select((weight, i) => new Weighted(Keys(8)[i], weight))];
            return Split(rule, weights.Sum(), takers).Select(got => got.Amount).SequenceEqual(weights);
        });

    [Fact]
    public void Growing_never_takes_back() =>
        Gen.Select(Gen.Long[0, 200], Takers).Sample((total, takers) =>
            Allocation.Growing(total, takers).Zip(Allocation.Growing(total + 1, takers))
                .Sum(pair => pair.Second.Amount - pair.First.Amount is 0 or 1 ? pair.Second.Amount - pair.First.Amount : 99) == 1);

    /// <summary>Against a twin that tries every way to round: none is nearer to the exact shares in the sum of squares.</summary>
    [Fact]
    public void Largest_remainder_is_the_nearest_rounding() =>
        Gen.Select(Gen.Long[0, 100], Gen.Long[0, 30].Array[1, 7]).Where((_, weights) => weights.Sum() > 0).Sample((total, weights) =>
        {
            Weighted[] takers = [.. weights.Select((weight, i) => new Weighted(Keys(7)[i], weight))];
            long whole = weights.Sum();
            long Miss(IEnumerable<long> amounts) => amounts.Zip(weights, (amount, weight) => amount * whole - total * weight).Sum(miss => miss * miss);
            long best = long.MaxValue;
            for (int ups = 0; ups < 1 << weights.Length; ups++)
            {
                long[] amounts = [.. weights.Select((weight, i) => total * weight / whole + ((ups >> i) & 1))];
                if (amounts.Sum() == total) { best = Math.Min(best, Miss(amounts)); }
            }

            return Miss(Allocation.ByLargestRemainder(total, takers).Select(got => got.Amount)) == best;
        });

    [Fact]
    public void Ties_go_to_the_first_key_by_its_characters()
    {
        Weighted[] takers = [new("b", 1), new("a", 1), new("B", 1)];
        Assert.Equal([0, 0, 1], Allocation.ByLargestRemainder(1, takers).Select(got => got.Amount));
        Assert.Equal([0, 1, 1], Allocation.Growing(2, takers).Select(got => got.Amount));
    }

    [Fact]
    public void What_cannot_be_split_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Allocation.ByLargestRemainder(1, []));
        Assert.Throws<ArgumentException>(() => Allocation.ByLargestRemainder(1, [new("a", 0)]));
        Assert.Throws<ArgumentException>(() => Allocation.ByLargestRemainder(1, [new("a", -1), new("b", 2)]));
        Assert.Throws<ArgumentException>(() => Allocation.Growing(1, [new("a", 1), new("a", 2)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Allocation.Growing(Allocation.GrowingLimit, [new("a", 1), new("b", 2)]));
        Assert.Empty(Allocation.ByLargestRemainder(0, []));
        Assert.Equal([0], Allocation.Growing(0, [new("a", 0)]).Select(got => got.Amount));
    }

    private static readonly Weighted[] CensusOf1790 =
    [
        new("Connecticut", 236_841), new("Delaware", 55_540), new("Georgia", 70_835), new("Kentucky", 68_705), new("Maryland", 278_514),
        new("Massachusetts", 475_327), new("New Hampshire", 141_822), new("New Jersey", 179_570), new("New York", 331_589),
        new("North Carolina", 353_523), new("Pennsylvania", 432_879), new("Rhode Island", 68_446), new("South Carolina", 206_236),
        new("Vermont", 85_533), new("Virginia", 630_560),
    ];

    private static string[] Keys(int count) => [.. Enumerable.Range(0, count).Select(i => ((char)('a' + i)).ToString())];

    private static Gen<long> Totals(string rule) => rule == "growing" ? CountedTotal : AnyTotal;

    private static IReadOnlyList<Allotted> Split(string rule, long total, IReadOnlyList<Weighted> takers) =>
        rule == "growing" ? Allocation.Growing(total, takers) : Allocation.ByLargestRemainder(total, takers);
}
