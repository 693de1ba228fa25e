using System.Data.Common;
using System.Diagnostics;
using Cloveshed.Ledger.Store;
using Microsoft.Data.Sqlite;

namespace Cloveshed.Ledger.Tests.Outside;

/// <summary>Disks that are full, files that may not be written, others who hold them: one clear error each, and nothing half written.</summary>
public sealed class StorageTests : IDisposable
{
    private readonly Shed shed = new();

    public void Dispose() => shed.Dispose();

    private static LedgerFault Fault(LedgerFaultKind kind, Action act)
    {
        LedgerFault fault = Assert.Throws<LedgerFault>(act);
        Assert.Equal(kind, fault.Kind);
        Assert.All(new[] { SeasonFiles.Faults.TextLanguage.English, SeasonFiles.Faults.TextLanguage.Spanish }, language => Assert.True(fault.Say(language).Length > 30));
        Assert.Contains(Path.GetFileName(fault.Place), fault.Message, StringComparison.Ordinal);
        return fault;
    }

    private void NothingWasTaken()
    {
        shed.Reopen();
        Assert.Equal(LedgerHead.None, shed.Ledger.Head());
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    /// <summary>The database may have no more than so many pages: SQLITE_FULL, as on a disk without room.</summary>
    [Theory]
    [InlineData(20)]
    [InlineData(200)]
    [InlineData(1000)]
    public void A_full_disk(int pages)
    {
        using (ShedLedger full = ShedLedger.Open(Shed.Store(shed.File, $"PRAGMA max_page_count = {pages}"), shed.Clock))
            Fault(LedgerFaultKind.DiskFull, () => SeasonImport.Import(full, SourceTree.Demo, shed.Here));
        NothingWasTaken();
        Assert.True(SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here).Taken);
    }

    [Fact]
    public void A_full_disk_does_not_stop_what_fits_afterwards()
    {
        using ShedLedger full = ShedLedger.Open(Shed.Store(shed.File, "PRAGMA max_page_count = 200"), shed.Clock);
        Fault(LedgerFaultKind.DiskFull, () => SeasonImport.Import(full, SourceTree.Demo, shed.Here));
        Assert.IsType<Appended.Accepted>(full.Append([shed.Here.Note("still here")]));
        Assert.Equal(1, full.Head().Seq);
        Assert.Empty(full.Verify().Flaws);
    }

    [Fact]
    public void A_ledger_that_may_not_be_written()
    {
        using ShedLedger closed = ShedLedger.Open(new SqliteStore(shed.File) { OnConnect = Forbid }, shed.Clock);
        Fault(LedgerFaultKind.ReadOnly, () => closed.Append([shed.Here.Note("x")]));
        Assert.Null(closed.Now().Rows);
        NothingWasTaken();

        static void Forbid(DbConnection connection)
        {
            using DbCommand command = connection.CreateCommand();
            command.CommandText = "PRAGMA query_only = ON";
            command.ExecuteNonQuery();
        }
    }

    [Fact]
    public void A_ledger_that_another_holds()
    {
        using SqliteConnection other = new($"Data Source={shed.File};Pooling=False");
        other.Open();
        using SqliteTransaction held = other.BeginTransaction(deferred: false);
        using ShedLedger waiting = ShedLedger.Open(new SqliteStore(shed.File, waitSeconds: 1), shed.Clock);
        var watch = Stopwatch.StartNew();
        Fault(LedgerFaultKind.Locked, () => waiting.Append([shed.Here.Note("x")]));
        Assert.InRange(watch.Elapsed.TotalSeconds, 0.8, 15);
        Assert.Equal(0, waiting.Head().Seq); // reading goes on meanwhile
        held.Rollback();
        Assert.IsType<Appended.Accepted>(waiting.Append([shed.Here.Note("x")]));
    }

    [Fact]
    public void Files_that_are_no_ledgers_are_not_touched()
    {
        File.WriteAllText(shed.At("text.db"), new string('x', 5000));
        Make("other.db", "CREATE TABLE facts (seq INTEGER); INSERT INTO facts VALUES (1)");
        Make("model.db", "CREATE TABLE \"__EFMigrationsHistory\" (\"MigrationId\" TEXT, \"ProductVersion\" TEXT); INSERT INTO \"__EFMigrationsHistory\" VALUES ('20200101000000_Orchard', '9.0.0')");
        foreach (string name in new[] { "text.db", "other.db", "model.db" })
        {
            byte[] before = File.ReadAllBytes(shed.At(name));
            Fault(LedgerFaultKind.NotALedger, () => ShedLedger.Open(new LedgerAddress(shed.At(name)), shed.Clock));
            Fault(LedgerFaultKind.NotALedger, () => ShedLedger.OpenExisting(new LedgerAddress(shed.At(name)), shed.Clock));
            Fault(LedgerFaultKind.NotALedger, () => ShedLedger.Restore(shed.At(name), new LedgerAddress(shed.At("new.db"))));
            Assert.Equal(before, File.ReadAllBytes(shed.At(name)));
            Assert.False(File.Exists(shed.At("new.db")));
        }

        void Make(string name, string commands)
        {
            using SqliteConnection other = new($"Data Source={shed.At(name)};Pooling=False");
            other.Open();
            using SqliteCommand command = other.CreateCommand();
            command.CommandText = commands;
            command.ExecuteNonQuery();
        }
    }

    [Fact]
    public void A_ledger_of_a_newer_program()
    {
        shed.Sql("INSERT INTO \"__EFMigrationsHistory\" VALUES ('29990101000000_Later', '99.0.0')");
        Assert.Contains("29990101000000_Later", Fault(LedgerFaultKind.NewerProgram, () => ShedLedger.Open(shed.Address, shed.Clock)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Places_where_no_ledger_can_be()
    {
        Fault(LedgerFaultKind.FolderMissing, () => ShedLedger.Open(new LedgerAddress(shed.At("none/shed.db")), shed.Clock));
        Directory.CreateDirectory(shed.At("folder.db"));
        Fault(LedgerFaultKind.CannotOpen, () => ShedLedger.Open(new LedgerAddress(shed.At("folder.db")), shed.Clock));
        Fault(LedgerFaultKind.Missing, () => ShedLedger.OpenExisting(new LedgerAddress(shed.At("new.db")), shed.Clock));
        Assert.False(File.Exists(shed.At("new.db")));
    }

    /// <summary>The limit of the shell: no file may grow beyond 2000 KiB, and the write beyond it fails as on a disk with a quota. (The runtime's own double
    /// mapping of code is a file too, so it is turned off.)</summary>
    [Fact]
    public void A_real_limit_on_files_ends_an_import_with_one_line()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The limit is set by bash, as Linux has it.");
        string file = shed.At("limited.db");
        (int code, string said, string error) = CloveshedProcess.Ended(CloveshedProcess.StartIn("trap '' XFSZ; export DOTNET_EnableWriteXorExecute=0; ulimit -f 2000; exec \"$@\"", "import", SourceTree.Demo, "--db", file));
        Assert.Equal((1, ""), (code, said));
        Assert.Equal(1, error.Count(letter => letter == '\n'));
        Assert.Contains("limited.db", error, StringComparison.Ordinal);
        using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), shed.Clock);
        Assert.Equal(0, ledger.Head().Seq);
        Assert.Empty(ledger.Verify().Flaws);
    }

    [Fact]
    public void A_real_limit_on_files_ends_a_backup_with_one_line_and_leaves_nothing_behind()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The limit is set by bash, as Linux has it.");
        Assert.True(SeasonImport.Import(shed.Ledger, SourceTree.Demo, shed.Here).Taken);
        shed.Ledger.Dispose();
        Directory.CreateDirectory(shed.At("copies"));
        (int code, string said, string error) = CloveshedProcess.Ended(CloveshedProcess.StartIn(
            "trap '' XFSZ; export DOTNET_EnableWriteXorExecute=0; ulimit -f 2000; exec \"$@\"", "backup", shed.At("copies/copy.db"), "--db", shed.File));
        Assert.Equal((1, ""), (code, said));
        Assert.Equal(1, error.Count(letter => letter == '\n'));
        Assert.Contains("copy.db", error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(shed.At("copies")));
    }

    /// <summary>A file of another user's, in a folder of theirs, as the system itself forbids it.</summary>
    [Fact]
    public void A_real_read_only_file_ends_an_import_with_one_line()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Permissions are set as Linux has them.");
            return;
        }
        string folder = Directory.CreateDirectory(shed.At("theirs")).FullName, file = Path.Combine(folder, "shed.db");
        ShedLedger.Open(new LedgerAddress(file), shed.Clock).Dispose();
        byte[] before = File.ReadAllBytes(file);
        File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserExecute | UnixFileMode.GroupRead | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute);
        File.SetUnixFileMode(Path.GetDirectoryName(folder)!, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute);
        // Root may write everything, so root becomes nobody.
        string script = "[ \"$(id -u)\" = 0 ] || exec \"$@\"; test -r \"$2\" && command -v setpriv >/dev/null || exit 99; exec setpriv --reuid=65534 --regid=65534 --clear-groups \"$@\"";
        (int code, string said, string error) = CloveshedProcess.Ended(CloveshedProcess.StartIn(script, "import", SourceTree.Demo, "--db", file));
        Assert.SkipWhen(code is 99 or > 100, $"As root this needs setpriv, and a build that every user may read: {error}");
        Assert.Equal((1, ""), (code, said));
        Assert.Equal(1, error.Count(letter => letter == '\n'));
        Assert.Contains("shed.db", error, StringComparison.Ordinal);
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Assert.Equal(before, File.ReadAllBytes(file));
    }
}
