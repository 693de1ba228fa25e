using System.Globalization;
using System.Text.Json;

namespace Cloveshed.Ledger.Facts;

/// <summary>A fact as its row holds it: texts, so that what is hashed is what is stored.</summary>
internal sealed record StoredFact(
    long Seq, string Id, string Kind, string HappenedAt, string RecordedAt, string By, string Device, string Place, string Body,
    string? Corrects, string Batch, string Prev, string Hash)
{
    /// <summary>ISO 8601 with seven decimals of a second and the offset: one text for one time and place.</summary>
    public static string TimeText(DateTimeOffset time) => time.ToString("yyyy-MM-dd'T'HH:mm:ss.fffffffzzz", CultureInfo.InvariantCulture);

    public static DateTimeOffset Time(string text) => DateTimeOffset.ParseExact(text, "yyyy-MM-dd'T'HH:mm:ss.fffffffzzz", CultureInfo.InvariantCulture);

    public static string IdText(Guid id) => id.ToString("D", CultureInfo.InvariantCulture);

    /// <summary>As it is handed out.</summary>
    public Fact Opened() => new(
        Seq, Guid.ParseExact(Id, "D"), Kind, Time(HappenedAt), Time(RecordedAt), By, Device, Place, JsonElement.Parse(Body),
        Corrects is null ? null : Guid.ParseExact(Corrects, "D"), Guid.ParseExact(Batch, "D"), Prev, Hash);
}
