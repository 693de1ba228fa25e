using Cloveshed.Ledger;

namespace Cloveshed.Web.Shared;

/// <summary>How a log's records are read and folded.</summary>
/// <param name="After">The records above a number, in the order of facts.</param>
/// <param name="Seq">A record's number.</param>
/// <param name="Fold">The log of records told in a time zone, by a day's end; null: by now.</param>
public sealed record RecordReading<TRecord, TLog>(Func<long, IReadOnlyList<TRecord>> After, Func<TRecord, long> Seq, Func<IReadOnlyList<TRecord>, TimeZoneInfo, AsOf?, TLog> Fold);

/// <summary>
/// A log that is folded apart from the shed's state, carried on by what is new: a page after a record reads that one fact and no other. Past days
/// are folded once for each head of the ledger.
/// </summary>
public sealed class RecordShelf<TRecord, TLog>(ShedLedger ledger, TimeProvider clock, RecordReading<TRecord, TLog> reads)
{
    private const int Room = 4;

    private readonly Lock reading = new();
    private readonly List<TRecord> records = [];
    private readonly Shelf<TLog> past = new(Room);
    private TLog now = reads.Fold([], clock.LocalTimeZone, null);
    private LedgerHead reached = LedgerHead.None;

    /// <param name="when">Null: now.</param>
    public TLog Of(AsOf? when)
    {
        LedgerHead head = ledger.Head();
        lock (reading)
        {
            if (head != reached)
            {
                CatchUp(head);
            }

            if (when is null)
            {
                return now;
            }

            TRecord[] all = [.. records];
            return past.Of($"{when.Day:R} {when.Knowledge} {reached.Hash}", () => reads.Fold(all, clock.LocalTimeZone, when));
        }
    }

    private void CatchUp(LedgerHead head)
    {
        // Another ledger was put in this one's place: then it is read anew.
        if (head.Seq <= reached.Seq)
        {
            records.Clear();
            reached = LedgerHead.None;
        }

        IReadOnlyList<TRecord> fresh = reads.After(records.Count == 0 ? 0 : reads.Seq(records[^1]));
        if (fresh.Count > 0 || reached == LedgerHead.None)
        {
            records.AddRange(fresh);
            now = reads.Fold(records, clock.LocalTimeZone, null);
        }

        reached = head;
    }
}
