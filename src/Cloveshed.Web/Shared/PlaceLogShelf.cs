using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;

namespace Cloveshed.Web.Shared;

/// <summary>
/// What was read and done in places, carried on by what is new: a page after a reading reads that one fact and no other. Past days are folded once
/// for each head of the ledger.
/// </summary>
public sealed class PlaceLogShelf(ShedLedger ledger, TimeProvider clock)
{
    private const int Room = 4;

    private readonly Lock reading = new();
    private readonly List<RoomRecord> records = [];
    private readonly Shelf<PlaceLog> past = new(Room);
    private PlaceLog now = PlaceLog.Empty;
    private LedgerHead reached = LedgerHead.None;

    /// <param name="when">Null: now.</param>
    public PlaceLog Of(AsOf? when)
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

            RoomRecord[] all = [.. records];
            return past.Of($"{when.Day:R} {when.Knowledge} {reached.Hash}", () => new PlaceLog(all, clock.LocalTimeZone, when));
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

        IReadOnlyList<RoomRecord> fresh = ledger.RoomRecords(records.Count == 0 ? 0 : records[^1].Seq);
        if (fresh.Count > 0 || reached == LedgerHead.None)
        {
            records.AddRange(fresh);
            now = new PlaceLog(records, clock.LocalTimeZone);
        }

        reached = head;
    }
}
