using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Tests.Sizes;

/// <summary>
/// Allometry of animals that were really measured: W. J. Nash et al., The Population Biology of Abalone in Tasmania (1994), as the UCI
/// Machine Learning Repository gives it (open data; authors and licence, CC BY 4.0, from memory): diameter and whole weight, in the units of the file (200 mm, 200 g), the first 150 of 4,177
/// in the file's order. Over all of them ln weight = 2.1966 + 2.8241 ln diameter with a residual sd of 0.1532 (recomputed beforehand by a
/// general statistics library); a part of the file must agree within its sampling error, and its bands must hold the rest.
/// </summary>
public class AbaloneTests
{
    private const double Intercept = 2.1966, Slope = 2.8241, ResidualSd = 0.1532;

    private static readonly (double Diameter, double Weight)[] Animals =
    [
        (0.365, 0.514), (0.265, 0.2255), (0.42, 0.677), (0.365, 0.516), (0.255, 0.205), (0.3, 0.3515), (0.415, 0.7775), (0.425, 0.768), (0.37, 0.5095), (0.44, 0.8945),
        (0.38, 0.6065), (0.35, 0.406), (0.38, 0.5415), (0.405, 0.6845), (0.355, 0.4755), (0.4, 0.6645), (0.28, 0.2905), (0.34, 0.451), (0.295, 0.2555), (0.32, 0.381),
        (0.28, 0.2455), (0.275, 0.2255), (0.44, 0.9395), (0.415, 0.7635), (0.48, 1.1615), (0.44, 0.9285), (0.45, 0.9955), (0.445, 0.931), (0.475, 0.9365), (0.425, 0.8635),
        (0.47, 0.9975), (0.56, 1.639), (0.525, 1.338), (0.55, 1.798), (0.55, 1.7095), (0.355, 0.4795), (0.475, 1.217), (0.355, 0.5225), (0.445, 0.883), (0.29, 0.3275),
        (0.335, 0.425), (0.425, 0.8515), (0.175, 0.07), (0.15, 0.042), (0.15, 0.042), (0.295, 0.203), (0.37, 0.5795), (0.375, 0.4605), (0.245, 0.161), (0.425, 0.8355),
        (0.41, 0.595), (0.32, 0.303), (0.36, 0.5415), (0.36, 0.4775), (0.31, 0.385), (0.4, 0.6615), (0.35, 0.4425), (0.385, 0.5895), (0.19, 0.086), (0.4, 0.583),
        (0.345, 0.4115), (0.405, 0.625), (0.41, 0.6965), (0.325, 0.3785), (0.4, 0.58), (0.355, 0.48), (0.44, 0.915), (0.495, 1.285), (0.39, 0.5305), (0.235, 0.151),
        (0.425, 0.7665), (0.32, 0.353), (0.475, 1.247), (0.48, 1.185), (0.45, 1.098), (0.475, 1.0075), (0.475, 0.944), (0.47, 0.922), (0.425, 0.788), (0.475, 1.1025),
        (0.445, 0.941), (0.51, 1.615), (0.425, 0.9885), (0.475, 1.3175), (0.45, 1.013), (0.465, 1.295), (0.465, 1.195), (0.44, 0.8645), (0.355, 0.517), (0.45, 0.9775),
        (0.425, 0.8115), (0.44, 0.755), (0.465, 1.115), (0.495, 1.262), (0.56, 1.494), (0.535, 1.606), (0.435, 0.725), (0.375, 0.523), (0.37, 0.5225), (0.375, 0.5785),
        (0.265, 0.2315), (0.435, 0.843), (0.435, 0.883), (0.415, 0.724), (0.47, 1.1735), (0.41, 0.727), (0.43, 0.802), (0.4, 0.6675), (0.39, 0.6335), (0.395, 0.3635),
        (0.395, 0.5415), (0.36, 0.431), (0.32, 0.3325), (0.35, 0.393), (0.41, 0.6935), (0.415, 0.5915), (0.375, 0.6125), (0.34, 0.402), (0.43, 0.8825), (0.305, 0.2605),
        (0.365, 0.4205), (0.295, 0.2535), (0.425, 0.766), (0.265, 0.214), (0.28, 0.1755), (0.195, 0.073), (0.275, 0.238), (0.29, 0.2505), (0.535, 1.7255), (0.54, 1.959),
        (0.48, 1.262), (0.35, 0.4035), (0.26, 0.1915), (0.26, 0.211), (0.2, 0.0975), (0.33, 0.406), (0.23, 0.156), (0.255, 0.2005), (0.325, 0.3555), (0.285, 0.253),
        (0.445, 0.826), (0.45, 0.741), (0.52, 1.3445), (0.455, 0.797), (0.375, 0.5175), (0.38, 0.549), (0.35, 0.515), (0.205, 0.127), (0.13, 0.0315), (0.13, 0.03),
    ];

    [Fact]
    public void The_law_of_a_part_is_that_of_all_within_its_sampling_error()
    {
        MassLawFit fit = Allometry.Of(Bulbs(Animals));
        StraightLine line = fit.MassOnDiameter!;
        Assert.False(fit.ByDefault);
        Assert.InRange(line.Slope, Slope - 3 * line.SlopeError, Slope + 3 * line.SlopeError);
        // The line's height is compared where the animals are, not at a diameter of 1, far outside.
        Assert.Equal(Intercept + Slope * line.MeanX, line.At(line.MeanX), 4 * ResidualSd / Math.Sqrt(line.Count));
        // The file goes on with other grounds and some plain slips, so that all of it scatters more than its first part.
        Assert.InRange(line.ResidualSd / ResidualSd, 0.6, 1.1);
        Assert.True(line.RSquared > 0.94);
    }

    /// <summary>A law of 50 animals is held to the 100 others, three times over: as many lie in its bands as these promise.</summary>
    [Theory]
    [InlineData(0.8, 0.71, 0.9)]
    [InlineData(0.95, 0.88, 0.99)]
    public void Bands_hold_animals_that_were_not_in_the_fit(double probability, double least, double most)
    {
        int inside = 0, all = 0;
        for (int fold = 0; fold < 3; fold++)
        {
            MassLawFit fit = Allometry.Of(Bulbs([.. Animals.Where((_, k) => k % 3 == fold)]));
            foreach ((double diameter, double weight) in Animals.Where((_, k) => k % 3 != fold))
            {
                (double low, double high) = fit.BandG(diameter, probability);
                all++;
                inside += low <= weight && weight <= high ? 1 : 0;
            }
        }

        Assert.InRange(inside / (double)all, least, most);
    }

    private static SampledBulb[] Bulbs((double Diameter, double Weight)[] animals) => [.. animals.Select((a, k) => new SampledBulb(a.Weight, a.Diameter, 1, k))];
}
