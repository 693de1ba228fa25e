using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Keep;

/// <summary>A lot's clocks: along its history, after inspections, ahead.</summary>
public class ClocksTests
{
    private static readonly KeepingParameters P = KeepingParameters.Default;
    private static readonly KeepingTraits Medium = new(KeepClass.Medium, false, true);
    private static readonly Climate Cold = new(-0.5, 65, KeepingLaw.AirO2, KeepingLaw.AirCo2), Yard = new(22, 50, KeepingLaw.AirO2, KeepingLaw.AirCo2);
    private static readonly LocalDate Today = new(2026, 9, 1);
    private static readonly PlaceId Room = new("Room 1"), Open = new("Yard");

    private static HistoryQuestion History(IReadOnlyList<LotStay> stays, params ClimateReading[] readings) =>
        new(Medium, new LocalDate(2026, 7, 1), stays, new Dictionary<PlaceId, IReadOnlyList<ClimateReading>> { [Room] = readings }, (place, _) => place == Room ? Cold : Yard, P);

    [Fact]
    public void Without_readings_a_history_is_the_weekly_laws()
    {
        LocalDateTime start = new(2026, 7, 1, 0, 0);
        HistoryAnswer answer = LotHistory.Of(History([new(Open, start, start.PlusWeeks(3)), new(Room, start.PlusWeeks(3), start.PlusWeeks(10))]));
        Assert.Equal(3 * KeepingLaw.LifeUsed(P, Medium, Yard) + 7 * KeepingLaw.LifeUsed(P, Medium, Cold), answer.Clocks.Life, 1e-9);
        Assert.Equal(Math.Pow(1 - KeepingLaw.WeightLoss(P, Medium, Yard, 0), 3) * Math.Pow(1 - KeepingLaw.WeightLoss(P, Medium, Cold, 3), 7), answer.Clocks.WeightRatio, 1e-9);
        Assert.Equal((0.0, 1680.0), (answer.HoursRead, answer.HoursAssumed));
    }

    /// <summary>A door left open for two warm days is seen by the hour, and only while readings hold.</summary>
    [Fact]
    public void Readings_count_by_the_hour_and_hold_for_six()
    {
        LocalDateTime start = new(2026, 8, 1, 0, 0);
        LotStay[] stays = [new(Room, start, start.PlusDays(7))];
        ClimateReading[] warm = [.. Enumerable.Range(0, 48).Select(h => new ClimateReading(start.PlusDays(2).PlusHours(h), 12, 80))];
        HistoryAnswer answer = LotHistory.Of(History(stays, warm));
        Assert.Equal(47 + 6, answer.HoursRead, 1.01);
        Assert.Equal(168, answer.HoursRead + answer.HoursAssumed, 1e-9);
        Climate door = new(12, 80, KeepingLaw.AirO2, KeepingLaw.AirCo2);
        double expected = (answer.HoursRead * KeepingLaw.LifeUsed(P, Medium, door) + answer.HoursAssumed * KeepingLaw.LifeUsed(P, Medium, Cold)) / 168;
        Assert.Equal(expected, answer.Clocks.Life, 1e-9);
        Assert.Equal((-0.5, 12.0), (answer.ColdestC, answer.WarmestC));
        Assert.Throws<ArgumentException>(() => LotHistory.Of(History([new(Room, start.PlusDays(1), start.PlusDays(2)), new(Open, start, start.PlusDays(1))])));
    }

    [Fact]
    public void Gases_that_were_not_read_are_those_of_the_place()
    {
        LocalDateTime start = new(2026, 8, 1, 0, 0);
        Climate inside = Cold with { O2 = 1, Co2 = 10 };
        HistoryQuestion question = History([new(Room, start, start.PlusDays(7))], [.. Enumerable.Range(0, 168).Select(h => new ClimateReading(start.PlusHours(h), -0.5, 65))]);
        HistoryAnswer answer = LotHistory.Of(question with { Otherwise = (_, _) => inside });
        Assert.Equal(KeepingLaw.LifeUsed(P, Medium, inside), answer.Clocks.Life, 1e-9);
    }

    private static readonly Gen<(double S, double D)> Used = Gen.Select(Gen.Double[0, 1.5], Gen.Double[0, 1.5]);

    [Fact]
    public void A_good_lot_loses_as_the_plan_says_and_shares_are_whole() =>
        Gen.Select(Used, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((used, cured, injured) =>
        {
            Assert.Equal(KeepingLaw.SoundShare(P, used.S + used.D), BulbLosses.Of(P, LotCondition.Good, used.S, used.D).Sound, 1e-12);
            BulbShares shares = BulbLosses.Of(P, new LotCondition(cured, injured), used.S, used.D);
            Assert.Equal(1, shares.Sound + shares.Sprouted + shares.Decayed, 1e-12);
            Assert.True(shares.Sound >= 0 && shares.Sprouted >= 0 && shares.Decayed >= -1e-15);
        });

    /// <summary>Direction: WFLO Commodity Storage Manual, Garlic, 2018 (well cured, sound bulbs keep).</summary>
    [Fact]
    public void Badly_cured_and_injured_bulbs_never_last_longer() =>
        Gen.Select(Used, Gen.Double[0, 0.9], Gen.Double[0, 0.9]).Sample((used, cured, injured) =>
        {
            double sound = BulbLosses.Of(P, new LotCondition(cured, injured), used.S, used.D).Sound;
            Assert.True(BulbLosses.Of(P, new LotCondition(cured + 0.1, injured), used.S, used.D).Sound >= sound);
            Assert.True(BulbLosses.Of(P, new LotCondition(cured, injured + 0.1), used.S, used.D).Sound <= sound + 1e-12);
        });

    [Fact]
    public void The_two_clocks_are_the_weekly_laws_parts() =>
        Gen.Select(Gen.Double[-4, 40], Gen.Double[0, 100], Gen.Double[0, 21], Gen.Double[0, 20], Gen.Enum<KeepClass>(), Gen.Bool).Sample((t, rh, o2, co2, keeps, inhibitor) =>
        {
            KeepingTraits traits = new(keeps, inhibitor, true);
            Climate climate = new(t, rh, o2, co2);
            (double sprout, double decay) = KeepingLaw.LifeUsedByClock(P, traits, climate);
            Assert.Equal(KeepingLaw.LifeUsed(P, traits, climate), sprout + decay, 1e-15);
        });

    private static Inspection Looked(LotClocks law, double[] speeds, int bulbs, Chance chance)
    {
        BulbShares shares = BulbLosses.Of(P, LotCondition.Good, law.Sprout * speeds[1], law.Decay * speeds[2]);
        int sprouted = chance.Binomial(bulbs, shares.Sprouted), decayed = chance.Binomial(bulbs - sprouted, shares.Decayed / (1 - shares.Sprouted));
        return new Inspection(law, bulbs, sprouted, decayed, Math.Exp(Math.Log(law.WeightRatio) * speeds[0] + ClockPrior.Default.ScaleSd * chance.Normal()));
    }

    private static LotClocks In(Climate climate, int weeks) => LotClocks.Fresh.After(P, Medium, climate, 168.0 * weeks, 4);

    [Fact]
    public void Many_inspections_recover_the_speeds_that_they_were_made_from()
    {
        var chance = new Chance(3);
        double[] truth = [1.3, 0.75, 1.6];
        Inspection[] inspections = [.. Enumerable.Range(1, 12).Select(k => Looked(In(Yard, k * 2), truth, 5000, chance))];
        ClockBelief belief = InspectionUpdate.Of(new InspectionQuestion(inspections, P, LotCondition.Good, ClockPrior.Default));
        for (int clock = 0; clock < 3; clock++)
        {
            Assert.Equal(Math.Log(truth[clock]), belief.LnSpeeds[clock], 3.5 * belief.Sd(clock));
            Assert.InRange(belief.Sd(clock), 1e-4, 0.05);
        }
    }

    [Fact]
    public void Without_inspections_the_prior_is_left_and_impossible_counts_are_refused()
    {
        ClockBelief belief = InspectionUpdate.Of(new InspectionQuestion([], P, LotCondition.Good, ClockPrior.Default));
        ClockBelief prior = ClockBelief.Of(ClockPrior.Default);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(0, belief.LnSpeeds[i], 1e-6);
            Assert.Equal(prior.Sd(i), belief.Sd(i), 1e-4);
        }

        Assert.Throws<ArgumentException>(() => InspectionUpdate.Of(new InspectionQuestion([new(LotClocks.Fresh, 10, 6, 5)], P, LotCondition.Good, ClockPrior.Default)));
    }

    [Fact]
    public void Sprouts_speak_of_the_sprouting_clock_and_weight_of_the_weight()
    {
        LotClocks law = In(Cold, 20);
        ClockBelief sprouts = InspectionUpdate.Of(new InspectionQuestion([new(law, 200, 60, 2)], P, LotCondition.Good, ClockPrior.Default));
        Assert.True(sprouts.LnSpeeds[1] > 0.1 && sprouts.LnSpeeds[1] > sprouts.LnSpeeds[2] && sprouts.LnSpeeds[0] == 0);
        ClockBelief light = InspectionUpdate.Of(new InspectionQuestion([new(law, 0, 0, 0, law.WeightRatio * 0.96)], P, LotCondition.Good, ClockPrior.Default));
        Assert.True(light.LnSpeeds[0] > 0.1 && Math.Abs(light.LnSpeeds[1]) < 1e-9);
    }

    /// <summary>Lots drawn from the prior, each looked at three times: the 80% band of the run-by day holds 75 to 85% of the true days.</summary>
    [Fact]
    public void Bands_of_the_run_by_day_hold_what_they_say()
    {
        var chance = new Chance(11);
        int within = 0, lots = 600;
        for (int i = 0; i < lots; i++)
        {
            ClockPrior prior = ClockPrior.Default;
            double[] truth = [Math.Exp(prior.Weight * chance.Normal()), Math.Exp(prior.Sprout * chance.Normal()), Math.Exp(prior.Decay * chance.Normal())];
            int weeks = 4 + i % 12;
            Inspection[] inspections = [.. Enumerable.Range(1, 3).Select(k => Looked(In(Cold, weeks * k / 3), truth, 60, chance))];
            LotClocks now = In(Cold, weeks);
            ClockBelief belief = InspectionUpdate.Of(new InspectionQuestion(inspections, P, LotCondition.Good, prior));
            RunByQuestion question = new(now, belief, Medium, LotCondition.Good, [new(30, Cold), new(0, Yard)], Today, P);
            RunByAnswer answer = RunBy.Of(question);
            RunByAnswer known = RunBy.Of(question with { Belief = new ClockBelief([.. truth.Select(speed => Math.Log(speed))], new double[3, 3]) });
            if (known.By >= answer.Low80 && known.By <= answer.High80)
                within++;
        }

        Assert.InRange(within / (double)lots, 0.75, 0.85);
    }

    [Fact]
    public void The_run_by_day_is_when_a_fifth_is_lost()
    {
        ClockBelief sure = new([0, 0, 0], new double[3, 3]);
        RunByAnswer answer = RunBy.Of(new RunByQuestion(LotClocks.Fresh, sure, Medium, LotCondition.Good, [new(0, Cold)], Today, P));
        Assert.Equal(7 / KeepingLaw.LifeUsed(P, Medium, Cold), Period.DaysBetween(Today, answer.By), 1.0);
        Assert.Equal((answer.By, answer.By, 1.0), (answer.Low80, answer.High80, answer.SoundToday));
        RunByAnswer unsure = RunBy.Of(new RunByQuestion(LotClocks.Fresh, ClockBelief.Of(ClockPrior.Default), Medium, LotCondition.Good, [new(0, Cold)], Today, P));
        Assert.True(unsure.Low80 < answer.By && answer.By < unsure.High80);
        RunByAnswer past = RunBy.Of(new RunByQuestion(new LotClocks(0.9, 1, 0.5), sure, Medium, LotCondition.Good, [new(0, Cold)], Today, P));
        Assert.Equal(Today, past.By);
        RunByAnswer later = RunBy.Of(new RunByQuestion(LotClocks.Fresh, sure, Medium, LotCondition.Good, [new(60, Cold), new(0, Yard)], Today, P));
        Assert.True(later.By < answer.By);
    }

    [Fact]
    public void A_move_into_the_cold_buys_days_and_its_money_adds_up()
    {
        Currency usd = Currency.Usd;
        ClockBelief sure = new([0, 0, 0], new double[3, 3]);
        RunByQuestion lot = new(In(Yard, 6), sure, Medium, LotCondition.Good, [new(0, Yard)], Today, P);
        Money Usd(decimal amount) => Money.From(amount, usd);
        MoveQuestion question = new(
            lot, Mass.FromKilograms(20_000m), Usd(2), new StandingChoice([new(0, Yard)], Usd(10)), new StandingChoice([new(0, Cold)], Usd(150)), Usd(400), Today.PlusDays(84));
        MoveAnswer answer = MoveWorth.Of(question);
        Assert.True(answer.DaysGained > 30 && answer.SoundMoving > answer.SoundStaying);
        decimal kilograms = (answer.SoundMoving - answer.SoundStaying).ToKilograms();
        Assert.Equal(Math.Round(2 * kilograms - 12 * 140 - 400, 2), answer.Worth.Amount);
        Assert.True(answer.Worth.Amount > 0 && answer.BreakEvenOn > Today && answer.BreakEvenOn < question.RunOn);
        MoveAnswer same = MoveWorth.Of(question with { Move = question.Stay, MoveCost = Usd(0) });
        Assert.Equal((0, 0m), (same.DaysGained, same.Worth.Amount));
        Assert.Null(MoveWorth.Of(question with { MoveCost = Usd(1_000_000) }).BreakEvenOn);
    }

    /// <summary>Against the slow way: lot by lot, week by week.</summary>
    [Fact]
    public void The_forecast_of_a_whole_shed_is_that_of_each_lot()
    {
        var chance = new Chance(5);
        ForecastLot[] lots = [.. Enumerable.Range(0, 20).Select(i => new ForecastLot(new KeepingTraits((KeepClass)(i % 3), i % 5 == 0, i % 4 != 0), chance.Uniform(), i % 7))];
        Climate[][] paths = [.. Enumerable.Range(0, 6).Select(_ => Enumerable.Range(0, 30).Select(_ => new Climate(30 * chance.Uniform(), 40 + 50 * chance.Uniform(), KeepingLaw.AirO2, KeepingLaw.AirCo2)).ToArray())];
        ForecastAnswer answer = KeepingForecast.Of(new ForecastQuestion(lots, paths, P));
        for (int l = 0; l < lots.Length; l++)
            for (int p = 0; p < paths.Length; p++)
            {
                (double weight, double life) = (1, lots[l].LifeUsed);
                for (int week = 0; week <= 30; week++)
                {
                    Assert.Equal(weight, answer.WeightRatio[answer.At(l, p, week)], 1e-6);
                    Assert.Equal(KeepingLaw.SoundShare(P, life) / KeepingLaw.SoundShare(P, lots[l].LifeUsed), answer.Sound[answer.At(l, p, week)], 1e-5);
                    if (week == 30)
                        break;
                    WeekOfKeeping one = KeepingLaw.Week(P, lots[l].Traits, paths[p][week], lots[l].WeeksSinceHarvest + week);
                    weight *= 1 - one.WeightLoss;
                    life += one.LifeUsed;
                }
            }
    }
}
