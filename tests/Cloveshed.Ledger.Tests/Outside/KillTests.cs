using System.Diagnostics;

namespace Cloveshed.Ledger.Tests.Outside;

/// <summary>The program killed while it imports, without a chance to tidy up (SIGKILL), at drawn moments.</summary>
public sealed class KillTests(ITestOutputHelper output)
{
    private const int Kills = 50;

    private const int DemoFacts = 9425;

    [Fact]
    public void A_killed_import_leaves_the_whole_season_or_nothing()
    {
        string root = Directory.CreateTempSubdirectory("cloveshed-kill-").FullName;
        try
        {
            var whole = Stopwatch.StartNew();
            Assert.Equal(0, CloveshedProcess.Ended(CloveshedProcess.Start("import", SourceTree.Demo, "--db", Path.Combine(root, "whole.db"))).Code);
            double run = whole.Elapsed.TotalMilliseconds;
            Random moments = new(20301001);
            int running = 0, none = 0, all = 0, files = 0;
            for (int at = 0; at < Kills; at++)
            {
                string file = Path.Combine(root, $"{at}.db");
                using (Process process = CloveshedProcess.Start("import", SourceTree.Demo, "--db", file))
                {
                    // Half at any moment of the run; half once the file is there, when making it, writing and committing are at stake.
                    bool late = at % 2 == 1;
                    while (late && !File.Exists(file) && !process.HasExited)
                        Thread.Sleep(1);
                    Thread.Sleep(TimeSpan.FromMilliseconds(run * (late ? 0.8 : 1.0) * moments.NextDouble()));
                    running += process.HasExited ? 0 : 1;
                    process.Kill();
                    process.WaitForExit();
                }
                files += File.Exists(file) ? 1 : 0;
                using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), TimeProvider.System);
                VerifyResult result = ledger.Verify();
                Assert.Empty(result.Flaws);
                Assert.Contains(result.Facts, new long[] { 0, DemoFacts });
                ShedState now = ledger.Now();
                Assert.Equal(result.Facts, now.Rows is { } rows ? rows.Count + 1 : 0);
                none += result.Facts == 0 ? 1 : 0;
                all += result.Facts == DemoFacts ? 1 : 0;
                if (at == Kills - 1)
                    Assert.True(SeasonImport.Import(ledger, SourceTree.Demo, FactOrigin.Now(TimeProvider.System, "test")).Taken);
            }
            output.WriteLine($"{running} of {Kills} were killed while they ran ({run:0} ms whole); {files} had made a file; {none} left nothing, {all} the whole season");
            Assert.True(running >= Kills / 2, "Most ended before they were killed: nothing was tried.");
            Assert.True(none > 0 && files > Kills / 4);
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }
}
