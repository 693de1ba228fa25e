using Cloveshed.Core.Field;
using Cloveshed.Core.Quantities;

namespace Cloveshed.Core.Tests.Field;

/// <summary>Plants and seed from spacing, against arithmetic on the acre of 43,560 square feet and against published planting rates.</summary>
public class SeedNeededTests
{
    private const double KilogramsPerPound = 0.45359237, SquareFeetPerAcre = 43_560, SquareInchesPerSquareFoot = 144;

    /// <summary>
    /// Plants to the acre are 43,560 x 144 x lines / (pitch x spacing), worked by hand; pounds are plants x grams / 453.59237, rounded.
    /// The third row with 4 g lies within the 1,600 to 2,000 lb of cloves an acre that the seed growers' page of Jefferson County,
    /// Oregon, gives for California Early.
    /// </summary>
    [Theory]
    [InlineData(40, 2, 3, 104_544, 258_333, 461, 691, 922)]
    [InlineData(40, 2, 4, 78_408, 193_750, 346, 519, 691)]
    [InlineData(40, 4, 3, 209_088, 516_667, 922, 1_383, 1_844)]
    [InlineData(40, 4, 4, 156_816, 387_500, 691, 1_037, 1_383)]
    [InlineData(60, 4, 4, 104_544, 258_333, 461, 691, 922)]
    [InlineData(60, 6, 4, 156_816, 387_500, 691, 1_037, 1_383)]
    [InlineData(80, 12, 4, 235_224, 581_250, 1_037, 1_556, 2_074)]
    [InlineData(36, 1, 4, 43_560, 107_639, 192, 288, 384)]
    public void Spacing_gives_plants_and_seed(int pitch, int lines, int spacing, double perAcre, double perHectare, double at2, double at3, double at4)
    {
        foreach ((double grams, double pounds) in new[] { (2.0, at2), (3.0, at3), (4.0, at4) })
        {
            SeedNeeded needed = SeedNeeding.Of(Question(pitch, lines, spacing, grams));
            Assert.Equal(perAcre, needed.PlantsPerAcre, 1e-6);
            // Worked with 2.47105 acres to the hectare, which has two digits fewer: within two plants.
            Assert.Equal(perHectare, needed.PlantsPerHectare, 2.0);
            Assert.Equal(pounds, needed.SeedKilogramsPerHectare * SeedNeeded.HectaresPerAcre / KilogramsPerPound, 0.5);
        }
    }

    /// <summary>10 cm by 15 cm is 666,667 plants a hectare; at 1.5 g that is 1,000 kg (arithmetic; advice that gives 160 to 200 kg an acre with it contradicts itself).</summary>
    [Fact]
    public void Metric_spacing()
    {
        SeedNeeded needed = SeedNeeding.Of(new(Length.FromMillimetres(150), 1, Length.FromMillimetres(100), 1.5, Share.All, Share.None));
        Assert.Equal(666_666.667, needed.PlantsPerHectare, 0.001);
        Assert.Equal(1_000, needed.SeedKilogramsPerHectare, 0.001);
    }

    /// <summary>6 in in rows of 12 in, and 8 in rows of 18: 87,120 and 43,560 to the acre, not the 10,000 to 12,000 that some advice prints (arithmetic).</summary>
    [Theory]
    [InlineData(12, 6, 87_120)]
    [InlineData(18, 8, 43_560)]
    public void A_printed_figure_that_geometry_refutes(int row, int spacing, double plants)
    {
        Assert.Equal(plants, SeedNeeding.Of(Question(row, 1, spacing, 4)).PlantsPerAcre, 1e-6);
        Assert.Equal(plants, SquareFeetPerAcre * SquareInchesPerSquareFoot / (row * spacing), 1e-6);
    }

    /// <summary>Half come up and a fifth is lost: 1 / (0.5 x 0.8) = 2.5 times the seed, of 10 acres (arithmetic).</summary>
    [Fact]
    public void What_does_not_come_up_or_is_lost_is_bought_too()
    {
        SeedNeeded bare = SeedNeeding.Of(Question(40, 2, 3, 4));
        SeedNeeded whole = SeedNeeding.Of(Question(40, 2, 3, 4) with { Germination = Share.From(0.5), Loss = Share.From(0.2), Area = Area.FromAcres(10) });
        Assert.Equal(bare.PlantsPerAcre, whole.PlantsPerAcre);
        Assert.Equal(2.5 * bare.SeedKilogramsPerHectare, whole.SeedKilogramsPerHectare, 1e-9);
        Assert.Equal(25 * 104_544 * 0.004, whole.SeedKilograms!.Value, 1e-3);
        Assert.Null(bare.SeedKilograms);
    }

    [Fact]
    public void Endless_seed_is_refused()
    {
        PlantingQuestion sound = Question(40, 2, 3, 4);
        Assert.All<PlantingQuestion>(
            [
                sound with { BedPitch = Length.FromMillimetres(0) }, sound with { Spacing = Length.FromMillimetres(0) }, sound with { Lines = 0 },
                sound with { CloveGrams = 0 }, sound with { Germination = Share.None }, sound with { Loss = Share.All },
            ],
            question => Assert.Throws<ArgumentOutOfRangeException>(() => SeedNeeding.Of(question)));
    }

    private static PlantingQuestion Question(int pitch, int lines, int spacing, double grams) =>
        new(Length.FromInches(pitch), lines, Length.FromInches(spacing), grams, Share.All, Share.None);
}
