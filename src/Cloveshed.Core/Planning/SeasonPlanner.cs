using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>What the planner is at.</summary>
public enum PlanStage { Begun, AllRoomWeeks, RoomWeeksFound, RoomWeeksImproved, GivenRoomWeeks, RunsDecided }

/// <summary>Where a plan stands while it is being made: the best value and the bound so far, in the season's currency (null: none yet).</summary>
public sealed record PlanProgress(PlanStage Stage, double Seconds, double? Value, double? Bound);

/// <summary>How a plan is to be made. Elapsed is the caller's clock in seconds; what ends in AtMost stops repeatably, for tests. A clock that stands still needs PolishWindowsAtMost, or PolishNodesAtMost of 0: windows go on as long as they gain.</summary>
/// <param name="Gap">Stop when the gap to the bound over all room weeks is at most this share.</param>
/// <param name="Rooms">Room weeks to hold; null: find them.</param>
/// <param name="Wishes">Runs that a person has pinned or barred; the bound is then of the season with them.</param>
public sealed record PlanRequest(
    Season Season, Beliefs Beliefs, double Seconds, double Gap, int Seed, int Threads, SearchDepth Depth, Func<double> Elapsed,
    string Version, string InputDigest, IReadOnlyList<string> Warnings, int RoundsAtMost = 400, int RoomTrialsAtMost = 1000, int PolishNodesAtMost = int.MaxValue, int PolishWindowsAtMost = 100000, RoomChoice? Rooms = null,
    RunWishes? Wishes = null, Action<PlanProgress>? Progress = null, CancellationToken Cancel = default);

/// <summary>
/// Plans a season: a bound over all room weeks from the free master, good room weeks, the best paths with those weeks held, runs
/// and whole orders decided, rows written and valued. Always feasible: what can't be done is short at its price.
/// </summary>
public sealed class SeasonPlanner(ILinearSolver solver)
{
    /// <summary>Seconds from which on the bound over all room weeks is sharpened further than looking for room weeks needs.</summary>
    private const double Long = 120;

    public PlanAnswer Plan(PlanRequest request)
    {
        Season season = request.Season;
        LotsKnown known = LotKnowing.Know(season, request.Beliefs.Lots);
        PlanningInstance instance = InstanceBuilding.Build(season, known, request.Beliefs, request.Wishes);
        double started = request.Elapsed();
        double Elapsed() => request.Elapsed() - started;
        double total = request.Seconds;
        void Report(PlanStage stage, double? value, double? bound) => request.Progress?.Invoke(new PlanProgress(stage, Elapsed(), value * instance.MoneyScale, bound * instance.MoneyScale));

        var limits = new GenerationLimits(1e-4, total * 0.4, request.RoundsAtMost, request.Depth, Elapsed, request.Threads, request.Cancel);
        var search = new RoomSearch(instance, solver);
        double bound;
        RoomChoice choice = request.Rooms ?? RoomChoice.Free(instance);
        RoomTrial? best = null;
        Findings freely;
        Prices center;
        Spot[] spots;
        Master? tried = null;
        using (Master master = search.NewMaster(RoomChoice.Free(instance), RunCharges.ForBound(instance), []))
        {
            GenerationResult root = ColumnGeneration.RunNearly(master, limits with { Gap = master.IsLarge && total < Long ? 1e-3 : Math.Min(4e-4, request.Gap / 4) }, double.NegativeInfinity, null, (_, v, b) => Report(PlanStage.AllRoomWeeks, v, b));
            (bound, center, spots, freely) = (root.Bound, root.Center, master.SpotsHere, Findings.Of(master));
            if (request.Rooms is null && RoomSearch.Rooms(instance).Length > 0)
            {
                (best, tried) = search.Guess(master, root, limits with { Gap = 1.5e-3, Until = total * 0.6 }, request.RoomTrialsAtMost,
                    (t, first) => Report(first ? PlanStage.RoomWeeksFound : PlanStage.RoomWeeksImproved, t.Value, bound));
                if (!master.IsLarge)
                    best = search.Improve(best, limits with { Gap = 1e-3, Until = total * 0.72, RoundsAtMost = Math.Min(request.RoundsAtMost, 8) }, request.RoomTrialsAtMost, t => Report(PlanStage.RoomWeeksImproved, t.Value, bound));
                (choice, center, spots) = (best.Choice, best.Center, best.Found.Spots);
            }
        }

        if (tried is not null && !tried.Choice.Equals(choice))
        {
            tried.Dispose();
            tried = null;
        }
        using Master held = tried ?? search.NewMaster(choice, RunCharges.ForBound(instance), [best?.Found ?? freely]);
        center = PriceMoving.To(instance, spots, held.SpotsHere, center);
        GenerationResult final = ColumnGeneration.Run(held, limits with { Until = Math.Max(total * 0.8, Elapsed() + total * 0.08) }, double.NegativeInfinity, (_, v, b) => Report(PlanStage.GivenRoomWeeks, v, bound), center, settled: tried is not null && best!.Settled);
        // The trial of these room weeks had a bound of its own.
        if (best is not null) final = final with { Bound = Math.Min(final.Bound, best.Bound) };
        using Master decided = new RunRounding(instance, solver, limits with { Until = Math.Max(total * 0.95, Elapsed() + total * 0.1) }).Round(held);
        Report(PlanStage.RunsDecided, new AnswerBuilding(decided).ValueOf(season) / instance.MoneyScale, bound);
        IdlePlaces.Shut(decided, season, limits with { Until = total });
        AnswerBuilding rounded = WholeUnits.Settle(decided, season);
        double left = Math.Max(2, total - Elapsed());
        using Master? polished = request.PolishNodesAtMost == 0 || request.Cancel.IsCancellationRequested ? null : new Polish(instance, solver).Run(choice, [Findings.Of(held), Findings.Of(decided)], rounded, new PolishLimits(left, request.PolishNodesAtMost, request.PolishWindowsAtMost, request.Seed, request.Threads, Elapsed, request.Cancel));
        if (polished is not null && new AnswerBuilding(polished) is var exact && Settled(exact) > Settled(rounded) && !exact.BreaksALeastRun())
            return Answer(request, instance, known, exact, polished, held, final, bound, Elapsed());
        return Answer(request, instance, known, rounded, decided, held, final, bound, Elapsed());
        double Settled(AnswerBuilding plan) => plan.ValueOf(season) - plan.Missed() * instance.MoneyScale;
    }

    /// <summary>A bound under the value by no more than the solver's tolerance is the value; by more it is a fault, and stays to be seen.</summary>
    private static double AtLeast(double bound, double value) => bound < value && bound > value - 1e-6 * Math.Max(1, Math.Abs(value)) ? value : bound;

    private static PlanAnswer Answer(PlanRequest request, PlanningInstance instance, LotsKnown known, AnswerBuilding building, Master decided, Master held, GenerationResult final, double bound, double seconds)
    {
        var reasons = new RunReasons(building, instance, decided, final.Prices);
        List<FillRow> fills = building.FillRows();
        PlanAnswer rows = building.Rows(reasons.Of, Shorts.Of(instance, fills, final.Prices), Worths.Of(instance, held, final.Prices));
        PlanValue value = Valuation.Of(request.Season, rows);
        // The bounds count missed pins; the value does not. With what this plan misses added they hold for every plan that misses no more.
        double missed = building.Missed();
        double boundMoney = AtLeast((bound + missed) * instance.MoneyScale, value.Value);
        double givenMoney = AtLeast((Math.Min(final.Bound, bound) + missed) * instance.MoneyScale, value.Value);
        double gap = (boundMoney - value.Value) / Math.Max(1, Math.Abs(value.Value));
        var ordered = request.Season.Orders.GroupBy(o => o.Product).ToDictionary(g => g.Key, g => g.Sum(o => (double)o.Units));
        var filled = rows.Fills.GroupBy(f => request.Season.Orders.First(o => o.Order == f.Order && o.Number == f.Line).Product).ToDictionary(g => g.Key, g => g.Sum(f => (double)f.Units));
        var summary = new PlanSummary(value.Value, boundMoney, gap, (boundMoney - value.Value) / Math.Max(1, value.Revenue),
            (givenMoney - value.Value) / Math.Max(1, Math.Abs(value.Value)), seconds,
            request.Cancel.IsCancellationRequested ? PlanStatus.Cancelled : gap <= request.Gap ? PlanStatus.GapReached : PlanStatus.TimeReached,
            value.Revenue, value.Revenues, value.Costs,
            ordered.Where(o => o.Value > 0).ToDictionary(o => o.Key.Text, o => filled.GetValueOrDefault(o.Key) / o.Value),
            Sensitivity.Of(request.Season, request.Beliefs, known, instance, held, final.Prices), request.Warnings, request.Version, request.InputDigest,
            new Dictionary<string, double>
            {
                ["rows"] = held.RowCount, ["columns"] = held.ColumnCount, ["lot_rows"] = instance.Rows.Length, ["order_lines"] = instance.OrderLines.Length,
                ["value_of_linear_model"] = final.Value * instance.MoneyScale, ["bound_given_rooms"] = givenMoney,
            })
        {
            Sizes = [.. known.Lots.Values.Select(lot => SureOf(lot, request.Season))],
            SizeTotals = SizeTotals.Of(request.Season, known, Packed(request.Season, rows.Made)),
        };
        return rows with { Summary = summary };
    }

    /// <summary>What is packed of bulbs, by lot and by the class that it is packed from.</summary>
    private static List<LotMass> Packed(Season season, IReadOnlyList<MadeRow> made)
    {
        var classOf = season.Sizes.Index().ToDictionary(size => size.Item.Id.Text, size => size.Index);
        var from = season.Products.Where(p => p.Form == ProductForm.Bulb).ToDictionary(p => p.Id, p => classOf[p.From]);
        return [.. made.Where(row => from.ContainsKey(row.Product)).Select(row => new LotMass(row.Lot, from[row.Product], row.Mass))];
    }

    private static LotSizes SureOf(LotKnowledge lot, Season season) => new(
        lot.Lot, lot.HowKnown, lot.MeanG, lot.MeanBand.Low, lot.MeanBand.High,
        [.. season.Sizes.Select((size, c) => new SizeShare(size.Id, lot.ClassShares[c], lot.ClassBands[c].Low, lot.ClassBands[c].High))]);
}
