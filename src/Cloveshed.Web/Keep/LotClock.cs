using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Web.Keep;

/// <summary>How a lot's row would keep in a place, by the keeping law.</summary>
/// <param name="Here">It stands there.</param>
/// <param name="Atmosphere">The room's own air, once it is sealed; ordinary air otherwise.</param>
/// <param name="LifeAWeek">Share of its storage life that the next week there uses.</param>
/// <param name="LossAWeek">Share of its weight that the next week there takes.</param>
/// <param name="LastGood">When its life is used up, in weeks and parts from the season's start; null: later than looked at.</param>
/// <param name="Bought">Weeks more than where it stands; null where one of the two ends is not in view.</param>
public sealed record PlaceClock(Place Place, bool Here, bool Atmosphere, Climate Air, double LifeAWeek, double LossAWeek, double? LastGood, double? Bought);

/// <summary>
/// A lot's clock in its place and in every other: what a move would buy. Each place counts from the first week in which the row can
/// stand there: where it stands from its start, elsewhere from the first week in which it may be moved.
/// </summary>
public sealed record LotClock(LotRow Row, int Starts, double LifeAtStart, IReadOnlyList<PlaceClock> Places)
{
    /// <summary>How far is looked, in weeks from the row's start: beyond three years nobody plans.</summary>
    private const int Horizon = 156;

    public PlaceClock Here => Places.First(place => place.Here);

    /// <param name="seen">The row's clock where it was looked at or its air was read; null: by the law.</param>
    public static LotClock Of(Season season, LotRow row, SeenClock? seen = null)
    {
        SeasonSettings settings = season.Settings;
        int harvest = settings.WeekOf(row.Harvested), start = Math.Max(harvest, settings.AsOfWeek);
        // The first possible move is the week after it starts, or that week if it stood before.
        int move = harvest < start ? start : start + 1;
        Place home = season.Places.First(place => place.Id == row.Place);
        bool shut = Shut(season, home, start);
        double life = seen?.LifeAtStart ?? UsedBefore(season, home, row);
        KeepingTraits traits = LotTraits.Of(season, row);
        double? stays = LastGood(season, traits, seen, harvest, start, life, (home, shut), (home, shut), start);
        List<PlaceClock> places = [];
        foreach (Place place in season.Places)
        {
            bool here = place.Id == row.Place, atmosphere = here ? shut : place.Kind == PlaceKind.Sealed;
            double? last = here ? stays : LastGood(season, traits, seen, harvest, start, life, (home, shut), (place, atmosphere), move);
            Climate air = PlaceClimate.Of(season, place, here ? start : move, atmosphere, ClimateDefaults.Default);
            WeekOfKeeping week = Week(traits, seen, air, (here ? start : move) - harvest);
            places.Add(new PlaceClock(place, here, atmosphere, air, week.LifeUsed, week.WeightLoss, last, last - stays));
        }

        return new LotClock(row, start, life, places) { Seen = seen };
    }

    /// <summary>The row's clock where it does not go by the law alone.</summary>
    public SeenClock? Seen { get; private init; }

    /// <summary>When a share of the life is used, staying where it stands; null: not within what is looked at.</summary>
    public double? Reaches(Season season, double share)
    {
        Place home = season.Places.First(place => place.Id == Row.Place);
        bool shut = Shut(season, home, Starts);
        return LastGood(season, LotTraits.Of(season, Row), Seen, season.Settings.WeekOf(Row.Harvested), Starts, LifeAtStart, (home, shut), (home, shut), Starts, share);
    }

    private static double UsedBefore(Season season, Place home, LotRow row) =>
        Core.Keep.LifeAtStart.Of(season, home, row, KeepingParameters.Default, ClimateDefaults.Default);

    private static WeekOfKeeping Week(KeepingTraits traits, SeenClock? seen, Climate air, int sinceHarvest) =>
        seen?.Week(KeepingParameters.Default, traits, air, Math.Max(0, sinceHarvest)) ?? KeepingLaw.Week(KeepingParameters.Default, traits, air, Math.Max(0, sinceHarvest));

    private static bool Shut(Season season, Place place, int week) =>
        season.SealedRooms.FirstOrDefault(room => room.Place == place.Id) is { } room && week > season.Settings.WeekOf(room.Sealed);

    private static double? LastGood(
        Season season, KeepingTraits traits, SeenClock? seen, int harvest, int start, double life, (Place Place, bool Atmosphere) first, (Place Place, bool Atmosphere) then, int move, double share = 1)
    {
        if (life >= share)
        {
            return start;
        }

        for (int week = start; week < start + Horizon; week++)
        {
            (Place place, bool atmosphere) = week < move ? first : then;
            Climate air = PlaceClimate.Of(season, place, week, atmosphere, ClimateDefaults.Default);
            double used = Week(traits, seen, air, week - harvest).LifeUsed;
            if (life + used >= share)
            {
                return week + (share - life) / used;
            }

            life += used;
        }

        return null;
    }
}
