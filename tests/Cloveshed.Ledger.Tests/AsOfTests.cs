using Cloveshed.Core;
using NodaTime;

namespace Cloveshed.Ledger.Tests;

/// <summary>The shed as of a past day: what was so, as known now and as known then. The clock of the tests stands five hours behind UTC.</summary>
public sealed class AsOfTests : IDisposable
{
    private static readonly LocalDate First = new(2030, 7, 1), Second = new(2030, 7, 2), Third = new(2030, 7, 3);

    private readonly Shed shed = Shed.WithSeason();

    public void Dispose() => shed.Dispose();

    private string Units(AsOf when) => shed.Ledger.AsOf(when).Rows!.Find("orders.csv", 1)!.Cells["units"];

    private NewFact Units(string units, DateTimeOffset happened) =>
        (shed.Here with { HappenedAt = happened }).RowChanged(shed.Order(1), new Dictionary<string, string>(shed.Order(1).Cells) { ["units"] = units });

    /// <summary>On the third, somebody says that on the second the order was cut.</summary>
    [Fact]
    public void What_was_learnt_late_counts_as_known_now_and_not_as_known_then()
    {
        shed.Clock.At = shed.Clock.At.AddDays(2);
        shed.Take(Units("25", shed.Here.HappenedAt.AddDays(-1)));
        Assert.Equal("30", Units(new AsOf(First)));
        Assert.Equal(("25", "30"), (Units(new AsOf(Second)), Units(new AsOf(Second, Knowledge.AsKnownThen))));
        Assert.Equal(("25", "25"), (Units(new AsOf(Third)), Units(new AsOf(Third, Knowledge.AsKnownThen))));
    }

    /// <summary>A day ends at midnight by the shed's clock, whatever zone a fact's moment was written in: the last tick of it counts, the next does not.</summary>
    [Fact]
    public void A_days_end_is_midnight_by_the_sheds_clock()
    {
        DateTimeOffset midnight = new(2030, 7, 2, 0, 0, 0, TimeSpan.FromHours(-5));
        shed.Clock.At = midnight.AddHours(6).ToUniversalTime();
        shed.Take(Units("1", midnight.AddTicks(-1)));
        Assert.Equal("1", Units(new AsOf(First)));
        shed.Take(Units("2", midnight));
        Assert.Equal(("1", "2"), (Units(new AsOf(First)), Units(new AsOf(Second))));
        // Half past midnight of the second by a clock further east is half past ten in the evening of the first here.
        shed.Take(Units("3", new DateTimeOffset(2030, 7, 2, 0, 30, 0, TimeSpan.FromHours(-3))));
        Assert.Equal(("3", "3"), (Units(new AsOf(First)), Units(new AsOf(Second))));
        // Half to midnight of the first by a clock further west is half past one in the morning of the second here.
        shed.Take(Units("4", new DateTimeOffset(2030, 7, 1, 23, 30, 0, TimeSpan.FromHours(-7))));
        Assert.Equal(("3", "4"), (Units(new AsOf(First)), Units(new AsOf(Second))));
    }

    [Fact]
    public void Recorded_before_midnight_is_known_that_day()
    {
        DateTimeOffset noon = new(2030, 7, 1, 12, 0, 0, TimeSpan.FromHours(-5));
        shed.Clock.At = new DateTimeOffset(2030, 7, 2, 4, 59, 59, TimeSpan.Zero); // 23:59:59 on the first here
        shed.Take(Units("1", noon));
        shed.Clock.At = shed.Clock.At.AddSeconds(1);
        shed.Take(Units("2", noon));
        Assert.Equal(("2", "1"), (Units(new AsOf(First)), Units(new AsOf(First, Knowledge.AsKnownThen))));
    }

    [Fact]
    public void Before_the_season_there_is_none_and_an_earlier_one_is_as_it_was()
    {
        Assert.Null(shed.Ledger.AsOf(new AsOf(First.PlusDays(-1))).Rows);
        shed.Clock.At = shed.Clock.At.AddDays(2);
        string other = "order,line,customer,product,due,units,price\nz9,1,Tullen Market,M30,2030-07-09,1,20\n";
        Assert.True(SeasonImport.Import(shed.Ledger, SmallSeason.With(("orders.csv", other)), shed.Here).Taken);
        Assert.Equal(["z9"], shed.Ledger.AsOf(new AsOf(Third)).Season!.Orders.Select(order => order.Order.Text));
        ShedState past = shed.Ledger.AsOf(new AsOf(Second));
        Assert.Equal(["o1", "o2"], past.Season!.Orders.Select(order => order.Order.Text));
        Assert.Equal(shed.Ledger.Head(), past.Head);
        // A row of the new season, said to have happened in the time of the old one, belongs to neither then.
        shed.Take((shed.Here with { HappenedAt = shed.Here.HappenedAt.AddDays(-1) }).RowEntered("orders.csv", SmallSeason.Order("late")));
        Assert.Equal(["o1", "o2"], shed.Ledger.AsOf(new AsOf(Second)).Season!.Orders.Select(order => order.Order.Text));
    }

    [Fact]
    public void Holds_plans_and_jobs_are_as_of_the_day_too()
    {
        shed.Take(shed.Here.RunBarred(new LotId("A"), new LineId("pack"), First));
        RunHold hold = shed.Ledger.Now().Holds[0];
        shed.Clock.At = shed.Clock.At.AddDays(1);
        shed.Take(shed.Here.HoldLifted(hold));
        Guid asked = shed.Take(shed.Here.PlanAsked("x", 60, 0, null, "en", 1))[0].Id;
        shed.Clock.At = shed.Clock.At.AddDays(1);
        shed.Take(shed.Here.PlanStopped(asked));
        Assert.Equal(
            [(1, 0, 0), (0, 1, 0), (0, 0, 1)],
            new[] { First, Second, Third }.Select(day => shed.Ledger.AsOf(new AsOf(day))).Select(state => (state.Holds.Count, state.Jobs.Count, state.Ended.Count)));
    }

    [Fact]
    public void A_past_that_is_looked_at_again_is_kept_until_a_fact_comes()
    {
        ShedState once = shed.Ledger.AsOf(new AsOf(First));
        Assert.Same(once, shed.Ledger.AsOf(new AsOf(First)));
        shed.Take(shed.Here.RowDropped(shed.Order(2)));
        Assert.Single(shed.Ledger.AsOf(new AsOf(First)).Rows!.Of("orders.csv"));
    }

    [Fact]
    public void Today_as_known_now_is_now() =>
        Assert.Equal(shed.Ledger.Now().InputDigest, shed.Ledger.AsOf(new AsOf(Third)).InputDigest);
}
