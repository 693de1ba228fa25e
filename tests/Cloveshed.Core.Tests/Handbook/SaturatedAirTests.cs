using Cloveshed.Core.Keep;

namespace Cloveshed.Core.Tests.Handbook;

public class SaturatedAirTests
{
    /// <summary>ASHRAE Handbook, Fundamentals 2017, ch. 1, table 3 (as quoted in a public test file of 2018), to its 0.03%; Pa.</summary>
    [Theory]
    [InlineData(-20, 103.24)]
    [InlineData(-5, 401.74)]
    [InlineData(5, 872.6)]
    [InlineData(25, 3169.7)]
    [InlineData(50, 12351.3)]
    [InlineData(100, 101418.0)]
    public void Saturation_pressure_is_the_ASHRAE_tables(double tempC, double pa) =>
        Assert.Equal(1, SaturatedAir.PressureKpa(tempC) * 1000 / pa, 0.0003);

    /// <summary>
    /// FAO Irrigation and Drainage Paper 56 (1998), example 3: 15 °C 1.705 kPa, 24.5 °C 3.075 kPa; another formula (eq. 11), so
    /// to 0.2%.
    /// </summary>
    [Theory]
    [InlineData(15, 1.705)]
    [InlineData(24.5, 3.075)]
    public void Saturation_pressure_is_near_FAO_56(double tempC, double kpa) =>
        Assert.Equal(1, SaturatedAir.PressureKpa(tempC) / kpa, 0.002);

    /// <summary>Arithmetic from the same ASHRAE equation: deficits of room air.</summary>
    [Theory]
    [InlineData(-1, 65, 0.197)]
    [InlineData(0, 65, 0.214)]
    [InlineData(20, 60, 0.936)]
    [InlineData(25, 50, 1.585)]
    [InlineData(40, 20, 5.907)]
    public void Deficit_is_what_saturation_leaves(double tempC, double rh, double kpa) =>
        Assert.Equal(kpa, SaturatedAir.DeficitKpa(tempC, rh), 0.0006);

    [Fact]
    public void Ice_and_water_meet_at_freezing() =>
        Assert.Equal(SaturatedAir.PressureKpa(-1e-9), SaturatedAir.PressureKpa(0), 0.0001);
}
