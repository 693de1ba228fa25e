using System.Diagnostics;

namespace Cloveshed.Ledger.Tests;

public sealed class ImportTests : IDisposable
{
    private readonly Shed shed = new();

    public void Dispose() => shed.Dispose();

    [Fact]
    public void The_demo_goes_in_and_comes_out()
    {
        var watch = Stopwatch.StartNew();
        ImportResult first = SeasonImport.Import(shed.Ledger, Shed.Demo, shed.Origin);
        Console.WriteLine($"import {watch.ElapsedMilliseconds} ms");
        Assert.True(first.Taken);
        Assert.Equal(9425, first.Facts);
        watch.Restart();
        ImportResult again = SeasonImport.Import(shed.Ledger, Shed.Demo, shed.Origin);
        Console.WriteLine($"again {watch.ElapsedMilliseconds} ms");
        Assert.Equal((true, 0), (again.Already, again.Facts));
        watch.Restart();
        VerifyResult verified = shed.Ledger.Verify();
        Console.WriteLine($"verify {watch.ElapsedMilliseconds} ms");
        Assert.Empty(verified.Flaws);
        using ShedLedger other = ShedLedger.Open(new LedgerAddress(shed.At("shed.db")), TimeProvider.System);
        watch.Restart();
        ShedState now = other.Now();
        Console.WriteLine($"first now {watch.ElapsedMilliseconds} ms");
        Assert.NotNull(now.Season);
        watch.Restart();
        for (int at = 0; at < 10000; at++) other.Now();
        Console.WriteLine($"now {watch.Elapsed.TotalMilliseconds / 10000} ms");
        SeasonExport.Export(now, shed.At("out"));
    }
}
