using System.Data.Common;
using System.Globalization;
using System.Text.Json;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Folds;
using Cloveshed.Ledger.Store;

namespace Cloveshed.Ledger.Proofs;

/// <summary>
/// Proves a ledger from its facts alone: the chain is worked out again, documents are hashed again, and the read tables are compared
/// with what the facts come to when folded anew.
/// </summary>
internal static class LedgerProof
{
    private const int MostFlaws = 1000;

    public static VerifyResult Verify(LedgerStore store, DbConnection connection)
    {
        List<LedgerFlaw> flaws = [.. store.CheckStorage(connection).Select(line => new LedgerFlaw("storage", store.Name, line, "a sound file"))];
        using DbTransaction transaction = store.BeginReading(connection);
        (LedgerHead head, ShedState? state) = Walk(connection, transaction, flaws);
        CheckDocuments(connection, transaction, flaws);
        if (state is not null)
            flaws.AddRange(Differences(connection, transaction, state));
        return new VerifyResult(head.Seq, head, [.. flaws.Take(MostFlaws)]);
    }

    public static RebuildResult Rebuild(LedgerStore store, DbConnection connection)
    {
        using DbTransaction transaction = store.BeginWriting(connection);
        List<LedgerFlaw> flaws = [];
        (LedgerHead head, ShedState? state) = Walk(connection, transaction, flaws);
        if (flaws.Count > 0 || state is null)
            return new RebuildResult(head.Seq, head, [.. flaws.Take(MostFlaws)], Rebuilt: false);
        List<LedgerFlaw> differences = [.. Differences(connection, transaction, state).Take(MostFlaws)];
        FoldTables.Replace(connection, transaction, state);
        transaction.Commit();
        return new RebuildResult(head.Seq, head, differences, Rebuilt: true);
    }

    /// <summary>The chain from its first fact, and the state that it comes to; null where a fact cannot be folded.</summary>
    private static (LedgerHead Head, ShedState? State) Walk(DbConnection connection, DbTransaction transaction, List<LedgerFlaw> flaws)
    {
        ShedFold? fold = new(ShedState.Empty);
        LedgerHead reached = LedgerHead.None;
        foreach (StoredFact fact in FactLog.Read(connection, transaction, long.MinValue))
        {
            CheckFact(fact, reached, flaws);
            fold = Folded(fold, fact, flaws);
            reached = new LedgerHead(fact.Seq, fact.Hash);
        }
        LedgerHead said = FactLog.Head(connection, transaction);
        if (said != reached)
            flaws.Add(new("head", "ledger_head", $"fact {Number(said.Seq)}, {said.Hash}", $"fact {Number(reached.Seq)}, {reached.Hash}"));
        return (reached, fold?.Finished(reached));
    }

    private static void CheckFact(StoredFact fact, LedgerHead before, List<LedgerFlaw> flaws)
    {
        if (flaws.Count >= MostFlaws)
            return;
        string where = $"fact {Number(fact.Seq)} ({fact.Kind} {fact.Id})";
        if (fact.Seq != before.Seq + 1)
            flaws.Add(new("seq", where, Number(fact.Seq), Number(before.Seq + 1)));
        if (fact.Prev != before.Hash)
            flaws.Add(new("prev", where, fact.Prev, before.Hash));
        if (FactChain.Hash(fact) is var hash && hash != fact.Hash)
            flaws.Add(new("hash", where, fact.Hash, hash));
        if (!FactKinds.IsKnown(fact.Kind))
            flaws.Add(new("kind", where, fact.Kind, "a kind that this program knows"));
        if (Canonical(fact.Body) is var canonical && canonical != fact.Body)
            flaws.Add(new("body", where, "a body that is not canonical JSON", canonical ?? "canonical JSON"));
    }

    private static string? Canonical(string body)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(body);
            return CanonicalJson.Of(document.RootElement);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static ShedFold? Folded(ShedFold? fold, StoredFact fact, List<LedgerFlaw> flaws)
    {
        try
        {
            fold?.Apply(fact);
            return fold;
        }
        catch (Exception problem) when (problem is BodyFault or JsonException or FormatException or OverflowException)
        {
            flaws.Add(new("body", $"fact {Number(fact.Seq)} ({fact.Kind} {fact.Id})", problem.Message, "a body of its kind's form"));
            return null;
        }
    }

    private static void CheckDocuments(DbConnection connection, DbTransaction transaction, List<LedgerFlaw> flaws)
    {
        List<string> stored = FactLog.Documents(connection, transaction);
        foreach (string digest in stored)
            if (FactLog.Document(connection, transaction, digest) is { } bytes && FactChain.Digest(bytes) is var found && found != digest)
                flaws.Add(new("document", digest, found, digest));
        foreach (string kind in new[] { FactKinds.PlanMade, FactKinds.PlanRefused })
            foreach (StoredFact fact in FactLog.Read(connection, transaction, long.MinValue, kind: kind))
                if (NamedDocument(fact) is { } named && !stored.Contains(named))
                    flaws.Add(new("document", named, "no such document", $"the document that fact {Number(fact.Seq)} names"));
    }

    private static string? NamedDocument(StoredFact fact)
    {
        try
        {
            return Body.Of(fact.Body).TextOrNone("document");
        }
        catch (Exception problem) when (problem is BodyFault or JsonException)
        {
            return null; // said of the body already
        }
    }

    private static IEnumerable<LedgerFlaw> Differences(DbConnection connection, DbTransaction transaction, ShedState state)
    {
        Dictionary<(string, string), string> expected = FoldRecords.Of(state).ToDictionary(record => (record.Table, record.Key), record => record.Content);
        foreach (FoldRecord held in FoldTables.Records(connection, transaction))
        {
            if (!expected.Remove((held.Table, held.Key), out string? content))
                yield return new("fold", $"{held.Table} {held.Key}", held.Content, "no such row");
            else if (content != held.Content)
                yield return new("fold", $"{held.Table} {held.Key}", held.Content, content);
        }
        foreach (((string table, string key), string content) in expected)
            yield return new("fold", $"{table} {key}", "no such row", content);
    }

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
