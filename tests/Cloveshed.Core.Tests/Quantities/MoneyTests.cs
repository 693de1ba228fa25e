using System.Globalization;
using Cloveshed.Core.Quantities;
using CsCheck;

namespace Cloveshed.Core.Tests.Quantities;

public class MoneyTests
{
    private static readonly Currency Mxn = Currency.FromCode("MXN");

    [Theory]
    [InlineData("USD", "0.005", "0.00")]
    [InlineData("USD", "0.015", "0.02")]
    [InlineData("USD", "0.025", "0.02")]
    [InlineData("USD", "-2.675", "-2.68")]
    [InlineData("USD", "2.665", "2.66")]
    [InlineData("JPY", "2.5", "2")]
    [InlineData("KWD", "1.2345", "1.234")]
    public void A_half_goes_to_the_even_minor_unit(string currency, string amount, string rounded) =>
        Assert.Equal(
            decimal.Parse(rounded, Invariant),
            Money.From(decimal.Parse(amount, Invariant), Currency.FromCode(currency)).Rounded().Amount);

    [Fact]
    public void Rounding_moves_by_half_a_cent_at_most_and_only_once() =>
        Gen.Decimal[-1e9m, 1e9m].Sample(amount =>
        {
            Money money = Money.From(amount, Currency.Usd);
            return Math.Abs(money.Rounded().Amount - amount) <= 0.005m && money.Rounded().Rounded() == money.Rounded()
                && money.ToMinorUnits() == money.Rounded().Amount * 100 && Money.FromMinorUnits(money.ToMinorUnits(), Currency.Usd) == money.Rounded();
        });

    [Fact]
    public void Arithmetic_is_exact()
    {
        // What a double cannot: ten dimes make a dollar.
        Money dime = Money.From(0.10m, Currency.Usd);
        Assert.Equal(Money.From(1m, Currency.Usd), Enumerable.Repeat(dime, 10).Aggregate((a, b) => a + b));
        Assert.Equal(dime, dime * 3 - dime * 2);
        Assert.Equal(dime, -(-dime));
    }

    [Fact]
    public void Two_currencies_do_not_mix()
    {
        Money dollar = Money.From(1, Currency.Usd), peso = Money.From(1, Mxn);
        Assert.Throws<InvalidOperationException>(() => dollar + peso);
        Assert.Throws<InvalidOperationException>(() => dollar - peso);
        Assert.Throws<InvalidOperationException>(() => dollar < peso);
        Assert.Throws<InvalidOperationException>(() => dollar + default(Money));
        Assert.NotEqual(dollar, peso);
    }

    [Fact]
    public void Money_is_bounded()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Money.From(1e15m + 1, Currency.Usd));
        Assert.Throws<ArgumentOutOfRangeException>(() => Money.From(1e15m, Currency.Usd) * 2);
    }

    [Theory]
    [InlineData("usd")]
    [InlineData("US")]
    [InlineData("USDX")]
    [InlineData("U$D")]
    [InlineData("")]
    public void A_currency_is_three_capital_letters(string code) =>
        Assert.Throws<ArgumentException>(() => Currency.FromCode(code));

    /// <summary>
    /// The platform's culture data (Unicode CLDR) is the referee. It differs from ISO 4217 on purpose where small coins are no
    /// longer used, so currencies with no minor unit there but two here are left out, and counted.
    /// </summary>
    [Fact]
    public void Minor_units_agree_with_the_culture_data_of_the_platform()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (CultureInfo culture in CultureInfo.GetCultures(CultureTypes.SpecificCultures))
        {
            string code = new RegionInfo(culture.Name).ISOCurrencySymbol;
            int digits = culture.NumberFormat.CurrencyDecimalDigits;
            if (code is { Length: 3 } && code.All(char.IsAsciiLetterUpper) && code != "XXX" && !(digits == 0 && Currency.FromCode(code).Decimals > 0) && seen.Add(code))
            {
                Assert.True(Currency.FromCode(code).Decimals == digits, $"{code} has {digits} decimals by culture {culture.Name}");
            }
        }

        Assert.Superset(new HashSet<string> { "USD", "CAD", "MXN", "EUR", "JPY", "KWD" }, seen);
    }

    [Fact]
    public void Text_shows_the_decimals_of_the_currency_at_least() => InCulture.Of("de-DE", () =>
    {
        Assert.Equal("12.50 USD", Money.From(12.5m, Currency.Usd).ToString());
        Assert.Equal("0.0425 USD", Money.From(0.0425m, Currency.Usd).ToString());
        Assert.Equal("12 JPY", Money.From(12, Currency.FromCode("JPY")).ToString());
        Assert.Equal("0 XXX", default(Money).ToString());
    });
}
