using Cloveshed.Pictures.Keeping;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Keep;

/// <summary>How lots keep where they stand, reckoned once for each state of the season's rows.</summary>
public sealed class StandingShelf
{
    private const int Room = 4;

    private readonly Shelf<KeepingFacts> shelf = new(Room);

    public KeepingFacts Of(ShedReading shed) => shelf.Of(shed.ClockKey, () => StandingLots.Of(shed.SeasonOpen, shed.Clocks.Of));
}
