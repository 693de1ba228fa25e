using System.Collections.Concurrent;
using System.Data.Common;
using Cloveshed.Ledger.Appending;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Folds;
using Cloveshed.Ledger.Proofs;
using Cloveshed.Ledger.Store;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger;

/// <summary>
/// A shed's facts in a database: added at the end, chained by hashes, never changed. Any number of threads may use one ledger, and any
/// number of processes one file. What the database or disk will not do comes as <see cref="LedgerFault"/>.
/// </summary>
public sealed class ShedLedger : IDisposable
{
    internal static readonly Dictionary<string, byte[]> NoDocuments = [];

    private readonly LedgerStore store;
    private readonly TimeProvider clock;
    private readonly Lock writing = new();
    private readonly ConcurrentBag<Reader> readers = [];
    private readonly KeptPasts pasts = new();
    private DbConnection? writer;
    private ShedState? current;
    private bool disposed;

    private ShedLedger(LedgerStore store, TimeProvider clock) => (this.store, this.clock) = (store, clock);

    /// <summary>Opens a ledger; makes it where there is none, and brings an older one up to this program.</summary>
    public static ShedLedger Open(LedgerAddress address, TimeProvider clock) => Open(new SqliteStore(address.File), clock);

    /// <summary>Opens a ledger that must be there already.</summary>
    public static ShedLedger OpenExisting(LedgerAddress address, TimeProvider clock)
    {
        new SqliteStore(address.File).Find();
        return Open(address, clock);
    }

    internal static ShedLedger Open(LedgerStore store, TimeProvider clock)
    {
        store.MakeReady();
        return new ShedLedger(store, clock);
    }

    /// <summary>
    /// Takes a batch of facts for good, all or nothing, with the documents that they name by SHA-256. Returned means durable. Facts that
    /// were taken before are answered as they were then.
    /// </summary>
    public Appended Append(IReadOnlyList<NewFact> batch, IReadOnlyDictionary<string, byte[]>? documents = null, TextLanguage language = TextLanguage.English) =>
        BatchCheck.Form(batch, documents ?? NoDocuments, clock.GetUtcNow(), language) switch
        {
            (_, { Count: > 0 } refusals) => new Appended.Refused(refusals),
            (var forms, _) => Append(forms, documents ?? NoDocuments, language, unless: null),
        };

    /// <param name="unless">Asked of the shed as it is when the writing is ours alone: then nothing is taken, as of a batch without facts.</param>
    internal Appended Append(IReadOnlyList<FormedFact> batch, IReadOnlyDictionary<string, byte[]> documents, TextLanguage language, Func<ShedState, bool>? unless)
    {
        lock (writing)
            return store.Do(() =>
            {
                DbConnection connection = Writer();
                using DbTransaction transaction = store.BeginWriting(connection);
                ShedState now = CaughtUp(connection, transaction);
                if (unless?.Invoke(now) == true)
                    return new Appended.Accepted([], Again: true);
                using FactLog.Finder finder = new(connection, transaction);
                (CheckedBatch? taken, IReadOnlyList<Refusal> refusals) = BatchCheck.Check(
                    batch, now, clock.GetUtcNow(), language, finder.Find, fact => FactLog.IsRecordCorrected(connection, transaction, fact), digest => documents.ContainsKey(digest) || FactLog.Document(connection, transaction, digest) is not null);
                if (taken is null)
                    return new Appended.Refused(refusals);
                if (taken.New.Count == 0)
                    return new Appended.Accepted(taken.Answer, Again: true);
                foreach ((string digest, byte[] bytes) in documents)
                    FactLog.AddDocument(connection, transaction, digest, bytes);
                FactLog.Append(connection, transaction, taken.New);
                FoldTables.Write(connection, transaction, taken.Fold, taken.State);
                transaction.Commit();
                Remember(taken.State);
                return (Appended)new Appended.Accepted(taken.Answer, Again: false);
            });
    }

    /// <summary>
    /// Takes a piece of work of this shed, such as planning, for this process alone, until it is disposed of or the process ends, however it ends. Null where
    /// another process has it. No fact hangs on it: it only spares two processes the same work.
    /// </summary>
    /// <param name="work">A short name in small letters.</param>
    public IDisposable? TryHold(string work) => store.TryHold(work);

    /// <summary>The last fact.</summary>
    public LedgerHead Head() => Reading(reader => reader.Head());

    /// <summary>Facts in their order, read a thousand at a time, so that nothing is held while they are looked at.</summary>
    /// <param name="after">Only facts above this number.</param>
    /// <param name="kind">Only facts of this kind.</param>
    /// <param name="most">At most so many.</param>
    public IEnumerable<Fact> Read(long after = 0, string? kind = null, int? most = null)
    {
        const int Page = 1000;
        int left = most ?? int.MaxValue;
        while (left > 0)
        {
            List<StoredFact> page = Reading(reader => FactLog.Read(reader.Connection, null, after, kind: kind, most: Math.Min(Page, left)).ToList());
            foreach (StoredFact fact in page)
                yield return fact.Opened();
            if (page.Count < Page)
                yield break;
            after = page[^1].Seq;
            left -= page.Count;
        }
    }

    /// <summary>What was said of places and rooms above a number, in the order of facts.</summary>
    public IReadOnlyList<Rooms.RoomRecord> RoomRecords(long after = 0) => Reading(reader => (IReadOnlyList<Rooms.RoomRecord>)
        [.. FactLog.ReadKinds(reader.Connection, FactKinds.OfRooms, after).Select(Rooms.RoomBodies.Record)]);

    /// <summary>What was said of weather, drying and looks at lots above a number, in the order of facts.</summary>
    public IReadOnlyList<Yard.YardRecord> YardRecords(long after = 0) => Reading(reader => (IReadOnlyList<Yard.YardRecord>)
        [.. FactLog.ReadKinds(reader.Connection, FactKinds.OfYard, after).Select(Yard.YardBodies.Record)]);

    /// <summary>Facts from the last one back.</summary>
    /// <param name="most">At most so many.</param>
    /// <param name="before">Only facts below this number.</param>
    /// <param name="kind">Only facts of this kind.</param>
    /// <param name="lot">Only facts that name this lot, and those that correct one of these.</param>
    public IReadOnlyList<Fact> ReadBack(int most, long before = long.MaxValue, string? kind = null, string? lot = null) =>
        Reading(reader => (IReadOnlyList<Fact>)[.. FactLog.ReadBack(reader.Connection, before, most, kind, lot).Select(fact => fact.Opened())]);

    /// <summary>A fact by its id; null where there is none.</summary>
    public Fact? Find(Guid id) => Reading(reader =>
    {
        using FactLog.Finder finder = new(reader.Connection, null);
        return finder.Find(id)?.Opened();
    });

    /// <summary>The shed by all facts so far, those of other processes included.</summary>
    public ShedState Now()
    {
        ShedState? known = Volatile.Read(ref current);
        return Reading(reader =>
        {
            if (known is not null && reader.Head() == known.Head)
                return known;
            using DbTransaction transaction = store.BeginReading(reader.Connection);
            ShedState state = CaughtUp(reader.Connection, transaction);
            Remember(state);
            return state;
        });
    }

    /// <summary>The shed as it was at a day's end. Its head is the ledger's: what is known of the past changes with it.</summary>
    public ShedState AsOf(AsOf when) => Reading(reader =>
    {
        LedgerHead head = reader.Head();
        if (pasts.Find(when, head) is { } known)
            return known;
        using DbTransaction transaction = store.BeginReading(reader.Connection);
        ShedState state = PastFold.Of(reader.Connection, transaction, when, clock.LocalTimeZone);
        pasts.Keep(when, state);
        return state;
    });

    /// <summary>
    /// The shed by the facts up to a number, that one included: what a plan was made from. A number above the last fact's counts as that one.
    /// </summary>
    public ShedState Upto(long seq)
    {
        ShedState? known = Volatile.Read(ref current);
        return Reading(reader =>
        {
            if (known is not null && known.Head.Seq == seq)
                return known;
            using DbTransaction transaction = store.BeginReading(reader.Connection);
            return PastFold.Upto(reader.Connection, transaction, seq);
        });
    }

    /// <summary>A document by its SHA-256; null where there is none.</summary>
    public byte[]? Document(string sha256) => Reading(reader => FactLog.Document(reader.Connection, null, sha256));

    /// <summary>Walks the whole ledger, as of one moment and holding nobody up.</summary>
    public VerifyResult Verify() => Reading(reader => LedgerProof.Verify(store, reader.Connection));

    /// <summary>Makes the read tables again from the facts, and says what they held otherwise. Nobody writes meanwhile.</summary>
    public RebuildResult Rebuild()
    {
        lock (writing)
            return store.Do(() =>
            {
                RebuildResult result = LedgerProof.Rebuild(store, Writer());
                Volatile.Write(ref current, null);
                return result;
            });
    }

    /// <summary>Copies the ledger, as of one moment and while others write, into a new file, which is proved before it gets its name.</summary>
    public BackupResult Backup(string file) => LedgerCopies.Backup(store, file);

    /// <summary>Makes a new ledger of a backup; both are proved, and only then does the new one get its name.</summary>
    public static RestoreResult Restore(string file, LedgerAddress into) => LedgerCopies.Restore(file, into);

    /// <summary>Ends the connections; what was taken is on the disk already.</summary>
    public void Dispose()
    {
        lock (writing)
            disposed = true;
        Rest();
    }

    /// <summary>Ends the connections that nobody uses at the moment; whoever asks next opens one.</summary>
    internal void Rest()
    {
        lock (writing)
        {
            writer?.Dispose();
            writer = null;
        }
        while (readers.TryTake(out Reader? reader))
            reader.Dispose();
    }

    /// <summary>The state at the transaction's moment: the one at hand carried on by what is new, else the read tables.</summary>
    private ShedState CaughtUp(DbConnection connection, DbTransaction transaction)
    {
        LedgerHead head = FactLog.Head(connection, transaction);
        ShedState? known = Volatile.Read(ref current);
        if (known?.Head == head)
            return known;
        if (known is null || known.Head.Seq > head.Seq)
            return FoldTables.Read(connection, transaction, head);
        ShedFold fold = new(known);
        string reached = known.Head.Hash;
        foreach (StoredFact fact in FactLog.Read(connection, transaction, known.Head.Seq, head.Seq))
        {
            // The file was put in another's place while it was open: start from what it holds.
            if (fact.Prev != reached)
                return FoldTables.Read(connection, transaction, head);
            fold.Apply(fact);
            reached = fact.Hash;
        }
        return fold.Finished(head);
    }

    /// <summary>Keeps the newest state that was made.</summary>
    private void Remember(ShedState state)
    {
        while (Volatile.Read(ref current) is var known && (known is null || known.Head.Seq < state.Head.Seq))
            if (Interlocked.CompareExchange(ref current, state, known) == known)
                return;
    }

    private DbConnection Writer()
    {
        ObjectDisposedException.ThrowIf(disposed, this);
        return writer ??= store.Connect(writing: true);
    }

    private T Reading<T>(Func<Reader, T> work)
    {
        ObjectDisposedException.ThrowIf(disposed, this);
        return store.Do(() =>
        {
            Reader reader = readers.TryTake(out Reader? idle) ? idle : new Reader(store.Connect(writing: false));
            bool sound = false;
            try
            {
                T answer = work(reader);
                sound = true;
                return answer;
            }
            finally
            {
                if (sound && !disposed)
                    readers.Add(reader);
                else
                    reader.Dispose();
            }
        });
    }

    /// <summary>A connection that only reads, with the question that is asked most at the ready.</summary>
    private sealed class Reader(DbConnection connection) : IDisposable
    {
        private readonly DbCommand head = FactLog.Command(connection, null, "SELECT seq, hash FROM ledger_head WHERE one = 1");

        public DbConnection Connection => connection;

        public LedgerHead Head()
        {
            using DbDataReader row = head.ExecuteReader();
            return row.Read() ? new LedgerHead(row.GetInt64(0), row.GetString(1)) : LedgerHead.None;
        }

        public void Dispose()
        {
            head.Dispose();
            connection.Dispose();
        }
    }
}
