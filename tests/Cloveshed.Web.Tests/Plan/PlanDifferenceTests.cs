using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Plan;
using Cloveshed.Web.Plan.Compare;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Plan.Since;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>What two plans do otherwise, and what a plan does about holds: pure functions over answers changed by hand.</summary>
public sealed class PlanDifferenceTests
{
    /// <summary>Planned once for all: what is changed is changed in a copy.</summary>
    private static readonly Lazy<Task<(PlanSight Sight, ShedState State)>> Once = new(Plan);

    private static Task<(PlanSight Sight, ShedState State)> Planned() => Once.Value;

    private static async Task<(PlanSight Sight, ShedState State)> Plan()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        ShedState state = shed.Ledger.Now();
        return (new PlanSight(plan, state.Season!, PlanDocument.Read(shed.Ledger.Document(plan.Document)!)), state);
    }

    private static PlanSight With(PlanSight sight, Func<PlanAnswer, PlanAnswer> change) => new(sight.Entry, sight.Season, change(sight.Answer));

    [Fact]
    public async Task A_plan_does_nothing_otherwise_than_itself()
    {
        (PlanSight sight, _) = await Planned();
        PlanDifference none = PlanDifference.Of(sight, sight);
        Assert.Empty(none.Runs);
        Assert.Empty(none.Orders);
        Assert.Empty(none.Fills);
        Assert.Empty(none.Rooms);
        Assert.All(none.Money, kind => Assert.Equal(0, kind.Difference));
        Assert.Equal(PlanSeason.Worth, none.Money.Sum(kind => kind.After), 0.01);
    }

    [Fact]
    public async Task A_run_moved_a_week_is_gone_from_one_and_new_in_the_other_and_turned_round_it_is_the_other_way()
    {
        (PlanSight before, _) = await Planned();
        PlanSight after = With(before, answer => answer with { Runs = [.. answer.Runs.Select(run => run.Lot.Text == "A" ? run with { Week = 1 } : run)] });
        IReadOnlyList<RunChange> there = RunChange.Between(before, after), back = RunChange.Between(after, before);
        Assert.Equal([(new(2026, 8, 31), 1000, 0), (new(2026, 9, 7), 0, 1000)], there.Select(run => (run.Week, Math.Round(run.Before), Math.Round(run.After))));
        Assert.Equal(there.Select(run => (run.Week, run.After, run.Before)), back.Select(run => (run.Week, run.Before, run.After)));
    }

    [Fact]
    public async Task A_run_moved_is_told_as_a_move_with_its_weeks_and_what_has_no_match_is_none()
    {
        (PlanSight before, _) = await Planned();
        // A goes two weeks later; of B 400 of its 1,000 lb go one week later and 100 are not run at all.
        PlanSight after = With(before, answer => answer with
        {
            Runs = [.. answer.Runs.SelectMany(run => run.Lot.Text == "A" ? [run with { Week = 2 }] : new[] { run with { MassIn = 500 }, run with { Run = "R9", Week = 1, MassIn = 400 } })],
        });
        IReadOnlyList<RunMove> moves = PlanDifference.Of(before, after).Moves;
        Assert.Equal([("A", 1000, 2), ("B", 400, 1)], moves.Select(move => (move.Lot.Text, Math.Round(move.Mass), move.WeeksLater)));
        Assert.Equal([-2, -1], PlanDifference.Of(after, before).Moves.Select(move => move.WeeksLater));
    }

    [Fact]
    public async Task Sizes_are_filled_by_pounds_of_what_is_ordered_of_them()
    {
        (PlanSight before, _) = await Planned();
        // 70 cartons of 30 lb are ordered, 60 of them filled.
        Assert.Equal([new SizeFill("M", 2100, 1800, 2100, 1800)], PlanDifference.Of(before, before).Sizes);
    }

    [Fact]
    public async Task Units_that_an_order_loses_are_lost_in_its_line_and_in_its_product()
    {
        (PlanSight before, _) = await Planned();
        FillRow fill = before.Answer.Fills.First(row => row.Order.Text == "first");
        PlanSight after = With(before, answer => answer with { Fills = [.. answer.Fills.Select(row => row == fill ? row with { Units = row.Units - 4 } : row)] });
        PlanDifference found = PlanDifference.Of(before, after);
        OrderChange order = Assert.Single(found.Orders);
        Assert.Equal(("first", -4), (order.Line.Order.Text, order.OnTime));
        FillChange product = Assert.Single(found.Fills);
        Assert.Equal((70, 60, 56), (product.Ordered, product.Before, product.After));
    }

    [Fact]
    public async Task Plans_in_other_units_are_not_compared()
    {
        (PlanSight one, _) = await Planned();
        PlanSight other = new(one.Entry, one.Season with { Settings = one.Season.Settings with { MassUnit = MassUnit.Kilogram } }, one.Answer);
        Assert.True(PlanDifference.Comparable(one, one));
        Assert.False(PlanDifference.Comparable(one, other));
    }

    /// <summary>The plan runs 1,000 lb of A in the first week and none later. 453.59237 kg are 1,000 lb (NIST SP 811, 2008, appendix B.8).</summary>
    [Theory]
    [InlineData(true, 0, 900.0, MassUnit.Pound, HoldVerdict.Kept)]
    [InlineData(true, 0, null, MassUnit.Pound, HoldVerdict.Kept)]
    [InlineData(true, 0, 453.59237, MassUnit.Kilogram, HoldVerdict.Kept)]
    [InlineData(true, 0, 454.0, MassUnit.Kilogram, HoldVerdict.Less)]
    [InlineData(true, 0, 1200.0, MassUnit.Pound, HoldVerdict.Less)]
    [InlineData(true, 1, 900.0, MassUnit.Pound, HoldVerdict.Missed)]
    [InlineData(false, 0, null, MassUnit.Pound, HoldVerdict.Missed)]
    [InlineData(false, 1, null, MassUnit.Pound, HoldVerdict.Kept)]
    [InlineData(true, 7, 900.0, MassUnit.Pound, HoldVerdict.Outside)]
    public async Task A_hold_is_kept_missed_or_kept_in_part(bool pinned, int week, double? mass, MassUnit unit, HoldVerdict verdict)
    {
        (PlanSight sight, _) = await Planned();
        RunHold hold = new(Guid.CreateVersion7(), pinned, new("A"), new("pack"), new NodaTime.LocalDate(2026, 8, 31).PlusWeeks(week), mass, unit);
        Assert.Equal(verdict, Assert.Single(HoldKept.All([hold], sight.Season.Settings, sight.Runs, new HashSet<Guid>())).Verdict);
        if (verdict == HoldVerdict.Missed)
        {
            Assert.Equal(HoldVerdict.NotYet, Assert.Single(HoldKept.All([hold], sight.Season.Settings, sight.Runs, new HashSet<Guid> { hold.Fact })).Verdict);
        }
    }

    [Fact]
    public void Holds_become_wishes_in_the_seasons_weeks_and_unit_and_those_of_other_weeks_none()
    {
        SeasonSettings season = new("", new(2026, 8, 31), 3, MassUnit.Pound, "USD", new(2026, 8, 31), 0, null);
        RunHold At(bool pinned, int week, double? mass) => new(Guid.CreateVersion7(), pinned, new("A"), new("pack"), season.Monday(week), mass, MassUnit.Kilogram);
        Core.Planning.RunWishes wishes = HoldWishes.Of([At(true, 2, 453.59237), At(true, 3, 1), At(false, 0, null), At(false, -1, null), At(true, 0, null)], season);
        Assert.Equal([(2, 1000.0), (0, null)], wishes.Pinned.Select(pin => (pin.Week, pin.Mass is { } mass ? Math.Round(mass, 6) : (double?)null)));
        Assert.Equal(0, Assert.Single(wishes.Barred).Week);
    }
}
