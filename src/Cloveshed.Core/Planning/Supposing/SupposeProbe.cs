using Cloveshed.Core.Planning.Promises;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>How long to look. Rounds: of new columns, until the gap or until no more of them pay.</summary>
/// <param name="Nearest">What moves is of the nearest plan that keeps to the changes, unless more search finds one worth more by over this share of the season.</param>
internal sealed record SupposeDepth(int Rounds, double Gap, double Nearest);

/// <summary>
/// Changes put to a solved master that stays as it is: they are put to one made of it, which is solved on from where the first stands.
/// </summary>
internal sealed class SupposeProbe(Master standing, LinearBasis basis, SupposedSeason made, ILinearSolver solver, GenerationLimits limits)
{
    private readonly double _money = standing.Instance.MoneyScale;

    /// <summary>Ways of lots that are as they were, found on the way: with them the standing master is valued by what the changed one was.</summary>
    internal IReadOnlyList<PathColumn> Found { get; private set; } = [];

    /// <param name="beforeAnew">The standing master's value over <see cref="Found"/> too, asked for once, where the answer counts on them.</param>
    internal Supposed Answer(IReadOnlyList<SeasonChange> changes, SupposeDepth depth, Func<(double Value, PlanStands Stands)> beforeAnew)
    {
        SupposedSeason then = made;
        foreach (SeasonChange change in changes.Where(SupposedSeason.Takes))
        {
            (SupposedSeason? with, ChangeFault? fault) = then.With(change);
            if (with is null) return new Supposed(null, change, fault);
            then = with;
        }
        then = then with { Season = HeldAir.Of(then.Season, made.Season, made.Beliefs.Climate) };
        PlanStands before = PlanStands.Of(standing);
        double valueBefore = standing.Value;
        using Master master = MasterFork.Of(standing, basis, then, before.Runs.All, solver, out bool[] anew, out KeptRuns kept);
        var put = new ChangePutting(master);
        foreach (SeasonChange change in changes.Where(change => !SupposedSeason.Takes(change)))
            if (put.Put(change) is { } fault) return new Supposed(null, change, fault);
        kept.Count(depth.Gap);
        SolveOn(master, LinearMethod.DualSimplex);
        // Ways of what is changed are looked for until none pays: without them nothing can be said of it.
        if (anew.Contains(true))
            for (int round = 0; round < depth.Rounds + MoreRounds && Settle(master, anew) > 0; round++) SolveOn(master, LinearMethod.WarmSimplex);
        if (NotRun(master, then, changes) is { } refused) return new Supposed(null, refused, ChangeFault.CannotRun);
        double value = master.Value - kept.Gains + put.ValueOfNothing, far = value, bound = double.PositiveInfinity;
        int columns = master.ColumnCount;
        for (int round = 0; ; round++)
        {
            (double here, Prices prices, int added) = ColumnGeneration.Round(master, limits, put.Lines);
            bound = Math.Min(bound, here + put.OnBound(prices));
            if (round >= depth.Rounds || added == 0 || bound - far <= depth.Gap * Math.Abs(far)) break;
            put.Refresh();
            SolveOn(master, LinearMethod.WarmSimplex);
            far = master.Value - kept.Gains + put.ValueOfNothing;
        }
        PlanStands stands = PlanStands.Of(master, then.Parts);
        if (before.Runs.To(stands.Runs).Count > FewMoves)
        {
            kept.Count(OfMoving * depth.Gap);
            // Where there is no time for it, more is told to move than need move.
            master.Solve(LinearMethod.WarmSimplex, LeastMovesSeconds);
            stands = PlanStands.Of(master, then.Parts);
        }
        if (far - value > depth.Nearest * Math.Abs(value))
        {
            value = far;
            Found = [.. Enumerable.Range(columns, master.ColumnCount - columns).Select(k => MasterFork.Back(master, standing, anew, k)).OfType<PathColumn>()];
            (valueBefore, before) = beforeAnew();
        }
        return new Supposed(stands.Since(before, valueBefore * _money, value * _money, bound * _money, put.Asked.Concat(then.Asked).ToHashSet()), null, null);
    }

    /// <summary>From where it stands little is far, and a solve from scratch takes longer than this.</summary>
    private const double WarmSeconds = 10;

    private const double LeastMovesSeconds = 1;

    /// <summary>So many runs that move are soon read, and not worth a second to make them fewer.</summary>
    private const int FewMoves = 8;

    private static void SolveOn(Master master, LinearMethod method) => StandingPlan.SolveOn(master, method, WarmSeconds);

    /// <summary>
    /// What a mass moved costs while it is looked for what moves, of the gap: of plans worth nearly the same that is told in which least moves, and a pound is not moved for a
    /// thousandth of its price. While it is looked for what the season is worth it costs a tenth of that, so that value and bound are as near as the gap.
    /// </summary>
    private const double OfMoving = 10;

    /// <summary>Rounds for the changed lots alone, beyond those asked for.</summary>
    private const int MoreRounds = 3;

    private int Settle(Master master, bool[] anew) => master.AddPaths(Pricing.At(master, master.UsablePrices(), limits, 5).Paths.Where(path => anew[path.Row]));

    private static SeasonChange? NotRun(Master master, SupposedSeason then, IReadOnlyList<SeasonChange> changes)
    {
        PlanningInstance instance = master.Instance;
        foreach (SeasonChange.RunDone done in changes.OfType<SeasonChange.RunDone>())
            for (int k = 0; k < master.ColumnCount; k++)
            {
                if (master.Columns[k] is not { Kind: ColumnKind.PinMissed } c || master.Values[k] <= 1e-6 * instance.Pins[c.A].Mass) continue;
                InstancePin pin = instance.Pins[c.A];
                LotId lot = instance.Lots[pin.Lot].Id;
                if (then.Parts.GetValueOrDefault(lot, lot) == done.Lot && instance.Lines[pin.Line].Id == done.Line && pin.Week == instance.AsOf) return done;
            }
        return null;
    }
}
