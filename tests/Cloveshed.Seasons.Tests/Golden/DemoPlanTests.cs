using System.Diagnostics;
using System.Globalization;
using System.Text;
using Cloveshed.Check;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Flow;
using Cloveshed.Pictures.Reading;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Seasons.Tests.Golden;

/// <summary>The plan of the demo season: sound, the same every time, and worth what it was worth when somebody last looked.</summary>
public sealed class DemoPlanTests(DemoPlan plan) : IClassFixture<DemoPlan>
{
    [Fact]
    public void Its_figures_are_those_beside_this_test() => Assert.Equal([], ExpectedFigures.Differences(Figures()));

    [Fact]
    public void The_independent_check_finds_nothing()
    {
        CheckResult result = PlanCheck.Check(DemoPlan.SeasonFolder, plan.Folder);
        Assert.Empty(result.Breaches);
        Assert.NotNull(result.Value);
        Assert.Equal(plan.Answer.Summary.Value, result.Value.Value, 0.01 + 1e-6 * plan.Answer.Summary.Revenue);
    }

    /// <summary>The demo has whole orders that are filled of two products, which small seasons rarely have.</summary>
    [Fact]
    public void Played_with_nothing_unsure_it_is_worth_what_it_is_worth()
    {
        PlanningInstance instance = InstanceBuilding.Build(plan.Season, LotKnowing.Know(plan.Season), Beliefs.Default);
        ReplayOutcome outcome = Replay.Of(new ReplayShed(instance, PlanPolicy.Of("plan", instance, plan.Answer)), new ScenarioDraw(instance, LotDefaults.Default, ScenarioAssumptions.Sure, 1).Draw(0));
        // What is run in the week in which the plan moves it is not moved: it may be worth a little more.
        Assert.InRange(outcome.Value, plan.Answer.Summary.Value - 1, plan.Answer.Summary.Value + 1000);
        Assert.Equal(0, outcome.Closing, 1e-3);
    }

    [Fact]
    public void Two_plans_give_the_same_files_on_one_thread_and_on_two()
    {
        var files = plan.HastyAnswers.Select(a => AnswerWriter.Render(a, plan.Season)).ToList();
        (IReadOnlyList<(string Name, byte[] Bytes)> one, IReadOnlyList<(string Name, byte[] Bytes)> two) = (files[0], files[1]);
        Assert.Equal(15, one.Count);
        Assert.Equal(one.Select(f => f.Name), two.Select(f => f.Name));
        Assert.All(one.Zip(two), pair => Assert.True(pair.First.Bytes.AsSpan().SequenceEqual(pair.Second.Bytes), $"{pair.First.Name} differs"));
    }

    [Fact]
    public void Its_bound_is_not_below_its_value_and_the_gaps_are_those_of_the_two()
    {
        var s = plan.Answer.Summary;
        Assert.True(s.Bound >= s.Value);
        Assert.Equal((s.Bound - s.Value) / Math.Max(1, Math.Abs(s.Value)), s.Gap, 1e-12);
        Assert.InRange(s.GapGivenRooms, 0, s.Gap);
    }

    [Fact]
    public void Its_report_is_light_and_closes_the_pounds()
    {
        Assert.InRange(Encoding.UTF8.GetByteCount(plan.Report), 200_000, 1_500_000);
        var reader = new Reader(plan.Season.Settings, new ReportOptions(Language.En, MassUnit.Pound));
        PoundFlowFacts flow = PoundFlowFacts.From(plan.Season, plan.Answer, reader);
        Assert.Equal(0, Math.Round(flow.Unexplained, 2));
        Assert.Equal(flow.WholeTotal, flow.Ends.Sum(e => e.Whole));
        Assert.DoesNotContain(flow.Nodes, n => n.Stage == FlowStage.Unexplained && n.Whole != 0);
        Assert.Equal(plan.Season.Lots.Sum(l => l.Net), flow.WholeTotal, 0.5);
        Assert.Contains(PoundFlow.Closing(flow, reader), plan.Report, StringComparison.Ordinal);
    }

    /// <summary>Every reason of the demo is made of the planner's own remarks, so that a Spanish reader gets none in English.</summary>
    [Fact]
    public void Its_reasons_are_told_in_Spanish()
    {
        var reader = new Reader(plan.Season.Settings, new ReportOptions(Language.Es, MassUnit.Pound));
        string[] words = [.. plan.Answer.Runs.Select(r => r.Reason).Concat(plan.Answer.Shorts.Select(s => s.Why)).Distinct()];
        Assert.True(words.Length > 100);
        Assert.All(words, w => Assert.Null(reader.Planner(w).Language));
    }

    /// <summary>The best of three, since other tests work beside this one.</summary>
    [Fact]
    public void The_season_is_read_in_less_than_a_second()
    {
        double best = Enumerable.Range(0, 3).Min(_ =>
        {
            var clock = Stopwatch.StartNew();
            Assert.NotNull(SeasonReader.Read(DemoPlan.SeasonFolder).Season);
            return clock.Elapsed.TotalSeconds;
        });
        Assert.True(best < 1, $"{best:0.00} s");
    }

    [Theory]
    [InlineData("100.4", true, "100", "0.5%")]
    [InlineData("100.6", false, "100", "0.5%")]
    [InlineData("-100.6", false, "-100", "0.5%")]
    [InlineData("0.96", true, "0.98", "0.03")]
    [InlineData("11 to 38", false, "11 to 39")]
    public void Figures_are_held_to_their_slack(string found, bool near, params string[] expected) => Assert.Equal(near, ExpectedFigures.Near(found, expected));

    private Dictionary<string, string> Figures()
    {
        var answer = plan.Answer;
        static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);
        double Pounds(LineMode mode, bool sorted = false) => answer.Runs.Where(r => r.Mode == mode && r.FromSorted == sorted).Sum(r => r.MassIn);
        var figures = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["money: value"] = Whole(answer.Summary.Value),
            ["money: bound"] = Whole(answer.Summary.Bound),
            ["money: revenue"] = Whole(answer.Summary.Revenue),
            ["runs"] = Whole(answer.Runs.Count),
            ["lb run: fresh"] = Whole(Pounds(LineMode.Fresh)),
            ["lb run: cracked"] = Whole(Pounds(LineMode.Crack)),
            ["lb run: cracked of what was sorted out"] = Whole(Pounds(LineMode.Crack, sorted: true)),
            ["lb run: for seed"] = Whole(Pounds(LineMode.Seed)),
        };
        foreach ((string product, double share) in answer.Summary.FillShares.OrderBy(f => f.Key, StringComparer.Ordinal))
            figures[$"filled: {product}"] = share.ToString("0.0000", CultureInfo.InvariantCulture);
        foreach (var room in answer.Rooms.OrderBy(r => r.Place.Text, StringComparer.Ordinal))
            figures[$"weeks: {room.Place}"] = string.Create(CultureInfo.InvariantCulture, $"sealed {room.Sealed}, opened {room.Opened}");
        return figures;
    }
}
