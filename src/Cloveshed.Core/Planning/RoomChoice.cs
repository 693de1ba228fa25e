using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// What is decided about a room that can be sealed. Sealed: the last week with loading (null: never sealed, a cold place all
/// season). Opened: the first week in which something may leave again (null: it stays closed to the end).
/// </summary>
public readonly record struct RoomSchedule(int? Sealed, int? Opened)
{
    public override string ToString() => $"{(Sealed is { } s ? s.ToString(System.Globalization.CultureInfo.InvariantCulture) : "-")}..{(Opened is { } o ? o.ToString(System.Globalization.CultureInfo.InvariantCulture) : "-")}";
}

/// <summary>
/// The weeks of all rooms: for each place, null where the place is no room or where the room's weeks are left free, which
/// stands for the relaxation that the bound over all room weeks comes from.
/// </summary>
public sealed record RoomChoice(RoomSchedule?[] OfPlace)
{
    public static RoomChoice Free(PlanningInstance instance) => new(new RoomSchedule?[instance.Places.Length]);

    /// <summary>The weeks that a plan decided: a room that it does not name is never sealed.</summary>
    public static RoomChoice Of(PlanningInstance instance, IReadOnlyList<Answers.RoomRow> rooms) => new([.. instance.Places.Select(RoomSchedule? (place) =>
        place.Kind != PlaceKind.Sealed ? null
        : rooms.FirstOrDefault(r => r.Place == place.Id) is { } row ? new RoomSchedule(place.SealedWeek ?? row.Sealed, row.Opened) : new RoomSchedule(place.SealedWeek, null))]);

    public RoomChoice With(int place, RoomSchedule schedule)
    {
        RoomSchedule?[] copy = [.. OfPlace];
        copy[place] = schedule;
        return new RoomChoice(copy);
    }

    public bool Equals(RoomChoice? other) => other is not null && OfPlace.AsSpan().SequenceEqual(other.OfPlace);

    public override int GetHashCode() => OfPlace.Aggregate(17, HashCode.Combine);
}

/// <summary>How bins stand in a spot.</summary>
public enum SpotKind
{
    /// <summary>An open or cold place, or a room whose weeks are decided.</summary>
    Plain,

    /// <summary>A room with free weeks, used as a cold place before it is sealed.</summary>
    FreeCold,

    /// <summary>A room with free weeks, loaded to be sealed: kept as well as under its atmosphere from the first day (relaxed).</summary>
    FreeSealed,
}

/// <summary>
/// A place as paths see it, with the weeks in which a bin may enter (at a week's start), leave (run or moved in that week) and
/// stand (at a week's end). MayEnd: it may stand there after the last week.
/// </summary>
public sealed record Spot(int Place, SpotKind Kind, bool[] Enter, bool[] Leave, bool[] Stand, Func<int, bool> UnderAtmosphere)
{
    /// <summary>
    /// A bin that enters a free sealed room leaves in a later week at the earliest, since a room is sealed at a week's end at
    /// the earliest and opened after that. Bins that stood there before it was sealed have done that waiting already.
    /// </summary>
    public bool WaitsAWeek => Kind == SpotKind.FreeSealed;
}

/// <summary>The spots of an instance under a room choice.</summary>
public static class Spots
{
    public static Spot[] Of(PlanningInstance instance, RoomChoice choice)
    {
        int weeks = instance.Weeks;
        var spots = new List<Spot>();
        for (int p = 0; p < instance.Places.Length; p++)
        {
            InstancePlace place = instance.Places[p];
            if (place.Kind != PlaceKind.Sealed)
            {
                spots.Add(new Spot(p, SpotKind.Plain, All(weeks, _ => true), All(weeks, _ => true), All(weeks, _ => true), _ => false));
                continue;
            }
            if (choice.OfPlace[p] is { } schedule)
            {
                spots.Add(Decided(p, schedule, place.RunOut, weeks));
                continue;
            }
            if (place.SealedWeek is { } already)
            {
                spots.Add(new Spot(p, SpotKind.FreeSealed, All(weeks, _ => false), All(weeks, w => w > already), All(weeks, _ => true), _ => true));
                continue;
            }
            spots.Add(new Spot(p, SpotKind.FreeCold, All(weeks, _ => true), All(weeks, _ => true), All(weeks, _ => true), _ => false));
            spots.Add(new Spot(p, SpotKind.FreeSealed, All(weeks, w => w < weeks - 1), All(weeks, _ => true), All(weeks, _ => true), _ => true));
        }
        return [.. spots];
    }

    private static Spot Decided(int place, RoomSchedule schedule, int? runOut, int weeks)
    {
        int lastIn = schedule.Sealed ?? weeks;
        int opened = schedule.Opened ?? int.MaxValue;
        int emptyBy = schedule.Opened is { } o && runOut is { } n ? o + n - 1 : int.MaxValue;
        return new Spot(place, SpotKind.Plain,
            All(weeks, w => w <= lastIn), All(weeks, w => w <= lastIn || w >= opened), All(weeks, w => w < emptyBy),
            w => w > lastIn && w < opened);
    }

    /// <summary>The opening weeks that a room may still have: after it is sealed, not before the as-of week; null: stays closed.</summary>
    public static IEnumerable<int> OpeningWeeks(PlanningInstance instance, int place)
    {
        int first = Math.Max(instance.AsOf, instance.Places[place].SealedWeek is { } s ? s + 1 : instance.AsOf + 1);
        for (int o = first; o < instance.Weeks; o++) yield return o;
    }

    /// <summary>The last week in which something may leave a room opened in week o; Weeks where it may also stand to the end.</summary>
    public static int LastWeekOut(PlanningInstance instance, int place, int opened) =>
        instance.Places[place].RunOut is { } n && opened + n - 1 < instance.Weeks ? opened + n - 1 : instance.Weeks;

    private static bool[] All(int weeks, Func<int, bool> allowed) => [.. Enumerable.Range(0, weeks).Select(allowed)];
}
