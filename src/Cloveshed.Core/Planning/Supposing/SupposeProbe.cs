using Cloveshed.Core.Planning.Promises;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>Who waits: told the value as soon as it is known, before it is looked for what moves; asked between solves whether to stop, which throws OperationCanceledException.</summary>
internal sealed record SupposeWaits(Action<SupposedWorth> First, Func<bool> Stopped);

/// <summary>
/// Changes put to a solved master. Those that are other limits of what it has are put to it as it stands, and it is put back; others to one made of it (<see cref="MasterFork"/>), which is
/// solved on from where the first stands.
/// </summary>
/// <param name="standing">At its basis.</param>
/// <param name="counted">Where it stands once what moves is counted.</param>
internal sealed class SupposeProbe(Master standing, LinearBasis basis, StandingBound bounded, Func<double, NearStand> counted, SupposedSeason made, ILinearSolver solver, GenerationLimits limits, SupposeDepth depth, SupposeWaits waits)
{
    private readonly double _money = standing.Instance.MoneyScale;
    private readonly double _valueBefore = standing.Value;
    private readonly PlanStands _before = PlanStands.Of(standing);

    /// <summary>Ways of lots that are as they were, found on the way: with them the standing master is valued by what the changed one was.</summary>
    internal IReadOnlyList<PathColumn> Found { get; private set; } = [];

    /// <param name="beforeAnew">The standing master's value over <see cref="Found"/> too, asked for once, where the answer counts on them.</param>
    internal Supposed Answer(IReadOnlyList<SeasonChange> changes, Func<(double Value, PlanStands Stands)> beforeAnew)
    {
        SupposedSeason then = made;
        foreach (SeasonChange change in changes.Where(SupposedSeason.Takes))
        {
            (SupposedSeason? with, ChangeFault? fault) = then.With(change);
            if (with is null) return new Supposed(null, change, fault);
            then = with;
        }
        (Outcome? told, Supposed? refused) = ReferenceEquals(then, made) ? AsItStands(changes) : OnFork(then, changes);
        if (told is null) return refused!;
        (SupposedWorth worth, PlanStands before) = (told.Worth, _before);
        if (Found.Count > 0)
        {
            (double value, before) = beforeAnew();
            worth = worth with { Before = value };
        }
        return new Supposed(told.Stands.Since(before, Worth(worth), told.Asked), null, null);
    }

    /// <summary>What came of it; its worth in scaled money.</summary>
    private sealed record Outcome(PlanStands Stands, SupposedWorth Worth, IReadOnlySet<string> Asked);

    private (Outcome?, Supposed?) AsItStands(IReadOnlyList<SeasonChange> changes)
    {
        NearStand moving = counted(Loss);
        Dictionary<int, double> taken = NearPlan.Taken(standing);
        MasterStand stand = standing.Stand();
        var put = new ChangePutting(standing);
        NearPlan? near = null;
        try
        {
            if (Put(put, changes) is { } fault) return (null, fault);
            int columns = standing.ColumnCount;
            SolveOn(standing, LinearMethod.DualSimplex);
            // Any prices give a bound, and those of the plan as it stands are near the best where little changes: their bound is known but for what the changes do to it.
            (SupposedWorth worth, PlanStands stands) = Valued(standing, put, made, [], bounded.Bound + put.OnBound(bounded.Prices));
            waits.First(Worth(worth));
            if (!Moves(stands)) return (new Outcome(stands, worth, put.Asked), null);
            if (Found.Count == 0)
            {
                // From where the plan counts what moves, all prices are in order and only what was changed is not.
                standing.BackTo(stand, basis, columns);
                near = new NearPlan(standing, taken, Loss);
                standing.Program.Restore(moving.With(columns));
                stands = Nearest(standing, made, LinearMethod.DualSimplex) ?? stands;
            }
            else if (standing.Program.Basis() is { } here)
            {
                double[] values = standing.Values;
                near = new NearPlan(standing, taken, Loss);
                standing.Program.Restore(near.Split(here, values));
                stands = Nearest(standing, made, LinearMethod.WarmSimplex) ?? stands;
            }
            return (new Outcome(stands, worth, put.Asked), null);
        }
        finally
        {
            near?.Undo();
            put.Undo();
            standing.BackTo(stand, basis);
        }
    }

    private (Outcome?, Supposed?) OnFork(SupposedSeason then, IReadOnlyList<SeasonChange> changes)
    {
        then = then with { Season = HeldAir.Of(then.Season, made.Season, made.Beliefs.Climate) };
        using Master master = MasterFork.Of(standing, basis, then, solver, out bool[] anew, out Dictionary<int, double> taken);
        var put = new ChangePutting(master);
        if (Put(put, changes) is { } fault) return (null, fault);
        // Neither what is had nor prices are in order once lots are otherwise: from there the primal simplex takes a fraction of the dual's time.
        SolveOn(master, LinearMethod.WarmSimplex);
        // Ways of what is changed are looked for until none pays: without them nothing can be said of it.
        if (anew.Contains(true))
            for (int round = 0; round < depth.Rounds + MoreRounds && Settle(master, anew) > 0; round++) SolveOn(master, LinearMethod.WarmSimplex);
        if (NotRun(master, then, changes) is { } refused) return (null, new Supposed(null, refused, ChangeFault.CannotRun));
        (SupposedWorth worth, PlanStands stands) = Valued(master, put, then, anew, double.PositiveInfinity);
        waits.First(Worth(worth));
        if (Moves(stands) && master.Program.Basis() is { } here)
        {
            double[] values = master.Values;
            var near = new NearPlan(master, taken, Loss);
            master.Program.Restore(near.Split(here, values));
            stands = Nearest(master, then, LinearMethod.WarmSimplex) ?? stands;
        }
        return (new Outcome(stands, worth, put.Asked.Concat(then.Asked).ToHashSet()), null);
    }

    private static Supposed? Put(ChangePutting put, IReadOnlyList<SeasonChange> changes)
    {
        foreach (SeasonChange change in changes.Where(change => !SupposedSeason.Takes(change)))
            if (put.Put(change) is { } fault) return new Supposed(null, change, fault);
        return null;
    }

    /// <param name="anew">[row] Whether ways of a row were looked for anew.</param>
    /// <param name="known">A bound that is known already.</param>
    private (SupposedWorth, PlanStands) Valued(Master master, ChangePutting put, SupposedSeason then, bool[] anew, double known)
    {
        PlanStands stands = PlanStands.Of(master, then.Parts);
        int columns = master.ColumnCount;
        (double value, double bound, bool far) = new ChangedValue(bounded, depth, limits, () => SolveOn(master, LinearMethod.WarmSimplex)).Of(master, put, known);
        if (far)
        {
            stands = PlanStands.Of(master, then.Parts);
            Found = [.. Enumerable.Range(columns, master.ColumnCount - columns).Select(k => MasterFork.Back(master, standing, anew, k)).OfType<PathColumn>()];
        }
        return (new SupposedWorth(_valueBefore, value, bound), stands);
    }

    /// <summary>The plan with the changes in which least moves, of those worth nearly the same; null where there is no time for it: more is then told to move than need move.</summary>
    private PlanStands? Nearest(Master master, SupposedSeason then, LinearMethod method)
    {
        Look();
        return master.Solve(method, SupposedAnswer.NearestSeconds) == LinearStatus.Optimal ? PlanStands.Of(master, then.Parts) : null;
    }

    private bool Moves(PlanStands stands) => _before.Runs.To(stands.Runs).Count > FewMoves;

    private double Loss => OfMoving * depth.Gap;

    /// <summary>From where it stands little is far, and a solve from scratch takes longer than this.</summary>
    private const double WarmSeconds = 10;

    /// <summary>So many runs that move are soon read, and not worth the time to make them fewer.</summary>
    private const int FewMoves = 8;

    /// <summary>Rounds for the changed lots alone, beyond those asked for.</summary>
    private const int MoreRounds = 3;

    /// <summary>What a mass moved costs while it is looked for what moves, of the gap: a pound is not moved for a thousandth of its price.</summary>
    private const double OfMoving = 10;

    private void SolveOn(Master master, LinearMethod method)
    {
        Look();
        StandingPlan.SolveOn(master, method, WarmSeconds);
    }

    private void Look()
    {
        if (waits.Stopped()) throw new OperationCanceledException();
    }

    private int Settle(Master master, bool[] anew) => master.AddPaths(Pricing.At(master, master.UsablePrices(), limits, 5).Paths.Where(path => anew[path.Row]));

    private SupposedWorth Worth(SupposedWorth scaled) => new(scaled.Before * _money, scaled.Value * _money, Math.Max(scaled.Bound, scaled.Value) * _money);

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
