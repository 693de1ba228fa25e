using Cloveshed.Core;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Odd;
using static Cloveshed.Seasons.Tests.Planning.Standing;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// What a standing plan says of a change is what the direct model (every sequence of places and every way out, from scratch) comes to when the season's own
/// files say so.
/// </summary>
public sealed class SupposeTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 40)];

    [Theory, MemberData(nameof(Seeds))]
    public void A_change_is_worth_what_the_changed_season_is(int seed)
    {
        if (Drawn(seed) is not var (season, rooms)) return;
        using StandingPlan plan = Prepared(season, rooms);
        Pcg pcg = new((ulong)seed, 23);
        foreach ((SeasonChange change, Season changed) in Changes(season, pcg)) Holds(plan, rooms, change, SmallSeasons.Instance(season), SmallSeasons.Instance(changed), rooms);
    }

    /// <summary>What was answered of it; null where it could not be.</summary>
    internal static SupposedAnswer? Holds(StandingPlan plan, RoomChoice rooms, SeasonChange change, PlanningInstance now, PlanningInstance then, RoomChoice roomsThen, ChangeFault? mayBe = null)
    {
        double before = FromScratch(now, rooms), after = FromScratch(then, roomsThen), slack = 1e-5 * Math.Max(now.MoneyScale, Math.Abs(before) + Math.Abs(after));
        Supposed supposed = plan.Suppose([change], 30, 1e-9, 0);
        if (supposed.Fault is { } fault && fault == mayBe) return null;
        Assert.True(supposed.Answer is not null, $"{change}: {supposed.Fault}");
        SupposedAnswer told = supposed.Answer;
        Assert.True(Math.Abs(told.ValueBefore - before) <= slack && Math.Abs(told.Value - after) <= slack && told.Bound >= after - slack && told.Bound <= after + 10 * slack,
            $"{change}: {told.ValueBefore}, then {told.Value}, at most {told.Bound}; from scratch {before}, then {after}");
        if (Math.Abs(after - before) > 10 * slack && change is SeasonChange.LineStopped or SeasonChange.PeopleThere) Assert.NotEmpty(told.Runs);
        return told;
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Supposing_leaves_the_plan_as_it_was(int seed)
    {
        if (Drawn(seed) is not var (season, rooms)) return;
        using StandingPlan plan = Prepared(season, rooms);
        double value = plan.Value;
        SeasonChange[] all = [.. Changes(season, new Pcg((ulong)seed, 23)).Select(c => c.Change)];
        plan.Suppose(all, 30, 1e-9);
        Assert.Equal(value, plan.Value, 1e-6 * Math.Max(1, Math.Abs(value)));
        Assert.Equal(value, Assert.IsType<SupposedAnswer>(plan.Suppose([], 3, 1e-9).Answer).Value, 1e-6 * Math.Max(1, Math.Abs(value)));
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Little_moves_and_the_worth_told_first_is_the_worth_told(int seed)
    {
        if (Drawn(seed) is not var (season, rooms)) return;
        using StandingPlan plan = Prepared(season, rooms);
        foreach ((SeasonChange change, _) in Changes(season, new Pcg((ulong)seed, 23)))
        {
            SupposedWorth? first = null;
            SupposedAnswer told = Assert.IsType<SupposedAnswer>(plan.Suppose([change], first: worth => first = worth).Answer), again = Assert.IsType<SupposedAnswer>(plan.Suppose([change]).Answer);
            Assert.Equal(new SupposedWorth(told.ValueBefore, told.Value, told.Bound), first);
            double slack = 1e-6 * Math.Max(1, Math.Abs(told.Value));
            // Ways that were found stay, so what is told may rise, and never above what was told to be the most.
            Assert.InRange(again.Value, told.Value - slack, told.Bound + slack);
            Assert.True(again.ValueBefore >= told.ValueBefore - slack, $"{change}: {told.ValueBefore} before, then {again.ValueBefore}");
        }
        // What is the same as it was moves nothing.
        if (season.Orders.FirstOrDefault(line => season.Orders.All(o => o.Order != line.Order || !o.Whole)) is { } same)
            Assert.Empty(Assert.IsType<SupposedAnswer>(plan.Suppose([new SeasonChange.OrderResized(same.Order, same.Number, same.Units)]).Answer).Runs);
    }

    [Fact]
    public void A_change_that_is_stopped_leaves_the_plan_as_it_was()
    {
        (Season season, RoomChoice rooms) = Enumerable.Range(1, 40).Select(Drawn).First(drawn => drawn?.Item1.Orders.Count > 0)!.Value;
        using StandingPlan plan = Prepared(season, rooms);
        SeasonChange[] changes = [.. Changes(season, new Pcg(1, 23)).Select(c => c.Change), new SeasonChange.LotWeighsLess(season.Lots[0].Lot, 0.5)];
        double value = plan.Value;
        foreach (SeasonChange change in changes)
        {
            int looked = 0;
            while (true)
            {
                int last = looked, now = 0;
                try
                {
                    plan.Suppose([change], 30, 1e-9, 0, stopped: () => now++ >= last);
                    break;
                }
                catch (OperationCanceledException)
                {
                    looked++;
                    Assert.Equal(value, plan.Value, 1e-6 * Math.Max(1, Math.Abs(value)));
                }
            }
            Assert.True(looked > 0, $"{change} was never asked whether to stop");
        }
        Assert.Equal(value, Assert.IsType<SupposedAnswer>(plan.Suppose([], 3, 1e-9).Answer).Value, 1e-6 * Math.Max(1, Math.Abs(value)));
    }

    [Fact]
    public void What_cannot_be_put_is_refused_by_its_reason()
    {
        (Season season, RoomChoice rooms) = Enumerable.Range(1, 40).Select(Drawn).First(drawn => drawn?.Item1.Orders.Any(o => o.Whole) == true)!.Value;
        using StandingPlan plan = Prepared(season, rooms);
        OrderLine whole = season.Orders.First(o => o.Whole);
        (SeasonChange, ChangeFault)[] refused =
        [
            (new SeasonChange.OrderCancelled(new("no such order"), null), ChangeFault.NoSuchOrder),
            (new SeasonChange.OrderResized(whole.Order, whole.Number, 1), ChangeFault.OrderIsWhole),
            (new SeasonChange.OrderMoved(whole.Order, whole.Number, season.Settings.FirstWeek.PlusWeeks(-3)), ChangeFault.NotAhead),
            (new SeasonChange.LineStopped(new("no such line"), season.Settings.AsOf, season.Settings.AsOf), ChangeFault.NoSuchLine),
            (new SeasonChange.LineStopped(season.Lines[0].Id, season.Settings.FirstWeek.PlusWeeks(-1), season.Settings.AsOf), ChangeFault.NotAhead),
        ];
        foreach ((SeasonChange change, ChangeFault fault) in refused) Assert.Equal(new Supposed(null, change, fault), plan.Suppose([change]));
    }

    private static IEnumerable<(SeasonChange Change, Season Season)> Changes(Season season, Pcg pcg)
    {
        int week = pcg.Whole(season.Settings.AsOfWeek, season.Settings.Weeks - 1);
        if (season.Orders.Count > 0)
        {
            OrderLine line = pcg.Pick(season.Orders);
            yield return (new SeasonChange.OrderCancelled(line.Order, null), season with { Orders = [.. season.Orders.Where(o => o.Order != line.Order)] });
            if (season.Orders.All(o => o.Order != line.Order || !o.Whole))
            {
                int units = (int)(line.Units * pcg.Between(0.2, 2.5));
                if (units > 0) yield return (new SeasonChange.OrderResized(line.Order, line.Number, units), With(season, line, line with { Units = units }));
                if (season.Settings.Monday(week) >= line.ShipFrom)
                    yield return (new SeasonChange.OrderMoved(line.Order, line.Number, season.Settings.Monday(week)), With(season, line, line with { Due = season.Settings.Monday(week) }));
            }
        }
        Line stopped = pcg.Pick(season.Lines);
        yield return (new SeasonChange.LineStopped(stopped.Id, season.Settings.Monday(week), season.Settings.Monday(week)), Stopped(season, stopped.Id, week));
    }

    private static Season With(Season season, OrderLine old, OrderLine changed) => season with { Orders = [.. season.Orders.Select(o => ReferenceEquals(o, old) ? changed : o)] };

    private static Season Stopped(Season season, LineId line, int week) => season with
    {
        LineWeeks = [.. season.LineWeeks.Where(w => w.Line != line || w.Week != week), new LineWeek(line, week, 0, 0)],
    };

    internal static (Season, RoomChoice)? Drawn(int seed)
    {
        Pcg pcg = new((ulong)seed, 22);
        Season season = SmallSeasons.Draw((ulong)seed, 8, 6, [PlaceMix.YardOnly, PlaceMix.YardAndCold]);
        if (season.Products.Count == 0 || season.Lines.Count == 0 || season.Lots.Count == 0) return null;
        return (season, SmallSeasons.Rooms(SmallSeasons.Instance(season), pcg));
    }
}
