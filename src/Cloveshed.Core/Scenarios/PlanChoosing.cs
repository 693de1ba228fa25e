using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>A season written more cautiously than it is expected, so that a plan made of it keeps something in hand.</summary>
/// <param name="Name">In the words of JSON: "less-garlic".</param>
public sealed record CautiousSeason(string Name, Season Season, Beliefs Beliefs)
{
    /// <summary>Ways of caution, each one thing: a little less garlic than written, shorter weeks on every line, faster clocks; and a little of all. Our own choice of how much.</summary>
    public static IReadOnlyList<CautiousSeason> Of(Season season, Beliefs beliefs) =>
    [
        new("less-garlic", LessGarlic(season, 0.94), beliefs),
        new("shorter-weeks", ShorterWeeks(season, 0.93), beliefs),
        new("faster-clocks", season, FasterClocks(beliefs, 1.25)),
        new("all-a-little", ShorterWeeks(LessGarlic(season, 0.97), 0.965), FasterClocks(beliefs, 1.1)),
    ];

    // Bins shrink alike, so that a bin holds what it holds. What stands weighed is known.
    private static Season LessGarlic(Season season, double part) => season with
    {
        Lots = [.. season.Lots.Select(r => r.State == LotState.Weighed ? r : r with { Net = r.Net * part, Bins = r.Bins * part, NetLow = r.NetLow * part, NetHigh = r.NetHigh * part })],
    };

    private static Season ShorterWeeks(Season season, double part) => season with
    {
        Lines = [.. season.Lines.Select(l => l with { HoursPerWeek = l.HoursPerWeek * part })],
        LineWeeks = [.. season.LineWeeks.Select(w => w with { Hours = w.Hours * part, OvertimeHours = w.OvertimeOf(season.Lines.First(l => l.Id == w.Line)) })],
    };

    private static Beliefs FasterClocks(Beliefs beliefs, double times) => beliefs with
    {
        Keeping = beliefs.Keeping with { SproutPeak = beliefs.Keeping.SproutPeak * times, DecayAtZero = beliefs.Keeping.DecayAtZero * times },
    };
}

/// <summary>One plan among several, with its outcomes over scenarios that choose and over others that judge.</summary>
public sealed record PlanTrial(string Name, IReadOnlyList<ReplayOutcome> Choosing, IReadOnlyList<ReplayOutcome> Judging);

/// <summary>How a chosen plan does against the expected one in scenarios that had no part in choosing it.</summary>
/// <param name="Against">Null where it is the expected plan itself.</param>
public sealed record ChosenPlan(string Name, Spread Value, double Fill, PairedDifference? Against);

/// <summary>The expected plan, the one that is best on average, and the one that is best in the worst tenth; and every plan that was tried.</summary>
public sealed record PlanChoice(ChosenPlan Expected, ChosenPlan OnAverage, ChosenPlan WorstTenth, IReadOnlyList<ChosenPlan> Tried);

/// <summary>
/// Chooses among plans by scenarios and judges by others, each plan meeting the same seasons. A plan made for one expected season can't
/// hedge by itself; choosing among plans that hedge in different ways is a two-stage plan whose first stage is the whole of a policy.
/// </summary>
public static class PlanChoosing
{
    /// <param name="trials">The expected plan first.</param>
    public static PlanChoice Of(IReadOnlyList<PlanTrial> trials)
    {
        if (trials.Count == 0) throw new ArgumentException("There is nothing to choose from.", nameof(trials));
        PlanTrial average = trials.MaxBy(t => t.Choosing.Average(o => o.Value))!, worst = trials.MaxBy(t => Spread.Of([.. t.Choosing.Select(o => o.Value)]).WorstTenth)!;
        ChosenPlan[] judged = [.. trials.Select(t => Judged(t, trials[0]))];
        ChosenPlan Of(PlanTrial trial) => judged.First(j => j.Name == trial.Name);
        return new(judged[0], Of(average), Of(worst), judged);
    }

    private static ChosenPlan Judged(PlanTrial trial, PlanTrial expected) => new(
        trial.Name, Spread.Of([.. trial.Judging.Select(o => o.Value)]), trial.Judging.Average(o => o.Fill),
        ReferenceEquals(trial, expected) ? null : PairedDifference.Of([.. trial.Judging.Select(o => o.Value)], [.. expected.Judging.Select(o => o.Value)]));
}
