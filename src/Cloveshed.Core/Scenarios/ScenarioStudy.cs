using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>How far a study is: scenarios done of all.</summary>
public sealed record StudyProgress(int Done, int All);

/// <summary>Which scenarios are to be played, and how.</summary>
/// <param name="First">The number of the first: a study of other numbers meets other seasons.</param>
/// <param name="Threads">The outcome does not depend on it.</param>
public sealed record StudyQuestion(
    ScenarioAssumptions Assumed, LotDefaults Lots, long Seed, int First, int Count, int Threads, Action<StudyProgress>? Progress = null, CancellationToken Cancel = default);

/// <summary>One size class or clove grade over the scenarios: what is shipped of what is ordered.</summary>
public sealed record SizeFill(string Name, Spread Filled, Spread OnTime, double Planned);

/// <summary>One trouble over the scenarios.</summary>
/// <param name="Share">Of the scenarios.</param>
/// <param name="Earliest">The first week in any of them, and the middle of their first weeks.</param>
/// <param name="Mass">Mean over the scenarios that have it, in the season's unit.</param>
public sealed record TroubleShare(TroubleKind Kind, string Name, double Share, int Earliest, int Middle, double Mass);

/// <summary>A size that is the first to be missing, in a share of the scenarios.</summary>
public sealed record FirstBreak(string Size, double Share, int Earliest, int Middle);

/// <summary>Three bands over the weeks.</summary>
public sealed record WeekBands(double[] P10, double[] P50, double[] P90);

/// <summary>What a plan returns over many scenarios, in the season's unit and currency.</summary>
/// <param name="Planned">The outcome where everything is as written.</param>
/// <param name="Return">Cumulative, by week.</param>
/// <param name="OnTime">Share of what is due in a week that is shipped by then; weeks in which nothing is due have 1.</param>
/// <param name="Unbroken">Share of the scenarios in which no size is missing.</param>
public sealed record StudyAnswer(
    string Plan, int Count, ReplayOutcome Planned, Spread Value, Spread Revenue, Spread Fill, IReadOnlyList<SizeFill> Sizes, WeekBands Return, WeekBands OnTime,
    IReadOnlyList<FirstBreak> Breaks, double Unbroken, IReadOnlyList<TroubleShare> Troubles, IReadOnlyList<ReplayOutcome> Outcomes);

/// <summary>Plays a plan under many scenarios. Each is drawn by its own number, so threads change nothing.</summary>
public static class ScenarioStudy
{
    /// <summary>Outcomes in the order of their scenarios.</summary>
    public static IReadOnlyList<ReplayOutcome> Play(ReplayShed shed, StudyQuestion question)
    {
        var draw = new ScenarioDraw(shed.Instance, question.Lots, question.Assumed, question.Seed);
        var outcomes = new ReplayOutcome[question.Count];
        int done = 0;
        Parallel.For(0, question.Count, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, question.Threads), CancellationToken = question.Cancel }, i =>
        {
            outcomes[i] = Replay.Of(shed, draw.Draw(question.First + i));
            question.Progress?.Invoke(new StudyProgress(Interlocked.Increment(ref done), question.Count));
        });
        return outcomes;
    }

    /// <summary>Plays and sums up; at least one scenario.</summary>
    public static StudyAnswer Of(ReplayShed shed, StudyQuestion question) => Of(shed, Play(shed, question), question.Lots);

    /// <summary>Sums up.</summary>
    public static StudyAnswer Of(ReplayShed shed, IReadOnlyList<ReplayOutcome> outcomes, LotDefaults lots)
    {
        PlanningInstance instance = shed.Instance;
        ReplayOutcome planned = Replay.Of(shed, new ScenarioDraw(instance, lots, ScenarioAssumptions.Sure, 0).Draw(0));
        SizeFill[] sizes = [.. instance.Sorts.Index().Where(k => planned.Ordered[k.Index] > 0).Select(k => new SizeFill(k.Item.Name,
            Spread.Of([.. outcomes.Select(o => Part(o.Shipped[k.Index], o.Ordered[k.Index]))]), Spread.Of([.. outcomes.Select(o => Part(o.OnTime[k.Index], o.Ordered[k.Index]))]),
            Part(planned.Shipped[k.Index], planned.Ordered[k.Index])))];
        Trouble?[] firsts = [.. outcomes.Select(FirstMissing)];
        FirstBreak[] breaks = [.. firsts.OfType<Trouble>().GroupBy(t => t.Name).Select(g => new FirstBreak(g.Key, (double)g.Count() / outcomes.Count, g.Min(t => t.FirstWeek), Middle(g.Select(t => t.FirstWeek))))
            .OrderByDescending(b => b.Share).ThenBy(b => b.Earliest).ThenBy(b => b.Size, StringComparer.Ordinal)];
        TroubleShare[] troubles = [.. outcomes.SelectMany(o => o.Troubles).GroupBy(t => (t.Kind, t.Name))
            .Select(g => new TroubleShare(g.Key.Kind, g.Key.Name, (double)g.Count() / outcomes.Count, g.Min(t => t.FirstWeek), Middle(g.Select(t => t.FirstWeek)), g.Average(t => t.Mass)))
            .OrderByDescending(t => t.Share * t.Mass).ThenBy(t => t.Name, StringComparer.Ordinal)];
        return new StudyAnswer(
            shed.Policy.Name, outcomes.Count, planned, Spread.Of([.. outcomes.Select(o => o.Value)]), Spread.Of([.. outcomes.Select(o => o.Revenue)]), Spread.Of([.. outcomes.Select(o => o.Fill)]),
            sizes, Bands(outcomes, instance.Weeks, (o, t) => o.Cumulative[t]), Bands(outcomes, instance.Weeks, (o, t) => Part(o.OnTimeIn[t], o.DueIn[t])),
            breaks, (double)firsts.Count(f => f is null) / outcomes.Count, troubles, outcomes);
    }

    // What the plan is short of already is none of the scenario's doing: troubles are counted against the plan. Of sizes that go missing in one week, the one that misses most.
    private static Trouble? FirstMissing(ReplayOutcome outcome) =>
        outcome.Troubles.Where(t => t.Kind == TroubleKind.Size).OrderBy(t => t.FirstWeek).ThenByDescending(t => t.Mass).FirstOrDefault();

    private static double Part(double some, double all) => all > 0 ? some / all : 1;

    private static int Middle(IEnumerable<int> weeks)
    {
        int[] sorted = [.. weeks.Order()];
        return sorted[(sorted.Length - 1) / 2];
    }

    private static WeekBands Bands(IReadOnlyList<ReplayOutcome> outcomes, int weeks, Func<ReplayOutcome, int, double> figure)
    {
        Spread[] spreads = [.. Enumerable.Range(0, weeks).Select(t => Spread.Of([.. outcomes.Select(o => figure(o, t))]))];
        return new([.. spreads.Select(s => s.P10)], [.. spreads.Select(s => s.P50)], [.. spreads.Select(s => s.P90)]);
    }
}
