using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Reading;
using NodaTime;

namespace Cloveshed.Pictures.Tests.Reading;

public class ReaderTests
{
    private static Reader Of(Language language, MassUnit show, MassUnit season = MassUnit.Pound, string currency = "USD") =>
        new(HandSeason.Make().Settings with { MassUnit = season, Currency = currency }, new ReportOptions(language, show));

    /// <summary>1 lb is 0.45359237 kg exactly: NIST Special Publication 811 (2008), appendix B.</summary>
    [Theory]
    [InlineData(MassUnit.Pound, MassUnit.Pound, 240_000, "240,000\u00A0lb")]
    [InlineData(MassUnit.Pound, MassUnit.Kilogram, 240_000, "108,862\u00A0kg")]
    [InlineData(MassUnit.Kilogram, MassUnit.Pound, 108_862.1688, "240,000\u00A0lb")]
    [InlineData(MassUnit.Kilogram, MassUnit.Kilogram, 1234.5, "1,235\u00A0kg")]
    public void Masses_are_shown_in_the_readers_unit(MassUnit season, MassUnit show, double mass, string text) =>
        Assert.Equal(text, Of(Language.En, show, season).Mass(mass));

    [Fact]
    public void A_price_per_pound_is_dearer_per_kilogram() =>
        Assert.Equal("$2.205/kg", Of(Language.En, MassUnit.Kilogram).PricePerMass(1));

    [Theory]
    [InlineData("USD", -1234.5, "\u2212$1,235")]
    [InlineData("USD", -0.2, "$0")]
    [InlineData("EUR", 1234, "€1,234")]
    [InlineData("MXN", 1234, "MXN\u00A01,234")]
    public void Money_goes_by_the_seasons_currency(string currency, double amount, string text) =>
        Assert.Equal(text, Of(Language.En, MassUnit.Pound, currency: currency).Money(amount));

    /// <summary>The yen has no minor unit: ISO 4217.</summary>
    [Fact]
    public void Prices_have_the_decimals_of_the_currency()
    {
        Assert.Equal("$9.60", Of(Language.En, MassUnit.Pound).Price(9.6));
        Assert.Equal("JPY\u00A0960", Of(Language.En, MassUnit.Pound, currency: "JPY").Price(960));
    }

    [Theory]
    [InlineData(Language.En, "7\u00A0Aug", "7\u00A0Aug\u00A02026")]
    [InlineData(Language.Es, "7\u00A0ago", "7\u00A0ago\u00A02026")]
    public void Dates_are_in_the_readers_language(Language language, string day, string year)
    {
        var date = new LocalDate(2026, 8, 7);
        Assert.Equal(day, Of(language, MassUnit.Pound).Day(date));
        Assert.Equal(year, Of(language, MassUnit.Pound).DayYear(date));
    }

    [Theory]
    [InlineData(1, "100%")]
    [InlineData(0.99996, "99.9%")]
    [InlineData(0.9731, "97.3%")]
    [InlineData(0.0001, "0.1%")]
    [InlineData(0, "0.0%")]
    public void A_promise_is_kept_in_full_only_at_100(double share, string text) =>
        Assert.Equal(text, Of(Language.En, MassUnit.Pound).PercentDone(share));

    public static TheoryData<string, string> Defaults =>
    [
        .. LotDefaults.Dials.Select(d => (d.Name, d.Why)), .. ClimateDefaults.Dials.Select(d => (d.Name, d.Why)),
        .. KeepingParameters.Dials.Select(d => ("keeping: " + d.Name, d.Why)), ("keeps", "our default, no published value"), ("cured", "our default: lots in bins are taken as cured"),
    ];

    /// <summary>Read from the core: a default that is added there needs words here.</summary>
    [Theory, MemberData(nameof(Defaults))]
    public void Every_default_and_why_it_is_so_has_words_in_both_languages(string name, string why)
    {
        Assert.NotEqual(name, Of(Language.En, MassUnit.Pound).Default(name).Text);
        Assert.Equal(why, Of(Language.En, MassUnit.Pound).Assumed(why).Text);
        Reader spanish = Of(Language.Es, MassUnit.Pound);
        Assert.Equal((null, null), (spanish.Default(name).Language, spanish.Assumed(why).Language));
        Assert.NotEqual(Of(Language.En, MassUnit.Pound).Default(name).Text, spanish.Default(name).Text);
    }

    [Fact]
    public void What_the_reader_has_no_words_for_stays_as_written()
    {
        Reader spanish = Of(Language.Es, MassUnit.Pound);
        Assert.Equal(("a_new_one", "en"), (spanish.Default("a_new_one").Text, spanish.Default("a_new_one").Language));
        Assert.Equal(("why not", "en"), (spanish.Assumed("why not").Text, spanish.Assumed("why not").Language));
        Assert.Equal(("0.35", null), (spanish.Assumed("0.35").Text, spanish.Assumed("0.35").Language));
    }
}
