using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Yard;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Release;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Tests.Setup;
using Cloveshed.Web.Today;

namespace Cloveshed.Web.Tests.Keep;

/// <summary>What is decided today goes by what was seen of a lot since the plan was made.</summary>
public sealed class SeenPathsTests(DemoShed demo) : IClassFixture<DemoShed>
{
    private Season Season => demo.Shed.Ledger.Now().Season!;

    private PlanAnswer Answer => demo.Shed.Part<PlanShelf>().Of(demo.Shed.Ledger.Now().Adopted!);

    /// <summary>The twin is the planner, which made the paths by tables of its own: clocks at the law's speed must give every state of every path again, open, cold, sealed and opened.</summary>
    [Fact]
    public void Clocks_at_the_laws_own_speed_give_the_planners_states_again()
    {
        Dictionary<PlaceId, Place> places = Season.Places.ToDictionary(place => place.Id);
        SeenClock Law(LotRow row) => new(1, 1, 1, LifeAtStart.Of(Season, places[row.Place], row, KeepingParameters.Default, ClimateDefaults.Default), 0, null);
        PlanAnswer again = SeenPaths.Of(Season, Answer, Law);
        Dictionary<(string, int), PathWeek> before = Answer.Paths.ToDictionary(state => (state.Path, state.Week));
        Assert.Equal(before.Count, again.Paths.Count);
        Assert.Contains(Answer.Paths, state => places[state.Place].Kind == PlaceKind.Sealed);
        Assert.All(again.Paths, state =>
        {
            PathWeek was = before[(state.Path, state.Week)];
            Assert.Equal((was.Lot, was.FromPlace, was.Place), (state.Lot, state.FromPlace, state.Place));
            Assert.Equal(was.LifeUsed, state.LifeUsed, 1e-6);
            Assert.Equal(was.MassRatio, state.MassRatio, 1e-6);
            Assert.Equal(was.FreshShare, state.FreshShare, 1e-6);
            Assert.Equal(was.CrackShare, state.CrackShare, 1e-6);
        });
    }

    /// <summary>A lot that nobody looked at keeps the plan's own states, the others theirs.</summary>
    [Fact]
    public void A_lot_that_rots_is_to_be_run_sooner_and_costs_more_to_put_off()
    {
        PlanBook plan = new(Season, Answer);
        int week = Season.Settings.WeekOf(new NodaTime.LocalDate(2026, 9, 2));
        DecisionList before = DecisionList.Of(plan, week, _ => false);
        RunDecision run = before.Runs.First(one => !one.FromSorted && plan.WorthOf(one.Lot) > 0 && one.Parts.Any(part => part.Loss == Loss.Keeping));
        LotRow row = Season.Lots.First(one => one.Lot == run.Lot);
        Place home = Season.Places.First(place => place.Id == row.Place);
        SeenClock rots = new(1, 1, 8, LifeAtStart.Of(Season, home, row, KeepingParameters.Default, ClimateDefaults.Default) * 2, 1, new NodaTime.LocalDate(2026, 9, 1));
        SeenClock? Clock(LotRow one) => one.Lot == run.Lot ? rots : null;
        PlanBook seen = new(Season, SeenPaths.Of(Season, Answer, Clock));
        Assert.Equal(Answer.Paths.Where(state => state.Lot != run.Lot), seen.Answer.Paths.Where(state => state.Lot != run.Lot));
        DecisionList after = DecisionList.Of(seen, week, _ => false, Clock);
        double Cost(DecisionList list) => list.Runs.Where(one => one.Lot == run.Lot && one.Key == run.Key).Sum(one => one.CostOfWaiting);
        Assert.True(Cost(after) > Cost(before), $"{Cost(after)} and {Cost(before)}");
        ReleasePart[] Parts(PlanBook book) => [.. ReleaseBook.Of(Season, StandingLots.Of(Season), book, week).Parts.Where(part => part.Row.Lot == run.Lot)];
        Assert.All(Parts(seen).Zip(Parts(plan)), pair => Assert.True(pair.First.Row.RunBy <= pair.Second.Row.RunBy));
        Assert.True(Parts(seen).Min(part => part.Row.RunBy) < Parts(plan).Min(part => part.Row.RunBy));
        Assert.True(seen.Keeping.Bars.Single(bar => bar.Lot == run.Lot).LastGood < (plan.Keeping.Bars.Single(bar => bar.Lot == run.Lot).LastGood ?? double.PositiveInfinity));
    }

    /// <summary>From the fact of a look to the pages: one look at a rotten lot, and its place in the order of release is another.</summary>
    [Fact]
    public async Task A_look_moves_a_lot_up_in_the_order_of_release_and_on_the_chart()
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        using Visitor visitor = shed.Visitor();
        LotRow row = shed.Ledger.Now().Season!.Lots.Where(one => one.Harvested < new NodaTime.LocalDate(2026, 8, 15)).OrderBy(one => one.Lot.Text, StringComparer.Ordinal).First();
        async Task<int> PlaceOf() => (await visitor.Get("/keep/release/order?all=yes")).Text.Split("<tbody>")[1].Split("<tr>").Index().First(one => one.Item.Contains($">{row.Lot}<", StringComparison.Ordinal)).Index;
        int before = await PlaceOf();
        FactOrigin origin = new(new DateTimeOffset(2026, 9, 2, 9, 0, 0, TimeSpan.FromHours(-4.5)), "test", "test", "keep");
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([YardBodies.Made(origin, new LookSaid(row.Lot, row.Place, 200, 60, 60, null, "K7", ""), null)]));
        Assert.Equal(1, await PlaceOf());
        Assert.NotEqual(1, before);
        Assert.Contains("1 lot goes by what was seen of it", (await visitor.Get("/keep")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_lots_stand_on_one_axis_when_asked()
    {
        using Visitor visitor = demo.Shed.Visitor();
        int lots = Season.Lots.Select(row => row.Lot).Distinct().Count();
        Assert.True(lots > LotsFound.PageSize);
        static int Names(string page) => page.Split("id=\"places\"")[0].Split("class=\"lot-link\"").Length - 1;
        string first = (await visitor.Get("/keep")).Text, all = (await visitor.Get("/keep?all=yes")).Text;
        Assert.Equal((LotsFound.PageSize, lots), (Names(first), Names(all)));
        string[] pictures = [.. all.Split("class=\"bars\"").Skip(1)];
        Assert.Equal((lots + LotsFound.PageSize - 1) / LotsFound.PageSize, pictures.Length);
        // The same weeks stand above each part.
        string[] axes = [.. pictures.Select(picture => string.Join("|", System.Text.RegularExpressions.Regex.Matches(picture.Split("picture-plot")[1].Split("</svg>")[0], "<text[^>]*y=\"38\"[^>]*>[^<]*</text>").Select(text => text.Value)))];
        Assert.NotEqual("", axes[0]);
        Assert.All(axes, axis => Assert.Equal(axes[0], axis));
    }
}
