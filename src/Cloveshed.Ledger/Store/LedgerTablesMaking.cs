using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Cloveshed.Ledger.Store;

/// <summary>For the tool that makes migrations: `dotnet ef migrations add NAME --project src/Cloveshed.Ledger`.</summary>
internal sealed class LedgerTablesMaking : IDesignTimeDbContextFactory<LedgerTables>
{
    public LedgerTables CreateDbContext(string[] args) => Sqlite("Data Source=:memory:");

    internal static LedgerTables Sqlite(string connection) => new(new DbContextOptionsBuilder<LedgerTables>().UseSqlite(connection).Options);
}
