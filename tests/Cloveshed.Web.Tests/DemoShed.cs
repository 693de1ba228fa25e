using System.Diagnostics;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Web.Tests;

/// <summary>The demo season in a served ledger, with a quickly made plan adopted. Made once; tests that write take a shed of their own.</summary>
public sealed class DemoShed : IAsyncLifetime
{
    private const double Seconds = 2;

    private ServedShed? shed;

    public ServedShed Shed => shed!;

    public static string Folder
    {
        get
        {
            DirectoryInfo folder = new(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "Cloveshed.slnx")))
            {
                folder = folder.Parent ?? throw new InvalidOperationException("Run the tests from a build inside the source tree.");
            }

            return Path.Combine(folder.FullName, "data", "demo-season");
        }
    }

    private static readonly Lazy<byte[]> Ledger = new(Import);

    /// <summary>The file of a ledger that holds the season and no plan: read and taken once, since that takes longer than most tests.</summary>
    internal static byte[] Imported => Ledger.Value;

    private static byte[] Import()
    {
        string folder = Directory.CreateTempSubdirectory("cloveshed-demo-").FullName, file = Path.Combine(folder, "shed.db");
        try
        {
            using (ShedLedger ledger = ShedLedger.Open(LedgerAddress.Parse(file), new StillClock(ServedShed.Moment)))
            {
                Assert.True(SeasonImport.Import(ledger, Folder, Origin("setup")).Taken);
            }

            Assert.Equal([file], Directory.GetFiles(folder));
            return File.ReadAllBytes(file);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    public async ValueTask InitializeAsync() => shed = await ServedShed.OpenDemo(ledger =>
    {
        Season season = ledger.Now().Season!;
        var clock = Stopwatch.StartNew();
        PlanAnswer answer = new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(
            season, Beliefs.Default, Seconds, 0.01, 1, 2, SearchDepth.Fine, () => clock.Elapsed.TotalSeconds, "0.0.0-test", ledger.Now().InputDigest, []));
        FactOrigin origin = Origin("plan");
        PlanDocument document = PlanDocument.Of(answer, season);
        long basis = ledger.Head().Seq;
        NewFact asked = origin.PlanAsked("First plan", Seconds, 0.01, 1, "en", basis);
        NewFact made = origin.PlanMade(asked.Id, document.Sha256, answer.Summary.Value, answer.Summary.Bound, answer.Summary.Gap, "time", basis);
        Assert.IsType<Appended.Accepted>(ledger.Append([asked, made], new Dictionary<string, byte[]> { [document.Sha256] = document.Bytes }));
        Assert.IsType<Appended.Accepted>(ledger.Append([origin.PlanAdopted(ledger.Now().Plans.Single())]));
    });

    public ValueTask DisposeAsync() => shed!.DisposeAsync();

    /// <summary>Two months before the tests' day.</summary>
    private static FactOrigin Origin(string place) => new(new DateTimeOffset(2026, 7, 1, 8, 0, 0, TimeSpan.FromHours(-4.5)), "test", "test", place);
}
