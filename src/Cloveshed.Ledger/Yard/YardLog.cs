using Cloveshed.Core;
using Cloveshed.Core.Yard;
using NodaTime;

namespace Cloveshed.Ledger.Yard;

/// <summary>A record that counts, at its moment by the shed's clock.</summary>
public sealed record Told<TSaid>(TSaid Said, LocalDateTime At, YardRecord Record) where TSaid : YardSaid;

/// <summary>
/// Weather, drying and looks at lots: a pure fold of records, in which a record that another corrects or takes back no longer counts. It
/// stands apart from <see cref="ShedState"/>, as readings of rooms do.
/// </summary>
public sealed class YardLog
{
    private readonly Dictionary<PlaceId, SortedDictionary<LocalDateTime, WeatherRow>> weather = [];
    private readonly Dictionary<PlaceId, Told<YardIs>> yards = [];
    private readonly ILookup<LotId, Told<SackSaid>> sacks;
    private readonly ILookup<LotId, Told<LookSaid>> looks;

    /// <param name="records">In the order of facts.</param>
    /// <param name="here">The shed's time zone, in which moments are told.</param>
    /// <param name="when">Only what happened, and was known, by that day's end; null: all.</param>
    public YardLog(IReadOnlyList<YardRecord> records, TimeZoneInfo here, AsOf? when = null)
    {
        LocalDateTime Local(DateTimeOffset at) => LocalDateTime.FromDateTime(TimeZoneInfo.ConvertTime(at, here).DateTime);
        YardRecord[] counted = [.. records.Where(record => when is null || when.Counts(record.At, record.RecordedAt, here))];
        HashSet<Guid> gone = [.. counted.Where(record => record.Corrects is not null).Select(record => record.Corrects!.Value)];
        Told<TSaid>[] Of<TSaid>() where TSaid : YardSaid =>
            [.. counted.Where(record => record.Said is TSaid && !gone.Contains(record.Fact)).Select(record => new Told<TSaid>((TSaid)record.Said!, Local(record.At), record))];
        LastSeq = counted.Length == 0 ? 0 : counted[^1].Seq;
        Weather = Of<WeatherSaid>();
        foreach (Told<WeatherSaid> told in Weather)
        {
            if (!weather.TryGetValue(told.Said.Place, out SortedDictionary<LocalDateTime, WeatherRow>? rows))
                weather.Add(told.Said.Place, rows = []);
            // What was said of a moment last is what counts: a measured hour takes the place of a forecast one.
            foreach (WeatherRow row in told.Said.Rows)
                rows[row.From] = row;
        }

        foreach (Told<YardIs> yard in Of<YardIs>())
            yards[yard.Said.Place] = yard;
        sacks = Of<SackSaid>().OrderBy(one => one.At).ThenBy(one => one.Record.Seq).ToLookup(one => one.Said.Lot);
        looks = Of<LookSaid>().OrderBy(one => one.At).ThenBy(one => one.Record.Seq).ToLookup(one => one.Said.Lot);
    }

    /// <summary>Nothing was said.</summary>
    public static YardLog Empty { get; } = new([], TimeZoneInfo.Utc);

    /// <summary>The number of the last record that is in it; 0 for none.</summary>
    public long LastSeq { get; }

    /// <summary>Weather as it was told, in the order of facts.</summary>
    public IReadOnlyList<Told<WeatherSaid>> Weather { get; }

    /// <summary>Weather of a place in the order of time, one row for each moment.</summary>
    public IReadOnlyList<WeatherRow> WeatherOf(PlaceId place) => weather.TryGetValue(place, out SortedDictionary<LocalDateTime, WeatherRow>? rows) ? [.. rows.Values] : [];

    /// <summary>What a curing place is; null where nobody said.</summary>
    public YardIs? YardOf(PlaceId place) => yards.GetValueOrDefault(place)?.Said;

    /// <summary>Weighings of a lot's sacks in the order of time.</summary>
    public IReadOnlyList<Told<SackSaid>> SacksOf(LotId lot) => [.. sacks[lot]];

    /// <summary>Looks at a lot in the order of time.</summary>
    public IReadOnlyList<Told<LookSaid>> LooksOf(LotId lot) => [.. looks[lot]];

    /// <summary>Lots that were looked at.</summary>
    public IEnumerable<LotId> LotsLooked => looks.Select(lot => lot.Key);
}
