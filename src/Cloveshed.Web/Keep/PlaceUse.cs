using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Keep;

/// <summary>A lot's bins in a place.</summary>
public sealed record StandingBins(LotId Lot, double Bins, double Mass);

/// <summary>What a room is to be under the plan, or is by rooms.csv.</summary>
/// <param name="Sealed">The last week with loading; before the season where it is sealed already.</param>
/// <param name="Opened">Null: it stays closed to the end.</param>
/// <param name="EmptyBy">The last week in which it may hold anything; null: no limit.</param>
public sealed record RoomWeeks(int Sealed, int? Opened, int? EmptyBy);

/// <summary>
/// A place's bins against its capacity: now, as the rows of lots that have been dug say, and at each week's end as the plan has them.
/// </summary>
/// <param name="ByWeek">At each week's end; 0 before the as-of week. Empty without a plan.</param>
public sealed record PlaceUse(Place Place, double Now, double NowMass, int NowLots, IReadOnlyList<double> ByWeek, RoomWeeks? Room, NodaTime.LocalDate? SealedOn)
{
    /// <summary>Bins; less is the rounding of the plan's files.</summary>
    private const double Crumb = 1e-6;

    /// <summary>The fullest week's end; null without a plan.</summary>
    public int? Fullest => ByWeek.Count == 0 ? null : Enumerable.Range(0, ByWeek.Count).MaxBy(week => ByWeek[week]);

    public static IReadOnlyList<PlaceUse> All(Season season, PlanBook? book)
    {
        SeasonSettings settings = season.Settings;
        ILookup<PlaceId, LotRow> rows = season.Lots.Where(row => Stands(settings, row)).ToLookup(row => row.Place);
        Dictionary<PlaceId, double[]> bins = season.Places.ToDictionary(place => place.Id, _ => new double[settings.Weeks]);
        foreach (KeepRow keep in book?.Answer.Keeps ?? [])
        {
            if (bins.TryGetValue(keep.Place, out double[]? weeks) && keep.Week < weeks.Length)
            {
                weeks[keep.Week] += keep.Bins;
            }
        }

        return
        [
            .. season.Places.Select(place => new PlaceUse(
                place, rows[place.Id].Sum(row => row.Bins), rows[place.Id].Sum(row => row.Net), rows[place.Id].Select(row => row.Lot).Distinct().Count(),
                book is null ? [] : bins[place.Id], WeeksOf(place, book), season.SealedRooms.FirstOrDefault(room => room.Place == place.Id)?.Sealed)),
        ];
    }

    /// <summary>What stands in a place at a week's end under the plan, most bins first.</summary>
    public static IReadOnlyList<StandingBins> At(PlanBook book, PlaceId place, int week) =>
    [
        .. book.Answer.Keeps.Where(keep => keep.Place == place && keep.Week == week).GroupBy(keep => keep.Lot)
            .Select(lot => new StandingBins(lot.Key, lot.Sum(keep => keep.Bins), lot.Sum(keep => keep.MassAtStart * Ratio(book, keep.Path, week + 1))))
            .OrderByDescending(lot => lot.Bins).ThenBy(lot => lot.Lot.Text, StringComparer.Ordinal),
    ];

    /// <summary>The same as rows, with bins and weight of then, each under the place that the lot is recorded in.</summary>
    public static LotRow[] Planned(Season season, PlanBook book, PlaceId place, int week)
    {
        ILookup<LotId, LotRow> rows = season.Lots.ToLookup(row => row.Lot);
        return [.. At(book, place, week).Where(lot => lot.Bins > Crumb && rows.Contains(lot.Lot)).Select(lot => rows[lot.Lot].First() with { Bins = lot.Bins, Net = lot.Mass })];
    }

    /// <summary>Dug by the end of the week that the files describe.</summary>
    public static bool Stands(SeasonSettings settings, LotRow row) => settings.WeekOf(row.Harvested) <= settings.AsOfWeek;

    private static double Ratio(PlanBook book, string path, int week) => book.Paths[path] is var line && line.Has(week) ? line.State(week).MassRatio : line.State(line.LastState).MassRatio;

    private static RoomWeeks? WeeksOf(Place place, PlanBook? book) =>
        book?.Answer.Rooms.FirstOrDefault(room => room.Place == place.Id) is { } room
            ? new RoomWeeks(room.Sealed, room.Opened, room.Opened is { } opened && place.RunOutWeeks is { } weeks ? opened + weeks - 1 : null) : null;
}
