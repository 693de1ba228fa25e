using System.Text;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger.Tests;

/// <summary>A ledger in a folder of a test's own, gone with it, and the demo season.</summary>
public sealed class Shed : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("cloveshed-ledger-").FullName;

    public Shed() => Ledger = ShedLedger.Open(new LedgerAddress(At("shed.db")), TimeProvider.System);

    public ShedLedger Ledger { get; private set; }

    public FactOrigin Origin { get; } = FactOrigin.Now(TimeProvider.System, "test");

    public static string Demo { get; } = FindDemo();

    public string At(string name) => Path.Combine(root, name);

    public void Dispose()
    {
        Ledger.Dispose();
        Directory.Delete(root, recursive: true);
    }

    private static string FindDemo()
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "data", "demo-season")))
            folder = folder.Parent ?? throw new InvalidOperationException("Run the tests from a build inside the source tree.");
        return Path.Combine(folder.FullName, "data", "demo-season");
    }
}
