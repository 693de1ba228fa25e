using Cloveshed.Core.Keep;

namespace Cloveshed.Core.Tests.Handbook;

public class RespirationTests
{
    /// <summary>UC Davis Produce Facts: Garlic, intact bulbs, mL CO2 per kg and hour.</summary>
    [Theory]
    [InlineData(0, 2, 6)]
    [InlineData(5, 4, 12)]
    [InlineData(10, 6, 18)]
    [InlineData(15, 7, 15)]
    [InlineData(20, 7, 13)]
    public void Respiration_is_the_published_range(double tempC, double low, double high)
    {
        RespirationRate rate = Respiration.MlCo2PerKgHour(tempC);
        Assert.Equal((low, high), (rate.Low, rate.High));
    }

    [Fact]
    public void Respiration_peaks_in_the_sprouting_zone_and_falls_in_warmth()
    {
        // Same source: the middles rise to 12 at 10 °C and fall to 10 at 20 °C, so no Q10 law may be forced on them.
        Assert.True(Respiration.MlCo2PerKgHour(10).Middle > Respiration.MlCo2PerKgHour(20).Middle);
        Assert.True(Respiration.MlCo2PerKgHour(10).Middle > Respiration.MlCo2PerKgHour(0).Middle);
        Assert.Equal(10, Respiration.MlCo2PerKgHour(7.5).Middle, 1e-12);
        Assert.Equal(Respiration.MlCo2PerKgHour(20), Respiration.MlCo2PerKgHour(30));
        Assert.Equal(Respiration.MlCo2PerKgHour(0), Respiration.MlCo2PerKgHour(-3));
    }

    /// <summary>UC Davis, same page: mL times 440 are Btu per short ton and day: 880 to 2,640 at 0 °C, 2,640 to 7,920 at 10 °C. A Btu is 1055.06 J and a short ton 907.185 kg (NIST SP 811).</summary>
    [Theory]
    [InlineData(0, 880, 2640)]
    [InlineData(5, 1760, 5280)]
    [InlineData(10, 2640, 7920)]
    [InlineData(15, 3080, 6600)]
    [InlineData(20, 3080, 5720)]
    public void Heat_is_440_Btu_per_ton_and_day_for_each_mL(double tempC, double low, double high)
    {
        // The page's two factors differ by a quarter of a percent.
        double watts = (low + high) / 2 * 1055.06 / 86400 / 0.907185;
        Assert.Equal(1, Respiration.MlCo2PerKgHour(tempC).HeatWPerTonne / watts, 0.003);
    }

    [Fact]
    public void Heat_is_122_kcal_per_tonne_and_day_for_each_mL()
    {
        // UC Davis, same page; 4 mL: 488 kcal per tonne and day = 23.6 W per tonne (arithmetic).
        Assert.Equal(23.6, Respiration.MlCo2PerKgHour(0).HeatWPerTonne, 0.05);
    }
}
