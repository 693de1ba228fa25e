using Cloveshed.Core.Keep.Air;
using CsCheck;

namespace Cloveshed.Core.Tests.Handbook;

public class MoistAirTests
{
    /// <summary>ASHRAE Handbook, Fundamentals 2017, ch. 1, table 2 (as quoted in a public test file of 2018): saturated air at 101325 Pa, to its 0.5 to 1% (the table counts real gases).</summary>
    [Theory]
    [InlineData(-5, 0.0024863, 0.005)]
    [InlineData(5, 0.005425, 0.005)]
    [InlineData(25, 0.020173, 0.005)]
    [InlineData(50, 0.086863, 0.01)]
    public void Saturated_air_holds_what_the_ASHRAE_table_says(double tempC, double ratio, double within) =>
        Assert.Equal(1, MoistAir.Of(tempC, 100).HumidityRatio / ratio, within);

    /// <summary>Same table: enthalpy of saturated air, J per kg of dry air.</summary>
    [Theory]
    [InlineData(5, 18639)]
    [InlineData(25, 76504)]
    [InlineData(50, 275353)]
    public void Saturated_air_has_the_enthalpy_of_the_ASHRAE_table(double tempC, double joules) =>
        Assert.Equal(1, MoistAir.Of(tempC, 100).Enthalpy / joules, 0.01);

    /// <summary>Same chapter, Example 1: 40 °C, wet bulb 20 °C, sea level: W 0.0065, h 56.7 kJ/kg, dew point 7 °C, 14%, 0.896 m³/kg, as it reads them from the chart.</summary>
    [Fact]
    public void The_ASHRAE_example_comes_out()
    {
        MoistAir air = MoistAir.ByWetBulb(40, 20);
        Assert.Equal(0.0065, air.HumidityRatio, 0.0001);
        Assert.Equal(56.7, air.Enthalpy / 1000, 0.3);
        Assert.Equal(7, air.DewPointC!.Value, 0.5);
        Assert.Equal(14, air.Rh, 0.5);
        Assert.Equal(0.896, air.Volume, 0.0005);
    }

    /// <summary>The same public test file, at 95461 Pa (500 m).</summary>
    [Fact]
    public void Wet_bulbs_over_water_and_ice_give_the_published_ratios()
    {
        Assert.Equal(0.01922813, MoistAir.ByWetBulb(30, 25, 95461).HumidityRatio, 0.0000058);
        Assert.Equal(0.00120400, MoistAir.ByWetBulb(-1, -5, 95461).HumidityRatio, 0.0000036);
        Assert.Equal(3169.7, MoistAir.Holding(25.1, 0.02136040, 95461).VapourPa, 0.05);
    }

    /// <summary>ASHRAE Fundamentals 2017, ch. 1, equation 3, as its table 1 prints it.</summary>
    [Theory]
    [InlineData(0, 101325)]
    [InlineData(500, 95461)]
    [InlineData(1000, 89875)]
    public void Pressure_falls_with_height_as_in_the_standard_atmosphere(double metres, double pa) => Assert.Equal(pa, MoistAir.PressureAtHeight(metres), 1.0);

    /// <summary>
    /// FAO Irrigation and Drainage Paper 56 (1998), example 4 (from memory): dry 25.6 °C, wet 19.5 °C, 1200 m (87.9 kPa): 1.91 kPa. It takes the
    /// psychrometer's constant for a ventilated bulb, so to 1%.
    /// </summary>
    [Fact]
    public void A_psychrometer_reads_as_in_FAO_56() => Assert.Equal(1, MoistAir.ByWetBulb(25.6, 19.5, 87_900).VapourPa / 1910, 0.01);

    /// <summary>Arithmetic from the chapter's equations (no source): room air of 101325 Pa, g of water and kJ per kg of dry air.</summary>
    [Theory]
    [InlineData(-1, 65, 2.25, 4.62)]
    [InlineData(0, 70, 2.64, 6.60)]
    [InlineData(20, 60, 8.73, 42.29)]
    [InlineData(25, 70, 13.92, 60.62)]
    [InlineData(35, 30, 10.54, 62.25)]
    [InlineData(40, 20, 9.20, 63.93)]
    public void Room_air_has_its_water_and_heat(double tempC, double rh, double grams, double kilojoules)
    {
        MoistAir air = MoistAir.Of(tempC, rh);
        Assert.Equal(grams, air.HumidityRatio * 1000, 0.006);
        Assert.Equal(kilojoules, air.Enthalpy / 1000, 0.006);
    }

    /// <summary>Arithmetic from the same equations: 20 °C, 60% warmed to 30 and 35 °C, dew point kept; 30 °C, 50%.</summary>
    [Fact]
    public void Warmed_air_keeps_its_water_and_grows_dry()
    {
        AirStream air = new(MoistAir.Of(20, 60), 2);
        ConditionedAir warm = AirStreams.Brought(air, 30);
        Assert.Equal(33.0, warm.Stream.Air.Rh, 0.05);
        Assert.Equal(24.9, AirStreams.Brought(air, 35).Stream.Air.Rh, 0.05);
        Assert.Equal(12.01, warm.Stream.Air.DewPointC!.Value, 0.005);
        Assert.Equal(18.45, MoistAir.Of(30, 50).DewPointC!.Value, 0.005);
        Assert.Equal(2 * (warm.Stream.Air.Enthalpy - air.Air.Enthalpy), warm.HeatW, 1e-9);
        Assert.Equal(0, warm.CondensateKg);
    }

    [Fact]
    public void Cold_bulbs_sweat_in_air_whose_dew_point_is_above_them()
    {
        MoistAir outside = MoistAir.Of(30, 50);
        Assert.Equal(SweatRisk.Sweats, Sweating.Of(new SweatQuestion(0, outside)).Risk);
        Assert.Equal(SweatRisk.Near, Sweating.Of(new SweatQuestion(19, outside)).Risk);
        SweatAnswer dry = Sweating.Of(new SweatQuestion(21, outside));
        Assert.Equal(SweatRisk.Dry, dry.Risk);
        Assert.Equal(20.45, dry.WarmToC, 0.01);
        double most = Sweating.Of(new SweatQuestion(0, outside)).DryAirRh;
        Assert.NotEqual(SweatRisk.Sweats, Sweating.Of(new SweatQuestion(0, MoistAir.Of(30, most))).Risk);
        Assert.Equal(SweatRisk.Dry, Sweating.Of(new SweatQuestion(0, MoistAir.Of(30, 0))).Risk);
    }

    private static readonly Gen<MoistAir> Airs = Gen.Select(Gen.Double[-40, 60], Gen.Double[0.5, 100], Gen.Double[70_000, 105_000], MoistAir.Of);

    [Fact]
    public void The_wet_bulb_lies_between_dew_point_and_dry_bulb_and_leads_back() =>
        Airs.Sample(air =>
        {
            double dew = air.DewPointC!.Value, wet = air.WetBulbC;
            Assert.True(dew <= wet + 1e-7 && wet <= air.TempC, $"{dew} {wet} {air.TempC}");
            // Around 0 °C ice and water give two readings of one wet bulb, so that stretch is left to the chapter.
            if (Math.Abs(wet) > 0.01)
                Assert.Equal(air.HumidityRatio, MoistAir.ByWetBulb(air.TempC, wet, air.PressurePa).HumidityRatio, 1e-8);
            Assert.Equal(air.Rh, MoistAir.Holding(air.TempC, air.HumidityRatio, air.PressurePa).Rh, 1e-9);
        });

    [Fact]
    public void Mixing_and_cooling_lose_neither_water_nor_heat() =>
        Gen.Select(Airs, Gen.Double[-40, 60], Gen.Double[0.5, 100], Gen.Double[0.01, 50], Gen.Double[0.01, 50]).Sample((air, t, rh, m1, m2) =>
        {
            AirStream one = new(air, m1), other = new(MoistAir.Of(t, rh, air.PressurePa), m2);
            ConditionedAir mixed = AirStreams.Mixed(one, other);
            Assert.Equal(m1 * air.HumidityRatio + m2 * other.Air.HumidityRatio, mixed.Stream.DryKg * mixed.Stream.Air.HumidityRatio + mixed.CondensateKg, 1e-9 * (m1 + m2));
            Assert.InRange(mixed.Stream.Air.TempC, Math.Min(air.TempC, t) - 1e-6, Math.Max(air.TempC, t) + 1e-6);
            ConditionedAir cooled = AirStreams.Brought(one, air.TempC - 10);
            Assert.Equal(m1 * air.HumidityRatio, m1 * cooled.Stream.Air.HumidityRatio + cooled.CondensateKg, 1e-9);
            Assert.True(cooled.HeatW < 0);
        });

    [Fact]
    public void Fog_forms_where_cold_and_warm_damp_air_meet()
    {
        ConditionedAir fog = AirStreams.Mixed(new AirStream(MoistAir.Of(0, 100), 1), new AirStream(MoistAir.Of(30, 100), 1));
        Assert.True(fog.CondensateKg > 0);
        Assert.Equal(100, fog.Stream.Air.Rh, 1e-6);
    }

    [Fact]
    public void Air_that_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Of(110, 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Of(20, 100.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Of(double.NaN, 50));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Holding(10, 0.02));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.ByWetBulb(10, 11));
    }
}
