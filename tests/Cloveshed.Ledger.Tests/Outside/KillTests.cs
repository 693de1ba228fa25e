using System.Diagnostics;

namespace Cloveshed.Ledger.Tests.Outside;

/// <summary>The program killed while it imports, without a chance to tidy up (SIGKILL), at drawn moments.</summary>
public sealed class KillTests(ITestOutputHelper output)
{
    private const int Kills = 50;

    private const int DemoFacts = 9527;

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
            int tries = 0, killed = 0, none = 0, all = 0, files = 0;
            while (killed < Kills)
            {
                Assert.True(++tries <= 4 * Kills, "Most ended before they were killed.");
                string file = Path.Combine(root, $"{tries}.db");
                using (Process process = CloveshedProcess.Start("import", SourceTree.Demo, "--db", file))
                {
                    // Half at any moment of the run; half once the file is there, when making it, writing and committing are at stake.
                    bool late = tries % 2 == 1;
                    while (late && !File.Exists(file) && !process.HasExited)
                        Thread.Sleep(1);
                    Thread.Sleep(TimeSpan.FromMilliseconds(run * (late ? 0.85 : 0.9) * moments.NextDouble()));
                    bool tooLate = process.HasExited;
                    process.Kill();
                    process.WaitForExit();
                    if (tooLate)
                    {
                        // The machine has got quicker than it was: the moments follow it.
                        run *= 0.85;
                        continue;
                    }
                }
                killed++;
                files += File.Exists(file) ? 1 : 0;
                long facts = Proved(file);
                none += facts == 0 ? 1 : 0;
                all += facts == DemoFacts ? 1 : 0;
                File.Delete(file);
            }
            output.WriteLine($"{Kills} killed in {tries} tries; {files} had made a file; {none} left nothing, {all} the whole season");
            Assert.Equal(Kills, none + all);
            Assert.True(none > 0 && files > Kills / 4);
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    /// <summary>The facts of a ledger that holds, and whose season is whole; the next import goes into it as if nothing had been.</summary>
    private static long Proved(string file)
    {
        using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), TimeProvider.System);
        VerifyResult result = ledger.Verify();
        Assert.Empty(result.Flaws);
        Assert.Contains(result.Facts, new long[] { 0, DemoFacts });
        ShedState now = ledger.Now();
        Assert.Equal(result.Facts, now.Rows is { } rows ? rows.Count + 1 : 0);
        ImportResult next = SeasonImport.Import(ledger, SmallSeason.Files(), FactOrigin.Now(TimeProvider.System, "test"));
        Assert.True(next.Taken && ledger.Now().Head.Seq == result.Facts + next.Facts);
        return result.Facts;
    }
}
