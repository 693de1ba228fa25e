using Cloveshed.Core;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Scenarios;

/// <summary>Studies of many scenarios, and what is drawn for them.</summary>
public sealed class StudyTests
{
    private static StudyQuestion Question(int count, int threads, int first = 0) => new(ScenarioAssumptions.Default, LotDefaults.Default, 7, first, count, threads);

    [Fact]
    public void Threads_change_nothing_and_numbers_are_the_same_seasons_however_many_are_played()
    {
        Played played = Played.Of(OddSeasons.Make(Oddity.All.Single(o => o.Name == "plain"), 1));
        double[] one = [.. ScenarioStudy.Play(played.Shed, Question(8, 1)).Select(o => o.Value)], two = [.. ScenarioStudy.Play(played.Shed, Question(8, 3)).Select(o => o.Value)];
        double[] later = [.. ScenarioStudy.Play(played.Shed, Question(3, 2, first: 5)).Select(o => o.Value)];
        Assert.Equal(one, two);
        Assert.Equal(one[5..], later);
        Assert.True(one.Distinct().Count() > 6, "Scenarios are alike.");
    }

    /// <summary>30 cartons can be packed of 1000 lb weighed to 900 lb or 1100 lb of; all are ordered at 20 (arithmetic).</summary>
    [Fact]
    public void What_a_lot_weighs_decides_what_its_only_order_gets()
    {
        Season season = Tiny.Shed(2, Tiny.Lot("A", 1000) with { State = LotState.Estimated, NetLow = 900, NetHigh = 1100 }).Asked(Tiny.Order("o", "M30", 30));
        Played played = Played.Of(season);
        StudyAnswer answer = ScenarioStudy.Of(played.Shed, Question(400, 2) with { Assumed = ScenarioAssumptions.Sure with { Yield = new() } });
        Assert.Equal(600, answer.Planned.Value, 0.01);
        foreach (ReplayOutcome outcome in answer.Outcomes)
        {
            double net = 1000 * new ScenarioDraw(played.Instance, LotDefaults.Default, ScenarioAssumptions.Sure with { Yield = new() }, 7).Draw(outcome.Scenario).NetFactor[0];
            int cartons = Math.Min(30, (int)Math.Floor(net * 0.9 / 30 + 1e-5));
            Assert.Equal(20 * cartons - 2 * (30 - cartons), outcome.Value, 0.01);
        }
        // A tenth of the lots weigh under 900 lb: 27 cartons are 540 less 6 for those short. Binomial of 400 at a tenth: 40 with an sd of 6.
        Assert.InRange(answer.Outcomes.Count(o => o.Value < 534 - 0.01), 40 - 24, 40 + 24);
        Assert.Equal(answer.Value.P50, answer.Outcomes.Select(o => o.Value).Order().Skip(199).Take(2).Average(), 1e-9);
        FirstBreak first = Assert.Single(answer.Breaks);
        Assert.Equal(("M", 0), (first.Size, first.Earliest));
        Assert.Equal(answer.Outcomes.Count(o => o.Troubles.Any(t => t.Kind == TroubleKind.Size)) / 400.0, first.Share, 1e-12);
        Assert.Equal(1 - first.Share, answer.Unbroken, 1e-12);
    }

    [Fact]
    public void A_lot_is_drawn_alike_whatever_other_lots_there_are()
    {
        Season one = Tiny.Shed(4, Tiny.Lot("A", 1000) with { State = LotState.Estimated }), two = Tiny.Shed(4, Tiny.Lot("B", 500), Tiny.Lot("A", 1000) with { State = LotState.Estimated });
        Scenario alone = Draw(one, 4), beside = Draw(two, 4);
        Assert.Equal((alone.NetFactor[0], alone.LifeFactor[0], alone.LossPower[0]), (beside.NetFactor[1], beside.LifeFactor[1], beside.LossPower[1]));
        Assert.NotEqual(1, alone.NetFactor[0]);
    }

    [Fact]
    public void Market_weeks_lie_as_their_bands_say()
    {
        Season season = Tiny.Shed(1, Tiny.Lot("A", 1000)) with { Market = [new(new("M30"), 0, 20, 40, 100, 220)] };
        int[] units = [.. Enumerable.Range(0, 4000).Select(i => Draw(season, i).MarketUnits[0]).Order()];
        // Five standard errors of a share of a tenth and of a half.
        Assert.InRange(units.Count(u => u < 40) / 4000.0, 0.1 - 0.024, 0.1 + 0.024);
        Assert.InRange(units.Count(u => u < 100) / 4000.0, 0.5 - 0.04, 0.5 + 0.04);
        Assert.InRange(units.Count(u => u >= 220) / 4000.0, 0.1 - 0.024, 0.1 + 0.024);
        Assert.True(units[0] >= 0);
    }

    /// <summary>What is drawn of a sampled lot's sizes is as wide as the 80% bands that people see: within a fifth for classes that hold something.</summary>
    [Fact]
    public void Sizes_drawn_are_as_wide_as_the_bands_shown()
    {
        Season season = OddSeasons.Make(Oddity.All.Single(o => o.Name == "plain"), 1);
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        var draw = new ScenarioDraw(instance, LotDefaults.Default, ScenarioAssumptions.Sure with { Sizes = new() }, 2);
        Scenario[] many = [.. Enumerable.Range(0, 600).Select(draw.Draw)];
        double inside = 0, all = 0;
        for (int l = 0; l < instance.Lots.Length; l++)
            for (int k = 0; k < season.Sizes.Count; k++)
            {
                Band band = instance.Lots[l].Known.ClassBands[k];
                if (instance.Lots[l].SortShares[k] < 0.08) continue;
                inside += many.Count(s => s.Sorts[l][k] >= band.Low && s.Sorts[l][k] <= band.High);
                all += many.Length;
            }
        Assert.True(all > 0);
        Assert.InRange(inside / all, 0.7, 0.9);
    }

    [Fact]
    public void The_best_on_average_and_in_the_worst_tenth_are_chosen_by_some_scenarios_and_judged_by_others()
    {
        // Twenty scenarios: the steady plan has 10 always; the bold one 14 but in the two worst 0; the poor one 5 (arithmetic).
        PlanTrial Trial(string name, Func<int, double> value) => new(name, [.. Enumerable.Range(0, 20).Select(i => Came(i, value(i)))], [.. Enumerable.Range(20, 20).Select(i => Came(i, value(i) + 1))]);
        PlanChoice choice = PlanChoosing.Of([Trial("poor", _ => 5), Trial("steady", _ => 10), Trial("bold", i => i % 20 < 2 ? 0 : 14)]);
        Assert.Equal(("poor", "bold", "steady"), (choice.Expected.Name, choice.OnAverage.Name, choice.WorstTenth.Name));
        Assert.Equal((11, 11), (choice.WorstTenth.Value.Mean, choice.WorstTenth.Value.WorstTenth));
        Assert.Equal((0.9 * 14 + 1, 1), (choice.OnAverage.Value.Mean, choice.OnAverage.Value.WorstTenth));
        Assert.Null(choice.Expected.Against);
        Assert.Equal((5, 5, 5), (choice.WorstTenth.Against!.Mean, choice.WorstTenth.Against.Low95, choice.WorstTenth.Against.High95));
    }

    [Fact]
    public void A_season_of_many_drawn_is_their_middle_and_bad_ones_count_for_more()
    {
        // Ranks 4, 3, 2, 1 of four, from the worst: tenths (arithmetic).
        Assert.Equal([0.2, 0.4, 0.1, 0.3], WeightedSeason.Weights([Came(0, 7), Came(1, 1), Came(2, 9), Came(3, 5)]).Select(w => Math.Round(w, 12)));
        Season season = OddSeasons.Make(Oddity.All.Single(o => o.Name == "plain"), 1);
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        Scenario[] drawn = [.. Enumerable.Range(0, 2).Select(n => Draw(season, n))];
        CautiousSeason middle = WeightedSeason.Of(instance, drawn, [0.25, 0.75], Beliefs.Default);
        double Quarters(Func<Scenario, double> figure) => 0.25 * figure(drawn[0]) + 0.75 * figure(drawn[1]);
        int compared = 0;
        for (int r = 0; r < season.Lots.Count; r++)
        {
            LotRow row = season.Lots[r];
            int lot = Array.FindIndex(instance.Lots, l => l.Id == row.Lot);
            double factor = row.State == LotState.Weighed ? 1 : Quarters(s => s.NetFactor[lot]);
            Assert.Equal(row.Net * factor, middle.Season.Lots[r].Net, 1e-9 * row.Net);
            Assert.Equal(Quarters(s => s.LifeFactor[lot]), middle.Beliefs.Clocks[(row.Lot, row.Place)].Sprout, 1e-9);
            compared++;
        }
        Assert.True(compared > 0);
        Assert.All(season.Orders.Zip(middle.Season.Orders), o => Assert.True(!o.First.Firm || o.First.Units == o.Second.Units));
    }

    private static ReplayOutcome Came(int scenario, double value) => new(scenario, value, value, [1], [1], [1], [1], [1], [value], [], 0, null);

    private static Scenario Draw(Season season, int number) =>
        new ScenarioDraw(InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default), LotDefaults.Default, ScenarioAssumptions.Default, 3).Draw(number);
}
