using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Yard;

/// <summary>Curing as the last visits saw it, by the season, the yard's records and the day that it rests on.</summary>
public sealed class CuringShelf
{
    private const int Room = 4;

    private readonly Shelf<CuringBook> shelf = new(Room);

    public CuringBook Of(ShedReading shed, Season season, LocalDate today) => shelf.Of(
        $"{shed.State.InputDigest} {shed.YardLog.LastSeq} {shed.Viewer.AsOf} {today:R}", () => new CuringBook(season, shed.YardLog, today));
}
