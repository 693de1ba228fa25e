using Cloveshed.Core;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Keep;

/// <summary>
/// Where a row of a lot stood: in the place that its first fact names from harvest on, and in each other place from the fact that moved it.
/// What happened before a season was imported is not known; then it stood where the import has it.
/// </summary>
internal static class RowSeats
{
    /// <summary>Of every row of the season, in the order of time; the last has no end within sight.</summary>
    public static IReadOnlyDictionary<(LotId Lot, PlaceId Place), IReadOnlyList<LotStay>> All(ShedLedger ledger, SeasonRows? rows, Season season, TimeZoneInfo here)
    {
        Dictionary<(string, string), SeasonRow> now = (rows?.Of("lots.csv") ?? []).ToDictionary(row => (row.Cells["lot"], row.Cells["place"]));
        return season.Lots.ToDictionary(row => (row.Lot, row.Place), IReadOnlyList<LotStay> (row) => Of(ledger, now.GetValueOrDefault((row.Lot.Text, row.Place.Text)), row, here));
    }

    private static List<LotStay> Of(ShedLedger ledger, SeasonRow? now, LotRow row, TimeZoneInfo here)
    {
        LocalDateTime start = row.Harvested.AtMidnight(), end = start.PlusYears(5);
        List<(LocalDateTime At, string Place)> seats = [];
        for (Guid? at = now?.Fact; at is { } id && ledger.Find(id) is { } fact; at = fact.Corrects)
        {
            if (SeasonFacts.Row(fact) is { Cells: var cells } && cells.TryGetValue("place", out string? place))
            {
                seats.Add((LocalDateTime.FromDateTime(TimeZoneInfo.ConvertTime(fact.HappenedAt, here).DateTime), place));
            }
        }

        seats.Reverse();
        // A move that was written down late counts from its own moment, but none from before the one that went before it.
        for (int i = 2; i < seats.Count; i++)
        {
            seats[i] = (LocalDateTime.Max(seats[i].At, seats[i - 1].At), seats[i].Place);
        }

        if (seats.Select(seat => seat.Place).Distinct().Count() < 2)
        {
            return [new LotStay(row.Place, start, end)];
        }

        List<LotStay> stays = [];
        for (int i = 0; i < seats.Count; i++)
        {
            LocalDateTime from = i == 0 ? start : LocalDateTime.Max(start, seats[i].At), to = i + 1 < seats.Count ? LocalDateTime.Max(start, seats[i + 1].At) : end;
            if (stays.Count > 0 && stays[^1].Place.Text == seats[i].Place)
            {
                stays[^1] = stays[^1] with { To = to };
            }
            else if (to > from)
            {
                stays.Add(new LotStay(new PlaceId(seats[i].Place), from, to));
            }
        }

        return stays;
    }
}
