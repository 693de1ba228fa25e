using Cloveshed.Core.Quantities;
using CsCheck;

namespace Cloveshed.Core.Tests.Quantities;

/// <summary>
/// Expected figures are written by hand from NIST Handbook 44 and Special Publication 811 (2008) appendix B [from memory: the
/// pound of 0.453 592 37 kg is exact by the agreement of 1959]; the UnitsNet library is the referee elsewhere.
/// </summary>
public class MassTests
{
    [Theory]
    [InlineData("1", 454)] // 453.592 37
    [InlineData("30", 13_608)] // 13 607.7711: a 30 lb carton
    [InlineData("5", 2_268)] // 2 267.961 85
    [InlineData("2000", 907_185)] // 907 184.74: a short ton
    [InlineData("100000", 45_359_237)] // exact
    [InlineData("-30", -13_608)]
    [InlineData("0", 0)]
    public void Pounds_become_whole_grams(string pounds, long grams) =>
        Assert.Equal(grams, Mass.FromPounds(decimal.Parse(pounds, Invariant)).Grams);

    [Theory]
    [InlineData("0.0005", 0)]
    [InlineData("0.0015", 2)]
    [InlineData("0.0025", 2)]
    [InlineData("-0.0015", -2)]
    [InlineData("-0.0025", -2)]
    [InlineData("0.00250000001", 3)]
    public void A_half_gram_goes_to_the_even_gram(string kilograms, long grams)
    {
        Assert.Equal(grams, Mass.FromKilograms(decimal.Parse(kilograms, Invariant)).Grams);
        Assert.Equal(grams, Mass.FromKilograms(double.Parse(kilograms, Invariant)).Grams);
    }

    [Fact]
    public void Pounds_agree_with_the_referee_within_half_a_gram() =>
        Gen.Decimal[-1e9m, 1e9m].Sample(pounds =>
        {
            decimal grams = (decimal)UnitsNet.Mass.FromPounds((double)pounds).Grams;
            return Math.Abs(Mass.FromPounds(pounds).Grams - grams) <= 0.501m + Math.Abs(grams) * 1e-14m;
        });

    [Fact]
    public void Short_tons_and_kilograms_agree_with_the_referee() =>
        Gen.Long[-1_000_000_000_000, 1_000_000_000_000].Sample(grams =>
        {
            Mass mass = Mass.FromGrams(grams);
            UnitsNet.Mass referee = UnitsNet.Mass.FromGrams(grams);
            Near.Assert(referee.ShortTons, (double)mass.ToShortTons());
            Near.Assert(referee.Kilograms, (double)mass.ToKilograms());
            Near.Assert(referee.Pounds, (double)mass.ToPounds());
            return Mass.FromShortTons(mass.ToShortTons()) == mass && Mass.FromKilograms(mass.ToKilograms()) == mass;
        });

    [Fact]
    public void Pounds_entered_with_two_decimals_come_back_with_the_same_two_decimals() =>
        Gen.Long[-1_000_000_000, 1_000_000_000].Sample(hundredths =>
            Math.Round(Mass.FromPounds(hundredths / 100m).ToPounds(), 2) == hundredths / 100m);

    [Fact]
    public void Pounds_from_a_computation_are_those_of_the_exact_entry_within_a_gram() =>
        Gen.Double[-1e9, 1e9].Sample(pounds =>
            Math.Abs(Mass.FromPounds(pounds).Grams - Mass.FromPounds((decimal)pounds).Grams) <= 1);

    [Fact]
    public void Sums_of_parts_close_and_undo() =>
        Gen.Select(Grams, Grams).Sample((a, b) => a + b - b == a && a - b == -(b - a) && a + b == b + a && a * 3 == a + a + a);

    [Fact]
    public void Order_is_that_of_grams() =>
        Gen.Select(Grams, Grams).Sample((a, b) =>
            (a < b) == (a.Grams < b.Grams) && (a <= b) == (a.Grams <= b.Grams) && (a > b) == (b < a) && (a >= b) == (b <= a)
            && Math.Sign(a.CompareTo(b)) == Math.Sign(a.Grams.CompareTo(b.Grams)));

    [Fact]
    public void Beyond_its_bounds_a_mass_is_refused_never_wrapped_or_cut()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromGrams(1_000_000_000_000_001));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromGrams(long.MinValue));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.Max + Mass.FromGrams(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.Min - Mass.FromGrams(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.Max * long.MaxValue);
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromPounds(decimal.MaxValue));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromPounds(3e12m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromPounds(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromKilograms(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromKilograms(1e15));
        Assert.Equal(Mass.Max, Mass.FromKilograms(1_000_000_000_000m));
        Assert.Equal(Mass.Min, -Mass.Max);
    }

    [Fact]
    public void The_default_mass_is_none() => Assert.Equal(Mass.Zero, Mass.FromGrams(0));

    [Fact]
    public void Text_has_the_unit_and_no_culture() =>
        InCulture.Of("de-DE", () => Assert.Equal("-1361 g", Mass.FromGrams(-1361).ToString()));

    private static readonly Gen<Mass> Grams = Gen.Long[-300_000_000_000_000, 300_000_000_000_000].Select(Mass.FromGrams);
}
