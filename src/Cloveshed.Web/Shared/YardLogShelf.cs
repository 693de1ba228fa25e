using Cloveshed.Ledger;
using Cloveshed.Ledger.Yard;

namespace Cloveshed.Web.Shared;

/// <summary>Weather, drying and looks at lots, carried on by the facts that are new; past days are folded once for each head of the ledger.</summary>
public sealed class YardLogShelf(ShedLedger ledger, TimeProvider clock)
{
    private const int Room = 4;

    private readonly Lock reading = new();
    private readonly List<YardRecord> records = [];
    private readonly Shelf<YardLog> past = new(Room);
    private YardLog now = YardLog.Empty;
    private LedgerHead reached = LedgerHead.None;

    /// <param name="when">Null: now.</param>
    public YardLog Of(AsOf? when)
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

            YardRecord[] all = [.. records];
            return past.Of($"{when.Day:R} {when.Knowledge} {reached.Hash}", () => new YardLog(all, clock.LocalTimeZone, when));
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

        IReadOnlyList<YardRecord> fresh = ledger.YardRecords(records.Count == 0 ? 0 : records[^1].Seq);
        if (fresh.Count > 0 || reached == LedgerHead.None)
        {
            records.AddRange(fresh);
            now = new YardLog(records, clock.LocalTimeZone);
        }

        reached = head;
    }
}
