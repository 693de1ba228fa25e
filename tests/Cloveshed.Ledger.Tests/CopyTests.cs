namespace Cloveshed.Ledger.Tests;

/// <summary>Backups while facts are taken, and new ledgers made of them.</summary>
public sealed class CopyTests : IDisposable
{
    private readonly Shed shed = Shed.WithSeason();

    public void Dispose() => shed.Dispose();

    [Fact]
    public void A_backup_is_the_ledger_and_a_restore_is_the_backup()
    {
        shed.Take(shed.Here.Note("before"));
        BackupResult backup = shed.Ledger.Backup(shed.At("copy.db"));
        Assert.Equal((shed.Ledger.Head(), shed.Ledger.Head().Seq), (backup.Head, backup.Facts));
        shed.Take(shed.Here.Note("after"));
        RestoreResult restored = ShedLedger.Restore(shed.At("copy.db"), new LedgerAddress(shed.At("new.db")));
        Assert.Equal((backup.Head, backup.Facts), (restored.Head, restored.Facts));
        using ShedLedger made = ShedLedger.Open(new LedgerAddress(shed.At("new.db")), shed.Clock);
        Assert.Equal(shed.Ledger.Read().SkipLast(1).Select(fact => fact.Hash), made.Read().Select(fact => fact.Hash));
        Assert.Equal(shed.Ledger.Now().InputDigest, made.Now().InputDigest);
        Assert.IsType<Appended.Accepted>(made.Append([shed.Here.Note("it goes on from here")]));
        Assert.Empty(made.Verify().Flaws);
    }

    [Fact]
    public async Task A_backup_is_of_one_moment_while_others_write()
    {
        using CancellationTokenSource stop = new();
        Task writing = Task.Run(() =>
        {
            while (!stop.IsCancellationRequested)
                shed.Take(shed.Here.Note("meanwhile"), shed.Here.RowChanged(shed.Order(1), shed.Order(1).Cells));
        }, TestContext.Current.CancellationToken);
        for (int at = 0; at < 8; at++)
        {
            BackupResult backup = shed.Ledger.Backup(shed.At($"copy{at}.db"));
            Assert.Equal(shed.Ledger.Read(after: backup.Head.Seq - 1, most: 1).Single().Hash, backup.Head.Hash);
            // Batches are whole: the season's, then two by two.
            Assert.Equal(0, (backup.Facts - 11) % 2);
        }
        await stop.CancelAsync();
        await writing;
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Fact]
    public void Nothing_is_written_over_and_nothing_is_left_behind()
    {
        File.WriteAllText(shed.At("there.txt"), "mine");
        foreach (Action copy in new Action[] { () => shed.Ledger.Backup(shed.At("there.txt")), () => ShedLedger.Restore(shed.File, new LedgerAddress(shed.At("there.txt"))) })
            Assert.Equal(LedgerFaultKind.Exists, Assert.Throws<LedgerFault>(copy).Kind);
        Assert.Equal("mine", File.ReadAllText(shed.At("there.txt")));
        File.WriteAllText(shed.At("new.db-wal"), "a log of a ledger that is gone");
        Assert.Equal(LedgerFaultKind.Exists, Assert.Throws<LedgerFault>(() => ShedLedger.Restore(shed.File, new LedgerAddress(shed.At("new.db")))).Kind);
        Assert.Equal(LedgerFaultKind.FolderMissing, Assert.Throws<LedgerFault>(() => shed.Ledger.Backup(shed.At("none/copy.db"))).Kind);
        Assert.Equal(LedgerFaultKind.Missing, Assert.Throws<LedgerFault>(() => ShedLedger.Restore(shed.At("none.db"), new LedgerAddress(shed.At("new2.db")))).Kind);
        Assert.All(Directory.EnumerateFiles(Path.GetDirectoryName(shed.File)!), file => Assert.DoesNotMatch(@"[\\/]\.", Path.GetFileName(file)));
        Assert.Empty(Directory.EnumerateFiles(Path.GetDirectoryName(shed.File)!, ".*"));
    }

    [Fact]
    public void An_empty_ledger_can_be_copied_too()
    {
        using Shed empty = new();
        Assert.Equal((LedgerHead.None, 0), (empty.Ledger.Backup(empty.At("copy.db")) is var backup ? backup.Head : null, backup.Facts));
    }
}
