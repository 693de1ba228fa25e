using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Keep;

/// <summary>What about a season's lot changes how it keeps.</summary>
public static class LotTraits
{
    /// <summary>An empty `keeps` is taken as medium, an empty `cured` as yes: garlic that stands in bins in a shed is cured.</summary>
    public static KeepingTraits Of(Season season, LotRow row)
    {
        Variety? variety = season.Varieties.FirstOrDefault(v => v.Id == row.Variety);
        return new KeepingTraits(variety?.Keeps ?? KeepClass.Medium, row.Inhibitor, row.Cured ?? true);
    }

    /// <summary>The two words above, where they were taken.</summary>
    public static IReadOnlyList<Lots.DefaultTaken> DefaultsTaken(Season season)
    {
        var taken = new List<Lots.DefaultTaken>();
        int keeps = season.Varieties.Count(v => v.Keeps is null && season.Lots.Any(l => l.Variety == v.Id));
        int cured = season.Lots.Where(l => l.Cured is null).Select(l => l.Lot).Distinct().Count();
        if (keeps > 0)
            taken.Add(new Lots.DefaultTaken("keeps", "medium", "our default, no published value", keeps));
        if (cured > 0)
            taken.Add(new Lots.DefaultTaken("cured", "yes", "our default: lots in bins are taken as cured", cured));
        return taken;
    }
}

/// <summary>Life that a lot has used before its path starts.</summary>
public static class LifeAtStart
{
    /// <summary>
    /// Life used from the day of harvest to the Monday of the week in which the row's path starts (the later of harvest,
    /// the season's as-of date and its first week), as if the lot had stood in its place from the start: in a room that
    /// is sealed on the as-of date, in ordinary air to the end of the week of its sealing and in the atmosphere after it. 0 for a lot
    /// dug in that week or later.
    /// </summary>
    public static double Of(Season season, Place place, LotRow row, KeepingParameters p, ClimateDefaults d)
    {
        SeasonSettings settings = season.Settings;
        int harvestWeek = settings.WeekOf(row.Harvested);
        int startWeek = Math.Max(harvestWeek, settings.AsOfWeek);
        int? sealedWeek = season.SealedRooms.FirstOrDefault(r => r.Place == place.Id) is { } room ? settings.WeekOf(room.Sealed) : null;
        KeepingTraits traits = LotTraits.Of(season, row);
        double life = 0;
        for (int week = harvestWeek; week < startWeek; week++)
        {
            // The harvest week counts from the day of harvest to its Sunday, both included.
            double part = week == harvestWeek ? Period.DaysBetween(row.Harvested, settings.Monday(week + 1)) / 7.0 : 1;
            Climate climate = PlaceClimate.Of(season, place, week, sealedWeek is { } w && week > w, d);
            life += part * KeepingLaw.LifeUsed(p, traits, climate);
        }

        return life;
    }
}
