using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Suppose;

namespace Cloveshed.Web.Promises;

/// <summary>What a model is made ready from: a plan's room weeks, and the season as it reads now.</summary>
/// <param name="Key">Names all of it.</param>
public sealed record StandBasis(string Key, PlanEntry Plan, Season Season, Beliefs Beliefs, RunWishes Wishes, IReadOnlyList<Core.Answers.RoomRow> Rooms);

/// <summary>Where a model is.</summary>
public enum StandStage { Waiting, Preparing, Ready, Stopped, Failed }

/// <summary>Why a model is made ready.</summary>
public enum StandReason { First, SeasonChanged, PlanChanged, WasIdle }

/// <summary>A plan's model on its way to being asked, and what it was asked. Made on one thread of the room, asked on another, read by any.</summary>
public sealed class PromiseStand(StandBasis basis, StandReason reason, Func<double> elapsed) : IDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly TaskCompletionSource made = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly AskShelf<PromiseAsk, PromiseAnswer> asks = new();
    private readonly AskShelf<SupposeAsk, Supposed> supposed = new();
    private readonly double begun = elapsed();
    private volatile StandingPlan? plan;
    private volatile IReadOnlyList<UnitPrice> prices = [];
    private volatile bool dropped;
    private int stage;
    private double end;

    public StandBasis Basis => basis;

    public StandReason Reason => reason;

    public StandStage Stage => (StandStage)Volatile.Read(ref stage);

    /// <summary>There is nothing to wait for: it is ready, or will not be.</summary>
    public bool Ended => Stage is not (StandStage.Waiting or StandStage.Preparing);

    /// <summary>Whether a page that asked has to wait still: for the model, or, once that is ready, for the answer.</summary>
    public bool Keeps<TAnswer>(StandAsk<TAnswer>? ask)
        where TAnswer : class => !Ended || (Stage == StandStage.Ready && ask is { Ended: false });

    /// <summary>Since it was asked for, until it was ready or ended.</summary>
    public double Seconds => (Ended ? Volatile.Read(ref end) : elapsed()) - begun;

    /// <summary>What failed; empty otherwise.</summary>
    public string Why { get; private set; } = "";

    /// <summary>How far the model is from its own bound, as a share of its value.</summary>
    public double Gap { get; private set; }

    /// <summary>The next unit of each product and week, at least; empty until it is ready.</summary>
    public IReadOnlyList<UnitPrice> Prices => prices;

    /// <summary>Nobody holds it any more.</summary>
    public bool Dropped => dropped;

    /// <summary>Ends the making when the planner next looks up.</summary>
    public void Stop() => stop.Cancel();

    /// <summary>The answer to a question, or the one that is on its way; begin is called once for a new one.</summary>
    /// <param name="seconds">Until whoever asks looks again, at most.</param>
    internal PromiseAsk Ask(PromiseQuestion question, double seconds, Action<PromiseAsk> begin) => asks.OneFor(new PromiseAsk(question, elapsed), seconds, begin);

    /// <summary>A hand stops the work on a question.</summary>
    internal void StopAsk(PromiseQuestion question) => asks.Stop(PromiseAsk.KeyOf(question));

    /// <summary>What a hand has stopped is forgotten, so that it can be asked anew.</summary>
    internal void ForgetStopped(PromiseQuestion question) => asks.ForgetStopped(PromiseAsk.KeyOf(question));

    /// <summary>What would come of changes, or the answer that is on its way; begin is called once for new ones.</summary>
    internal SupposeAsk Suppose(IReadOnlyList<SeasonChange> changes, double seconds, Action<SupposeAsk> begin) => supposed.OneFor(new SupposeAsk(changes, elapsed), seconds, begin);

    /// <summary>A hand stops the work on changes.</summary>
    internal void StopAsk(IReadOnlyList<SeasonChange> changes) => supposed.Stop(SupposeAsk.KeyOf(changes));

    /// <summary>Likewise forgotten.</summary>
    internal void ForgetStopped(IReadOnlyList<SeasonChange> changes) => supposed.ForgetStopped(SupposeAsk.KeyOf(changes));

    /// <summary>Waits until the making has ended, and answers.</summary>
    internal void Answer(SupposeAsk ask) => Answer(ask, ready => ask.Answered(ready.Suppose(ask.Changes, first: ask.Known, stopped: () => ask.GivenUp || dropped)));

    /// <summary>Waits until the making has ended, and answers.</summary>
    internal void Answer(PromiseAsk ask) => Answer(ask, ready =>
    {
        ask.Answered(ready.Ask(ask.Question, stopped: () => ask.GivenUp || dropped));
        prices = ready.NextUnits();
    });

    private void Answer<TAnswer>(StandAsk<TAnswer> ask, Action<StandingPlan> with)
        where TAnswer : class
    {
        made.Task.Wait();
        if (plan is not { } ready || dropped)
        {
            ask.NotAnswered(Why);
            return;
        }

        if (ask.GivenUp)
        {
            ask.GaveUp();
            return;
        }

        try
        {
            with(ready);
        }
        catch (OperationCanceledException)
        {
            ask.GaveUp();
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            ask.NotAnswered(problem.Message.ReplaceLineEndings(" "));
            throw;
        }
    }

    internal void Prepare(ILinearSolver solver, double seconds, int threads)
    {
        try
        {
            Make(solver, seconds, threads);
        }
        finally
        {
            made.SetResult();
        }
    }

    private void Make(ILinearSolver solver, double seconds, int threads)
    {
        if (dropped)
        {
            return;
        }

        Volatile.Write(ref stage, (int)StandStage.Preparing);
        try
        {
            StandingPlan solved = StandingPlan.Prepare(new StandingRequest(basis.Season, basis.Beliefs, basis.Wishes, basis.Rooms, seconds, SearchDepth.Fine, threads, elapsed, Cancel: stop.Token), solver);
            plan = solved;
            (Gap, prices) = (solved.Gap, solved.NextUnits());
            Became(StandStage.Ready);
        }
        catch (OperationCanceledException)
        {
            Became(StandStage.Stopped);
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            Why = problem.Message.ReplaceLineEndings(" ");
            Became(StandStage.Failed);
            throw;
        }
    }

    /// <summary>Let go of: whoever still holds it gets no more answers of it.</summary>
    internal void Drop()
    {
        dropped = true;
        stop.Cancel();
    }

    /// <summary>On the thread that asks only, where nothing else uses the model once it is made.</summary>
    public void Dispose()
    {
        made.Task.Wait();
        plan?.Dispose();
        plan = null;
    }

    private void Became(StandStage now)
    {
        Volatile.Write(ref end, elapsed());
        Volatile.Write(ref stage, (int)now);
    }
}
