using System.Data.Common;
using System.Globalization;
using Cloveshed.Ledger.Facts;

namespace Cloveshed.Ledger.Store;

/// <summary>Facts and documents as rows: read in their order, added at the end, and never anything else.</summary>
internal static class FactLog
{
    private const string Columns = "seq, id, kind, happened_at, recorded_at, said_by, device, place, body, corrects, batch, prev, hash";

    public static LedgerHead Head(DbConnection connection, DbTransaction? transaction)
    {
        using DbCommand command = Command(connection, transaction, "SELECT seq, hash FROM ledger_head WHERE one = 1");
        using DbDataReader reader = command.ExecuteReader();
        return reader.Read() ? new LedgerHead(reader.GetInt64(0), reader.GetString(1)) : LedgerHead.None;
    }

    /// <summary>Facts above a number up to another, that one included, in their order.</summary>
    public static IEnumerable<StoredFact> Read(DbConnection connection, DbTransaction? transaction, long after, long upTo = long.MaxValue, string? kind = null, int? most = null)
    {
        string limits = (kind is null ? "" : " AND kind = @kind") + " ORDER BY seq" + (most is { } limit ? " LIMIT " + limit.ToString(CultureInfo.InvariantCulture) : "");
        using DbCommand command = Command(connection, transaction, $"SELECT {Columns} FROM facts WHERE seq > @after AND seq <= @upto{limits}");
        Add(command, "@after", after);
        Add(command, "@upto", upTo);
        if (kind is not null)
            Add(command, "@kind", kind);
        using DbDataReader reader = command.ExecuteReader();
        while (reader.Read())
            yield return Fact(reader);
    }

    /// <summary>Facts below a number, the last first.</summary>
    public static IEnumerable<StoredFact> ReadBack(DbConnection connection, long before, int most, string? kind, string? lot)
    {
        // A body names its lot in one way only, because it is canonical. Facts that correct one without naming the lot again are of few
        // kinds: asked by those first, the whole is walked once.
        const string NamesLot = "body LIKE @lot ESCAPE '!'";
        string limits = (kind is null ? "" : " AND kind = @kind")
            + (lot is null ? "" : $" AND ({NamesLot} OR ((kind LIKE '%.dropped' OR kind = '{FactKinds.HoldLifted}') AND corrects IN (SELECT id FROM facts WHERE {NamesLot})))");
        using DbCommand command = Command(connection, null,
            $"SELECT {Columns} FROM facts WHERE seq < @before{limits} ORDER BY seq DESC LIMIT {most.ToString(CultureInfo.InvariantCulture)}");
        Add(command, "@before", before);
        if (kind is not null)
            Add(command, "@kind", kind);
        if (lot is not null)
        {
            System.Text.StringBuilder named = new("\"lot\":");
            CanonicalJson.AppendString(named, lot);
            Add(command, "@lot", $"%{named.Replace("!", "!!").Replace("%", "!%").Replace("_", "!_")}%");
        }
        using DbDataReader reader = command.ExecuteReader();
        while (reader.Read())
            yield return Fact(reader);
    }

    /// <summary>Facts of kinds that are not about a row of a file: few, however often a season is imported.</summary>
    public static IEnumerable<StoredFact> ReadOthers(DbConnection connection, DbTransaction? transaction)
    {
        string kinds = string.Join(", ", FactKinds.Others.Select(kind => $"'{kind}'"));
        using DbCommand command = Command(connection, transaction, $"SELECT {Columns} FROM facts WHERE kind IN ({kinds}) ORDER BY seq");
        using DbDataReader reader = command.ExecuteReader();
        while (reader.Read())
            yield return Fact(reader);
    }

    /// <summary>Facts of some kinds above a number, in their order.</summary>
    public static IEnumerable<StoredFact> ReadKinds(DbConnection connection, IReadOnlyList<string> kinds, long after)
    {
        using DbCommand command = Command(connection, null, $"SELECT {Columns} FROM facts WHERE kind IN ({string.Join(", ", kinds.Select(kind => $"'{kind}'"))}) AND seq > @after ORDER BY seq");
        Add(command, "@after", after);
        using DbDataReader reader = command.ExecuteReader();
        while (reader.Read())
            yield return Fact(reader);
    }

    /// <summary>Whether a fact about a room or the yard corrects that one. Corrections are few and made by hand, so the facts of those kinds are looked through.</summary>
    public static bool IsRecordCorrected(DbConnection connection, DbTransaction? transaction, Guid fact)
    {
        using DbCommand command = Command(connection, transaction, $"SELECT 1 FROM facts WHERE corrects = @fact AND kind IN ({string.Join(", ", FactKinds.OfRooms.Concat(FactKinds.OfYard).Select(kind => $"'{kind}'"))}) LIMIT 1");
        Add(command, "@fact", StoredFact.IdText(fact));
        return command.ExecuteScalar() is not null;
    }

    public static byte[]? Document(DbConnection connection, DbTransaction? transaction, string sha256)
    {
        using DbCommand command = Command(connection, transaction, "SELECT bytes FROM documents WHERE sha256 = @sha256");
        Add(command, "@sha256", sha256);
        return (byte[]?)command.ExecuteScalar();
    }

    public static List<string> Documents(DbConnection connection, DbTransaction? transaction)
    {
        using DbCommand command = Command(connection, transaction, "SELECT sha256 FROM documents ORDER BY sha256");
        using DbDataReader reader = command.ExecuteReader();
        List<string> names = [];
        while (reader.Read())
            names.Add(reader.GetString(0));
        return names;
    }

    public static void AddDocument(DbConnection connection, DbTransaction transaction, string sha256, byte[] bytes)
    {
        using DbCommand command = Command(connection, transaction, "INSERT INTO documents (sha256, bytes) VALUES (@sha256, @bytes) ON CONFLICT (sha256) DO NOTHING");
        Add(command, "@sha256", sha256);
        Add(command, "@bytes", bytes);
        command.ExecuteNonQuery();
    }

    public static void Append(DbConnection connection, DbTransaction transaction, IReadOnlyList<StoredFact> facts)
    {
        using DbCommand command = Command(connection, transaction,
            $"INSERT INTO facts ({Columns}) VALUES (@seq, @id, @kind, @happened, @recorded, @by, @device, @place, @body, @corrects, @batch, @prev, @hash)");
        DbParameter[] cells = [.. "seq id kind happened recorded by device place body corrects batch prev hash".Split(' ').Select(name => Add(command, "@" + name, null))];
        foreach (StoredFact fact in facts)
        {
            object?[] values =
            [
                fact.Seq, fact.Id, fact.Kind, fact.HappenedAt, fact.RecordedAt, fact.By, fact.Device, fact.Place, fact.Body,
                (object?)fact.Corrects ?? DBNull.Value, fact.Batch, fact.Prev, fact.Hash,
            ];
            for (int at = 0; at < cells.Length; at++)
                cells[at].Value = values[at];
            command.ExecuteNonQuery();
        }
        using DbCommand head = Command(connection, transaction,
            "INSERT INTO ledger_head (one, seq, hash) VALUES (1, @seq, @hash) ON CONFLICT (one) DO UPDATE SET seq = excluded.seq, hash = excluded.hash");
        Add(head, "@seq", facts[^1].Seq);
        Add(head, "@hash", facts[^1].Hash);
        head.ExecuteNonQuery();
    }

    /// <summary>Looks ids up, one prepared question for all of a batch.</summary>
    public sealed class Finder : IDisposable
    {
        private readonly DbCommand command;
        private readonly DbParameter id;

        public Finder(DbConnection connection, DbTransaction? transaction)
        {
            command = Command(connection, transaction, $"SELECT {Columns} FROM facts WHERE id = @id");
            id = Add(command, "@id", null);
        }

        public StoredFact? Find(Guid fact)
        {
            id.Value = StoredFact.IdText(fact);
            using DbDataReader reader = command.ExecuteReader();
            return reader.Read() ? Fact(reader) : null;
        }

        public void Dispose() => command.Dispose();
    }

    public static DbCommand Command(DbConnection connection, DbTransaction? transaction, string text)
    {
        DbCommand command = connection.CreateCommand();
        command.CommandText = text;
        command.Transaction = transaction;
        return command;
    }

    public static DbParameter Add(DbCommand command, string name, object? value)
    {
        DbParameter parameter = command.CreateParameter();
        parameter.ParameterName = name;
        parameter.Value = value;
        command.Parameters.Add(parameter);
        return parameter;
    }

    private static StoredFact Fact(DbDataReader row) => new(
        row.GetInt64(0), row.GetString(1), row.GetString(2), row.GetString(3), row.GetString(4), row.GetString(5), row.GetString(6), row.GetString(7),
        row.GetString(8), row.IsDBNull(9) ? null : row.GetString(9), row.GetString(10), row.GetString(11), row.GetString(12));
}
