using Cloveshed.Core;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Rooms;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Today;

/// <summary>A room that is out of its limits, or that nobody watches any more.</summary>
public sealed record AlarmDecision(PlaceId Place, RoomAlarm Alarm, IReadOnlyList<CostPart> Parts, IReadOnlyList<CostPart> Stakes) : Decision(Parts, Stakes, null)
{
    public override string Key => $"alarm {Place} {Alarm.Kind}";

    /// <summary>It is about people, and stands before all that has a price.</summary>
    public bool PeopleFirst => Alarm.Kind == RoomAlarmKind.DeadlyAir;
}

/// <summary>What the rooms ask of a day.</summary>
/// <param name="Alarms">In the order of what it costs to wait.</param>
/// <param name="NeverRead">Rooms with bins of which no air was ever written down: told in one line, because nobody chose to watch them.</param>
public sealed record RoomsToday(IReadOnlyList<AlarmDecision> Alarms, IReadOnlyList<PlaceId> NeverRead)
{
    public static RoomsToday None { get; } = new([], []);

    /// <summary>Alarms with a price or about people, which stand among the other decisions.</summary>
    public IEnumerable<AlarmDecision> Priced => Alarms.Where(alarm => alarm.PeopleFirst || alarm.CostOfWaiting >= DecisionList.Hair);

    /// <summary>The others.</summary>
    public IEnumerable<AlarmDecision> Unpriced => Alarms.Except(Priced);

    /// <param name="clocks">The clocks of rows that do not go by the law alone.</param>
    public static RoomsToday Of(Season season, PlaceLog log, LocalDateTime now, PlanBook? book, Func<LotRow, SeenClock?>? clocks = null)
    {
        IReadOnlyList<RoomSight> rooms = RoomSight.All(season, log, now, book);
        IEnumerable<AlarmDecision> alarms = rooms.Where(room => !room.NeverRead)
            .SelectMany(room => room.Alarms.Select(alarm => new AlarmDecision(room.Place.Id, alarm, AlarmCost.Parts(room, alarm, season, book, clocks), AlarmCost.Stakes(room, alarm, book))));
        return new RoomsToday([.. DecisionList.InOrder(alarms).Cast<AlarmDecision>()], [.. rooms.Where(room => room.NeverRead && room.Bins > 0).Select(room => room.Place.Id)]);
    }
}
