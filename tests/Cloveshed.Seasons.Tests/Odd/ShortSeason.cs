using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>The first weeks of a season: what is dug, asked for or bought later is not in it.</summary>
internal static class ShortSeason
{
    internal static Season Of(Season season, int weeks)
    {
        SeasonSettings settings = season.Settings with { Weeks = weeks };
        LotRow[] lots = [.. season.Lots.Where(row => settings.StartWeekOf(row) < weeks)];
        return season with
        {
            Settings = settings,
            Lots = lots,
            Samples = [.. season.Samples.Where(bulb => lots.Any(row => row.Lot == bulb.Lot))],
            PlaceWeeks = [.. season.PlaceWeeks.Where(row => row.Week < weeks)],
            LineWeeks = [.. season.LineWeeks.Where(row => row.Week < weeks)],
            People = [.. season.People.Where(row => row.Week < weeks)],
            Orders = [.. season.Orders.Where(line => settings.WeekOf(line.Due) < weeks)],
            Market = [.. season.Market.Where(row => row.Week < weeks)],
            SeedNeeds = [.. season.SeedNeeds.Where(need => settings.WeekOf(need.By) < weeks)],
            Shifts = [.. season.Shifts.Where(row => row.Week is not { } week || week < weeks)],
        };
    }
}
