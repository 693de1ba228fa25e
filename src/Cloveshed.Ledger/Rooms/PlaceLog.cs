using Cloveshed.Core;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Keep.Rooms;
using NodaTime;

namespace Cloveshed.Ledger.Rooms;

/// <summary>A record that counts, at its moment by the shed's clock.</summary>
public sealed record Logged<TSaid>(TSaid Said, LocalDateTime At, RoomRecord Record) where TSaid : RoomSaid;

/// <summary>
/// What was read and done in places: a pure fold of records, in which a record that another corrects or withdraws no longer counts.
/// It stands apart from <see cref="ShedState"/>, because readings may come by the minute and nothing is planned from them.
/// </summary>
public sealed class PlaceLog
{
    private readonly ILookup<PlaceId, Logged<AirSaid>> air;
    private readonly ILookup<PlaceId, Logged<StepSaid>> steps;
    private readonly ILookup<PlaceId, Logged<TestSaid>> tests;
    private readonly Dictionary<PlaceId, Logged<RoomIs>> rooms = [];

    /// <param name="records">In the order of facts.</param>
    /// <param name="here">The shed's time zone, in which moments are told.</param>
    /// <param name="when">Only what happened, and was known, by that day's end; null: all.</param>
    public PlaceLog(IReadOnlyList<RoomRecord> records, TimeZoneInfo here, AsOf? when = null)
    {
        List<RoomRecord> counted = when is null ? [.. records] : [.. records.Where(record => when.Counts(record.At, record.RecordedAt, here))];
        LastSeq = counted.Count == 0 ? 0 : counted[^1].Seq;
        HashSet<Guid> gone = [.. counted.Where(record => record.Corrects is not null).Select(record => record.Corrects!.Value)];
        Logged<TSaid>[] Of<TSaid>() where TSaid : RoomSaid =>
        [
            .. counted.Where(record => record.Said is TSaid && !gone.Contains(record.Fact)).OrderBy(record => record.At).ThenBy(record => record.Seq)
                .Select(record => new Logged<TSaid>((TSaid)record.Said!, Local(record.At, here), record)),
        ];
        air = Of<AirSaid>().ToLookup(one => one.Said.Place);
        steps = Of<StepSaid>().ToLookup(one => one.Said.Place);
        tests = Of<TestSaid>().ToLookup(one => one.Said.Place);
        foreach (Logged<RoomIs> room in Of<RoomIs>())
            rooms[room.Said.Place] = room;
    }

    /// <summary>Nothing was said.</summary>
    public static PlaceLog Empty { get; } = new([], TimeZoneInfo.Utc);

    /// <summary>The number of the last record that is in it; 0 for none.</summary>
    public long LastSeq { get; }

    /// <summary>Places of which air was read.</summary>
    public IEnumerable<PlaceId> PlacesRead => air.Select(place => place.Key);

    /// <summary>Readings of a place in the order of time.</summary>
    public IReadOnlyList<Logged<AirSaid>> AirOf(PlaceId place) => [.. air[place]];

    /// <summary>Steps of a room in the order of time.</summary>
    public IReadOnlyList<Logged<StepSaid>> StepsOf(PlaceId place) => [.. steps[place]];

    /// <summary>Tests at a room's door in the order of time.</summary>
    public IReadOnlyList<Logged<TestSaid>> TestsOf(PlaceId place) => [.. tests[place]];

    /// <summary>What a room is; null where nobody described it.</summary>
    public Logged<RoomIs>? RoomOf(PlaceId place) => rooms.GetValueOrDefault(place);

    /// <summary>A room's figures; none where nobody described it.</summary>
    public RoomFigures FiguresOf(PlaceId place) => RoomOf(place)?.Said.Figures ?? RoomFigures.None;

    /// <summary>Readings as the alarms take them.</summary>
    public IReadOnlyList<RoomReading> ReadingsOf(PlaceId place) =>
        [.. air[place].Select(one => new RoomReading(one.At, one.Said.TempC, one.Said.Rh, one.Said.O2, one.Said.Co2, one.Said.Source, one.Said.Who))];

    /// <summary>Readings as a lot's clocks take them: those that have temperature and humidity.</summary>
    public IReadOnlyList<ClimateReading> ClimateOf(PlaceId place) =>
        [.. air[place].Where(one => one.Said is { TempC: not null, Rh: not null }).Select(one => new ClimateReading(one.At, one.Said.TempC!.Value, one.Said.Rh!.Value, one.Said.O2, one.Said.Co2))];

    private static LocalDateTime Local(DateTimeOffset at, TimeZoneInfo here) => LocalDateTime.FromDateTime(TimeZoneInfo.ConvertTime(at, here).DateTime);
}
