using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Solver.Highs;
using Cloveshed.Web.Promises;
using Cloveshed.Web.Suppose;
using Cloveshed.Web.Tests.Plan;
using Microsoft.Extensions.Logging.Abstractions;

namespace Cloveshed.Web.Tests.Promises;

/// <summary>The room where a plan's model stands: made once, let go when it is not used or when the season is another, stopped and begun anew.</summary>
public sealed class PromiseRoomTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("cloveshed-promise-").FullName;
    private readonly StillClock clock = new(ServedShed.Moment);
    private readonly ShedLedger ledger;
    private readonly PromiseRoom room;
    private double passed;

    public PromiseRoomTests()
    {
        ledger = ShedLedger.Open(LedgerAddress.Parse(Path.Combine(folder, "shed.db")), clock);
        PlanSeason.Import(ledger);
        System.Diagnostics.Stopwatch watch = System.Diagnostics.Stopwatch.StartNew();
        room = new PromiseRoom(ledger, new HighsSolver(), clock, new ShedOptions("", "", "test", () => watch.Elapsed.TotalSeconds + Volatile.Read(ref passed)), NullLoggerFactory.Instance);
        room.StartAsync(TestContext.Current.CancellationToken).Wait(TestContext.Current.CancellationToken);
    }

    public void Dispose()
    {
        room.StopAsync(CancellationToken.None).Wait();
        room.Dispose();
        ledger.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_model_is_made_once_and_the_same_question_is_one_answer()
    {
        PromiseStand stand = await Ready();
        Assert.Same(stand, Of());
        Assert.Equal(StandReason.First, stand.Reason);
        PromiseQuestion question = new([new PromiseLine(new("M30"), 5, null, false)], new(2026, 8, 31), new(2026, 9, 17));
        PromiseAsk ask = room.Ask(stand, question);
        Assert.Same(ask, room.Ask(stand, new PromiseQuestion([new PromiseLine(new("M30"), 5, null, false)], new(2026, 8, 31), new(2026, 9, 17))));
        await ask.Done;
        Assert.Equal(110, ask.Answer!.Cost, 1e-6);
    }

    [Fact]
    public async Task Nobody_asks_for_a_while_and_it_is_let_go()
    {
        PromiseStand stand = await Ready();
        room.LetGoOfIdle();
        Assert.Same(stand, room.Standing);
        clock.Pass(PromiseRoom.IdleAfter + TimeSpan.FromMinutes(1));
        room.LetGoOfIdle();
        Assert.True(stand.Dropped);
        Assert.Null(room.Standing);
        PromiseStand again = await Ready();
        Assert.Equal(StandReason.WasIdle, again.Reason);
        // What is asked of the one that was let go has an end, and no answer.
        PromiseAsk late = room.Ask(stand, new PromiseQuestion([new PromiseLine(new("M30"), 5, null, false)], new(2026, 8, 31), new(2026, 9, 17)));
        await late.Done;
        Assert.Null(late.Answer);
    }

    [Fact]
    public async Task The_season_changes_and_it_is_let_go()
    {
        PromiseStand stand = await Ready();
        Assert.IsType<Appended.Accepted>(ledger.Append([PlanSeason.Origin.RowDropped(ledger.Now().Rows!.Of("orders.csv").First())]));
        room.LetGoOfIdle();
        Assert.True(stand.Dropped);
        Assert.Equal(StandReason.SeasonChanged, (await Ready()).Reason);
    }

    [Fact]
    public async Task What_was_stopped_can_be_begun_anew_and_what_failed_says_why()
    {
        PromiseStand stand = Of();
        stand.Stop();
        while (!stand.Ended)
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        if (stand.Stage == StandStage.Stopped)
        {
            room.Again();
            Assert.NotSame(stand, room.Standing);
        }

        PromiseStand empty = room.Of("other", () => Basis("other") with { Season = Basis("").Season with { Products = [], Orders = [], Yields = [] } });
        while (!empty.Ended)
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        Assert.True(empty.Stage is StandStage.Ready or StandStage.Failed);
        Assert.Equal(empty.Stage == StandStage.Failed, empty.Why.Length > 0);
    }

    [Fact]
    public async Task A_question_that_a_hand_stops_stays_stopped_until_it_is_asked_anew_and_the_model_stands()
    {
        // Stopped while the model is made ready, so that it is not answered before.
        PromiseStand stand = Of();
        PromiseQuestion question = new([new PromiseLine(new("M30"), 5, null, false)], new(2026, 8, 31), new(2026, 9, 17));
        PromiseAsk ask = room.Ask(stand, question);
        stand.StopAsk(question);
        await ask.Done;
        Assert.True(ask.Stopped);
        Assert.Null(ask.Answer);
        Assert.Same(ask, room.Ask(stand, question));
        stand.ForgetStopped(question);
        PromiseAsk anew = room.Ask(stand, question);
        await anew.Done;
        Assert.Equal((StandStage.Ready, 110), (stand.Stage, Math.Round(anew.Answer!.Cost, 6)));
    }

    [Fact]
    public async Task A_question_that_nobody_looks_at_is_given_up_and_whoever_comes_back_is_answered()
    {
        PromiseStand stand = Of();
        PromiseQuestion question = new([new PromiseLine(new("M30"), 5, null, false)], new(2026, 8, 31), new(2026, 9, 17));
        PromiseAsk ask = room.Ask(stand, question);
        Pass(PromiseAsk.PageSeconds + 1);
        await ask.Done;
        Assert.Equal((true, false), (ask.Left, ask.Stopped));
        PromiseAsk back = room.Ask(stand, question);
        Assert.NotSame(ask, back);
        await back.Done;
        Assert.Equal(110, back.Answer!.Cost, 1e-6);
    }

    [Fact]
    public async Task Changes_that_a_hand_stops_or_nobody_looks_at_are_given_up_and_answered_when_they_are_asked_anew()
    {
        // 20 cartons fewer of 70: the ten that were short are short no more, and ten are not made. 50 x 20 - 50 / 30 x 10.
        SeasonChange[] changes = [new SeasonChange.OrderResized(new("last"), "1", 20)];
        PromiseStand stand = Of();
        SupposeAsk ask = room.Suppose(stand, changes);
        stand.StopAsk(changes);
        await ask.Done;
        Assert.Equal((true, null), (ask.Stopped, ask.Answer));
        Assert.Same(ask, room.Suppose(stand, changes));
        stand.ForgetStopped(changes);

        PromiseStand other = room.Of("another", () => Basis("another"));
        SupposeAsk left = room.Suppose(other, changes);
        Pass(PromiseAsk.PageSeconds + 1);
        await left.Done;
        Assert.Equal((true, false), (left.Left, left.Stopped));
        SupposeAsk back = room.Suppose(other, changes);
        Assert.NotSame(left, back);
        await back.Done;
        Assert.Equal(983, back.Answer!.Answer!.Value, 0.5);
        Assert.Equal(983, back.Worth!.Value, 0.5);
    }

    private async Task<PromiseStand> Ready()
    {
        PromiseStand stand = Of();
        while (!stand.Ended)
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        Assert.Equal((StandStage.Ready, ""), (stand.Stage, stand.Why));
        return stand;
    }

    private void Pass(double seconds) => Volatile.Write(ref passed, passed + seconds);

    private PromiseStand Of()
    {
        string key = PromiseReading.StateKey(ledger.Now());
        return room.Of(key, () => Basis(key));
    }

    private StandBasis Basis(string key) => new(
        key, new PlanEntry(Guid.Empty, Guid.Empty, "", default, "", 0, 0, 0, 0, ""), ledger.Now().Season!, Beliefs.Default, RunWishes.None, []);
}
