using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Plan;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Rooms;

/// <summary>
/// A room as it is at a moment: its state by the steps that were written down, its readings against its limits, and what stands in it. Where no step
/// says how it began, that is taken from the season's files, and said.
/// </summary>
/// <param name="Assumed">How many of the first steps are taken from the season's files.</param>
/// <param name="Standing">Rows of lots that have been dug and are recorded here: as lots.csv and its corrections have them.</param>
/// <param name="Planned">What the adopted plan has here at the end of <paramref name="Week"/>, with bins and weight of then, each under the place that it is recorded in; empty without a plan.</param>
/// <param name="Week">The season's week of Now.</param>
public sealed record RoomSight(
    Place Place, LocalDateTime Now, IReadOnlyList<RoomFact> Steps, int Assumed, RoomStanding State, IReadOnlyList<RoomReading> Readings, RoomFigures Figures, RoomLimits Limits,
    IReadOnlyList<RoomAlarm> Alarms, IReadOnlyList<LotRow> Standing, IReadOnlyList<LotRow> Planned, int Week)
{
    /// <summary>Over what a room is held at (or the published 0 °C, if that is warmer) it is too warm from here on; ours.</summary>
    private const double WarmthAbove = 0.5;

    /// <summary>Under what a room is held at, where that is under the freezing point of the books on purpose; ours.</summary>
    private const double ColdBelow = 0.3;

    public bool NeverRead => Readings.Count == 0;

    public double Bins => Standing.Sum(row => row.Bins);

    /// <summary>In the season's unit.</summary>
    public double Mass => Standing.Sum(row => row.Net);

    /// <summary>What heat, cost, gas and alarms are reckoned of: what is recorded; where nothing is, what the plan has here, so that a room that was loaded and not written down is not taken for empty.</summary>
    public IReadOnlyList<LotRow> Counted => Standing.Count > 0 ? Standing : Planned;

    public bool CountedByPlan => Standing.Count == 0 && Planned.Count > 0;

    public double CountedBins => Counted.Sum(row => row.Bins);

    /// <summary>In the season's unit.</summary>
    public double CountedMass => Counted.Sum(row => row.Net);

    public static RoomSight Of(Season season, PlaceLog log, Place place, LocalDateTime now, PlanBook? book = null)
    {
        int week = Math.Clamp(season.Settings.WeekOf(now.Date), season.Settings.AsOfWeek, season.Settings.Weeks - 1);
        LotRow[] standing = [.. season.Lots.Where(row => row.Place == place.Id && PlaceUse.Stands(season.Settings, row)).OrderByDescending(row => row.Bins)];
        RoomFact[] written = [.. log.StepsOf(place.Id).Where(step => step.At <= now).Select(step => new RoomFact(step.Said.Step, step.At, step.Said.Who))];
        RoomFact[] before = Before(season, place, standing, written);
        RoomFact[] steps = [.. before, .. written];
        RoomStanding state = RoomStates.Of(steps);
        RoomReading[] readings = [.. log.ReadingsOf(place.Id).Where(reading => reading.At <= now)];
        RoomFigures figures = log.FiguresOf(place.Id);
        RoomLimits limits = LimitsOf(figures, place);
        return new RoomSight(place, now, steps, before.Length, state, readings, figures, limits, RoomAlarms.Of(new RoomAlarmQuestion(state.State, readings, limits, now)), standing, book is null ? [] : PlaceUse.Planned(season, book, place.Id, week), week);
    }

    /// <summary>Every cold room and room that can be sealed, in the season's order.</summary>
    public static IReadOnlyList<RoomSight> All(Season season, PlaceLog log, LocalDateTime now, PlanBook? book = null) => [.. season.Places.Where(IsRoom).Select(place => Of(season, log, place, now, book))];

    public static bool IsRoom(Place place) => place.Kind != PlaceKind.Open;

    /// <summary>The shed's clock now, or the end of the day that is looked at.</summary>
    public static LocalDateTime Moment(TimeProvider clock, Viewer viewer) =>
        viewer.AsOf is { } asOf ? asOf.Day.At(new LocalTime(23, 59, 59)) : LocalDateTime.FromDateTime(clock.GetLocalNow().DateTime);

    /// <summary>What was given, else as shipped, with the temperature at which the place is held.</summary>
    public static RoomLimits LimitsOf(RoomFigures figures, Place place)
    {
        RoomLimits limits = figures.Limits;
        if (place.TempC is not { } held)
        {
            return limits;
        }

        return limits with
        {
            WarmestC = figures[RoomFigure.WarmestC] ?? Math.Max(limits.WarmestC, held + WarmthAbove),
            ColdestC = figures[RoomFigure.ColdestC] ?? (held < limits.ColdestC ? held - ColdBelow : limits.ColdestC),
        };
    }

    /// <summary>
    /// A room that rooms.csv has sealed counts as sealed from that day whatever was written down later, so that no slip makes its air
    /// ordinary. A room with bins and without a first step counts as loaded, and a cold one as brought down.
    /// </summary>
    private static RoomFact[] Before(Season season, Place place, IReadOnlyList<LotRow> standing, IReadOnlyList<RoomFact> written)
    {
        if (season.SealedRooms.FirstOrDefault(room => room.Place == place.Id) is { } shut && !written.Any(step => step.At.Date <= shut.Sealed))
        {
            LocalDateTime day = shut.Sealed.AtMidnight();
            return [new RoomFact(RoomStep.LoadingBegan, day, "rooms.csv"), new RoomFact(RoomStep.DoorsSealed, day, "rooms.csv")];
        }

        if (standing.Count == 0 || (written.Count > 0 && written[0].Step == RoomStep.LoadingBegan))
        {
            return [];
        }

        LocalDateTime dug = standing.Min(row => row.Harvested).AtMidnight();
        RoomFact loaded = new(RoomStep.LoadingBegan, dug, "lots.csv");
        return place.Kind == PlaceKind.Cold ? [loaded, new RoomFact(RoomStep.PulledDown, dug, "lots.csv")] : [loaded];
    }
}
