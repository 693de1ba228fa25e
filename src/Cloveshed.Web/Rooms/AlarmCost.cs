using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Today;

namespace Cloveshed.Web.Rooms;

/// <summary>
/// What a week more in the air that was read takes from what stands in a room: its worth times the share of it that is lost beyond what the
/// place's own air takes, by the keeping law and the clocks of what was looked at. Air that kills has no price; nor has damp, which the law does not price before mould is seen.
/// </summary>
internal static class AlarmCost
{
    private static readonly KeepingParameters Law = KeepingParameters.Default;

    /// <summary>Parts of the cost of a week; none without a plan, whose worths they are made of.</summary>
    /// <param name="clocks">The clocks of rows that do not go by the law alone.</param>
    public static IReadOnlyList<CostPart> Parts(RoomSight room, RoomAlarm alarm, Season season, PlanBook? book, Func<LotRow, SeenClock?>? clocks = null)
    {
        if (book is null)
        {
            return [];
        }

        if (alarm.Kind == RoomAlarmKind.TooCold)
        {
            // A week under the freezing point can take all of it.
            return Whole(room, book);
        }

        return Changed(alarm) is not { } read ? [] :
        [
            .. room.Counted.Where(row => book.WorthOf(row.Lot) is not null).Select(row => (Row: row, Share: Lost(room, row, read, season, clocks?.Invoke(row))))
                .Where(one => one.Share > 0).Select(one => new CostPart(Loss.Keeping, one.Row.Lot.Text, one.Row.Net, book.WorthOf(one.Row.Lot)!.Value, one.Share)),
        ];
    }

    /// <summary>What can be lost later: all of it, where the air may injure.</summary>
    public static IReadOnlyList<CostPart> Stakes(RoomSight room, RoomAlarm alarm, PlanBook? book) =>
        book is not null && alarm.Kind is RoomAlarmKind.OxygenTooLow or RoomAlarmKind.CarbonDioxideTooHigh or RoomAlarmKind.TooDamp ? Whole(room, book!) : [];

    private static CostPart[] Whole(RoomSight room, PlanBook book) =>
        [.. room.Counted.Where(row => book.WorthOf(row.Lot) is > 0).Select(row => new CostPart(Loss.Worth, row.Lot.Text, row.Net, book.WorthOf(row.Lot)!.Value))];

    /// <summary>The place's own air with what was read in place of what it should be.</summary>
    private static Func<Climate, Climate>? Changed(RoomAlarm alarm) => alarm.Kind switch
    {
        RoomAlarmKind.TooWarm => air => air with { TempC = alarm.Value },
        RoomAlarmKind.TooDry => air => air with { Rh = alarm.Value },
        RoomAlarmKind.OxygenTooHigh => air => air with { O2 = alarm.Value },
        RoomAlarmKind.CarbonDioxideTooLow => air => air with { Co2 = alarm.Value },
        _ => null,
    };

    private static double Lost(RoomSight room, LotRow row, Func<Climate, Climate> read, Season season, SeenClock? seen)
    {
        int week = room.Week, since = Math.Max(0, week - season.Settings.WeekOf(row.Harvested));
        KeepingTraits traits = LotTraits.Of(season, row);
        Climate should = PlaceClimate.Of(season, room.Place, week, room.State.State == RoomState.Sealed, ClimateDefaults.Default);
        WeekOfKeeping Week(Climate air) => seen?.Week(Law, traits, air, since) ?? KeepingLaw.Week(Law, traits, air, since);
        WeekOfKeeping planned = Week(should), worse = Week(read(should));
        double life = (seen?.LifeAtStart ?? LifeAtStart.Of(season, season.Places.First(place => place.Id == row.Place), row, Law, ClimateDefaults.Default)) + planned.LifeUsed * Math.Max(0, week - season.Settings.StartWeekOf(row));
        return Waiting.LostLater(life, worse.LifeUsed - planned.LifeUsed, worse.WeightLoss - planned.WeightLoss);
    }
}
