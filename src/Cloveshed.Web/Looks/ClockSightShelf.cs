using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Looks;

/// <summary>The clocks of rows as pages showed them last, by the season, the looks, the readings, the plan and the day that they rest on.</summary>
public sealed class ClockSightShelf
{
    /// <summary>Rows that are looked at in turn; a page takes the rows of one lot.</summary>
    private const int Room = 400;

    private readonly Shelf<RowSight> shelf = new(Room);

    /// <param name="today">As for <see cref="ClockSight.Of"/>.</param>
    public RowSight Of(ShedReading shed, LotRow row, LocalDate today) => shelf.Of(
        $"{shed.State.InputDigest} {shed.YardLog.LastSeq} {shed.PlaceLog.LastSeq} {shed.Viewer.AsOf} {shed.State.Adopted?.Document} {today:R} {row.Place} {row.Lot}",
        () => ClockSight.Of(shed, row, today));
}
