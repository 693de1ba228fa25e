using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Tests.Lots;
using NodaTime;

namespace Cloveshed.Core.Tests.Keep;

public class PlaceClimateTests
{
    private static readonly ClimateDefaults D = ClimateDefaults.Default;

    private static Place Place(string id, PlaceKind kind, double? t = null, double? rh = null, double? o2 = null, double? co2 = null) =>
        new(new(id), kind, 1000, t, rh, o2, co2, 0, 0, 0, null);

    [Fact]
    public void A_weeks_exception_goes_before_the_places_cell_and_that_before_the_default()
    {
        Place cold = Place("Cold", PlaceKind.Cold, t: 1);
        Season season = SmallSeason.Of([], places: [cold], placeWeeks: [new(cold.Id, 3, 4, null), new(cold.Id, 4, null, 80)]);
        Assert.Equal(new Climate(1, 65, 20.9, 0.04), PlaceClimate.Of(season, cold, 2, false, D));
        Assert.Equal(new Climate(4, 65, 20.9, 0.04), PlaceClimate.Of(season, cold, 3, false, D));
        Assert.Equal(new Climate(1, 80, 20.9, 0.04), PlaceClimate.Of(season, cold, 4, false, D));
    }

    [Fact]
    public void Only_a_room_that_is_sealed_has_its_atmosphere()
    {
        Place room = Place("Room", PlaceKind.Sealed, o2: 0.8), cold = Place("Cold", PlaceKind.Cold, o2: 0.8, co2: 5);
        Season season = SmallSeason.Of([], places: [room, cold]);
        Assert.Equal(new Climate(-0.5, 65, 20.9, 0.04), PlaceClimate.Of(season, room, 0, false, D));
        Assert.Equal(new Climate(-0.5, 65, 0.8, 10), PlaceClimate.Of(season, room, 0, true, D));
        Assert.Equal(20.9, PlaceClimate.Of(season, cold, 0, true, D).O2);
    }

    [Fact]
    public void An_open_yard_without_figures_is_warm_and_dry_at_harvest_and_cool_and_damp_half_a_year_on_in_both_hemispheres()
    {
        Place yard = Place("Yard", PlaceKind.Open);
        Season north = SmallSeason.Of([SmallSeason.Lot("1", harvested: new LocalDate(2026, 7, 10))], places: [yard]);
        Climate summer = PlaceClimate.Of(north, yard, 3, false, D), winter = PlaceClimate.Of(north, yard, 29, false, D);
        Assert.Equal(27, summer.TempC, 0.1);
        Assert.Equal(34, summer.Rh, 0.2);
        Assert.Equal(7, winter.TempC, 0.1);
        Assert.Equal(70, winter.Rh, 0.2);

        Season south = SmallSeason.Of([SmallSeason.Lot("1", harvested: new LocalDate(2026, 12, 10))], places: [yard]);
        Assert.Equal(27, PlaceClimate.Of(south, yard, 29, false, D).TempC, 0.1);
    }

    [Fact]
    public void Defaults_that_no_week_makes_use_of_are_not_listed()
    {
        Place yard = Place("Yard", PlaceKind.Open, t: 20), room = Place("Room", PlaceKind.Sealed, rh: 66, co2: 5), full = Place("Full", PlaceKind.Cold, 0, 65);
        PlaceWeek[] every = [.. Enumerable.Range(0, 52).Select(w => new PlaceWeek(yard.Id, w, null, 50))];
        IReadOnlyList<DefaultTaken> taken = PlaceClimate.DefaultsTaken(SmallSeason.Of([], places: [yard, room, full], placeWeeks: every), D);
        Assert.Equal(["cold_c", "sealed_o2"], taken.Select(t => t.Name));
        taken = PlaceClimate.DefaultsTaken(SmallSeason.Of([], places: [yard, room, full], placeWeeks: every[1..]), D);
        Assert.Equal(["cold_c", "yard_rh", "yard_rh_swing", "sealed_o2"], taken.Select(t => t.Name));
    }

    [Fact]
    public void Every_climate_default_turns_by_itself()
    {
        foreach (Dial<ClimateDefaults> dial in ClimateDefaults.Dials)
            Assert.Equal(dial.Read(D) * 1.2, dial.Read(D.With(dial.Name, 1.2)), 1e-12);
        Assert.Equal(typeof(ClimateDefaults).GetConstructors().Max(c => c.GetParameters().Length), ClimateDefaults.Names.Count);
    }
}
