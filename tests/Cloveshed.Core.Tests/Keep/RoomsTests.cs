using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Air;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Quantities;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Keep;

/// <summary>Rooms: states, alarms, entry, heat, gas, cost, stacking.</summary>
public class RoomsTests
{
    private static readonly LocalDateTime Noon = new(2026, 8, 1, 12, 0);

    private static RoomFact[] Facts(params RoomStep[] steps) => [.. steps.Select((step, i) => new RoomFact(step, Noon.PlusDays(i), "Ida Quill"))];

    [Fact]
    public void A_room_goes_round_and_only_through_airing_after_it_was_sealed()
    {
        RoomStep[] round = [RoomStep.LoadingBegan, RoomStep.PullDownBegan, RoomStep.DoorsSealed, RoomStep.SealBroken, RoomStep.AiringBegan, RoomStep.TurnedOver, RoomStep.Emptied];
        RoomState[] states = [RoomState.Loading, RoomState.PullingDown, RoomState.Sealed, RoomState.Opened, RoomState.Airing, RoomState.RunningOut, RoomState.Empty];
        for (int i = 0; i < round.Length; i++)
        {
            RoomStanding standing = RoomStates.Of(Facts(round[..(i + 1)]));
            Assert.Equal((states[i], Noon.PlusDays(i), 0), (standing.State, standing.Since!.Value, standing.Missteps.Count));
        }

        RoomStanding holding = RoomStates.Of(Facts(RoomStep.LoadingBegan, RoomStep.PullDownBegan, RoomStep.PulledDown, RoomStep.LoadingBegan, RoomStep.PulledDown));
        Assert.Equal((RoomState.Holding, 0), (holding.State, holding.Missteps.Count));
        RoomStanding hasty = RoomStates.Of(Facts(RoomStep.LoadingBegan, RoomStep.DoorsSealed, RoomStep.Emptied, RoomStep.TurnedOver));
        Assert.Equal(RoomState.Sealed, hasty.State);
        Assert.Equal([RoomStep.Emptied, RoomStep.TurnedOver], hasty.Missteps.Select(m => m.Fact.Step));
        Assert.Equal([RoomState.Airing], hasty.Missteps[1].FitsIn);
    }

    /// <summary>Whatever is done in whatever order, a room that was sealed is not run out before it was aired and turned over.</summary>
    [Fact]
    public void No_order_of_steps_leads_around_airing() =>
        Gen.Enum<RoomStep>().Array[0, 30].Sample(steps =>
        {
            bool unaired = false;
            for (int i = 1; i <= steps.Length; i++)
            {
                RoomState now = RoomStates.Of(Facts(steps[..i])).State;
                unaired = now == RoomState.Sealed || (unaired && now != RoomState.Airing);
                Assert.False(unaired && now is not (RoomState.Sealed or RoomState.Opened));
            }
        });

    private static RoomAlarmKind[] Alarms(RoomState state, double? t = -0.5, double? rh = 65, double? o2 = 1, double? co2 = 10, double hoursAgo = 1) =>
        [.. RoomAlarms.Of(new RoomAlarmQuestion(state, [new(Noon.PlusMinutes(-(long)(60 * hoursAgo)), t, rh, o2, co2, ReadingSource.Hand, "Ida Quill")], new RoomLimits(), Noon)).Select(a => a.Kind)];

    [Fact]
    public void Readings_out_of_limits_are_alarms()
    {
        Assert.Equal([], Alarms(RoomState.Sealed));
        Assert.Equal([RoomAlarmKind.TooCold], Alarms(RoomState.Sealed, t: -1));
        Assert.Equal([RoomAlarmKind.TooWarm, RoomAlarmKind.TooDamp], Alarms(RoomState.Sealed, t: 3, rh: 75));
        Assert.Equal([RoomAlarmKind.TooDry], Alarms(RoomState.Sealed, rh: 50));
        // While bins come in and cool, warm is no alarm; once it is down, it is, and ordinary air is none.
        Assert.Equal([], Alarms(RoomState.PullingDown, t: 3, o2: 20.9, co2: 0.04));
        Assert.Equal([RoomAlarmKind.TooWarm], Alarms(RoomState.Holding, t: 3, o2: 20.9, co2: 0.04));
        Assert.Equal([RoomAlarmKind.OxygenTooHigh, RoomAlarmKind.CarbonDioxideTooLow], Alarms(RoomState.Sealed, o2: 8, co2: 2));
        Assert.Equal([RoomAlarmKind.OxygenTooLow, RoomAlarmKind.CarbonDioxideTooHigh], Alarms(RoomState.Sealed, o2: 0.2, co2: 18));
        Assert.Equal([RoomAlarmKind.Unwatched], Alarms(RoomState.Sealed, hoursAgo: 25));
        Assert.Equal([RoomAlarmKind.Unwatched], RoomAlarms.Of(new RoomAlarmQuestion(RoomState.Sealed, [], new RoomLimits(), Noon)).Select(a => a.Kind));
    }

    /// <summary>OSHA 29 CFR 1910.146(b): under 19.5%; 5,000 ppm over a working day (OSHA table Z-1, from secondary pages).</summary>
    [Fact]
    public void Air_that_kills_where_people_work_is_the_first_alarm()
    {
        Assert.Equal(RoomAlarmKind.DeadlyAir, Alarms(RoomState.Loading, o2: 19.4, co2: 0.04)[0]);
        Assert.Equal(RoomAlarmKind.DeadlyAir, Alarms(RoomState.RunningOut, o2: 20.9, co2: 0.6)[0]);
        Assert.Equal([], Alarms(RoomState.Loading, o2: 19.5, co2: 0.5));
        Assert.Equal([RoomAlarmKind.DeadlyAir], Alarms(RoomState.Empty, t: 20, rh: 90, o2: 12, co2: 0.04));
    }

    [Fact]
    public void An_alarm_says_since_when()
    {
        RoomReading At(int hours, double t) => new(Noon.PlusHours(hours), t, 65, 1, 10, ReadingSource.Device, "probe 3");
        RoomAlarm alarm = Assert.Single(RoomAlarms.Of(new RoomAlarmQuestion(RoomState.Sealed, [At(0, 2), At(1, 0), At(2, 1), At(3, 1.5)], new RoomLimits(), Noon.PlusHours(4))));
        Assert.Equal((RoomAlarmKind.TooWarm, 1.5, 0.5, Noon.PlusHours(2)), (alarm.Kind, alarm.Value, alarm.Limit, alarm.Since));
    }

    private static GasTest Test(TestedGas gas, double value, int minutesAgo, string who = "Ida Quill") => new(gas, value, who, "four-gas meter 2", Noon.PlusMinutes(-minutesAgo));

    private static EntryConcern[] Concerns(EntryQuestion question) => [.. RoomEntry.Of(question).Findings.Select(f => f.Concern)];

    private static readonly GasTest[] GoodTests = [Test(TestedGas.Oxygen, 20.9, 9), Test(TestedGas.Flammable, 0, 8), Test(TestedGas.CarbonDioxide, 0.05, 7)];

    /// <summary>Order: oxygen, flammable, toxic (from memory); 19.5 and 23.5% (29 CFR 1910.146(b)); 10% of the lower flammable limit (same); 5,000 ppm CO2.</summary>
    [Fact]
    public void What_speaks_against_entry_is_named_and_nothing_speaks_for_it()
    {
        EntryQuestion good = new(RoomState.RunningOut, GoodTests, "Bo Sorrel", true, Noon);
        Assert.Equal([], Concerns(good));
        Assert.Equal([EntryConcern.RoomState], Concerns(good with { State = RoomState.Airing }));
        Assert.Equal([EntryConcern.NoAttendant, EntryConcern.NotLockedOut], Concerns(good with { Attendant = " ", LockedAndTagged = false }));
        Assert.Equal([EntryConcern.NotTested, EntryConcern.NotTested, EntryConcern.NotTested], Concerns(good with { Tests = [] }));
        Assert.Equal([EntryConcern.OverLimit], Concerns(good with { Tests = [Test(TestedGas.Oxygen, 19.4, 9), GoodTests[1], GoodTests[2]] }));
        Assert.Equal([EntryConcern.OverLimit], Concerns(good with { Tests = [GoodTests[0], Test(TestedGas.Flammable, 11, 8), GoodTests[2]] }));
        Assert.Equal([EntryConcern.OverLimit], Concerns(good with { Tests = [GoodTests[0], GoodTests[1], Test(TestedGas.CarbonDioxide, double.NaN, 7)] }));
        Assert.Equal([EntryConcern.TestTooOld], Concerns(good with { Tests = [Test(TestedGas.Oxygen, 20.9, 40), GoodTests[1], GoodTests[2]] }));
        Assert.Equal([EntryConcern.TestUnsigned], Concerns(good with { Tests = [GoodTests[0], Test(TestedGas.Flammable, 0, 8, ""), GoodTests[2]] }));
        Assert.Contains(EntryConcern.TestOrder, Concerns(good with { Tests = [Test(TestedGas.Oxygen, 20.9, 2), GoodTests[1], GoodTests[2]] }));
        Assert.Equal(Enum.GetValues<EntryRule>(), RoomEntry.Of(good).Always);
        Assert.Equal(EntryRule.LocalCodeFirst, RoomEntry.Of(good).Always[0]);
        // The answer has no member that could be read as leave.
        Assert.Equal(["Always", "Findings"], typeof(EntryAnswer).GetProperties().Where(p => p.Name != "EqualityContract").Select(p => p.Name).Order());
    }

    /// <summary>UC Davis: 2 to 6 mL per kg and hour at 0 °C, so 4.8 to 14.4 m³ a day of 100 t, and 11.8 to 35.4 W a tonne (arithmetic).</summary>
    [Fact]
    public void A_hundred_tonnes_breathe_as_published()
    {
        (double low, double high) = RoomGas.CarbonDioxideM3PerDay(100, 0);
        Assert.Equal(4.8, low, 1e-9);
        Assert.Equal(14.4, high, 1e-9);
        RoomHeatAnswer heat = RoomHeat.Of(new RoomHeatQuestion(100, 0, 0, 0, 24, 0, MoistAir.Of(0, 65), 65, 0, 0, KeepingParameters.Default));
        Assert.InRange(heat.RespirationW, 1180, 3540);
        Assert.Equal(heat.RespirationW, heat.TotalW, 1e-6);
    }

    /// <summary>WFLO Commodity Storage Manual, Garlic, 2018: 3.17 kJ per kg and °C above freezing: 100 t by 20 °C in 48 h are 36.7 kW (arithmetic).</summary>
    [Fact]
    public void Pulling_down_takes_the_published_heat()
    {
        RoomHeatQuestion question = new(100, 0, 20, 0, 48, 250, MoistAir.Of(30, 50), 65, 40, 2000, KeepingParameters.Default);
        RoomHeatAnswer heat = RoomHeat.Of(question);
        Assert.Equal(36_690, heat.FieldHeatW, 10.0);
        Assert.Equal(7500, heat.WallsW, 1e-9);
        Assert.True(heat.OutsideAirW > 0 && heat.CondensateKgPerDay > 0);
        Assert.Equal(heat.TotalW / 3516.85, heat.Tons, 0.001);
        // Dry outside air brings no water; what is left is the garlic's own.
        RoomHeatAnswer dry = RoomHeat.Of(question with { Outside = MoistAir.Of(10, 5) });
        Assert.Equal(100_000 * KeepingLaw.WeightLoss(KeepingParameters.Default, new KeepingTraits(Seasons.KeepClass.Medium, false, true), new Climate(0, 65, 20.9, 0.04), 0) / 7, dry.CondensateKgPerDay, 0.01);
    }

    /// <summary>20.9 to 19.5% by displacement takes 6.7% of carbon dioxide; by breathing (one for one) 1.4%, over the working day's 0.5% long before (arithmetic): CO2 binds first.</summary>
    [Fact]
    public void Garlic_draws_oxygen_down_and_carbon_dioxide_binds_first()
    {
        RoomGasQuestion shut = new(100, 400, 0, 20.9, 0.04);
        IReadOnlyList<RoomGasDay> days = RoomGas.Days(shut, 60);
        Assert.All(days.Zip(days.Skip(1)), pair => Assert.True(pair.Second.O2 < pair.First.O2));
        Assert.All(days, day => Assert.Equal(20.94, day.O2 + day.Co2, 1e-6));
        // 9.6 m³ a day in 400 m³ less 107 m³ of garlic: 3.28 points a day.
        Assert.Equal(20.9 - 100 * 9.6 / (400 - 100_000 / 930.45), days[1].O2, 1e-6);
        Assert.True(days.First(d => d.Co2 > 0.5).Days <= days.First(d => d.O2 < 19.5).Days);
        Assert.Equal(7, RoomGas.DaysToO2(shut, 1)!.Value, 1.0);
        Assert.Null(RoomGas.DaysToO2(shut with { LeakPerDay = 1 }, 1));
        Assert.Equal(5, RoomGas.Days(shut with { ScrubbedTo = 5 }, 30)[^1].Co2, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => RoomGas.FreeM3(400, 400));
    }

    [Fact]
    public void A_half_full_room_costs_each_bin_more()
    {
        Currency usd = Currency.Usd;
        Money Usd(decimal amount) => Money.From(amount, usd);
        RoomCostQuestion full = new(200, 200, 20, Usd(900), Usd(150), Usd(0.25m));
        RoomCostAnswer whole = RoomCost.Of(full), half = RoomCost.Of(full with { Bins = 100 });
        // (900 + 20 x 150) / 200 + 20 x 0.25 = 24.50; half full 44.00 (arithmetic).
        Assert.Equal((24.50m, 0m, 4900m), (whole.PerBin.Amount, whole.HalfFullPenalty.Amount, whole.Total.Amount));
        Assert.Equal((44.00m, 19.50m), (half.PerBin.Amount, half.HalfFullPenalty.Amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoomCost.Of(full with { Bins = 201 }));
    }

    [Fact]
    public void Stacks_are_as_high_as_the_rule_and_no_higher()
    {
        StackingQuestion room = new(12.3, 7.5, 7.2, 1.2, 1.2, 0.75, MostHigh: 6);
        StackingAnswer answer = BinStacking.Of(room);
        Assert.Equal((10, 6, 6, 360, HeightLimit.BinsHigh, false), (answer.Along, answer.Across, answer.High, answer.Bins, answer.LimitedBy, answer.RuleMissing));
        Assert.Equal((8, HeightLimit.Ceiling, true), (BinStacking.Of(room with { MostHigh = null }).High, BinStacking.Of(room with { MostHigh = null }).LimitedBy, BinStacking.Of(room with { MostHigh = null }).RuleMissing));
        Assert.Equal((4, HeightLimit.StackHeight), (BinStacking.Of(room with { MostHeightM = 3.5 }).High, BinStacking.Of(room with { MostHeightM = 3.5 }).LimitedBy));
        Assert.Equal(0, BinStacking.Of(room with { LengthM = 1 }).Bins);
        Assert.True(BinStacking.Of(room with { AisleM = 3 }).Across == 3);
    }

    /// <summary>UC Davis Produce Facts: Garlic: store apart for its odour, onions are acceptable; ethylene under 0.1 µL, insensitive. WFLO 2018: humidity.</summary>
    [Fact]
    public void Odour_and_damp_part_neighbours_and_ethylene_does_not()
    {
        Assert.Equal([Neighbour.TakesOdour, Neighbour.KeptHumid], Enum.GetValues<Neighbour>().Where(Neighbours.MustBeApart));
        Assert.Equal(NeighbourFinding.Acceptable, Neighbours.Of(Neighbour.Alliums));
        Assert.Equal(NeighbourFinding.EthyleneDoesNotMatter, Neighbours.Of(Neighbour.GivesEthylene));
    }
}
