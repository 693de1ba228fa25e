using System.Data.Common;

namespace Cloveshed.Ledger.Store;

/// <summary>
/// What differs from database to database: how it is opened, begun, copied and checked, and what its errors mean. All other SQL in
/// this assembly is such as SQLite and PostgreSQL both take.
/// </summary>
internal abstract class LedgerStore
{
    /// <summary>For messages.</summary>
    public abstract string Name { get; }

    /// <summary>Makes the ledger where there is none, brings an older one up to this program's schema; all or nothing.</summary>
    public abstract void MakeReady();

    /// <summary>Finds the ledger as it is; one that is missing, another's or of another schema is a fault.</summary>
    public abstract void Find();

    /// <summary>An open connection, with what must be set on it set.</summary>
    public abstract DbConnection Connect(bool writing);

    /// <summary>Begins a transaction that is alone in writing from its first moment.</summary>
    public abstract DbTransaction BeginWriting(DbConnection connection);

    /// <summary>Begins a transaction that sees the ledger as of one moment.</summary>
    public abstract DbTransaction BeginReading(DbConnection connection);

    /// <summary>Takes a piece of work for this process alone until it is disposed of or the process dies; null where another has it.</summary>
    public abstract IDisposable? TryHold(string work);

    /// <summary>What the database finds wrong with its own storage.</summary>
    public abstract IEnumerable<string> CheckStorage(DbConnection connection);

    /// <summary>A whole copy, as of one moment, into a new file that is on the disk when this returns.</summary>
    public abstract void CopyInto(string file);

    /// <summary>The fault that a driver's error means; null where it is none of a database.</summary>
    public abstract LedgerFault? Translate(Exception problem);

    /// <summary>Does something with the database, its errors translated.</summary>
    public T Do<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception problem) when (problem is not LedgerFault && Translate(problem) is { } fault)
        {
            throw fault;
        }
    }

    /// <inheritdoc cref="Do{T}"/>
    public void Do(Action work) => Do(() =>
    {
        work();
        return 0;
    });
}
