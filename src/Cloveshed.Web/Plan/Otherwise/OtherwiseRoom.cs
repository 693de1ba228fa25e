using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Ledger;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Plan.Since;

namespace Cloveshed.Web.Plan.Otherwise;

/// <summary>A plan being played through seasons that turn out otherwise, and what came of it. Its parts are seasons.</summary>
public sealed class OtherwiseJob(Func<PlanningInstance> instance, PlanSight sight) : QuietJob<StudyAnswer>
{
    /// <summary>Seasons drawn for a page.</summary>
    public const int Count = 200;

    // Seasons between two looks at whether a hand has stopped it.
    private const int AtOnce = 10;

    /// <summary>The seed of chance: the season's, or 1.</summary>
    public int Seed { get; } = sight.Season.Settings.Seed ?? 1;

    protected override StudyAnswer Make()
    {
        PlanningInstance played = instance();
        ReplayShed shed = new(played, PlanPolicy.Of("expected", played, sight.Answer));
        List<ReplayOutcome> outcomes = [];
        while (outcomes.Count < Count)
        {
            // One thread: it gives way to the pages.
            outcomes.AddRange(ScenarioStudy.Play(shed, new StudyQuestion(ScenarioAssumptions.Default, LotDefaults.Default, Seed, outcomes.Count, AtOnce, 1)));
            Step(AtOnce);
        }

        return ScenarioStudy.Of(shed, outcomes, LotDefaults.Default);
    }
}

/// <summary>Plays plans, each once.</summary>
public sealed class OtherwiseRoom(ShedLedger ledger, BasisShelf bases, TimeProvider clock) : QuietRoom<OtherwiseJob, StudyAnswer>("plans played")
{
    /// <summary>The play of a plan, on the lots, orders and clocks that it was made from.</summary>
    public OtherwiseJob Of(PlanSight sight) => Of(Key(sight), () => new OtherwiseJob(
        () => InstanceBuilding.Build(sight.Season, LotKnowing.Know(sight.Season), Beliefs.Default with { Clocks = ClockShelf.Upto(ledger, bases.ShedOf(sight.Entry.Basis), sight.Entry.Basis, clock.LocalTimeZone).Clocks }), sight));

    /// <summary>Begins anew what was stopped.</summary>
    public void Again(PlanSight sight) => Again(Key(sight), Of(sight));

    private static string Key(PlanSight sight) => sight.Entry.Fact.ToString();
}
