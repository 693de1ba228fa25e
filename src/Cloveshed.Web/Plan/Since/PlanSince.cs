using Cloveshed.Ledger;

namespace Cloveshed.Web.Plan.Since;

/// <summary>What happened to a kind of thing: entered, changed or dropped, or a hold set or lifted.</summary>
/// <param name="Noun">As the kinds of facts name it: order-line, lot, hold, season.</param>
public sealed record SinceCount(string Noun, int New, int Changed, int Gone)
{
    public int Total => New + Changed + Gone;
}

/// <summary>What was said after a plan's basis and is not in it.</summary>
/// <param name="OtherSeason">A season was opened since: the plan is of an earlier one.</param>
public sealed record PlanSince(bool OtherSeason, IReadOnlyList<SinceCount> Counts)
{
    public const string Hold = "hold", Season = "season", Look = "look", Sizer = "sizer";

    public int Total => Counts.Sum(count => count.Total);

    public static PlanSince Of(IReadOnlyList<Fact> facts)
    {
        if (facts.Any(fact => fact.Kind == FactKinds.SeasonOpened))
        {
            return new PlanSince(true, []);
        }

        return new PlanSince(false, [.. facts.Select(Step).GroupBy(step => step.Noun)
            .Select(steps => new SinceCount(steps.Key, steps.Count(step => step.End == "entered"), steps.Count(step => step.End == "changed"), steps.Count(step => step.End == "dropped")))
            .OrderByDescending(count => count.Total).ThenBy(count => count.Noun, StringComparer.Ordinal)]);
    }

    private static (string Noun, string End) Step(Fact fact) => fact.Kind switch
    {
        FactKinds.RunPinned or FactKinds.RunBarred => (Hold, "entered"),
        FactKinds.HoldLifted => (Hold, "dropped"),
        FactKinds.LotInspected => (Look, fact.Corrects is null ? "entered" : "changed"),
        FactKinds.YardRecordWithdrawn => (Look, "dropped"),
        FactKinds.SizerCounted => (Sizer, fact.Corrects is null ? "entered" : "changed"),
        _ => (fact.Kind[..fact.Kind.LastIndexOf('.')], fact.Kind[(fact.Kind.LastIndexOf('.') + 1)..]),
    };
}
