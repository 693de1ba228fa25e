using System.Diagnostics;
using System.Globalization;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Bench;

/// <summary>
/// Scenarios of a season replayed by its plan's policy: time for so many; and what the policy loses, on a sixth of the season, against planning
/// anew every few weeks, and against one plan with everything known beforehand, which nothing can beat but by rough planning.
/// </summary>
internal static class ScenarioSpeed
{
    private const int Sixth = 6;

    /// <summary>Plans of the whole season have so many times the seconds of those of what is left of it.</summary>
    private const int First = 6;

    public static void Run(string seasonFolder, string planFolder, int count, int threads, int sample, double seconds, int every)
    {
        Season season = SeasonReader.Read(seasonFolder).Season!;
        PlanAnswer plan = AnswerReader.Read(planFolder, season).Answer!;
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        var shed = new ReplayShed(instance, PlanPolicy.Of("expected", instance, plan));
        StudyQuestion question = new(ScenarioAssumptions.Default, LotDefaults.Default, 7, 0, count, threads);
        ScenarioStudy.Play(shed, question with { Count = threads });
        var clock = Stopwatch.StartNew();
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        StudyAnswer study = ScenarioStudy.Of(shed, question);
        Say($"{count} scenarios x {instance.Weeks} weeks, {instance.Rows.Length} rows, {threads} threads: {clock.Elapsed.TotalSeconds:0.0} s, processor {(Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds:0.0} s");
        Say($"as planned {study.Planned.Value:#,##0} (plan {plan.Summary.Value:#,##0}); P10 {study.Value.P10:#,##0}, P50 {study.Value.P50:#,##0}, P90 {study.Value.P90:#,##0}; worst tenth {study.Value.WorstTenth:#,##0}; fill P50 {study.Fill.P50:0.000} of {study.Planned.Fill:0.000}");
        if (sample > 0) Loss(season, sample, seconds, every);
    }

    private static void Loss(Season season, int sample, double seconds, int every)
    {
        Season small = Small(season);
        PlanningInstance instance = InstanceBuilding.Build(small, LotKnowing.Know(small), Beliefs.Default);
        PlanAnswer plan = Plan(small, Beliefs.Default, First * seconds);
        var shed = new ReplayShed(instance, PlanPolicy.Of("expected", instance, plan));
        // Only means of sizes are unsure, so that a file can say the truth to a planner.
        ScenarioAssumptions assumed = ScenarioAssumptions.Default with { Sizes = new(Classes: 0) };
        var draw = new ScenarioDraw(instance, LotDefaults.Default, assumed, 7);
        // With nothing unsure, planning anew should come to what the plan says: by how much it does not is what the way of writing the season anew, or another look at it, is worth.
        double sure = new PlannedAnew(small, (now, beliefs) => Plan(now, beliefs, seconds), every).Live(instance, new ScenarioDraw(instance, LotDefaults.Default, ScenarioAssumptions.Sure, 7).Draw(0), plan);
        Say($"plan {plan.Summary.Value:#,##0}, {plan.Summary.Gap:0.0%} under its bound; with nothing unsure planned anew every {every} weeks {sure:#,##0} ({(sure - plan.Summary.Value) / plan.Summary.Value:+0.0%;-0.0%})");
        double policy = 0, hindsight = 0, worst = 0, again = 0;
        for (int i = 0; i < sample; i++)
        {
            Scenario scenario = draw.Draw(i);
            double played = Replay.Of(shed, scenario).Value, known = Plan(TrueSeason.Of(instance, scenario), TrueSeason.Beliefs(instance, scenario, Beliefs.Default), First * seconds).Summary.Value;
            double anew = new PlannedAnew(small, (now, beliefs) => Plan(now, beliefs, seconds), every).Live(instance, scenario, plan);
            Say($"  scenario {i}: planned anew every {every} weeks {anew:#,##0}, {(anew - played) / anew:0.0%} more than played");
            again += anew;
            Say($"  scenario {i}: played {played:#,##0}, planned with hindsight {known:#,##0}, {(known - played) / known:0.0%}");
            (policy, hindsight, worst) = (policy + played, hindsight + known, Math.Max(worst, (known - played) / known));
        }
        Say($"{small.Lots.Count} rows, {small.Orders.Count} order lines, plan {plan.Summary.Value:#,##0}; {sample} scenarios: played {policy / sample:#,##0}, planned anew every {every} weeks {again / sample:#,##0} (the policy loses {1 - policy / again:0.0%}), with hindsight {hindsight / sample:#,##0}: the policy loses {1 - policy / hindsight:0.0%}, at most {worst:0.0%}, of what nobody can know");
    }

    private static PlanAnswer Plan(Season season, Beliefs beliefs, double seconds)
    {
        var clock = Stopwatch.StartNew();
        return new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(season, beliefs, seconds, 1e-3, 1, 2, SearchDepth.Fine, () => clock.Elapsed.TotalSeconds, "bench", "bench", []));
    }

    /// <summary>Every sixth lot and order, a sixth of hours, people, rooms and market; each lot's sizes as cells.</summary>
    private static Season Small(Season season)
    {
        LotsKnown known = LotKnowing.Know(season);
        HashSet<Core.LotId> lots = [.. season.Lots.Select(r => r.Lot).Distinct().Where((_, i) => i % Sixth == 0)];
        HashSet<Core.OrderId> orders = [.. season.Orders.Select(o => o.Order).Distinct().Where((_, i) => i % Sixth == 0)];
        return season with
        {
            Lots = [.. season.Lots.Where(r => lots.Contains(r.Lot)).Select(r => r with { MeanG = known.Lots[r.Lot].MeanG, Cv = known.Lots[r.Lot].Cv })],
            Samples = [],
            Stock = [],
            Orders = [.. season.Orders.Where(o => orders.Contains(o.Order))],
            Market = [.. season.Market.Select(m => m with { P10 = m.P10 / Sixth, P50 = m.P50 / Sixth, P90 = m.P90 / Sixth })],
            SeedNeeds = [.. season.SeedNeeds.Select(n => n with { Net = n.Net / Sixth })],
            AsIsPrices = [.. season.AsIsPrices.Select(a => a with { Limit = a.Limit / Sixth })],
            Places = [.. season.Places.Select(p => p with { CapacityBins = p.CapacityBins / (p.Kind == PlaceKind.Sealed ? 2 : Sixth), CostPerWeek = p.CostPerWeek / Sixth })],
            Lines = [.. season.Lines.Select(l => l with { HoursPerWeek = l.HoursPerWeek / Sixth, OvertimeHours = l.OvertimeHours / Sixth, MinRun = l.MinRun / Sixth, SetupHours = l.SetupHours / Sixth })],
            LineWeeks = [.. season.LineWeeks.Select(w => w with { Hours = w.Hours / Sixth, OvertimeHours = w.OvertimeHours / Sixth })],
            People = [.. season.People.Select(p => p with { Hours = p.Hours / Sixth })],
        };
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
