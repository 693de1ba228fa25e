using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning.Promises;

/// <summary>How a plan is made ready to be asked. Elapsed is the caller's clock in seconds; RoundsAtMost stops repeatably, for tests.</summary>
public sealed record StandingRequest(
    Season Season, Beliefs Beliefs, RunWishes Wishes, IReadOnlyList<RoomRow> Rooms, double Seconds, SearchDepth Depth, int Threads, Func<double> Elapsed,
    int RoundsAtMost = 60, double GapWanted = 2e-4, CancellationToken Cancel = default);

/// <summary>
/// A plan's linear model with its room weeks held, kept solved, so that a question is answered from where it stands: a new order is put into it,
/// solved on from the last basis, read, and taken out again. The plan itself is not touched. Set-ups, least runs and whole units are as the linear
/// model has them, so costs are marginal ones. One question at a time.
/// </summary>
public sealed class StandingPlan : IDisposable
{
    private readonly Master _master;
    private readonly SupposedSeason _made;
    private readonly ILinearSolver _solver;
    private readonly SearchDepth _depth;
    private readonly int _threads;
    private readonly Lock _one = new();
    private readonly int[] _rows;
    private readonly AskedColumns _asked;
    private LinearBasis _stands;
    private StandingBound? _bound;
    private NearStand? _near;

    private StandingPlan(Master master, int[] rows, SearchDepth depth, int threads, LinearBasis stands, double gap, SupposedSeason made, ILinearSolver solver)
    {
        (_master, _rows, _depth, _threads, _stands, Gap, _made, _solver) = (master, rows, depth, threads, stands, gap, made, solver);
        Season = master.Instance.Season;
        _asked = new AskedColumns(master, rows);
    }

    /// <summary>Lines that one question may have: so many rows are kept free for them.</summary>
    public const int LinesAtMost = 40;

    public Season Season { get; }

    /// <summary>How far the model is from its own bound, as a share of its value: costs are that sure.</summary>
    public double Gap { get; }

    /// <summary>The linear model's value in the season's currency.</summary>
    public double Value => _master.Value * _master.Instance.MoneyScale;

    /// <summary>
    /// What one unit more of each product adds to what the season loses, in each week from the as-of week on, by the worths of the model as it stands. No unit costs less; the
    /// next may cost more, and a week in which nobody wants the product says nothing of whether it can be had.
    /// </summary>
    public IReadOnlyList<UnitPrice> NextUnits()
    {
        lock (_one)
        {
            PlanningInstance instance = _master.Instance;
            Prices now = _master.UsablePrices();
            return
            [
                .. from q in Enumerable.Range(0, instance.Products.Length) from t in Enumerable.Range(instance.AsOf, instance.Weeks - instance.AsOf)
                   where double.IsFinite(now.Available[q, t])
                   select new UnitPrice(instance.Products[q].Id, t, now.Available[q, t] * instance.Products[q].Net * instance.MoneyScale),
            ];
        }
    }

    /// <summary>Builds and solves the model. Throws when the season cannot be solved even once, or when cancelled.</summary>
    public static StandingPlan Prepare(StandingRequest request, ILinearSolver solver)
    {
        LotsKnown known = LotKnowing.Know(request.Season, request.Beliefs.Lots);
        PlanningInstance instance = InstanceBuilding.Build(request.Season, known, request.Beliefs, request.Wishes);
        double started = request.Elapsed();
        double Elapsed() => request.Elapsed() - started;
        var limits = new GenerationLimits(request.GapWanted, request.Seconds, request.RoundsAtMost, request.Depth, Elapsed, request.Threads, request.Cancel);
        Master master = new RoomSearch(instance, solver).NewMaster(RoomChoice.Of(instance, request.Rooms), RunCharges.ForBound(instance), []);
        try
        {
            GenerationResult result = ColumnGeneration.Run(master, limits);
            request.Cancel.ThrowIfCancellationRequested();
            int[] rows = master.AddRows([.. Enumerable.Repeat(new LinearRow(double.NegativeInfinity, double.PositiveInfinity, []), LinesAtMost)]);
            master.AddPacks(PackArcs.All(instance));
            // Columns came in after the last solve; and a basis to go on from is a simplex one.
            LinearStatus status = master.Solve(LinearMethod.WarmSimplex, 600);
            if (status != LinearStatus.Optimal || master.Program.Basis() is not { } basis) throw new InvalidOperationException($"The season's linear program ended as {status}.");
            return new StandingPlan(master, rows, request.Depth, request.Threads, basis, result.Gap,
                new SupposedSeason(request.Season, known, request.Beliefs, request.Wishes, request.Rooms), solver);
        }
        catch
        {
            master.Dispose();
            throw;
        }
    }

    /// <summary>Answers a question; null where a line's product is not in the season. Throws where it has no line or too many.</summary>
    /// <param name="rounds">Rounds of new paths, to make the cost truer; each takes the time of one pricing and one solve.</param>
    /// <param name="stopped">Looked at between solves: where it says so, OperationCanceledException is thrown and the model stands as before.</param>
    public PromiseAnswer? Ask(PromiseQuestion question, int rounds = 1, Func<bool>? stopped = null)
    {
        ArgumentOutOfRangeException.ThrowIfZero(question.Lines.Count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(question.Lines.Count, LinesAtMost);
        lock (_one)
        {
            if (question.Lines.Any(line => Season.Products.All(p => p.Id != line.Product))) return null;
            var probe = new PromiseProbe(_master, Limits(), question, _rows, _asked, _stands, _master.UsablePrices(), stopped ?? (() => false));
            try
            {
                probe.Run(rounds);
            }
            finally
            {
                probe.Close();
                StandAgain();
            }
            return probe.Told(_master.Value, new OutcomeOfOrders(_master));
        }
    }

    /// <summary>
    /// What would come of changes, all of them together; nothing is changed. What moves and who gets less is of the nearest plan that keeps to them, unless more
    /// search finds one that is worth more by over <paramref name="nearest"/> of the season. Rounds: of new columns, until the gap asked for or no more of them pay.
    /// </summary>
    /// <param name="first">Told the worth as soon as it is known; what moves is then still looked for.</param>
    /// <param name="stopped">Looked at between solves: where it says so, OperationCanceledException is thrown and the model stands as before.</param>
    public Supposed Suppose(IReadOnlyList<SeasonChange> changes, int rounds = 3, double gap = UsualGap, double nearest = 3e-4, Action<SupposedWorth>? first = null, Func<bool>? stopped = null)
    {
        lock (_one)
        {
            var probe = new SupposeProbe(_master, _stands, Bounded(), Counted, _made, _solver, Limits(), new SupposeDepth(rounds, gap, nearest), new SupposeWaits(first ?? (_ => { }), stopped ?? (() => false)));
            return probe.Answer(changes, () =>
            {
                if (_master.AddPaths(probe.Found) > 0) StandAgain();
                return (_master.Value, PlanStands.Of(_master));
            });
        }
    }

    private const double UsualGap = 1e-4;

    /// <summary>Found once for where the model stands.</summary>
    private NearStand Counted(double loss) => _near is { } near && near.IsOf(_master, loss) ? near : _near = NearPlan.Stand(_master, _stands, loss);

    /// <summary>A bound of the season as it is; any prices give one, so it holds wherever the model stands.</summary>
    private StandingBound Bounded()
    {
        if (_bound is not null) return _bound;
        Prices now = _master.UsablePrices();
        return _bound = new StandingBound(Pricing.At(_master, now, Limits(), 1).Bound, now);
    }

    /// <summary>As it stood, and solved on from there. Columns found on the way stay: what stands and what was asked are then valued by the same ones.</summary>
    private void StandAgain()
    {
        _master.Program.Restore(_stands);
        Must(_master.Solve(LinearMethod.WarmSimplex, 600));
        _stands = _master.Program.Basis() ?? _stands;
    }

    /// <summary>A solve from where the model stands that takes longer than one from scratch is given up.</summary>
    internal const double WarmSeconds = 3;

    /// <summary>Solves a model from where it stands; where that is far from what is asked or comes to nothing, from scratch. True where it was from scratch.</summary>
    internal static bool SolveOn(Master master, LinearMethod method, double seconds = WarmSeconds)
    {
        if (method != LinearMethod.InteriorPoint && master.Solve(method, seconds) == LinearStatus.Optimal) return false;
        Must(master.Solve(LinearMethod.InteriorPoint, 600));
        return true;
    }

    private GenerationLimits Limits() => new(2e-4, 1e9, 1, _depth, () => 0, _threads, default);

    private static void Must(LinearStatus status)
    {
        if (status != LinearStatus.Optimal) throw new InvalidOperationException($"The plan's linear program ended as {status} when a question was put to it.");
    }

    public void Dispose() => _master.Dispose();
}
