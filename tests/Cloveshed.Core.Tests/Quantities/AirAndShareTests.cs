using Cloveshed.Core.Quantities;
using CsCheck;

namespace Cloveshed.Core.Tests.Quantities;

/// <summary>Temperatures by definition (NIST SP 811 (2008) appendix B, from memory); the UnitsNet library is the referee.</summary>
public class AirAndShareTests
{
    [Theory]
    [InlineData(32, 0)]
    [InlineData(212, 100)]
    [InlineData(-40, -40)]
    [InlineData(98.6, 37)]
    [InlineData(-459.67, -273.15)]
    public void Fahrenheit_and_Celsius(double fahrenheit, double celsius)
    {
        Assert.Equal(celsius, Temperature.FromFahrenheit(fahrenheit).Celsius, 1e-10);
        Assert.Equal(fahrenheit, Temperature.FromCelsius(celsius).ToFahrenheit(), 1e-10);
    }

    [Fact]
    public void Temperatures_agree_with_the_referee() =>
        Gen.Double[-273.15, 1000].Sample(celsius =>
        {
            Temperature temperature = Temperature.FromCelsius(celsius);
            UnitsNet.Temperature referee = UnitsNet.Temperature.FromDegreesCelsius(celsius);
            Assert.Equal(referee.DegreesFahrenheit, temperature.ToFahrenheit(), 1e-9);
            Assert.Equal(referee.Kelvins, temperature.ToKelvins(), 1e-9);
            Assert.True(temperature.ToKelvins() >= 0);
        });

    [Theory]
    [InlineData(-273.16)]
    [InlineData(1000.1)]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void Nothing_is_colder_than_absolute_zero(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromCelsius(celsius));

    [Theory]
    [InlineData(-0.001)]
    [InlineData(100.001)]
    [InlineData(double.NaN)]
    public void Humidity_lies_between_0_and_100(double percent) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Humidity.FromPercent(percent));

    [Theory]
    [InlineData(-1e-12)]
    [InlineData(1.0000001)]
    [InlineData(double.NaN)]
    public void A_share_lies_between_0_and_1(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Share.From(share));

    [Fact]
    public void Every_share_has_a_rest_a_percent_and_a_part() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Sample((a, b) =>
        {
            Share share = Share.From(a), other = Share.From(b);
            Assert.Equal(1, share.Value + share.Rest().Value, 1e-15);
            Assert.Equal(a, Share.FromPercent(share.ToPercent()).Value, 1e-15);
            Assert.True(share * other <= share && share * other <= other);
            Assert.Equal(a, Humidity.FromShare(share).ToShare().Value, 1e-15);
        });

    [Fact]
    public void All_and_none()
    {
        Assert.Equal(Share.None, Share.All.Rest());
        Assert.Equal(100, Share.All.ToPercent());
        Assert.True(Share.None < Share.All && Share.All > Share.None && Share.All >= Share.From(1));
        Assert.True(Humidity.FromPercent(60) < Humidity.FromPercent(65));
        Assert.True(Temperature.FromCelsius(-1) < Temperature.FromCelsius(0));
    }

    [Fact]
    public void Text_has_the_unit_and_no_culture() => InCulture.Of("de-DE", () =>
    {
        Assert.Equal("-0.5 °C", Temperature.FromCelsius(-0.5).ToString());
        Assert.Equal("62.5 % RH", Humidity.FromPercent(62.5).ToString());
        Assert.Equal("0.8125", Share.From(0.8125).ToString());
    });
}
