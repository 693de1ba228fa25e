using System.Data.Common;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Cloveshed.Ledger.Store;

/// <summary>A ledger in one SQLite file: write-ahead log, and every commit on the disk before it is answered.</summary>
internal sealed class SqliteStore(string file, int waitSeconds = 20) : LedgerStore
{
    /// <summary>Marks the file as ours (PRAGMA application_id): "Clvs".</summary>
    private const int ApplicationId = 0x436C7673;

    private const string Scripts = "Migrations/";

    /// <summary>The migrations that this program knows, in their order.</summary>
    public static IReadOnlyList<string> Migrations { get; } =
        [.. typeof(SqliteStore).Assembly.GetManifestResourceNames().Where(name => name.StartsWith(Scripts, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).Select(name => name[Scripts.Length..^".sql".Length])];

    /// <summary>For tests: commands to run on each new connection, such as a limit of pages.</summary>
    internal Action<DbConnection>? OnConnect { get; init; }

    public override string Name => file;

    public override void MakeReady()
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(file)) ?? throw new LedgerFault(LedgerFaultKind.NotAnAddress, file);
        if (!Directory.Exists(folder))
            throw new LedgerFault(LedgerFaultKind.FolderMissing, file);
        if (Directory.Exists(file))
            throw new LedgerFault(LedgerFaultKind.CannotOpen, file, "it is a folder");
        Do(() =>
        {
            using SqliteConnection connection = Open(SqliteOpenMode.ReadWriteCreate);
            if (Applied(connection).Count == Migrations.Count)
                return;
            // Only now: another program's file is not touched. The log is the file's for good.
            Execute(connection, "PRAGMA journal_mode = WAL");
            using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);
            // Asked again: another process may have made it while this one waited.
            foreach (string migration in Migrations.Except(Applied(connection, transaction)))
                Execute(connection, Steps(migration), transaction);
            Execute(connection, FormattableString.Invariant($"PRAGMA application_id = {ApplicationId}"), transaction);
            transaction.Commit();
        });
    }

    public override void Find()
    {
        if (!File.Exists(file))
            throw new LedgerFault(LedgerFaultKind.Missing, file);
        Do(() =>
        {
            using SqliteConnection connection = Open(SqliteOpenMode.ReadWrite);
            if (Applied(connection).Count < Migrations.Count)
                throw new LedgerFault(LedgerFaultKind.NotALedger, file);
        });
    }

    /// <summary>
    /// One that reads is opened for writing too and then forbidden it: whichever connection closes last can then tidy up the log.
    /// </summary>
    public override DbConnection Connect(bool writing)
    {
        SqliteConnection connection = Open(SqliteOpenMode.ReadWrite);
        if (!writing)
            Execute(connection, "PRAGMA query_only = ON");
        return connection;
    }

    public override DbTransaction BeginWriting(DbConnection connection) => ((SqliteConnection)connection).BeginTransaction(deferred: false);

    public override DbTransaction BeginReading(DbConnection connection) => ((SqliteConnection)connection).BeginTransaction(deferred: true);

    /// <summary>
    /// A file beside the ledger's that is open to one process at a time: the system lets go of it however that process ends. Where two processes get
    /// past each other in the moment in which the file goes, both work and the ledger takes the first result.
    /// </summary>
    public override IDisposable? TryHold(string work)
    {
        try
        {
            return new FileStream($"{file}.{work}", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (IOException)
        {
            return null;
        }
        catch (UnauthorizedAccessException)
        {
            return null;
        }
    }

    public override IEnumerable<string> CheckStorage(DbConnection connection)
    {
        using DbCommand check = connection.CreateCommand();
        check.CommandText = "PRAGMA integrity_check(20)";
        using DbDataReader found = check.ExecuteReader();
        while (found.Read())
            if (found.GetString(0) is var line && line != "ok")
                yield return line;
    }

    public override void CopyInto(string copy) => Do(() =>
    {
        using (SqliteConnection connection = Open(SqliteOpenMode.ReadWrite))
        using (SqliteCommand command = connection.CreateCommand())
        {
            // Takes one moment's view and holds nobody up; the copy has no log beside it.
            command.CommandText = "VACUUM INTO @copy";
            command.CommandTimeout = 0;
            command.Parameters.AddWithValue("@copy", copy);
            command.ExecuteNonQuery();
        }
        using FileStream written = new(copy, FileMode.Open, FileAccess.ReadWrite);
        written.Flush(flushToDisk: true);
    });

    /// <summary>The one table of errors, by SQLite's primary result codes (sqlite.org/rescode.html).</summary>
    public override LedgerFault? Translate(Exception problem) => problem switch
    {
        SqliteException { SqliteErrorCode: var code } error => new LedgerFault(
            code switch
            {
                3 or 14 => LedgerFaultKind.CannotOpen, // SQLITE_PERM, SQLITE_CANTOPEN
                5 or 6 => LedgerFaultKind.Locked, // SQLITE_BUSY, SQLITE_LOCKED
                8 => LedgerFaultKind.ReadOnly, // SQLITE_READONLY
                10 => LedgerFaultKind.WriteFailed, // SQLITE_IOERR
                11 => LedgerFaultKind.Corrupt, // SQLITE_CORRUPT
                13 => LedgerFaultKind.DiskFull, // SQLITE_FULL
                26 => LedgerFaultKind.NotALedger, // SQLITE_NOTADB
                _ => LedgerFaultKind.Refused,
            },
            file, Words(error), error),
        IOException or UnauthorizedAccessException => new LedgerFault(LedgerFaultKind.WriteFailed, file, problem.Message.ReplaceLineEndings(" "), problem),
        _ => null,
    };

    private SqliteConnection Open(SqliteOpenMode mode)
    {
        SqliteConnection connection = new(new SqliteConnectionStringBuilder
        {
            DataSource = file, Mode = mode, Pooling = false, DefaultTimeout = waitSeconds,
        }.ToString());
        try
        {
            connection.Open();
            // What SQLite keeps with a connection, not with the file.
            Execute(connection, "PRAGMA synchronous = FULL");
            OnConnect?.Invoke(connection);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>The migrations that the file has; none in a new file. Whatever is no ledger of ours, or of a newer program, is a fault.</summary>
    private List<string> Applied(SqliteConnection connection, SqliteTransaction? transaction = null)
    {
        List<string> tables = Column(connection, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'", transaction);
        if (tables.Count == 0)
            return [];
        string id = Column(connection, "SELECT application_id FROM pragma_application_id", transaction)[0];
        if (id != ApplicationId.ToString(CultureInfo.InvariantCulture) || !tables.Contains("__EFMigrationsHistory"))
            throw new LedgerFault(LedgerFaultKind.NotALedger, file);
        List<string> applied = Column(connection, "SELECT \"MigrationId\" FROM \"__EFMigrationsHistory\" ORDER BY \"MigrationId\"", transaction);
        return applied.Except(Migrations).FirstOrDefault() is { } unknown ? throw new LedgerFault(LedgerFaultKind.NewerProgram, file, unknown) : applied;
    }

    /// <summary>
    /// A migration's steps, as the model's tool made them (docs/decisions/0006). They are run in a transaction of ours rather than by the
    /// model's own runner: its lock outlives a killed process and then holds up every later start, and loading it takes longer than
    /// an import.
    /// </summary>
    internal static string Steps(string migration)
    {
        using Stream script = typeof(SqliteStore).Assembly.GetManifestResourceStream($"{Scripts}{migration}.sql")!;
        using StreamReader reader = new(script);
        return reader.ReadToEnd();
    }

    private static List<string> Column(SqliteConnection connection, string query, SqliteTransaction? transaction)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = query;
        command.Transaction = transaction;
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> values = [];
        while (reader.Read())
            values.Add(reader.GetString(0));
        return values;
    }

    private static void Execute(SqliteConnection connection, string commands, SqliteTransaction? transaction = null)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = commands;
        command.Transaction = transaction;
        command.ExecuteNonQuery();
    }

    /// <summary>What SQLite said, without the driver's frame around it.</summary>
    private static string Words(SqliteException error)
    {
        int at = error.Message.IndexOf('\'', StringComparison.Ordinal);
        return at < 0 ? error.Message : error.Message[at..].Trim('\'', '.');
    }
}
