using System.Globalization;
using Cloveshed.SeasonFiles.Csv;
using CsCheck;

namespace Cloveshed.SeasonFiles.Tests.Csv;

public sealed class NumberTextTests
{
    /// <summary>Expected texts are the decimal expansions, written out by hand.</summary>
    [Theory]
    [InlineData(0, "0")]
    [InlineData(5, "5")]
    [InlineData(0.1, "0.1")]
    [InlineData(-1250.5, "-1250.5")]
    [InlineData(1e-7, "0.0000001")]
    [InlineData(-1.25e-7, "-0.000000125")]
    [InlineData(1e15, "1000000000000000")]
    [InlineData(1.5e16, "15000000000000000")]
    [InlineData(1.2345e20, "123450000000000000000")]
    [InlineData(123456789.123456789, "123456789.12345679")]
    public void Numbers_are_plain(double number, string text) => Assert.Equal(text, NumberText.Of(number));

    [Fact]
    public void Nothing_has_no_sign() => Assert.Equal("0", NumberText.Of(double.NegativeZero));

    [Fact]
    public void Every_number_reads_back_as_itself_without_an_exponent() =>
        Gen.Double.Where(double.IsFinite).Sample(number =>
        {
            string text = NumberText.Of(number);
            Assert.DoesNotContain('E', text);
            Assert.Equal(number, double.Parse(text, CultureInfo.InvariantCulture));
        }, iter: 20_000);

    [Fact]
    public void No_culture_changes_them()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE"); // a decimal comma
            Assert.Equal("1250.5", NumberText.Of(1250.5));
            Assert.Equal("1250.50", NumberText.Of(1250.50m));
            Assert.NotNull(new SmallSeason().Read().Season);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_not_finite_is_refused(double number) => Assert.Throws<ArgumentOutOfRangeException>(() => NumberText.Of(number));
}
