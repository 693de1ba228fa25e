using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>What room weeks are guessed by: the worth of each way through a room against ways written out one by one, and the choice that promises most against all choices.</summary>
public sealed class RoomGuessTests
{
    private static readonly GenerationLimits Limits = new(1e-7, 1e9, 400, SearchDepth.Exact, () => 0, 1, default);

    public static TheoryData<ulong> Seeds => [.. Enumerable.Range(1, 12).Select(i => (ulong)i)];

    [Theory, MemberData(nameof(Seeds))]
    public void A_way_through_a_room_is_worth_what_the_best_of_all_written_out_is(ulong seed)
    {
        var pcg = new Pcg(seed, 31);
        PlanningInstance instance = Instance(OddSeasons.Make(new OddShape { Weeks = 10 }, [], pcg));
        Spot[] free = Spots.Of(instance, RoomChoice.Free(instance));
        Prices prices = PathTableTests.Drawn(instance, free, pcg);
        RunCharges hours = RunCharges.ForBound(instance);
        var stood = new StandingCharges(instance, free, prices);
        int compared = 0;
        foreach (int place in RoomSearch.Rooms(instance))
        {
            var ways = new RoomWays(instance, place);
            for (int row = 0; row < instance.Rows.Length; row++)
            {
                InstanceRow r = instance.Rows[row];
                if (instance.Places[r.Place].Kind == PlaceKind.Sealed || instance.Places[place].SealedWeek is not null) continue;
                PricedExit[][] exits = [.. Enumerable.Range(0, instance.Weeks).Select(t => Exits.Of(instance, hours, prices, r.Lot, t))];
                int home = Array.FindIndex(free, s => s.Place == r.Place), sealedWeek = pcg.Whole(instance.AsOf, instance.Weeks - 2);
                double[] told = ways.Worth(row, [.. exits.Select(e => ExitHull.Of(r, e))], stood.Of(home), free[home].Stand, sealedWeek);
                for (int opened = sealedWeek + 1; opened < instance.Weeks; opened++)
                {
                    double best = WrittenOut(instance, row, place, new RoomSchedule(sealedWeek, opened), exits, stood.Of(home));
                    double here = told[opened - instance.AsOf];
                    if (double.IsNegativeInfinity(best)) Assert.Equal(best, here);
                    else Assert.Equal(best, here, 2e-4 * Math.Max(1, Math.Abs(best)));
                    compared += double.IsFinite(best) ? 1 : 0;
                }
            }
        }
        // Each of these seeds draws 25 to 63 that can be gone.
        Assert.True(compared >= 20, $"{compared} ways compared");
    }

    /// <summary>Every week to move in and every week and way to leave in, each valued from its own state.</summary>
    private static double WrittenOut(PlanningInstance instance, int row, int place, RoomSchedule weeks, PricedExit[][] exits, double[] stood)
    {
        InstanceRow r = instance.Rows[row];
        InstancePlace room = instance.Places[place];
        Spot[] spots = Spots.Of(instance, RoomSearch.Rooms(instance).Aggregate(RoomChoice.Free(instance), (choice, p) => choice.With(p, p == place ? weeks : new RoomSchedule(instance.Places[p].SealedWeek, null))));
        int home = Array.FindIndex(spots, s => s.Place == r.Place), spot = Array.FindIndex(spots, s => s.Place == place);
        double best = double.NegativeInfinity;
        for (int enter = Math.Max(r.Start, r.FirstMove); enter <= weeks.Sealed; enter++)
        {
            double moved = r.BinsPerMass * (stood[enter] - stood[r.Start] + room.MoveInCost);
            Stay[] stays = [new Stay(home, r.Start), new Stay(spot, enter)];
            double Worth(PricedExit exit)
            {
                PathColumn path = PathStates.Column(instance, spots, row, stays, exit.Exit);
                return path.MassRatio * (exit.PerMass + path.Fresh * exit.PerFresh + path.Crack * exit.PerCrack) - moved - r.BinsPerMass * room.StandCost * (exit.Exit.Week - enter);
            }
            for (int t = weeks.Opened!.Value; t < instance.Weeks && spots[spot].Leave[t]; t++)
            {
                best = Math.Max(best, Worth(new PricedExit(new Exit(ExitKind.Discard, t, -1, 0, -1, -1, -1), 0, 0, 0)));
                foreach (PricedExit exit in exits[t]) best = Math.Max(best, Worth(exit));
                if (!spots[spot].Stand[t]) break;
                if (t == instance.Weeks - 1) best = Math.Max(best, Worth(new PricedExit(new Exit(ExitKind.Stand, instance.Weeks, -1, 0, -1, -1, -1), 0, instance.EndPrice, instance.EndPrice)));
            }
        }
        return best;
    }

    [Theory, MemberData(nameof(Seeds))]
    public void The_choice_proposed_is_the_best_of_all_by_the_least_that_any_lesson_promises(ulong seed)
    {
        var pcg = new Pcg(seed, 32);
        PlanningInstance instance = Instance(OddSeasons.Make(new OddShape { Weeks = 8 }, [], pcg));
        int[] rooms = [.. RoomSearch.Rooms(instance).Take(2)];
        if (rooms.Length == 0) return;
        Spot[] spots = Spots.Of(instance, RoomChoice.Free(instance));
        RoomCut.Weeks[] weeks = [.. rooms.Select(p => new RoomCut.Weeks(p, instance.Places[p].SealedWeek is { } shut ? [shut] : [.. Enumerable.Range(instance.AsOf, 3)], new RoomWays(instance, p)))];
        RoomSchedule[][] all = [.. weeks.Select(w => RoomCut.Compared(instance, w))];
        RoomCut[] cuts = [.. Enumerable.Range(0, 3).Select(_ => RoomCut.Of(instance, weeks, spots, PathTableTests.Drawn(instance, spots, pcg), null, pcg.Between(50, 60), Limits))];
        RoomChoice Choice(params RoomSchedule[] of) => rooms.Index().Aggregate(RoomChoice.Free(instance), (choice, r) => choice.With(r.Item, of[r.Index]));
        double Promise(RoomChoice choice) => cuts.Min(cut => cut.Of(rooms, choice));
        RoomChoice[] choices = rooms.Length == 1 ? [.. all[0].Select(a => Choice(a))] : [.. all[0].SelectMany(a => all[1].Select(b => Choice(a, b)))];
        RoomChoice start = pcg.Pick(choices), tried = choices.MaxBy(Promise)!;
        var guess = new RoomGuess(rooms.Index().ToDictionary(r => r.Item, r => all[r.Index]));
        foreach (RoomCut cut in cuts) guess.Learn(cut, start);
        Assert.Equal(Promise(tried), Promise(guess.Next(start, _ => false, double.NegativeInfinity, null)!), 1e-9);
        // What was tried is not proposed again, and nothing is that promises no more than is had.
        double second = choices.Where(c => !c.Equals(tried)).Max(Promise);
        Assert.Equal(second, Promise(guess.Next(start, c => c.Equals(tried), double.NegativeInfinity, null)!), 1e-9);
        Assert.Null(guess.Next(start, _ => false, Promise(tried) + 1e-9, null));
    }

    [Theory, MemberData(nameof(Seeds))]
    public void A_model_taken_over_under_the_same_charges_is_worth_the_same(ulong seed)
    {
        PlanningInstance instance = Instance(RoomSeasons.Draw(seed));
        using Master master = new RoomSearch(instance, new HighsSolver()).NewMaster(RoomChoice.Free(instance), RunCharges.ForBound(instance), []);
        double value = ColumnGeneration.Run(master, Limits).Value;
        using Master taken = master.Under(RunCharges.ForBound(instance));
        Assert.Equal(LinearStatus.Optimal, taken.Solve(LinearMethod.WarmSimplex, 60));
        Assert.Equal(value, taken.Value, 1e-7 * Math.Max(1, Math.Abs(value)));
    }

    private static PlanningInstance Instance(Season season) => InstanceBuilding.Build(season, LotKnowing.Know(season, Beliefs.Default.Lots), Beliefs.Default);
}
