using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Keep;

/// <summary>The air of a place, week by week: the week's exception, else the place's own cell, else the default.</summary>
public static class PlaceClimate
{
    /// <summary>
    /// The air of one place in one week (an index; negative before the season). Only a room that is sealed has its
    /// atmosphere; before that, and everywhere else, it is ordinary air.
    /// </summary>
    /// <param name="sealedNow">The room has been sealed before this week and not opened.</param>
    public static Climate Of(Season season, Place place, int week, bool sealedNow, ClimateDefaults d)
    {
        PlaceWeek? exception = null;
        foreach (PlaceWeek row in season.PlaceWeeks)
        {
            if (row.Week == week && row.Place == place.Id)
            {
                exception = row;
                break;
            }
        }

        double tempC = exception?.TempC ?? place.TempC ?? DefaultTempC(season, place, week, d);
        double rh = exception?.Rh ?? place.Rh ?? DefaultRh(season, place, week, d);
        bool atmosphere = sealedNow && place.Kind == PlaceKind.Sealed;
        return new Climate(
            tempC, rh,
            atmosphere ? place.O2 ?? d.SealedO2 : KeepingLaw.AirO2,
            atmosphere ? place.Co2 ?? d.SealedCo2 : KeepingLaw.AirCo2);
    }

    /// <summary>The defaults that this season's places make use of in some week of the season.</summary>
    public static IReadOnlyList<DefaultTaken> DefaultsTaken(Season season, ClimateDefaults d)
    {
        int weeks = season.Settings.Weeks;
        var temps = season.PlaceWeeks.Where(w => w.TempC is not null).GroupBy(w => w.Place).ToDictionary(g => g.Key, g => g.Count());
        var rhs = season.PlaceWeeks.Where(w => w.Rh is not null).GroupBy(w => w.Place).ToDictionary(g => g.Key, g => g.Count());
        bool NoTemp(Place p) => p.TempC is null && temps.GetValueOrDefault(p.Id) < weeks;
        bool NoRh(Place p) => p.Rh is null && rhs.GetValueOrDefault(p.Id) < weeks;

        var taken = new List<DefaultTaken>();
        void Note(Func<Place, bool> lacks, params ReadOnlySpan<string> names)
        {
            int count = season.Places.Count(lacks);
            if (count == 0)
                return;
            foreach (string name in names)
                taken.Add(d.Taken(name, count));
        }

        Note(p => p.Kind != PlaceKind.Open && NoTemp(p), "cold_c");
        Note(p => p.Kind != PlaceKind.Open && NoRh(p), "cold_rh");
        Note(p => p.Kind == PlaceKind.Open && NoTemp(p), "yard_mean_c", "yard_swing_c");
        Note(p => p.Kind == PlaceKind.Open && NoRh(p), "yard_rh", "yard_rh_swing");
        Note(p => p.Kind == PlaceKind.Sealed && p.O2 is null, "sealed_o2");
        Note(p => p.Kind == PlaceKind.Sealed && p.Co2 is null, "sealed_co2");
        return taken;
    }

    private static double DefaultTempC(Season season, Place place, int week, ClimateDefaults d) =>
        place.Kind == PlaceKind.Open ? d.YardMeanC + d.YardSwingC * Summer(season, week) : d.ColdC;

    private static double DefaultRh(Season season, Place place, int week, ClimateDefaults d) =>
        place.Kind == PlaceKind.Open ? Math.Clamp(d.YardRh - d.YardRhSwing * Summer(season, week), 0, 100) : d.ColdRh;

    // 1 in the warmest week, -1 half a year from it. The warmest week is that of 20 July, or of 18 January where garlic is
    // dug between October and March: south of the equator.
    private static double Summer(Season season, int week)
    {
        int dug = 0, dugInSouthernSummer = 0;
        foreach (LotRow lot in season.Lots)
        {
            dug++;
            if (lot.Harvested.Month is >= 10 or <= 3)
                dugInSouthernSummer++;
        }

        const int NorthernPeakDay = 201;
        double peak = dugInSouthernSummer * 2 > dug ? NorthernPeakDay - 365.25 / 2 : NorthernPeakDay;
        LocalDate middle = season.Settings.Monday(week).PlusDays(3);
        return Math.Cos(2 * Math.PI * (middle.DayOfYear - peak) / 365.25);
    }
}
