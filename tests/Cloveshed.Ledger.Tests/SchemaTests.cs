using Cloveshed.Ledger.Store;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Cloveshed.Ledger.Tests;

/// <summary>The committed steps are those that the model's own tool makes of the migrations, and the migrations are all of the model.</summary>
public sealed class SchemaTests
{
    [Fact]
    public void Each_migration_has_its_steps_beside_it()
    {
        using LedgerTables tables = LedgerTablesMaking.Sqlite("Data Source=:memory:");
        string[] migrations = [.. tables.Database.GetMigrations()];
        Assert.Equal(migrations, SqliteStore.Migrations);
        string? before = null;
        foreach (string migration in migrations)
        {
            string made = tables.GetService<IMigrator>().GenerateScript(before ?? "0", migration, MigrationsSqlGenerationOptions.NoTransactions);
            Assert.Equal(made.ReplaceLineEndings("\n").Trim(), SqliteStore.Steps(migration).ReplaceLineEndings("\n").Trim());
            before = migration;
        }
    }

    [Fact]
    public void No_change_of_the_model_waits_for_a_migration()
    {
        using LedgerTables tables = LedgerTablesMaking.Sqlite("Data Source=:memory:");
        Assert.False(tables.Database.HasPendingModelChanges());
    }

    /// <summary>What the model's tool finds in a ledger that the steps made.</summary>
    [Fact]
    public void A_ledger_is_as_the_model_has_it()
    {
        using Shed shed = new();
        using LedgerTables tables = LedgerTablesMaking.Sqlite($"Data Source={shed.File};Pooling=False");
        Assert.Empty(tables.Database.GetPendingMigrations());
        Assert.Equal(0, tables.Set<FactTable>().Count());
        shed.Take(shed.Here.Note("x"));
        FactTable row = tables.Set<FactTable>().Single();
        Assert.Equal((1, "note", "test", "bench", "office"), (row.Seq, row.Kind, row.SaidBy, row.Device, row.Place));
    }

    [Fact]
    public void A_ledger_of_the_first_schema_gets_the_tables_that_came_later_and_keeps_its_facts()
    {
        using Shed shed = Shed.WithSeason();
        LedgerHead head = shed.Ledger.Head();
        shed.Ledger.Dispose();
        shed.Sql("DROP TABLE sizer_counts; DROP TABLE sizer_settings; DROP TABLE drum_settings; DELETE FROM \"__EFMigrationsHistory\" WHERE \"MigrationId\" LIKE '%LineRecords'");
        shed.Reopen();
        shed.Take(shed.Here.DrumSet(new Core.LotId("A"), [9.5], false));
        Assert.Equal((head.Seq + 1, 1), (shed.Ledger.Head().Seq, shed.Ledger.Now().DrumSettings.Count));
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Fact]
    public void The_log_is_written_ahead_and_every_commit_goes_to_the_disk()
    {
        using Shed shed = new();
        Assert.Equal("wal", shed.Ask("PRAGMA journal_mode"));
        using var connection = new SqliteStore(shed.File).Connect(writing: true);
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA synchronous";
        Assert.Equal(2L, command.ExecuteScalar()); // FULL, sqlite.org/pragma.html
    }

    [Fact]
    public void A_ledger_that_is_ended_leaves_one_file()
    {
        using Shed shed = Shed.WithSeason();
        shed.Ledger.Now();
        shed.Ledger.Dispose();
        Assert.Equal([shed.File], Directory.EnumerateFiles(Path.GetDirectoryName(shed.File)!));
    }

    /// <summary>Far below a millisecond, whatever else the machine does: the best of many rounds.</summary>
    [Fact]
    public void Asking_for_the_shed_costs_nothing_when_nothing_changed()
    {
        using Shed shed = Shed.WithSeason();
        ShedState now = shed.Ledger.Now();
        double best = double.MaxValue;
        for (int round = 0; round < 50; round++)
        {
            long began = System.Diagnostics.Stopwatch.GetTimestamp();
            for (int at = 0; at < 100; at++)
                Assert.Same(now, shed.Ledger.Now());
            best = Math.Min(best, System.Diagnostics.Stopwatch.GetElapsedTime(began).TotalMilliseconds / 100);
        }
        Assert.InRange(best, 0, 0.2);
    }
}
