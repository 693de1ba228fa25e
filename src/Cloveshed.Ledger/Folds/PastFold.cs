using System.Data.Common;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Store;

namespace Cloveshed.Ledger.Folds;

/// <summary>
/// The shed as of a past day. The few facts that are not rows are all read; of rows only those of the season that counts on that day,
/// so that a season imported weekly does not make the past slower to look at.
/// </summary>
internal static class PastFold
{
    public static ShedState Of(DbConnection connection, DbTransaction transaction, AsOf when, TimeZoneInfo here)
    {
        LedgerHead head = FactLog.Head(connection, transaction);
        List<StoredFact> others = [.. FactLog.ReadOthers(connection, transaction)];
        List<StoredFact> seasons = others.FindAll(fact => fact.Kind == FactKinds.SeasonOpened);
        int counting = seasons.FindLastIndex(fact => Counts(fact, when, here));
        IEnumerable<StoredFact> rows = counting < 0 ? [] : FactLog
            .Read(connection, transaction, seasons[counting].Seq, counting + 1 < seasons.Count ? seasons[counting + 1].Seq : head.Seq)
            .Where(fact => FactKinds.OfRow(fact.Kind) is not null);
        ShedFold fold = new(ShedState.Empty);
        foreach (StoredFact fact in Merged(others, rows))
            fold.Apply(fact, Counts(fact, when, here));
        return fold.Finished(head);
    }

    /// <summary>The shed by all facts up to a number, that one included.</summary>
    public static ShedState Upto(DbConnection connection, DbTransaction transaction, long seq)
    {
        List<StoredFact> others = [.. FactLog.ReadOthers(connection, transaction).TakeWhile(fact => fact.Seq <= seq)];
        long opened = others.FindLast(fact => fact.Kind == FactKinds.SeasonOpened)?.Seq ?? seq;
        ShedFold fold = new(ShedState.Empty);
        LedgerHead head = LedgerHead.None;
        foreach (StoredFact fact in Merged(others, FactLog.Read(connection, transaction, opened, seq).Where(fact => FactKinds.OfRow(fact.Kind) is not null)))
        {
            fold.Apply(fact);
            head = new LedgerHead(fact.Seq, fact.Hash);
        }
        return fold.Finished(head);
    }

    private static bool Counts(StoredFact fact, AsOf when, TimeZoneInfo here) => when.Counts(StoredFact.Time(fact.HappenedAt), StoredFact.Time(fact.RecordedAt), here);

    /// <summary>Two lists in the order of their numbers as one.</summary>
    private static IEnumerable<StoredFact> Merged(List<StoredFact> others, IEnumerable<StoredFact> rows)
    {
        int at = 0;
        foreach (StoredFact row in rows)
        {
            while (at < others.Count && others[at].Seq < row.Seq)
                yield return others[at++];
            yield return row;
        }
        while (at < others.Count)
            yield return others[at++];
    }
}
