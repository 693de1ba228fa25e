using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Ledger;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Suppose;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Promises;

/// <summary>
/// Where a plan's model stands ready to be asked. It is made on the first visit, in the background, and takes about a minute for a season of ninety lots; an answer then
/// takes seconds, and gives way to nobody, for somebody sits before it. There is one model at a time, for it is large, and one question at a time. It is let go when the season or the plan changes, and when nobody has
/// asked for a while. Nothing of it is kept over a restart: what counts is an order that was taken, a fact.
/// </summary>
public sealed partial class PromiseRoom : IHostedService, IDisposable
{
    /// <summary>Of the clock, for making a model ready, at most.</summary>
    public const double MostSeconds = 60;

    /// <summary>More threads gain little and each takes memory; one processor is left to the pages where there are more.</summary>
    private const int MostThreads = 8;

    /// <summary>Nobody has looked for so long: the memory is worth more.</summary>
    public static readonly TimeSpan IdleAfter = TimeSpan.FromMinutes(20);

    private static readonly TimeSpan Look = TimeSpan.FromMinutes(1);

    private readonly Lock one = new();
    private readonly QuietQueue<Action> making, answering;
    private readonly ShedLedger ledger;
    private readonly ILinearSolver solver;
    private readonly TimeProvider clock;
    private readonly Func<double> elapsed;
    private readonly ILogger log;
    private readonly int threads = Math.Clamp(Environment.ProcessorCount - 1, 1, MostThreads);
    private ITimer? timer;
    private PromiseStand? stand;
    private StandReason next = StandReason.First;
    private DateTimeOffset used;
    private bool leaving;

    public PromiseRoom(ShedLedger ledger, ILinearSolver solver, TimeProvider clock, ShedOptions options, ILoggerFactory logs)
    {
        (this.ledger, this.solver, this.clock, elapsed, log) = (ledger, solver, clock, options.Elapsed, logs.CreateLogger("Cloveshed.Web.Promises"));
        (making, answering) = (new("promise model", Do), new("promise answers", Do, waitedFor: true));
    }

    /// <summary>The model of what a page sees; begun if it is another than the last.</summary>
    public PromiseStand Of(string key, Func<StandBasis> make)
    {
        lock (one)
        {
            used = clock.GetUtcNow();
            if (stand is { } there && there.Basis.Key == key)
            {
                return there;
            }

            StandBasis basis = make();
            StandReason reason = stand is null ? next : stand.Basis.Plan.Fact == basis.Plan.Fact ? StandReason.SeasonChanged : StandReason.PlanChanged;
            return Begin(basis, reason);
        }
    }

    /// <summary>The model that stands; null where none does.</summary>
    public PromiseStand? Standing
    {
        get
        {
            lock (one)
            {
                return stand;
            }
        }
    }

    /// <summary>Makes ready anew what was stopped or failed.</summary>
    public void Again()
    {
        lock (one)
        {
            if (stand is { Stage: StandStage.Stopped or StandStage.Failed } ended)
            {
                Begin(ended.Basis, StandReason.First);
            }
        }
    }

    /// <summary>Puts a question, which waits until the model is ready; the same question again is the same answer.</summary>
    /// <param name="seconds">Until whoever asks looks again, at most; without a look it is given up.</param>
    public PromiseAsk Ask(PromiseStand of, PromiseQuestion question, double seconds = PromiseAsk.PageSeconds) => of.Ask(question, seconds, ask => Add(answering, () => of.Answer(ask)));

    /// <summary>Puts changes, likewise.</summary>
    public SupposeAsk Suppose(PromiseStand of, IReadOnlyList<SeasonChange> changes, double seconds = PromiseAsk.PageSeconds) => of.Suppose(changes, seconds, ask => Add(answering, () => of.Answer(ask)));

    /// <summary>Lets go of a model that nobody uses, and of one whose season has changed.</summary>
    public void LetGoOfIdle()
    {
        lock (one)
        {
            if (stand is null)
            {
                return;
            }

            bool idle = clock.GetUtcNow() - used > IdleAfter;
            if (idle || !stand.Basis.Key.StartsWith(PromiseReading.StateKey(ledger.Now()), StringComparison.Ordinal))
            {
                next = idle ? StandReason.WasIdle : StandReason.SeasonChanged;
                LetGo(stand);
                stand = null;
            }
        }
    }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        making.Start();
        answering.Start();
        timer = clock.CreateTimer(_ => Tick(), null, Look, Look);
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        lock (one)
        {
            leaving = true;
            stand?.Drop();
        }

        making.End();
        answering.End();
        return Task.CompletedTask;
    }

    public void Dispose() => timer?.Dispose();

    private PromiseStand Begin(StandBasis basis, StandReason reason)
    {
        if (stand is { } old)
        {
            LetGo(old);
        }

        PromiseStand begun = stand = new PromiseStand(basis, reason, elapsed);
        next = StandReason.First;
        Add(making, () => begun.Prepare(solver, MostSeconds, threads));
        return begun;
    }

    private void LetGo(PromiseStand old)
    {
        old.Drop();
        Add(answering, old.Dispose);
    }

    private void Add(QuietQueue<Action> queue, Action piece)
    {
        if (!leaving)
        {
            queue.Add(piece);
        }
    }

    private void Do(Action piece)
    {
        try
        {
            piece();
        }
#pragma warning disable CA1031 // whatever it is, the page tells it, and the next question has its turn
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            Failed(log, problem);
        }
#pragma warning restore CA1031
    }

    private void Tick()
    {
        try
        {
            LetGoOfIdle();
        }
        catch (Exception problem) when (problem is LedgerFault or ObjectDisposedException)
        {
            LedgerAway(log, problem.Message);
        }
    }

    [LoggerMessage(24, LogLevel.Error, "A promise could not be worked out")]
    private static partial void Failed(ILogger log, Exception problem);

    [LoggerMessage(25, LogLevel.Warning, "The promise room could not look at the ledger: {Fault}")]
    private static partial void LedgerAway(ILogger log, string fault);
}
