using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Tests.Lots;
using NodaTime;

namespace Cloveshed.Core.Tests.Keep;

public class LifeAtStartTests
{
    private static readonly KeepingParameters P = KeepingParameters.Default;
    private static readonly ClimateDefaults D = ClimateDefaults.Default;
    private static readonly KeepingTraits Medium = new(KeepClass.Medium, false, true);
    private static readonly Place Cold = new(new("Cold"), PlaceKind.Cold, 1000, 0, 65, null, null, 0, 0, 0, null);
    private static readonly Place Room = new(new("Room"), PlaceKind.Sealed, 1000, 0, 65, 1, 10, 0, 0, 0, null);

    private static double Of(Place place, LocalDate harvested, LocalDate? asOf = null, SealedRoom[]? rooms = null)
    {
        LotRow row = SmallSeason.Lot("1", place: place.Id.Text, harvested: harvested);
        return LifeAtStart.Of(SmallSeason.Of([row], places: [Cold, Room], rooms: rooms, asOf: asOf), place, row, P, D);
    }

    private static double Weekly(double o2 = KeepingLaw.AirO2, double co2 = KeepingLaw.AirCo2) => KeepingLaw.LifeUsed(P, Medium, new Climate(0, 65, o2, co2));

    [Fact]
    public void What_is_dug_in_the_first_week_or_later_has_used_nothing()
    {
        Assert.Equal(0, Of(Cold, SmallSeason.FirstWeek));
        Assert.Equal(0, Of(Cold, SmallSeason.FirstWeek.PlusDays(60)));
    }

    [Fact]
    public void Weeks_before_the_start_count_and_the_week_of_harvest_by_its_days()
    {
        Assert.Equal(10 * Weekly(), Of(Cold, SmallSeason.FirstWeek.PlusWeeks(-10)), 1e-12);
        // Thursday to Sunday of the week before: four days.
        Assert.Equal(4 / 7.0 * Weekly(), Of(Cold, SmallSeason.FirstWeek.PlusDays(-4)), 1e-12);
    }

    [Fact]
    public void A_start_later_than_the_first_week_is_the_Monday_of_the_week_of_the_as_of_date() =>
        Assert.Equal(5 * Weekly(), Of(Cold, SmallSeason.FirstWeek, asOf: SmallSeason.FirstWeek.PlusWeeks(5).PlusDays(3)), 1e-12);

    [Fact]
    public void A_room_sealed_before_the_start_keeps_as_air_to_the_end_of_that_week_and_as_its_atmosphere_after()
    {
        LocalDate harvested = SmallSeason.FirstWeek.PlusWeeks(-10);
        double life = Of(Room, harvested, rooms: [new SealedRoom(Room.Id, SmallSeason.FirstWeek.PlusWeeks(-7).PlusDays(2))]);
        Assert.Equal(4 * Weekly() + 6 * Weekly(1, 10), life, 1e-12);
        Assert.Equal(10 * Weekly(), Of(Room, harvested), 1e-12);
        Assert.True(life < Of(Room, harvested));
    }

    [Fact]
    public void Empty_words_are_taken_as_medium_and_cured_and_said()
    {
        LotRow row = SmallSeason.Lot("1") with { Cured = null };
        Season season = SmallSeason.Of([row], varieties: [SmallSeason.Variety("Pale") with { Keeps = null }]);
        Assert.Equal(Medium, LotTraits.Of(season, row));
        Assert.Equal([("keeps", "medium"), ("cured", "yes")], LotTraits.DefaultsTaken(season).Select(t => (t.Name, t.Value)));
        Assert.Empty(LotTraits.DefaultsTaken(SmallSeason.Of([SmallSeason.Lot("1")])));
    }
}
