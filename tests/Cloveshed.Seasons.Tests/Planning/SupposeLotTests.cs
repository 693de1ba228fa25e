using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Odd;
using static Cloveshed.Seasons.Tests.Planning.Standing;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// What a standing plan says of lots that are not as believed, of runs that were made, of a room opened in another week and of an order that comes in is what the direct model of the
/// season so changed comes to. The changed seasons are written here, by the meaning of their columns, and what is known of sizes is left as it was.
/// </summary>
public sealed class SupposeLotTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 24)];

    [Theory, MemberData(nameof(Seeds))]
    public void A_lot_dug_later_is_what_the_season_with_it_dug_later_is(int seed) => Of(seed, (season, pcg) =>
    {
        LotRow[] ahead = [.. season.Lots.Where(row => row.Harvested >= season.Settings.AsOf && row.Net > 0 && season.Settings.StartWeekOf(row) < season.Settings.Weeks)];
        if (ahead.Length == 0) return null;
        (LotId lot, int weeks) = (pcg.Pick(ahead).Lot, pcg.Whole(1, 3));
        LotRow Later(LotRow row) => row.Lot == lot && row.Harvested >= season.Settings.AsOf ? row with { Harvested = row.Harvested.PlusWeeks(weeks), Ready = row.Ready?.PlusWeeks(weeks) } : row;
        return new Case(new SeasonChange.LotDugLater(lot, weeks), season with { Lots = [.. season.Lots.Select(Later)] });
    });

    [Theory, MemberData(nameof(Seeds))]
    public void A_lot_that_weighs_less_is_what_the_season_with_less_of_it_is(int seed) => Of(seed, (season, pcg) =>
    {
        if (Standing(season) is not { Length: > 0 } lots) return null;
        (LotId lot, double share) = (pcg.Pick(lots).Lot, pcg.Between(0.05, 0.6));
        LotRow Less(LotRow row) => row.Lot == lot ? row with { Net = row.Net * (1 - share), Bins = row.Harvested < season.Settings.AsOf ? row.Bins : row.Bins * (1 - share) } : row;
        return new Case(new SeasonChange.LotWeighsLess(lot, share), season with { Lots = [.. season.Lots.Select(Less)] });
    });

    [Theory, MemberData(nameof(Seeds))]
    public void A_lot_that_keeps_less_is_what_the_season_with_its_clock_so_much_faster_is(int seed) => Of(seed, (season, pcg) =>
    {
        if (Standing(season) is not { Length: > 0 } lots) return null;
        (LotId lot, double weeks) = (pcg.Pick(lots).Lot, pcg.Between(0.5, 6));
        var clocks = new Dictionary<(LotId, PlaceId), SeenClock>();
        foreach (LotRow row in lots.Where(row => row.Lot == lot))
        {
            double end = LastWeek(season, row, 1);
            if (end - weeks <= 0) return null;
            (double low, double high) = (1, 1e6);
            for (int k = 0; k < 200; k++)
            {
                double middle = Math.Sqrt(low * high);
                if (LastWeek(season, row, middle) > end - weeks) low = middle;
                else high = middle;
            }
            Place place = season.Places.First(p => p.Id == row.Place);
            clocks[(lot, row.Place)] = new SeenClock(1, low, low, low * LifeAtStart.Of(season, place, row, KeepingParameters.Default, ClimateDefaults.Default), 0, null);
        }
        return new Case(new SeasonChange.LotKeepsLess(lot, weeks), season) { Beliefs = Beliefs.Default with { Clocks = clocks } };
    });

    [Theory, MemberData(nameof(Seeds))]
    public void What_was_run_so_far_is_what_the_season_with_it_pinned_is(int seed) => Of(seed, (season, pcg) =>
    {
        if (Runnable(season) is not { Length: > 0 } lots || season.Lines.Count == 0) return null;
        (LotRow lot, Line line) = (pcg.Pick(lots), pcg.Pick(season.Lines));
        double mass = pcg.Between(0.02, 0.5) * lots.Where(row => row.Lot == lot.Lot).Sum(row => row.Net);
        return new Case(new SeasonChange.RunDone(lot.Lot, line.Id, mass, false), season) { Wishes = new RunWishes([new PinnedRun(lot.Lot, line.Id, season.Settings.AsOfWeek, mass)], []), MayBe = ChangeFault.CannotRun };
    });

    [Theory, MemberData(nameof(Seeds))]
    public void What_was_run_and_no_more_is_what_two_lots_are_of_which_one_is_run_and_the_other_not(int seed) => Of(seed, (season, pcg) =>
    {
        if (Runnable(season) is not { Length: > 0 } lots || season.Lines.Count == 0) return null;
        (LotRow lot, Line line) = (pcg.Pick(lots), pcg.Pick(season.Lines));
        LotRow[] here = [.. lots.Where(row => row.Lot == lot.Lot)];
        double share = pcg.Between(0.02, 0.5), mass = share * here.Sum(row => row.Net);
        var run = new LotId("run");
        int week = season.Settings.AsOfWeek;
        LotRow Part(LotRow row, double much) => row with { Net = row.Net * much, Bins = row.Bins * much };
        return new Case(new SeasonChange.RunDone(lot.Lot, line.Id, mass, true),
            season with { Lots = [.. season.Lots.Select(row => here.Contains(row) ? Part(row, 1 - share) : row), .. here.Select(row => Part(row, share) with { Lot = run })] })
        {
            Wishes = new RunWishes([new PinnedRun(run, line.Id, week, mass)], [new BarredRun(lot.Lot, line.Id, week)]), Part = (run, lot.Lot), MayBe = ChangeFault.CannotRun,
        };
    });

    [Theory, MemberData(nameof(Seeds))]
    public void An_order_that_comes_in_is_what_the_season_with_it_is(int seed) => Of(seed, (season, pcg) =>
    {
        if (season.Orders.Count == 0) return null;
        OrderLine like = pcg.Pick(season.Orders);
        OrderLine added = like with { Order = new("comes in"), Number = "1", Whole = false, Firm = true, Units = Math.Max(1, (int)(like.Units * pcg.Between(0.2, 3))), Price = like.Price * (decimal)pcg.Between(0.5, 1.5) };
        return season.Settings.WeekOf(added.Due) < season.Settings.AsOfWeek || season.Settings.WeekOf(added.ShipFrom) >= season.Settings.Weeks ? null
            : new Case(new SeasonChange.OrderAdded(added), season with { Orders = [.. season.Orders, added] });
    });

    [Theory, MemberData(nameof(Seeds))]
    public void A_room_opened_in_another_week_is_what_the_season_with_those_weeks_is(int seed)
    {
        Pcg pcg = new((ulong)seed, 24);
        Season season = SmallSeasons.Draw((ulong)seed, 4, 3, [PlaceMix.All]);
        if (season.Products.Count == 0 || season.Lines.Count == 0 || season.Lots.Count == 0) return;
        PlanningInstance instance = SmallSeasons.Instance(season);
        RoomChoice rooms = SmallSeasons.Rooms(instance, pcg);
        int[] shut = [.. Enumerable.Range(0, instance.Places.Length).Where(p => rooms.OfPlace[p]?.Sealed is { } s && Math.Max(s + 1, instance.AsOf) < instance.Weeks)];
        if (shut.Length == 0) return;
        int room = pcg.Pick(shut);
        int? week = pcg.Chance(0.2) ? null : pcg.Whole(Math.Max(rooms.OfPlace[room]!.Value.Sealed!.Value + 1, instance.AsOf), instance.Weeks - 1);
        using StandingPlan plan = Prepared(season, rooms);
        SupposeTests.Holds(plan, rooms, new SeasonChange.RoomOpened(instance.Places[room].Id, week is { } w ? season.Settings.Monday(w) : null), instance, instance, rooms.With(room, rooms.OfPlace[room]!.Value with { Opened = week }));
    }

    [Fact]
    public void What_cannot_be_put_is_refused_by_its_reason()
    {
        (Season season, RoomChoice rooms) = Enumerable.Range(1, 40).Select(SupposeTests.Drawn).First(drawn => drawn is { Item1: var s } && s.Lots.Any(row => row.Harvested < s.Settings.AsOf) && Runnable(s).Length > 0)!.Value;
        season = season with { LineWeeks = [.. season.LineWeeks.Where(w => w.Line != season.Lines[0].Id), new LineWeek(season.Lines[0].Id, season.Settings.AsOfWeek, 0, 0)] };
        using StandingPlan plan = Prepared(season, rooms);
        (LotRow dug, LotRow here) = (season.Lots.First(row => row.Harvested < season.Settings.AsOf), Runnable(season)[0]);
        OrderLine order = new(new("new"), "1", "", new("no such product"), season.Settings.AsOf, season.Settings.AsOf, 1, 1, true, 0, 0, false, false);
        (SeasonChange, ChangeFault)[] refused =
        [
            (new SeasonChange.LotDugLater(new("no such lot"), 1), ChangeFault.NoSuchLot),
            (new SeasonChange.LotKeepsLess(here.Lot, 1000), ChangeFault.LifeIsOver),
            (new SeasonChange.RunDone(here.Lot, season.Lines[0].Id, season.Lots.Where(row => row.Lot == here.Lot).Sum(row => row.Net) * 1.01, false), ChangeFault.NotSoMuchThere),
            (new SeasonChange.RunDone(here.Lot, new("no such line"), 1, true), ChangeFault.NoSuchLine),
            (new SeasonChange.RunDone(here.Lot, season.Lines[0].Id, here.Net * 0.1, false), ChangeFault.CannotRun),
            (new SeasonChange.RunDone(here.Lot, season.Lines[0].Id, here.Net * 0.1, true), ChangeFault.CannotRun),
            (new SeasonChange.RoomOpened(season.Places[0].Id, season.Settings.AsOf), ChangeFault.NotSealed),
            (new SeasonChange.OrderAdded(order), ChangeFault.NoSuchProduct),
        ];
        foreach ((SeasonChange change, ChangeFault fault) in refused) Assert.Equal(new Supposed(null, change, fault), plan.Suppose([change]));
        if (season.Lots.Where(row => row.Lot == dug.Lot).All(row => row.Harvested < season.Settings.AsOf))
            Assert.Equal(ChangeFault.AlreadyDug, plan.Suppose([new SeasonChange.LotDugLater(dug.Lot, 1)]).Fault);
    }

    /// <summary>A change and the season so changed.</summary>
    private sealed record Case(SeasonChange Change, Season Season)
    {
        internal Beliefs Beliefs { get; init; } = Beliefs.Default;
        internal RunWishes? Wishes { get; init; }

        /// <summary>A lot that is a part of another, and that other.</summary>
        internal (LotId, LotId)? Part { get; init; }

        /// <summary>The one reason for which it may be refused.</summary>
        internal ChangeFault? MayBe { get; init; }
    }

    private static void Of(int seed, Func<Season, Pcg, Case?> draw)
    {
        if (SupposeTests.Drawn(seed) is not var (season, rooms) || draw(season, new Pcg((ulong)seed, 25)) is not { } drawn) return;
        using StandingPlan plan = Prepared(season, rooms);
        LotsKnown known = LotKnowing.Know(season);
        if (drawn.Part is var (part, of)) known = known with { Lots = new Dictionary<LotId, LotKnowledge>(known.Lots) { [part] = known.Lots[of] } };
        SupposeTests.Holds(plan, rooms, drawn.Change, SmallSeasons.Instance(season), InstanceBuilding.Build(Aired(drawn.Season, season), known, drawn.Beliefs, drawn.Wishes), rooms, drawn.MayBe);
    }

    /// <summary>With the air of another season written out: what is not written goes by when lots are dug.</summary>
    private static Season Aired(Season season, Season like) => season with
    {
        PlaceWeeks = [.. from place in like.Places from week in Enumerable.Range(-120, 120 + like.Settings.Weeks)
                         let air = PlaceClimate.Of(like, place, week, false, ClimateDefaults.Default) select new PlaceWeek(place.Id, week, air.TempC, air.Rh)],
    };

    private static LotRow[] Standing(Season season) => [.. season.Lots.Where(row => row.Net > 0 && season.Settings.StartWeekOf(row) < season.Settings.Weeks)];

    private static LotRow[] Runnable(Season season) => [.. Standing(season).Where(row => season.Settings.StartWeekOf(row) == season.Settings.AsOfWeek && !row.Hold)];

    /// <summary>Weeks from the row's start on in which life used reaches 1 with its clocks so much faster, standing where it stands; past the season as in its last week.</summary>
    private static double LastWeek(Season season, LotRow row, double faster)
    {
        Place place = season.Places.First(p => p.Id == row.Place);
        KeepingTraits traits = LotTraits.Of(season, row);
        double life = faster * LifeAtStart.Of(season, place, row, KeepingParameters.Default, ClimateDefaults.Default);
        int start = season.Settings.StartWeekOf(row);
        int? shut = season.SealedRooms.FirstOrDefault(room => room.Place == row.Place) is { } room ? season.Settings.WeekOf(room.Sealed) : null;
        for (int week = 0; week < 2000; week++)
        {
            double used = faster * KeepingLaw.LifeUsed(KeepingParameters.Default, traits, PlaceClimate.Of(season, place, Math.Min(start + week, season.Settings.Weeks - 1), shut is { } w && start + week > w, ClimateDefaults.Default));
            if (life + used >= 1) return week + (1 - life) / used;
            life += used;
        }
        return double.PositiveInfinity;
    }
}
