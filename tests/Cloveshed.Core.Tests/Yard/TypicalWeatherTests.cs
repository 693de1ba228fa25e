using Cloveshed.Core.Yard;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Yard;

public class TypicalWeatherTests
{
    private static readonly LocalDate First = new(2026, 7, 10);

    /// <summary>
    /// FAO Irrigation and Drainage Paper 56 (1998), example 5 (from memory): 18 °C with 82%, 25 °C with 54%: 1.70 kPa. Its saturation formula is
    /// another, so to 0.5%.
    /// </summary>
    [Fact]
    public void A_days_vapour_pressure_is_that_of_FAO_56() => Assert.Equal(1, TypicalWeather.VapourKpa(new TypicalDay(18, 25, 54, 82)) / 1.70, 0.005);

    [Fact]
    public void A_day_reaches_its_extremes_and_holds_one_vapour_pressure() =>
        Gen.Select(Gen.Double[0, 20], Gen.Double[0, 20], Gen.Double[10, 60], Gen.Double[0, 35]).Sample((min, swing, rh, damper) =>
        {
            TypicalDay day = new(min, min + swing, rh, rh + damper);
            IReadOnlyList<WeatherRow> rows = TypicalWeather.Days(day, First, 2);
            Assert.Equal(48, rows.Count);
            Assert.Equal(day.MinC, rows.Min(r => r.TempC), 1e-9);
            Assert.Equal(day.MaxC, rows.Max(r => r.TempC), 1e-9);
            Assert.All(rows, r => Assert.True(r.Rh is > 0 and <= 100));
            Assert.True(rows.Zip(rows.Skip(1)).All(pair => Period.Between(pair.First.From, pair.Second.From, PeriodUnits.Hours).Hours == 1));
        });
}
