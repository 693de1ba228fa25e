using System.Collections.Concurrent;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Shared;

/// <summary>
/// Keeps the last few values that cost time to make, by what they were made from; the one longest unused is let go. Two
/// requests that ask for the same wait for one making.
/// </summary>
internal sealed class Shelf<TValue>(int room)
{
    private readonly ConcurrentDictionary<string, (Lazy<TValue> Value, long Used)> kept = new(StringComparer.Ordinal);
    private long uses;

    public TValue Of(string key, Func<TValue> make)
    {
        long now = Interlocked.Increment(ref uses);
        Lazy<TValue> value = kept.AddOrUpdate(key, _ => (new Lazy<TValue>(make), now), (_, old) => (old.Value, now)).Value;
        while (kept.Count > room)
        {
            kept.TryRemove(kept.MinBy(one => one.Value.Used).Key, out _);
        }

        try
        {
            return value.Value;
        }
        catch
        {
            // A failure is not kept: what could not be read now may be readable in a moment.
            kept.TryRemove(key, out _);
            throw;
        }
    }
}

/// <summary>Plans as they were made, parsed once.</summary>
public sealed class PlanShelf(ShedLedger ledger)
{
    /// <summary>The adopted plan, two that are compared, and the last few looked at.</summary>
    private const int Room = 8;

    private readonly Shelf<PlanAnswer> shelf = new(Room);

    /// <summary>The plan of an entry. Its document carries the season's frame that it was made for.</summary>
    public PlanAnswer Of(PlanEntry entry) => shelf.Of(
        entry.Document,
        () => PlanDocument.Read(ledger.Document(entry.Document) ?? throw new InvalidOperationException($"The ledger holds no document {entry.Document}.")));
}

/// <summary>What is known of the lots of a season, reckoned once for each state of its rows.</summary>
public sealed class LotShelf
{
    private const int Room = 4;

    private readonly Shelf<LotsKnown> shelf = new(Room);

    public LotsKnown Of(string digest, Season season) => shelf.Of(digest, () => LotKnowing.Know(season));
}

/// <summary>Past days as they were looked at, folded once for each head of the ledger: a page of a past day is then as quick as one of now.</summary>
public sealed class PastShelf(ShedLedger ledger)
{
    private const int Room = 4;

    private readonly Shelf<ShedState> shelf = new(Room);

    public ShedState Of(AsOf asOf) => shelf.Of($"{asOf.Day:R} {asOf.Knowledge} {ledger.Head().Hash}", () => ledger.AsOf(asOf));
}
