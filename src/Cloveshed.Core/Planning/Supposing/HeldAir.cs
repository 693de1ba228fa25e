using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>
/// The air of places as a season has it, for the same season with other lots. Where no cell says, the time of year goes by when most lots are dug; a lot that is dug later,
/// or counted in two parts, is no reason for it to be another.
/// </summary>
internal static class HeldAir
{
    internal static Season Of(Season now, Season before, ClimateDefaults d)
    {
        int weeks = now.Settings.Weeks, first = now.Lots.Select(row => now.Settings.WeekOf(row.Harvested)).Append(0).Min();
        Climate Air(Season season, Place place, int week) => PlaceClimate.Of(season, place, week, false, d);
        Place[] other = [.. now.Places.Where(place => Enumerable.Range(0, weeks).Any(week => Air(now, place, week) != Air(before, place, week)))];
        if (other.Length == 0) return now;
        IEnumerable<PlaceWeek> Held(Place place) => Enumerable.Range(first, weeks - first).Select(week => (week, Air: Air(before, place, week))).Select(one => new PlaceWeek(place.Id, one.week, one.Air.TempC, one.Air.Rh));
        return now with { PlaceWeeks = [.. now.PlaceWeeks.Where(week => other.All(place => place.Id != week.Place)), .. other.SelectMany(Held)] };
    }
}
