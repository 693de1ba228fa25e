using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Keep.Stores;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Looks;

/// <summary>A place that a row could stand in from today on.</summary>
/// <param name="Atmosphere">The room's own air, as when it is sealed.</param>
/// <param name="Week">What the first week there takes, at the speeds that are believed.</param>
/// <param name="By">The day by which it must be run if it stands there.</param>
/// <param name="Move">What moving there buys; null where it stands there already, or where no plan says what a pound is worth.</param>
/// <param name="SeedUntil">Until when bulbs for planting stay fit there, by their own rule; null for a lot that is not seed.</param>
public sealed record PlaceOffer(Place Place, bool Here, bool Atmosphere, Climate Air, WeekOfKeeping Week, RunByAnswer By, int DaysGained, MoveAnswer? Move, Money MoveCost, LocalDate? SeedUntil);

/// <summary>The three clocks of a row today: what is believed of them, by when it must be run, and what each place would make of it.</summary>
/// <param name="Condition">Injured bulbs and curing quality that decay begins with.</param>
/// <param name="Now">Shares of its bulbs today.</param>
/// <param name="RunOn">When it would be run either way, for the money of a move: the plan's next run, else the day by which it must be.</param>
public sealed record RowSight(LotRow Row, LotSeen Seen, LotCondition Condition, BulbShares Now, LocalDate Today, LocalDate RunOn, bool RunPlanned, IReadOnlyList<PlaceOffer> Places)
{
    public PlaceOffer Here => Places.First(place => place.Here);
}

/// <summary>From the ledger's looks and readings to what a page says of a row's clocks.</summary>
public static class ClockSight
{
    /// <summary>Weeks of a place's air that are looked at one by one; beyond three years nobody plans, and the last one goes on.</summary>
    private const int Ahead = 156;

    /// <param name="today">A day before harvest, or before the day that the files describe, counts as that day.</param>
    public static RowSight Of(ShedReading shed, LotRow row, LocalDate today)
    {
        Season season = shed.SeasonOpen;
        ClockBook book = shed.Clocks;
        LocalDate day = LocalDate.Max(LocalDate.Max(today, season.Settings.AsOf), row.Harvested);
        LotSeen seen = book.SeenOf(row, day.AtMidnight());
        LotCondition condition = book.Condition(row.Lot);
        KeepingTraits traits = LotTraits.Of(season, row);
        Place home = season.Places.First(place => place.Id == row.Place);
        bool shut = Shut(season, home, season.Settings.WeekOf(day));
        IReadOnlyList<FutureStay> here = Future(season, home, shut, day);
        RunByQuestion question = new(seen.ByTheLaw, seen.Belief, traits, condition, here, day, KeepingParameters.Default);
        RunByAnswer staying = RunBy.Of(question);
        LocalDate? planned = shed.Book?.RunsOf[row.Lot].Where(run => !run.FromSorted).Select(run => season.Settings.Monday(run.Week)).Where(monday => monday >= day).Order().Cast<LocalDate?>().FirstOrDefault();
        LocalDate runOn = planned ?? LocalDate.Min(staying.By, day.PlusDays(365));
        SeenClock speeds = SeenClock.Of(seen, condition, null);
        List<PlaceOffer> places = [];
        foreach (Place place in season.Places)
        {
            bool stands = place.Id == row.Place, atmosphere = stands ? shut : place.Kind == PlaceKind.Sealed;
            IReadOnlyList<FutureStay> future = stands ? here : Future(season, place, atmosphere, day);
            Money Money(decimal amount) => Core.Quantities.Money.From(amount, Currency.FromCode(season.Settings.Currency));
            Money cost = Money(place.MoveInCost * (decimal)row.Bins);
            RunByAnswer by = stands ? staying : RunBy.Of(question with { Future = future });
            MoveAnswer? move = stands || shed.Book?.WorthOf(row.Lot) is not { } worth ? null : MoveWorth.Of(new MoveQuestion(
                question, Weight(season, row.Net), Money((decimal)(worth / (season.Settings.MassUnit == MassUnit.Pound ? Mass.KilogramsPerPound : 1))),
                new StandingChoice(here, Money(home.CostPerBinWeek * (decimal)row.Bins)), new StandingChoice(future, Money(place.CostPerBinWeek * (decimal)row.Bins)), cost, runOn));
            places.Add(new PlaceOffer(
                place, stands, atmosphere, future[0].Climate, speeds.Week(KeepingParameters.Default, traits, future[0].Climate, Period.DaysBetween(row.Harvested, day) / 7), by,
                Period.DaysBetween(staying.By, by.By), move, cost, row.SeedClass is null ? null : SeedUntil(season, book, row, traits, future, day)));
        }

        BulbShares now = BulbLosses.Of(KeepingParameters.Default, condition, seen.Believed.Sprout, seen.Believed.Decay);
        return new RowSight(row, seen, condition, now, day, runOn, planned is not null, places);
    }

    private static Mass Weight(Season season, double net) => season.Settings.MassUnit == MassUnit.Pound ? Mass.FromPounds(net) : Mass.FromKilograms(net);

    private static bool Shut(Season season, Place place, int week) =>
        season.SealedRooms.FirstOrDefault(room => room.Place == place.Id) is { } room && week > season.Settings.WeekOf(room.Sealed);

    private static List<FutureStay> Future(Season season, Place place, bool atmosphere, LocalDate from)
    {
        int first = season.Settings.WeekOf(from);
        return [.. Enumerable.Range(first, Ahead).Select(week => new FutureStay(
            week == first ? Period.DaysBetween(from, season.Settings.Monday(week + 1)) : 7, PlaceClimate.Of(season, place, week, atmosphere, ClimateDefaults.Default)))];
    }

    /// <summary>Planting stock goes by its own life in each climate; what is used up by today is counted where the row stood.</summary>
    private static LocalDate SeedUntil(Season season, ClockBook book, LotRow row, KeepingTraits traits, IReadOnlyList<FutureStay> future, LocalDate today)
    {
        double used = 0;
        for (LocalDate at = row.Harvested; at < today; at = at.PlusDays(1))
        {
            used += 1 / PlantingStock.LifeDays(KeepingParameters.Default, traits, book.Air(row.Place, season.Settings.WeekOf(at)));
        }

        LocalDate until = today;
        foreach (FutureStay stay in future)
        {
            double each = 1 / PlantingStock.LifeDays(KeepingParameters.Default, traits, stay.Climate);
            if (used + each * stay.Days >= 1)
            {
                return until.PlusDays((int)Math.Max(0, (1 - used) / each));
            }

            used += each * stay.Days;
            until = until.PlusDays(stay.Days);
        }

        return until;
    }
}
