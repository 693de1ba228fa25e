using Cloveshed.App.Words;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;

namespace Cloveshed.App.Plans;

/// <summary>Which plan is to be played how often.</summary>
/// <param name="Seed">Null: the season's own, or else 1.</param>
/// <param name="CompareSeconds">Seconds for each plan that is made to be compared; null: none is.</param>
internal sealed record ScenariosAsked(string Folder, string Plan, int Count, int? Seed, double? CompareSeconds);

/// <summary>The answer, with the season that it is of.</summary>
internal sealed record ScenariosTold(Season Season, int Seed, StudyAnswer Study, PlanChoice? Choice);

/// <summary>Reads a season and its plan and plays them.</summary>
internal static class ScenariosMaking
{
    /// <summary>Null where something was refused or stopped; it is then told.</summary>
    public static ScenariosTold? Make(ScenariosAsked asked, World world, Phrasebook phrases)
    {
        if (SeasonAndPlan.Read(asked.Folder, asked.Plan, Phrase.PromiseRefused, world, phrases) is not { } read)
        {
            return null;
        }

        read.Warn(world, phrases);
        using CancellationTokenSource stop = new();
        using IDisposable stopping = world.OnStop(stop.Cancel);
        Season season = read.Season;
        int seed = asked.Seed ?? season.Settings.Seed ?? 1;
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        StudyQuestion question = new(ScenarioAssumptions.Default, LotDefaults.Default, seed, 0, asked.Count, PlanMaking.Threads, Cancel: stop.Token);
        try
        {
            ReplayShed shed = new(instance, PlanPolicy.Of("expected", instance, read.Plan));
            world.Error.WriteLine(phrases.Say(Phrase.ScenariosPlaying, asked.Count));
            StudyAnswer study = ScenarioStudy.Of(shed, question);
            return new(season, seed, study, asked.CompareSeconds is { } seconds ? Compare(shed, study, question, seconds, world, phrases) : null);
        }
        catch (OperationCanceledException)
        {
            world.Error.WriteLine(phrases[Phrase.PromiseStopped]);
            return null;
        }
    }

    // The scenarios that were told choose; as many others judge.
    private static PlanChoice Compare(ReplayShed expected, StudyAnswer study, StudyQuestion question, double seconds, World world, Phrasebook phrases)
    {
        StudyQuestion judging = question with { First = question.Count };
        List<PlanTrial> trials = [new("expected", study.Outcomes, ScenarioStudy.Play(expected, judging))];
        ScenarioDraw draw = new(expected.Instance, question.Lots, question.Assumed, question.Seed);
        CautiousSeason weighted = WeightedSeason.Of(
            expected.Instance, [.. study.Outcomes.Select(o => draw.Draw(o.Scenario))], WeightedSeason.Weights(study.Outcomes), Beliefs.Default);
        foreach (CautiousSeason cautious in CautiousSeason.Of(expected.Instance.Season, Beliefs.Default).Append(weighted))
        {
            world.Error.WriteLine(phrases.Say(Phrase.ScenariosPlanning, phrases[ScenariosText.NameOf(cautious.Name)]));
            PlanAnswer plan = new SeasonPlanner(world.Solver).Plan(new PlanRequest(
                cautious.Season, cautious.Beliefs, seconds, 1e-3, (int)question.Seed, question.Threads, SearchDepth.Fine, world.Elapsed, "", "", [], Cancel: question.Cancel));
            question.Cancel.ThrowIfCancellationRequested();
            ReplayShed shed = new(expected.Instance, PlanPolicy.Of(cautious.Name, expected.Instance, plan));
            trials.Add(new(cautious.Name, ScenarioStudy.Play(shed, question), ScenarioStudy.Play(shed, judging)));
        }

        return PlanChoosing.Of(trials);
    }
}
