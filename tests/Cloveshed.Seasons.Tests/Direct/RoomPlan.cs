using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>
/// One way in which a place can be used over the season, as the contract has it: loaded up to and with LastIn, under its
/// atmosphere from the week after until the week before Opens, empty at the end of week EmptyAt and later.
/// </summary>
internal sealed record RoomPlan(int LastIn, int Opens, int EmptyAt)
{
    private const int Never = int.MaxValue;

    /// <summary>A place that is never sealed.</summary>
    internal static RoomPlan Always { get; } = new(Never, Never, Never);

    internal bool MayEnter(int week) => week <= LastIn;
    internal bool MayLeave(int week) => week <= LastIn || week >= Opens;
    internal bool MayStand(int week) => week < EmptyAt;
    internal bool UnderAtmosphere(int week) => week > LastIn && week < Opens;

    /// <summary>Sealed after loading in a week, opened in a later one (null: not in this season).</summary>
    internal static RoomPlan Sealed(int lastIn, int? opens, int? runOut) =>
        new(lastIn, opens ?? Never, opens is { } o && runOut is { } n ? o + n - 1 : Never);

    /// <summary>Every way in which a place can be used.</summary>
    internal static RoomPlan[] AllOf(PlanningInstance instance, int place)
    {
        InstancePlace p = instance.Places[place];
        if (p.Kind != PlaceKind.Sealed) return [Always];
        if (p.SealedWeek is { } before)
            return [Sealed(before, null, p.RunOut), .. Openings(Math.Max(instance.AsOf, before + 1)).Select(o => Sealed(before, o, p.RunOut))];
        // What is dug straight into a room comes in, so it is not sealed before; the room may be sealed as it stands, before the first week.
        int[] dug = [.. instance.Rows.Where(r => r.Place == place && r.FirstMove > r.Start).Select(r => r.Start)];
        int first = dug.Length > 0 ? dug.Max() : instance.AsOf - 1;
        return
        [
            Always,
            .. Enumerable.Range(first, instance.Weeks - first).SelectMany(s =>
                Openings(Math.Max(instance.AsOf, s + 1)).Select(o => (int?)o).Append(null).Select(o => Sealed(s, o, p.RunOut))),
        ];

        IEnumerable<int> Openings(int from) => Enumerable.Range(from, Math.Max(0, instance.Weeks - from));
    }

    /// <summary>The one way that a choice of room weeks holds.</summary>
    internal static RoomPlan Held(PlanningInstance instance, RoomChoice choice, int place)
    {
        if (instance.Places[place].Kind != PlaceKind.Sealed) return Always;
        RoomSchedule schedule = choice.OfPlace[place] ?? throw new ArgumentException("The direct model holds every room or none.", nameof(choice));
        return schedule.Sealed is { } s ? Sealed(s, schedule.Opened, instance.Places[place].RunOut) : Always;
    }
}
