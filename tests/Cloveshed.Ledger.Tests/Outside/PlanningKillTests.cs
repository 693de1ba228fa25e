using System.Diagnostics;

namespace Cloveshed.Ledger.Tests.Outside;

/// <summary>
/// The program killed while it serves and plans (SIGKILL), at drawn moments: the ledger holds, the job is either still asked or has its
/// whole plan, and the next start makes what is still asked.
/// </summary>
public sealed class PlanningKillTests(ITestOutputHelper output)
{
    /// <summary>Few, since each needs a start of the program; CLOVESHED_KILLS asks for more.</summary>
    private static readonly int Kills = int.TryParse(Environment.GetEnvironmentVariable("CLOVESHED_KILLS"), out int asked) ? asked : 8;

    [Fact]
    public void A_killed_planner_loses_no_job_and_leaves_no_half_plan()
    {
        string root = Directory.CreateTempSubdirectory("cloveshed-kill-").FullName;
        string file = Path.Combine(root, "shed.db");
        try
        {
            using (ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), TimeProvider.System))
            {
                Assert.True(SeasonImport.Import(ledger, SmallSeason.Files(), Origin).Taken);
            }

            var whole = Stopwatch.StartNew();
            Guid job = Ask(file);
            using (Process process = Serve(file))
            {
                Until(file, state => state.Plans.Any(plan => plan.Asked == job));
                End(process);
            }

            double run = whole.Elapsed.TotalMilliseconds;
            Random moments = new(20301002);
            int still = 0, made = 0;
            job = Ask(file);
            for (int kill = 0; kill < Kills; kill++)
            {
                using Process process = Serve(file);
                Thread.Sleep(TimeSpan.FromMilliseconds(run * moments.NextDouble()));
                End(process);
                if (Proved(file, job))
                {
                    made++;
                    job = Ask(file);
                }
                else
                {
                    still++;
                }
            }

            using (Process last = Serve(file))
            {
                Until(file, state => state.Jobs.Count == 0);
                End(last);
            }

            Assert.True(Proved(file, job));
            output.WriteLine($"{Kills} killed within {run:0} ms of their start: {made} had made the plan, {still} had not and the next start took it up");
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    private static FactOrigin Origin => FactOrigin.Now(TimeProvider.System, "test");

    private static Process Serve(string file) => CloveshedProcess.Start("serve", "--db", file, "--urls", "http://127.0.0.1:0");

    private static void End(Process process)
    {
        process.Kill();
        process.WaitForExit();
    }

    private static Guid Ask(string file)
    {
        using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), TimeProvider.System);
        NewFact asked = Origin.PlanAsked("killed", 20, 0.0001, null, "en", ledger.Head().Seq);
        Assert.IsType<Appended.Accepted>(ledger.Append([asked]));
        return asked.Id;
    }

    /// <summary>The ledger holds; whether the job has its plan, whole, or is still asked.</summary>
    private static bool Proved(string file, Guid job)
    {
        using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), TimeProvider.System);
        Assert.Empty(ledger.Verify().Flaws);
        ShedState state = ledger.Now();
        Assert.Empty(state.Ended);
        PlanEntry? plan = state.Plans.FirstOrDefault(one => one.Asked == job);
        Assert.Equal(plan is null, state.Jobs.Any(one => one.Fact == job));
        if (plan is not null)
        {
            Assert.Equal(plan.Value, PlanDocument.Read(ledger.Document(plan.Document)!).Summary.Value);
        }

        return plan is not null;
    }

    private static void Until(string file, Func<ShedState, bool> so)
    {
        using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), TimeProvider.System);
        for (var waited = Stopwatch.StartNew(); !so(ledger.Now()); Thread.Sleep(20))
        {
            Assert.True(waited.Elapsed < TimeSpan.FromMinutes(3), "Nothing came of it in three minutes.");
        }
    }
}
