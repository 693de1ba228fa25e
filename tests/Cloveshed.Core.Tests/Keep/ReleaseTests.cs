using Cloveshed.Core.Keep.Release;
using Cloveshed.Core.Quantities;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Keep;

/// <summary>What comes out next, and from where.</summary>
public class ReleaseTests
{
    private static readonly Currency Usd = Currency.Usd;
    private static readonly LocalDate Monday = new(2026, 9, 7);

    private static ReleaseLot Lot(string name, int runByDay, int? week, params decimal[] worth) =>
        new(new LotId(name), Monday.PlusDays(runByDay), week, [.. worth.Select(w => Money.From(w, Usd))]);

    [Fact]
    public void First_to_expire_comes_first_and_differing_has_a_price()
    {
        // The plan runs B, which lasts, before A, which does not: A loses 300 by waiting, B 50 less by going early.
        ReleaseAnswer answer = ReleaseOrder.Of([Lot("B", 100, 0, 1000, 950), Lot("A", 3, 1, 1200, 900), Lot("C", 50, null, 5, 4)], Monday, Usd);
        Assert.Equal(["A", "C", "B"], answer.Rows.Select(r => r.Lot.Text));
        Assert.Equal((0, 300m, true, true), (answer.Rows[0].FirstToExpireWeek!.Value, answer.Rows[0].CostOfDiffering.Amount, answer.Rows[0].Late, answer.Rows[0].Differs));
        Assert.Equal((1, -50m, false), (answer.Rows[2].FirstToExpireWeek!.Value, answer.Rows[2].CostOfDiffering.Amount, answer.Rows[2].Late));
        Assert.Equal((false, 0m), (answer.Rows[1].Differs, answer.Rows[1].CostOfDiffering.Amount));
        Assert.Equal(250m, answer.CostOfDiffering.Amount);
    }

    [Fact]
    public void A_plan_in_the_order_of_run_by_days_costs_nothing() =>
        Gen.Int[0, 300].Array[1, 20].Sample(days =>
        {
            int[] sorted = [.. days.Order()];
            ReleaseLot[] lots = [.. sorted.Select((day, i) => Lot($"L{i:00}", day, i, [.. Enumerable.Range(0, sorted.Length).Select(w => 1000m - w * day)]))];
            ReleaseAnswer answer = ReleaseOrder.Of(lots, Monday, Usd);
            Assert.Equal(0, answer.CostOfDiffering.Amount);
            Assert.DoesNotContain(answer.Rows, r => r.Differs);
        });

    private static readonly Gen<int[]> Needs = Gen.Int[0, 9].Array[0, 24];

    private static StackedBin[] Bins(int[] needs) => [.. needs.Select((need, i) => new StackedBin(new BinId($"b{i:00}"), need))];

    private static Lane[] Empty(int lanes, int positions) => [.. Enumerable.Range(0, lanes).Select(k => new Lane($"lane {k}", positions, []))];

    [Fact]
    public void Bins_known_together_are_stacked_so_that_none_is_dug_out() =>
        Needs.Sample(needs =>
        {
            StackAnswer answer = Stacks.Arranged(Empty(4, 6), Bins(needs));
            Assert.Empty(answer.Digs);
            Assert.Empty(answer.NotPlaced);
            Assert.Equal(needs.Length, answer.Lanes.Sum(lane => lane.Bins.Count));
        });

    [Fact]
    public void Placing_with_thought_digs_much_less_over_many_days()
    {
        var chance = new Chance(9);
        int thought = 0, filled = 0;
        for (int day = 0; day < 200; day++)
        {
            StackedBin[] bins = Bins([.. Enumerable.Range(0, 24).Select(_ => (int)(10 * chance.Uniform()))]);
            thought += Stacks.AsTheyCome(Empty(4, 6), bins).Digs.Count;
            filled += Stacks.Digs([.. bins.Chunk(6).Select((chunk, k) => new Lane($"lane {k}", 6, chunk))]).Count;
        }

        Assert.True(thought < filled * 0.6, $"{thought} against {filled}");
    }

    [Fact]
    public void Digs_are_the_bins_in_front_of_one_needed_sooner()
    {
        Lane lane = new("A", 4, Bins([1, 3, 2, 1]));
        // b03 is at the mouth and needed first; then b00 at the back behind b01 and b02; then b02; then b01.
        Assert.Equal(["b02>b00", "b01>b00"], Stacks.Digs([lane]).Select(d => $"{d.Moved}>{d.ToReach}"));
        StackAnswer over = Stacks.Arranged(Empty(1, 2), Bins([1, 2, 3]));
        Assert.Equal(["b00"], over.NotPlaced.Select(b => b.Bin.Text));
    }
}
