using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>The clock of a lot whose storage life ends some weeks earlier than believed.</summary>
internal static class ShorterLife
{
    private static readonly SeenClock ByTheLaw = new(1, 1, 1, 0, 0, null);

    /// <summary>
    /// Pure. Sprouting and decay are taken faster by one factor, so that life used reaches 1 so many weeks earlier in the place, in ordinary air or as the room is shut now; past the
    /// season it goes on as in its last week. Null where that would be before the row's first week.
    /// </summary>
    internal static SeenClock? Of(Season season, Beliefs beliefs, LotRow row, double weeksEarlier)
    {
        Place place = season.Places.First(p => p.Id == row.Place);
        KeepingTraits traits = LotTraits.Of(season, row);
        SeenClock? seen = beliefs.Clocks.GetValueOrDefault((row.Lot, row.Place));
        SeenClock clock = seen ?? ByTheLaw with { LifeAtStart = LifeAtStart.Of(season, place, row, beliefs.Keeping, beliefs.Climate) };
        int start = season.Settings.StartWeekOf(row), harvest = season.Settings.WeekOf(row.Harvested);
        int? shut = season.SealedRooms.FirstOrDefault(room => room.Place == place.Id) is { } room ? season.Settings.WeekOf(room.Sealed) : null;
        double Used(int week) => clock.Week(
            beliefs.Keeping, traits, PlaceClimate.Of(season, place, Math.Min(week, season.Settings.Weeks - 1), shut is { } w && week > w, beliefs.Climate), Math.Max(0, week - harvest)).LifeUsed;
        // By week from the start on, the last one as far as it takes.
        List<double> life = [clock.LifeAtStart];
        while (life[^1] < 1 && life.Count <= MostWeeks) life.Add(life[^1] + Used(start + life.Count - 1));
        if (life.Count < 2) return null;
        double end = life.Count - 2 + (1 - life[^2]) / (life[^1] - life[^2]), at = end - weeksEarlier;
        if (at <= 0) return null;
        int whole = Math.Min((int)at, life.Count - 2);
        double faster = 1 / (life[whole] + (at - whole) * (life[whole + 1] - life[whole]));
        return clock with { Sprout = clock.Sprout * faster, Decay = clock.Decay * faster, LifeAtStart = clock.LifeAtStart * faster };
    }

    /// <summary>Ten years: nothing keeps so long, and a life that is not used at all has no end.</summary>
    private const int MostWeeks = 520;
}
