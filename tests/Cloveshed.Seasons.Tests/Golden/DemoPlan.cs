using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Demo;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Golden;

/// <summary>
/// The demo season, planned with stops that repeat exactly: so many rounds, no trials of other room weeks, no clock. The answer
/// is written with its report as the program writes them. Beside it two hasty plans, one on one thread and one on two.
/// </summary>
public sealed class DemoPlan : IDisposable
{
    public static readonly string SeasonFolder = Path.Combine(Committed.Data, "demo-season");

    private const double WithoutEnd = 1e6;

    /// <summary>With no time at all every stage does the least that it can, and that does not depend on the clock.</summary>
    private const double Hasty = 0;

    public DemoPlan()
    {
        Season = SeasonReader.Read(SeasonFolder).Season!;
        Task<PlanAnswer[]> hasty = Task.Run(() => new[] { Plan(Hasty, 1), Plan(Hasty, 2) });
        Answer = Plan(WithoutEnd, 1);
        HastyAnswers = hasty.GetAwaiter().GetResult();
        Report = PlanReport.Render(Season, Answer, new ReportOptions(Language.En, MassUnit.Pound));
        Folder = Path.Combine(Path.GetTempPath(), $"demo-plan-{Guid.NewGuid():N}");
        AnswerWriter.Write(Answer, Season, Folder, [("report.html", System.Text.Encoding.UTF8.GetBytes(Report))]);
    }

    public Season Season { get; }
    public PlanAnswer Answer { get; }
    public IReadOnlyList<PlanAnswer> HastyAnswers { get; }
    public string Report { get; }
    public string Folder { get; }

    private PlanAnswer Plan(double seconds, int threads) => new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(
        Season, Beliefs.Default, seconds, 1e-3, 1, threads, SearchDepth.Fine, () => 0, "golden", "golden", [], RoundsAtMost: 6, RoomTrialsAtMost: 0, PolishNodesAtMost: 0));

    public void Dispose() => Directory.Delete(Folder, true);
}
