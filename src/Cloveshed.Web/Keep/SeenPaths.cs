using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Keep;

/// <summary>
/// A plan's paths as they would go by the clocks that are believed now. A plan keeps the clocks that were known when it was made; a lot that was looked at since, or
/// whose place's air was read, goes along the same places by its own. Where it goes, when and how much of it is run stays the plan's.
/// </summary>
public static class SeenPaths
{
    private static readonly KeepingParameters Law = KeepingParameters.Default;

    /// <summary>The same answer with the states of the paths whose rows have a clock made again; the rest as it is.</summary>
    /// <param name="clock">Null for a row that goes by the law.</param>
    public static PlanAnswer Of(Season season, PlanAnswer answer, Func<LotRow, SeenClock?> clock)
    {
        Dictionary<(LotId, PlaceId), LotRow> rows = season.Lots.ToDictionary(row => (row.Lot, row.Place));
        Dictionary<PlaceId, Place> places = season.Places.ToDictionary(place => place.Id);
        Dictionary<PlaceId, RoomRow> rooms = answer.Rooms.ToDictionary(room => room.Place);
        List<PathWeek> weeks = new(answer.Paths.Count);
        foreach (IGrouping<string, PathWeek> path in answer.Paths.GroupBy(week => week.Path))
        {
            PathWeek[] states = [.. path.OrderBy(week => week.Week)];
            bool same = !rows.TryGetValue((states[0].Lot, states[0].FromPlace), out LotRow? row) || states[0].Week != season.Settings.StartWeekOf(row) || !states.All(state => places.ContainsKey(state.Place));
            weeks.AddRange(same || clock(row!) is not { } seen ? states : Walked(season, row!, seen, states, places, rooms));
        }

        return answer with { Paths = weeks };
    }

    private static IEnumerable<PathWeek> Walked(Season season, LotRow row, SeenClock seen, PathWeek[] states, Dictionary<PlaceId, Place> places, Dictionary<PlaceId, RoomRow> rooms)
    {
        KeepingTraits traits = LotTraits.Of(season, row);
        int harvest = season.Settings.WeekOf(row.Harvested);
        double ratio = states[0].MassRatio, life = seen.LifeAtStart, soundAtStart = KeepingLaw.SoundShare(Law, life);
        for (int i = 0; i < states.Length; i++)
        {
            PathWeek state = states[i];
            double sound = KeepingLaw.SoundShare(Law, life) / soundAtStart;
            yield return state with { MassRatio = ratio, FreshShare = states[0].FreshShare * sound, CrackShare = states[0].CrackShare * sound, LifeUsed = life };
            Climate air = PlaceClimate.Of(season, places[state.Place], state.Week, Shut(season, rooms, state.Place, state.Week), ClimateDefaults.Default);
            WeekOfKeeping week = seen.Week(Law, traits, air, Math.Max(0, state.Week - harvest));
            ratio *= 1 - week.WeightLoss;
            life += week.LifeUsed;
        }
    }

    private static bool Shut(Season season, Dictionary<PlaceId, RoomRow> rooms, PlaceId place, int week) =>
        rooms.TryGetValue(place, out RoomRow? room) ? week > room.Sealed && (room.Opened is not { } opened || week < opened)
            : season.SealedRooms.FirstOrDefault(one => one.Place == place) is { } shut && week > season.Settings.WeekOf(shut.Sealed);
}
