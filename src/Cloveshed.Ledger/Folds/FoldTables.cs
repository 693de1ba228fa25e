using System.Collections.Immutable;
using System.Data.Common;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Store;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger.Folds;

/// <summary>The read tables: what the facts come to, kept in the transaction that takes the facts, so that a start need not fold them all.</summary>
internal static class FoldTables
{
    private static readonly string[] RowParameters = ["@file", "@row", "@cells", "@fact", "@seq"];

    private static readonly string[] SeasonTables = ["seasons", "season_files", "season_rows"];

    /// <summary>Brings the tables from the state that the fold began with to the one that it came to.</summary>
    public static void Write(DbConnection connection, DbTransaction transaction, ShedFold fold, ShedState state)
    {
        if (fold.Season.Opened)
            Clear(connection, transaction, SeasonTables);
        if (fold.Season.Changed)
            WriteSeason(connection, transaction, state.Rows!, fold.Season.Opened ? null : fold.Season.Touched);
        if (fold.DecisionsChanged)
        {
            Clear(connection, transaction, LedgerTables.DecisionTables);
            WriteRecords(connection, transaction, state, LedgerTables.DecisionTables);
        }
        if (fold.LineChanged)
        {
            Clear(connection, transaction, LedgerTables.LineTables);
            WriteRecords(connection, transaction, state, LedgerTables.LineTables);
        }
    }

    /// <summary>Makes all tables anew from a state.</summary>
    public static void Replace(DbConnection connection, DbTransaction transaction, ShedState state)
    {
        Clear(connection, transaction, SeasonTables);
        Clear(connection, transaction, LedgerTables.RecordTables);
        if (state.Rows is { } rows)
            WriteSeason(connection, transaction, rows, null);
        WriteRecords(connection, transaction, state, LedgerTables.RecordTables);
    }

    /// <summary>The state that the tables hold; the caller's transaction keeps them and the head of one moment.</summary>
    public static ShedState Read(DbConnection connection, DbTransaction transaction, LedgerHead head)
    {
        SeasonRows? rows = ReadSeason(connection, transaction);
        List<FoldRecords.PlanRecord> plans = [.. Decisions(connection, transaction, "plans").Select(FoldRecords.Plan)];
        return new ShedState(
            head, rows, [.. Decisions(connection, transaction, "holds").Select(FoldRecords.Hold)], [.. plans.Select(plan => plan.Plan)],
            plans.Find(plan => plan.Adopted)?.Plan, [.. Decisions(connection, transaction, "plan_jobs").Select(FoldRecords.Job)],
            [.. Decisions(connection, transaction, "plan_ends").Select(FoldRecords.End)])
        {
            Text = rows is null ? null : new SeasonText(rows),
            SizerCounts = [.. Decisions(connection, transaction, "sizer_counts").Select(LineRecords.Count)],
            SizerSettings = [.. Decisions(connection, transaction, "sizer_settings").Select(LineRecords.Sizer)],
            DrumSettings = [.. Decisions(connection, transaction, "drum_settings").Select(LineRecords.Drum)],
        };
    }

    /// <summary>Every row of the tables, as they are and not as they should be.</summary>
    public static IEnumerable<FoldRecord> Records(DbConnection connection, DbTransaction transaction)
    {
        foreach (DbDataReader row in Rows(connection, transaction, "SELECT opened, settings FROM seasons"))
            yield return new("seasons", row.GetString(0), row.GetString(1));
        foreach (DbDataReader row in Rows(connection, transaction, "SELECT file, columns FROM season_files"))
            yield return new("season_files", row.GetString(0), row.GetString(1));
        foreach (DbDataReader row in Rows(connection, transaction, "SELECT file, row, cells, fact, seq FROM season_rows"))
            yield return FoldRecords.OfRow(row.GetString(0), row.GetInt32(1), TextOrNull(row, 2), TextOrNull(row, 3), row.GetInt64(4));
        foreach (string table in LedgerTables.RecordTables)
            foreach (DbDataReader row in Rows(connection, transaction, $"SELECT ordinal, fact, record FROM {table}"))
                yield return new(table, FormattableString.Invariant($"{row.GetInt32(0)}"), $"{row.GetString(1)} {row.GetString(2)}");
    }

    private static void WriteSeason(DbConnection connection, DbTransaction transaction, SeasonRows rows, HashSet<(string File, int Row)>? touched)
    {
        const string Upsert = "INSERT INTO season_rows (file, row, cells, fact, seq) VALUES (@file, @row, @cells, @fact, @seq)";
        Execute(connection, transaction,
            "INSERT INTO seasons (opened, settings) VALUES (@opened, @settings) ON CONFLICT (opened) DO UPDATE SET settings = excluded.settings",
            ("@opened", StoredFact.IdText(rows.Opened)), ("@settings", rows.Settings));
        foreach (FileRows file in rows.Tables.Values)
            Execute(connection, transaction,
                "INSERT INTO season_files (file, columns) VALUES (@file, @columns) ON CONFLICT (file) DO UPDATE SET columns = excluded.columns",
                ("@file", file.Table.File), ("@columns", FoldRecords.Columns(file)));
        using DbCommand command = FactLog.Command(connection, transaction, touched is null
            ? Upsert : Upsert + " ON CONFLICT (file, row) DO UPDATE SET cells = excluded.cells, fact = excluded.fact, seq = excluded.seq");
        DbParameter[] cells = [.. RowParameters.Select(name => FactLog.Add(command, name, null))];
        void Put(string file, int row, SeasonRow? content)
        {
            cells[0].Value = file;
            cells[1].Value = row;
            cells[2].Value = content is null ? DBNull.Value : FoldRecords.Cells((RowCells)content.Cells);
            cells[3].Value = content is null ? DBNull.Value : StoredFact.IdText(content.Fact);
            cells[4].Value = content?.Seq ?? 0;
            command.ExecuteNonQuery();
        }
        if (touched is not null)
            foreach ((string file, int row) in touched)
                Put(file, row, rows.Find(file, row));
        else
            foreach (FileRows file in rows.Tables.Values)
                for (int at = 0; at < file.Slots.Length; at++)
                    Put(file.Table.File, at + 1, file.Slots[at]);
    }

    private static void WriteRecords(DbConnection connection, DbTransaction transaction, ShedState state, IEnumerable<string> tables)
    {
        foreach (string table in tables)
            foreach ((int at, (Guid fact, string record)) in FoldRecords.DecisionsOf(state, table).Index())
                Execute(connection, transaction, $"INSERT INTO {table} (ordinal, fact, record) VALUES (@ordinal, @fact, @record)",
                    ("@ordinal", at + 1), ("@fact", StoredFact.IdText(fact)), ("@record", record));
    }

    private static SeasonRows? ReadSeason(DbConnection connection, DbTransaction transaction)
    {
        string? opened = null, settings = null;
        foreach (DbDataReader row in Rows(connection, transaction, "SELECT opened, settings FROM seasons"))
            (opened, settings) = (row.GetString(0), row.GetString(1));
        if (opened is null)
            return null;
        Dictionary<string, List<SeasonRow?>> slots = new(StringComparer.Ordinal);
        Dictionary<string, (SeasonTable Table, ImmutableArray<bool> Has)> files = new(StringComparer.Ordinal);
        foreach (DbDataReader row in Rows(connection, transaction, "SELECT file, columns FROM season_files"))
        {
            SeasonTable table = SeasonTable.Of(row.GetString(0))!;
            files.Add(table.File, (table, FoldRecords.Columns(table, row.GetString(1))));
            slots.Add(table.File, []);
        }
        foreach (DbDataReader row in Rows(connection, transaction, "SELECT file, row, cells, fact, seq FROM season_rows ORDER BY file, row"))
        {
            SeasonTable table = files[row.GetString(0)].Table;
            slots[table.File].Add(row.IsDBNull(2) ? null : new SeasonRow(
                table.File, row.GetInt32(1), FoldRecords.Cells(table, row.GetString(2)), Guid.ParseExact(row.GetString(3), "D"), row.GetInt64(4)));
        }
        return new SeasonRows(Guid.ParseExact(opened, "D"), settings!, files.Values.ToImmutableDictionary(
            file => file.Table.File, file => new FileRows(file.Table, file.Has, [.. slots[file.Table.File]])));
    }

    private static List<string> Decisions(DbConnection connection, DbTransaction transaction, string table) =>
        [.. Rows(connection, transaction, $"SELECT record FROM {table} ORDER BY ordinal").Select(row => row.GetString(0))];

    private static string? TextOrNull(DbDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    private static void Clear(DbConnection connection, DbTransaction transaction, IEnumerable<string> tables)
    {
        foreach (string table in tables)
            Execute(connection, transaction, $"DELETE FROM {table}");
    }

    private static IEnumerable<DbDataReader> Rows(DbConnection connection, DbTransaction transaction, string query)
    {
        using DbCommand command = FactLog.Command(connection, transaction, query);
        using DbDataReader reader = command.ExecuteReader();
        while (reader.Read())
            yield return reader;
    }

    private static void Execute(DbConnection connection, DbTransaction transaction, string text, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using DbCommand command = FactLog.Command(connection, transaction, text);
        foreach ((string name, object value) in values)
            FactLog.Add(command, name, value);
        command.ExecuteNonQuery();
    }
}
