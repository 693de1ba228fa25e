using System.Text.Json;
using Cloveshed.Ledger.Facts;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger.Appending;

/// <summary>A fact in the texts in which it will be stored, without its place in the chain.</summary>
/// <param name="Fresh">Its id was made by this program just now: it cannot have been taken before.</param>
internal sealed record FormedFact(Guid Id, Guid? Corrects, StoredFact Stored, bool Fresh = false);

/// <summary>What can be said of a fact by itself, and the texts in which it will be stored.</summary>
internal static class FactForm
{
    /// <summary>Characters of by, device and place.</summary>
    public const int LongestText = 200;

    /// <summary>Bytes of a body: a row of a season's file has at most some 40,000; a file belongs into a document.</summary>
    public const int LargestBody = 1_000_000;

    private static readonly TimeSpan FurthestAhead = TimeSpan.FromDays(1);

    /// <summary>The fact without its place in the chain, or why it cannot be one.</summary>
    public static (FormedFact? Fact, Refusal? Refusal) Of(NewFact fact, DateTimeOffset now, TextLanguage language)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, language, words);
        if (fact.Id.Version != 7 || (fact.Id.Variant & 0xC) != 8)
            return (null, Refuse(RefusalTexts.IdForm, StoredFact.IdText(fact.Id)));
        if (!FactKinds.IsKnown(fact.Kind))
            return (null, Refuse(RefusalTexts.KindUnknown, fact.Kind));
        foreach ((string name, string text, bool needed) in new[] { ("by", fact.By, true), ("device", fact.Device, false), ("place", fact.Place, false) })
            if (text.Length > LongestText || text.Any(char.IsControl) || (needed && string.IsNullOrWhiteSpace(text)))
                return (null, Refuse(RefusalTexts.TextLength, name, LongestText));
        if (fact.HappenedAt > now + FurthestAhead)
            return (null, Refuse(RefusalTexts.TimeAhead, StoredFact.TimeText(fact.HappenedAt)));
        if (fact.Body.ValueKind != JsonValueKind.Object)
            return (null, Refuse(RefusalTexts.BodyForm, fact.Kind, "it should be a JSON object"));
        bool versioned = fact.Body.TryGetProperty("v", out JsonElement version);
        if (versioned && version.GetRawText() != "1")
            return (null, Refuse(RefusalTexts.BodyVersion, version.GetRawText()));
        string? body = versioned ? CanonicalJson.Of(fact.Body) : CanonicalJson.With(fact.Body, "v");
        if (body is null)
            return (null, Refuse(RefusalTexts.BodyForm, fact.Kind, "a key is there twice, a text is no Unicode, or a number is too large"));
        if (body.Length > LargestBody)
            return (null, Refuse(RefusalTexts.BodySize, LargestBody));
        return (new FormedFact(fact.Id, fact.Corrects, Stored(fact.Id, fact.Kind, new FactOrigin(fact.HappenedAt, fact.By, fact.Device, fact.Place), body, fact.Corrects)), null);
    }

    /// <param name="body">Canonical.</param>
    public static StoredFact Stored(Guid id, string kind, FactOrigin origin, string body, Guid? corrects) => new(
        0, StoredFact.IdText(id), kind, StoredFact.TimeText(origin.HappenedAt), "", origin.By, origin.Device, origin.Place, body,
        corrects is { } corrected ? StoredFact.IdText(corrected) : null, "", "", "");

    /// <summary>Whether a fact handed in again is the one that was taken.</summary>
    public static bool Same(StoredFact one, StoredFact other) =>
        one.Kind == other.Kind && one.HappenedAt == other.HappenedAt && one.By == other.By && one.Device == other.Device && one.Place == other.Place
        && one.Body == other.Body && one.Corrects == other.Corrects;
}
