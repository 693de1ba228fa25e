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

    /// <summary>As it is stored.</summary>
    public static StoredFact Of(Fact fact) => new(
        fact.Seq, IdText(fact.Id), fact.Kind, TimeText(fact.HappenedAt), TimeText(fact.RecordedAt), fact.By, fact.Device, fact.Place,
        fact.Body.GetRawText(), fact.Corrects is { } corrects ? IdText(corrects) : null, IdText(fact.Batch), fact.Prev, fact.Hash);
}
