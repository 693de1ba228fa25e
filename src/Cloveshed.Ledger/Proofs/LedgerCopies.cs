using System.Data.Common;
using System.Globalization;
using Cloveshed.Ledger.Store;

namespace Cloveshed.Ledger.Proofs;

/// <summary>
/// Whole ledgers, copied: first under a name that nobody uses, there proved by a walk over all of it, and only then given its name
/// by a rename. Nothing is ever written over.
/// </summary>
internal static class LedgerCopies
{
    /// <summary>Of the files that SQLite keeps beside one (sqlite.org/tempfiles.html).</summary>
    private static readonly string[] LogEndings = ["-journal", "-wal", "-shm"];

    public static BackupResult Backup(LedgerStore store, string file)
    {
        VerifyResult proved = Copy(store, file);
        return new BackupResult(proved.Facts, proved.Head);
    }

    public static RestoreResult Restore(string file, LedgerAddress into)
    {
        SqliteStore backup = new(file);
        backup.Find();
        VerifyResult proved = Copy(backup, into.File);
        return new RestoreResult(proved.Facts, proved.Head);
    }

    private static VerifyResult Copy(LedgerStore from, string file)
    {
        string target = Path.GetFullPath(file);
        string folder = Path.GetDirectoryName(target) ?? throw new LedgerFault(LedgerFaultKind.NotAnAddress, file);
        if (!Directory.Exists(folder))
            throw new LedgerFault(LedgerFaultKind.FolderMissing, file);
        RefuseExisting(file);
        string waiting = Path.Combine(folder, $".{Path.GetFileName(target)}.{Path.GetRandomFileName()}");
        SqliteStore copy = new(waiting);
        try
        {
            CopyWhole(from, waiting, file);
            VerifyResult proved = copy.Do(() =>
            {
                using DbConnection connection = copy.Connect(writing: false);
                return LedgerProof.Verify(copy, connection);
            });
            if (!proved.Ok)
                throw new LedgerFault(LedgerFaultKind.Unproven, from.Name, Said(proved));
            return copy.Do(() =>
            {
                RefuseExisting(file);
                File.Move(waiting, target, overwrite: false);
                return proved;
            });
        }
        finally
        {
            foreach (string ending in LogEndings.Prepend(""))
                File.Delete(waiting + ending);
        }
    }

    /// <summary>The ledger could be opened, so what fails in writing is the copy's disk, and it is named.</summary>
    private static void CopyWhole(LedgerStore from, string waiting, string file)
    {
        try
        {
            from.CopyInto(waiting);
        }
        catch (LedgerFault fault) when (fault.Kind is LedgerFaultKind.DiskFull or LedgerFaultKind.WriteFailed or LedgerFaultKind.CannotOpen or LedgerFaultKind.ReadOnly)
        {
            throw new LedgerFault(fault.Kind, file, fault.Detail, fault);
        }
    }

    private static void RefuseExisting(string file)
    {
        // A log that a ledger of that name left behind would be taken for the new one's.
        foreach (string there in LogEndings.Prepend("").Select(ending => file + ending))
            if (File.Exists(there) || Directory.Exists(there))
                throw new LedgerFault(LedgerFaultKind.Exists, there);
    }

    private static string Said(VerifyResult proved)
    {
        LedgerFlaw first = proved.Flaws[0];
        string more = proved.Flaws.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" (and {proved.Flaws.Count - 1} more)") : "";
        return $"{first.Rule} at {first.Where}{more}";
    }
}
