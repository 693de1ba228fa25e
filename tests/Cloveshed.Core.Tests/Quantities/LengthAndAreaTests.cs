using Cloveshed.Core.Quantities;
using CsCheck;

namespace Cloveshed.Core.Tests.Quantities;

/// <summary>
/// Hand-written figures: inch 25.4 mm and foot 0.3048 m exactly, NIST SP 811 (2008) appendix B; acre 43 560 ft², NIST Handbook 44
/// appendix C [both from memory, and by definition]. Elsewhere the UnitsNet library is the referee.
/// </summary>
public class LengthAndAreaTests
{
    [Theory]
    [InlineData("1", 25_400)]
    [InlineData("2.25", 57_150)] // a 2 1/4 in bulb
    [InlineData("1.5", 38_100)]
    [InlineData("0.015625", 397)] // 1/64 in = 396.875 micrometres
    public void Inches_become_micrometres(string inches, long micrometres) =>
        Assert.Equal(micrometres, Length.FromInches(decimal.Parse(inches, Invariant)).Micrometres);

    [Fact]
    public void Lengths_agree_with_the_referee() =>
        Gen.Long[0, 1_000_000_000_000].Sample(micrometres =>
        {
            Length length = Length.FromMicrometres(micrometres);
            UnitsNet.Length referee = UnitsNet.Length.FromMicrometers(micrometres);
            Near.Assert(referee.Inches, (double)length.ToInches());
            Near.Assert(referee.Feet, (double)length.ToFeet());
            Near.Assert(referee.Millimeters, (double)length.ToMillimetres());
            Near.Assert(referee.Meters, (double)length.ToMetres());
            return Length.FromInches(length.ToInches()) == length && Length.FromFeet(length.ToFeet()) == length
                && Length.FromMetres(length.ToMetres()) == length && Length.FromMillimetres(length.ToMillimetres()) == length;
        });

    [Fact]
    public void Half_a_micrometre_goes_to_the_even_one()
    {
        Assert.Equal(2, Length.FromMillimetres(0.0025m).Micrometres);
        Assert.Equal(4, Length.FromMillimetres(0.0035m).Micrometres);
    }

    [Fact]
    public void A_length_is_not_negative_and_not_endless()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromMicrometres(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromMillimetres(-0.0001m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromMetres(1_000_000.1m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.FromFeet(decimal.MaxValue));
        Assert.Equal(1_000_000m, Length.FromMetres(1_000_000m).ToMetres());
    }

    [Fact]
    public void An_acre_is_43560_square_feet()
    {
        Assert.Equal(43_560m * 0.3048m * 0.3048m, Area.SquareMetresPerAcre);
        Assert.Equal(40_468_564L, Area.FromAcres(1).SquareCentimetres);
        Assert.Equal(0.40468564m, Area.FromAcres(1).ToHectares());
    }

    [Fact]
    public void Areas_agree_with_the_referee() =>
        Gen.Long[0, 10_000_000_000_000_000].Sample(squareCentimetres =>
        {
            Area area = Area.FromSquareMetres(squareCentimetres / 10_000m);
            UnitsNet.Area referee = UnitsNet.Area.FromSquareCentimeters(squareCentimetres);
            Near.Assert(referee.Acres, (double)area.ToAcres());
            Near.Assert(referee.Hectares, (double)area.ToHectares());
            return area.SquareCentimetres == squareCentimetres
                && Area.FromAcres(area.ToAcres()) == area && Area.FromHectares(area.ToHectares()) == area;
        });

    [Fact]
    public void Areas_add_and_are_bounded()
    {
        Assert.Equal(Area.FromHectares(3.5m), Area.FromHectares(1.25m) + Area.FromHectares(2.25m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Area.FromHectares(100_000_000m) + Area.FromSquareMetres(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Area.FromAcres(-1));
    }

    [Fact]
    public void Text_has_the_unit_and_no_culture() => InCulture.Of("es-ES", () =>
    {
        Assert.Equal("57.15 mm", Length.FromInches(2.25m).ToString());
        Assert.Equal("4046.8564 m²", Area.FromAcres(1).ToString());
    });
}
