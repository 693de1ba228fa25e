using Cloveshed.Core.Fits;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Yard;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Yard;

/// <summary>Curing against what is published of it, and against itself.</summary>
public class CuringTests
{
    private static readonly CuringParameters P = CuringParameters.Default;
    private static readonly KeepingParameters Keep = KeepingParameters.Default;
    private static readonly LocalDateTime Dug = new(2026, 7, 10, 8, 0);

    private static WeatherRow[] Steady(double tempC, double rh, int days) => [.. Enumerable.Range(0, days * 24).Select(h => new WeatherRow(Dug.PlusHours(h), tempC, rh))];

    private static IReadOnlyList<WeatherRow> Summer(int days) => TypicalWeather.Days(new TypicalDay(16, 34, 30, 65), new LocalDate(2026, 7, 10), days);

    private static CuringAnswer Cure(IReadOnlyList<WeatherRow> weather, YardKnowledge? yard = null) => Curing.Of(new CuringQuestion(weather, P, Keep, yard ?? YardKnowledge.None(P)));

    private static double Days(CuringAnswer answer, LocalDateTime from) => Period.Between(from, answer.CuredAt!.Value, PeriodUnits.Minutes).Minutes / 1440.0;

    /// <summary>
    /// Dry matter kept, m0 to m1 percent of water loses 1 - (1 - m0)/(1 - m1) (arithmetic). The moistures: 70.3 to 61.5% in an Egyptian separator's
    /// tests; 61.5 to 58.58% (WFLO Commodity Storage Manual, Garlic, 2018).
    /// </summary>
    [Theory]
    [InlineData(70.3, 61.5, 22.9)]
    [InlineData(70, 65, 14.3)]
    [InlineData(70, 60, 25.0)]
    [InlineData(72, 60, 30.0)]
    [InlineData(65, 60, 12.5)]
    [InlineData(61.5, 58.58, 7.05)]
    public void Weight_lost_follows_from_dry_matter_kept(double from, double to, double percent) =>
        Assert.Equal(percent, 100 * CuringLaw.LossBetween(from / 100, to / 100), 0.05);

    /// <summary>Same separator's tests: bulbs of 70.3% water when fresh, 61.5% when dry, so 22.9% lighter; the law's bulb in a dry summer comes near without having been told of the second.</summary>
    [Fact]
    public void A_dug_bulb_has_the_published_water_and_a_cured_one_nearly()
    {
        Assert.Equal(0.703, CuringLaw.Wet(P, CuringLaw.Dug(P)), 0.0005);
        Assert.Equal(1, CuringLaw.MassRatio(P, CuringLaw.Dug(P)), 1e-12);
        CuringAnswer cured = Cure(Summer(25));
        Assert.Equal(0.615, cured.WetThen, 0.015);
        Assert.Equal(0.229, cured.WeightLoss, 0.03);
        Assert.Equal(CuringLaw.LossBetween(0.703, cured.WetThen), cured.WeightLoss, 0.001);
    }

    /// <summary>SARE ONE19-351, final report: at 105 °F, dry air, as little as 6 days.</summary>
    [Fact]
    public void Dry_air_of_105_F_cures_in_six_days() => Assert.Equal(6, Days(Cure(Steady(40.6, 20, 10)), Dug), 0.1);

    /// <summary>Perennia, Nova Scotia, 2021: humidity is kept under 70%, and more than three weeks means that it is too high.</summary>
    [Fact]
    public void More_than_three_weeks_is_damp_air_and_is_said()
    {
        Assert.True(Days(Cure(Steady(20, 60, 60)), Dug) < 21);
        CuringAnswer damp = Cure(Steady(20, 80, 60));
        Assert.True(Days(damp, Dug) > 21);
        Assert.Equal([CuringRule.Damp, CuringRule.Slow], damp.Warnings.Select(w => w.Rule));
        Assert.Empty(Cure(Steady(24, 50, 60)).Warnings);
        CuringAnswer never = Cure(Steady(20, 97, 30));
        Assert.Null(never.CuredAt);
        Assert.Null(never.High80);
    }

    /// <summary>Cornell Cooperative Extension, trials of 2012-13: tunnels, warmer by day, dried 3 days faster than sheds.</summary>
    [Fact]
    public void A_tunnel_is_days_faster_than_a_shed()
    {
        var shed = TypicalWeather.Days(new TypicalDay(16, 28, 50, 85), new LocalDate(2026, 7, 10), 40);
        var tunnel = TypicalWeather.Days(new TypicalDay(16, 36, 33, 85), new LocalDate(2026, 7, 10), 40);
        Assert.InRange(Days(Cure(shed), shed[0].From) - Days(Cure(tunnel), tunnel[0].From), 2, 8);
    }

    /// <summary>Madamba, Driscoll and Buckle, J. Food Eng. 29 (1996): 17.8 kJ per mol of water for slices (from their 989 kJ/kg); ours follows from the deficit and is of that order.</summary>
    [Fact]
    public void Warmth_speeds_drying_about_as_in_slices()
    {
        double ratio = CuringLaw.NeckRate(P, new WeatherRow(Dug, 40, 50)) / CuringLaw.NeckRate(P, new WeatherRow(Dug, 20, 50));
        Assert.InRange(8.314e-3 * Math.Log(ratio) / (1 / 293.15 - 1 / 313.15), 14, 26);
    }

    /// <summary>Limits: 43 to 46 °C for 8 to 12 hours (WFLO 2018); over 45 °C harms, early harvests most (Bayat et al., Acta Hort. 877, 2010).</summary>
    [Fact]
    public void Published_limits_of_heat_are_warned_of_and_not_before()
    {
        WeatherRow[] weather = Steady(30, 40, 12);
        WeatherRow[] Heated(double forcedC, int hours) => [.. weather.Select((row, h) => h is >= 24 && h < 24 + hours ? row with { ForcedC = forcedC } : row)];
        Assert.Empty(Cure(Heated(44, 12)).Warnings);
        Assert.Equal([CuringRule.LongHeat], Cure(Heated(44, 13)).Warnings.Select(w => w.Rule));
        CuringWarning harm = Assert.Single(Cure(Heated(45.5, 6)).Warnings);
        Assert.Equal((CuringRule.OverFortyFive, 6.0, Dug.PlusHours(24)), (harm.Rule, harm.Amount, harm.First));
        Assert.Equal([CuringRule.OverFortyFive, CuringRule.OverPublishedCure], Cure(Heated(47, 6)).Warnings.Select(w => w.Rule));
        Assert.Contains(CuringRule.Gaps, Cure([.. weather.Where((_, h) => h is < 30 or > 40)]).Warnings.Select(w => w.Rule));
    }

    /// <summary>Arithmetic from ASHRAE's saturation equation: 20 °C, 60% warmed to 30 °C has 33.0%, to 35 °C 24.9%.</summary>
    [Fact]
    public void Forced_air_is_outside_air_grown_dry()
    {
        var outside = new WeatherRow(Dug, 20, 60);
        Assert.Equal((20.0, 60.0), outside.Felt());
        Assert.Equal(33.0, (outside with { ForcedC = 30 }).Felt().Rh, 0.05);
        Assert.Equal(24.9, (outside with { ForcedC = 35 }).Felt().Rh, 0.05);
    }

    [Fact]
    public void Rain_delays_and_forced_air_hastens_and_a_roof_costs_nothing()
    {
        IReadOnlyList<WeatherRow> dry = Summer(30);
        IReadOnlyList<WeatherRow> rained = [.. dry.Select((row, h) => h == 150 ? row with { RainMm = 15 } : row)];
        IReadOnlyList<WeatherRow> forced = [.. dry.Select((row, h) => h is > 100 and < 112 ? row with { ForcedC = 43 } : row)];
        double plain = Days(Cure(dry), dry[0].From);
        Assert.True(Days(Cure(rained), dry[0].From) > plain + 1);
        Assert.True(Days(Cure(forced), dry[0].From) < plain);
        CuringAnswer late = Cure([.. dry.Select((row, h) => h == 500 ? row with { RainMm = 30 } : row)]);
        Assert.Equal(Cure(dry).CuredAt, late.CuredAt);
        Assert.True(late.RewetAfter);
    }

    [Fact]
    public void Weather_that_ends_early_is_gone_on_with_and_forced_air_hours_are_named()
    {
        CuringAnswer whole = Cure(Summer(30)), part = Cure(Summer(4));
        Assert.True(part.BeyondWeather && !whole.BeyondWeather);
        Assert.Equal(0, Period.Between(whole.CuredAt!.Value, part.CuredAt!.Value, PeriodUnits.Minutes).Minutes, 30.0);
        Assert.Equal(0, whole.ForcedHours);
        Assert.InRange(part.ForcedHours!.Value, 24, 144);
        // What is to come is told apart from what the weather did, and leads to the cured date.
        Assert.Empty(whole.Ahead);
        Assert.Equal((part.Track[^1].At.PlusHours(1), true), (part.Ahead[0].At, part.Ahead[^1].At >= part.CuredAt && part.Ahead[^1].At <= part.CuredAt!.Value.PlusHours(1)));
        Assert.True(part.Ahead[^1].NeckWet <= P.CuredWet && part.Track[^1].NeckWet > P.CuredWet);
    }

    [Fact]
    public void Warmer_drier_windier_air_never_cures_later_and_the_band_is_in_order() =>
        Gen.Select(Gen.Double[12, 35], Gen.Double[25, 75], Gen.Double[0.1, 6], Gen.Double[0.1, 20], Gen.Double[0, 1]).Sample((t, rh, warmer, drier, wind) =>
        {
            LocalDateTime? At(WeatherRow row) => Cure([.. Enumerable.Range(0, 60 * 8).Select(i => row with { From = Dug.PlusHours(3 * i) })]).CuredAt;
            var row = new WeatherRow(Dug, t, rh, 0, wind);
            LocalDateTime plain = At(row) ?? Dug.PlusYears(1);
            Assert.True(At(row with { TempC = t + warmer }) <= plain);
            Assert.True(At(row with { Rh = rh - drier }) <= plain);
            Assert.True(At(row with { WindMs = wind + 1 }) <= plain);
            CuringAnswer answer = Cure(Steady(t, rh, 60));
            Assert.True(answer.Low80 <= answer.CuredAt && answer.CuredAt <= (answer.High80 ?? Dug.PlusYears(1)));
            Assert.True(answer.LossLow80 < answer.WeightLoss && answer.WeightLoss < answer.LossHigh80);
        }, iter: 40);

    [Fact]
    public void Rows_of_an_hour_and_of_three_tell_the_same_weather() =>
        Assert.Equal(0, Period.Between(
            Cure(Steady(25, 50, 40)).CuredAt!.Value,
            Cure([.. Steady(25, 50, 40).Where((_, h) => h % 3 == 0)]).CuredAt!.Value, PeriodUnits.Seconds).Seconds, 2.0);

    [Fact]
    public void Sacks_find_the_yard_that_they_dried_in()
    {
        IReadOnlyList<WeatherRow> weather = Summer(20);
        CuringParameters truth = new YardKnowledge(Math.Log(0.7), 0, Math.Log(1.15), 0).In(P);
        SackWeight[] sacks = Weighed(weather, truth, [20, 22.5, 18], 14, 0.001, 5);
        CalibrationAnswer answer = SackCalibration.Of(new CalibrationQuestion(weather, sacks, P, Keep));
        Assert.Equal(FitEnd.Converged, answer.End);
        Assert.Equal(Math.Log(0.7), answer.Yard.LnRate, 0.03);
        Assert.Equal(Math.Log(1.15), answer.Yard.LnGreen, 0.03);
        Assert.Equal((3, 42), (answer.Sacks, answer.Weighings));
        Assert.InRange(answer.ResidualSd!.Value, 0.0005, 0.002);
        Assert.True(answer.Yard.LnRateSd < P.RateSd / 3);
        CuringAnswer before = Cure(weather), after = Cure(weather, answer.Yard);
        Assert.True(after.CuredAt > before.CuredAt);
        Assert.True(Width(after) < Width(before) / 2);
        Assert.Equal(Cure(weather, new YardKnowledge(Math.Log(0.7), 0, Math.Log(1.15), 0)).WeightLoss, after.WeightLoss, 0.003);
    }

    [Fact]
    public void Few_weighings_leave_the_prior_and_one_weighing_says_nothing()
    {
        IReadOnlyList<WeatherRow> weather = Summer(20);
        CalibrationAnswer two = SackCalibration.Of(new CalibrationQuestion(weather, [new("A", weather[2].From, 20), new("A", weather[30].From, 19.2), new("B", weather[2].From, 25)], P, Keep));
        Assert.Equal(["B"], two.LeftOut);
        Assert.True(two.Yard.LnGreenSd > P.GreenSd * 0.5 && two.Yard.LnRateSd <= P.RateSd && two.ResidualSd is null);
        Assert.Throws<ArgumentException>(() => SackCalibration.Of(new CalibrationQuestion(weather, [new("B", weather[2].From, 25)], P, Keep)));
        Assert.Throws<ArgumentException>(() => SackCalibration.Of(new CalibrationQuestion(weather, [new("B", weather[2].From, 25), new("B", weather[2].From.PlusDays(90), 24)], P, Keep)));
    }

    /// <summary>Yards drawn from the prior, lots with their own share of chance: the 80% band of the cured date holds 75 to 85% of them.</summary>
    [Fact]
    public void Bands_hold_what_they_say()
    {
        IReadOnlyList<WeatherRow> weather = Summer(45);
        CuringAnswer answer = Cure(weather);
        var chance = new Chance(7);
        int within = 0, yards = 400;
        for (int i = 0; i < yards; i++)
        {
            YardKnowledge yard = new(P.RateSd * chance.Normal() + P.TimeSd * chance.Normal(), 0, 0, 0);
            LocalDateTime? at = Cure(weather, yard).CuredAt;
            if (at >= answer.Low80 && at <= answer.High80)
                within++;
        }

        Assert.InRange(within / (double)yards, 0.75, 0.85);
    }

    private static double Width(CuringAnswer answer) => Period.Between(answer.Low80!.Value, answer.High80!.Value, PeriodUnits.Minutes).Minutes;

    private static SackWeight[] Weighed(IReadOnlyList<WeatherRow> weather, CuringParameters truth, double[] dugKg, int days, double error, uint seed)
    {
        var chance = new Chance(seed);
        CuringState state = CuringLaw.Dug(truth);
        var weights = new List<SackWeight>();
        for (int h = 0; h < days * 24; h++)
        {
            if (h % 24 == 10)
                weights.AddRange(dugKg.Select((kg, s) => new SackWeight($"S{s}", weather[h].From, kg * CuringLaw.MassRatio(truth, state) * (1 + error * chance.Normal()))));
            state = CuringLaw.After(truth, Keep, state, weather[h], 1);
        }

        return [.. weights];
    }
}
