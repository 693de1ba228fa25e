using Cloveshed.Core.Quantities;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Quantities;

/// <summary>Expected figures by hand from the definition of the pound; the UnitsNet library is the referee for rates.</summary>
public class PriceRateAndPieceTests
{
    [Fact]
    public void A_price_a_pound_is_kept_as_agreed()
    {
        MassPrice price = MassPrice.PerPound(Money.From(1.10m, Currency.Usd));
        Assert.Equal(Money.From(1.10m, Currency.Usd), price.Money);
        // 1.10 / 0.453 592 37 = 2.425 084 8...
        Assert.Equal(2.425085m, Math.Round(price.ToPerKilogram().Amount, 6));
        Assert.Equal(1.10m, Math.Round(MassPrice.PerKilogram(price.ToPerKilogram()).ToPerPound().Amount, 20));
    }

    [Fact]
    public void A_price_a_hundredweight_is_a_hundredth_a_pound() =>
        Assert.Equal(0.55m, MassPrice.PerHundredweight(Money.From(55, Currency.Usd)).ToPerPound().Amount);

    [Fact]
    public void What_100000_lb_cost_is_exact() =>
        Assert.Equal(Money.From(110_000m, Currency.Usd), MassPrice.PerPound(Money.From(1.10m, Currency.Usd)).Of(Mass.FromPounds(100_000m)).Rounded());

    [Fact]
    public void Cost_is_additive_before_rounding() =>
        Gen.Select(Gen.Long[0, 1_000_000_000], Gen.Long[0, 1_000_000_000]).Sample((a, b) =>
        {
            MassPrice price = MassPrice.PerPound(Money.From(0.875m, Currency.Usd));
            Money apart = price.Of(Mass.FromGrams(a)) + price.Of(Mass.FromGrams(b));
            return Math.Abs(apart.Amount - price.Of(Mass.FromGrams(a + b)).Amount) < 1e-15m;
        });

    [Fact]
    public void A_line_of_12000_lb_an_hour_runs_a_30_lb_carton_in_9_seconds()
    {
        MassRate rate = MassRate.PerHour(Mass.FromPounds(12_000m));
        Assert.Equal(9.0, rate.TimeFor(Mass.FromPounds(30m)).TotalSeconds, 1e-3);
        Assert.Equal(Mass.FromPounds(12_000m), rate.In(Duration.FromHours(1)));
        Assert.Equal(Mass.FromPounds(12_000m), rate.InAnHour());
    }

    [Fact]
    public void Rates_agree_with_the_referee() =>
        Gen.Select(Gen.Long[1, 100_000_000], Gen.Int[1, 1_000_000]).Sample((grams, seconds) =>
        {
            Duration time = Duration.FromSeconds(seconds);
            UnitsNet.MassFlow referee = UnitsNet.Mass.FromGrams(grams) / TimeSpan.FromSeconds(seconds);
            MassRate rate = MassRate.Of(Mass.FromGrams(grams), time);
            Assert.True(Math.Abs(referee.KilogramsPerHour * 1000 - rate.GramsPerHour) <= 0.5 + 1e-9 * rate.GramsPerHour);
        });

    [Fact]
    public void Time_and_mass_undo_each_other_to_a_gram() =>
        Gen.Select(Gen.Long[1_000, 10_000_000], Gen.Long[0, 1_000_000_000]).Sample((rate, grams) =>
        {
            MassRate line = MassRate.PerHour(Mass.FromGrams(rate));
            return Math.Abs(line.In(line.TimeFor(Mass.FromGrams(grams))).Grams - grams) <= 1;
        });

    [Fact]
    public void A_rate_is_refused_where_it_means_nothing()
    {
        Assert.Throws<InvalidOperationException>(() => default(MassRate).TimeFor(Mass.FromGrams(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassRate.Of(Mass.FromGrams(1), Duration.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassRate.PerHour(Mass.FromGrams(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassRate.Of(Mass.FromGrams(1_000_000_000), Duration.FromMilliseconds(1)));
    }

    [Theory]
    [InlineData("45.25", 452)]
    [InlineData("45.35", 454)]
    [InlineData("0.04", 0)]
    [InlineData("10000", 100_000)]
    public void A_piece_is_known_to_a_tenth_of_a_gram(string grams, int tenths) =>
        Assert.Equal(tenths, PieceMass.FromGrams(decimal.Parse(grams, Invariant)).Tenths);

    [Fact]
    public void A_thousand_bulbs_of_45_3_g_weigh_45_3_kg()
    {
        Assert.Equal(Mass.FromKilograms(45.3m), PieceMass.FromGrams(45.3m).Times(1000));
        Assert.Equal("45.3 g", PieceMass.FromGrams(45.3).ToString());
        Assert.True(PieceMass.FromGrams(45.3) > PieceMass.FromGrams(45.2m));
    }

    [Fact]
    public void A_piece_is_no_load()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PieceMass.FromGrams(10_000.1m));
        Assert.Throws<ArgumentOutOfRangeException>(() => PieceMass.FromGrams(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => PieceMass.FromTenths(-1));
    }
}
