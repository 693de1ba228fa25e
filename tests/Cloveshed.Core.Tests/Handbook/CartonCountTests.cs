using Cloveshed.Core.Seasons;
using MathNet.Numerics;

namespace Cloveshed.Core.Tests.Handbook;

/// <summary>
/// British Columbia Ministry of Agriculture, "Garlic (organic)", p. 10: trade names with average diameters and approximate counts per
/// kg. Rounded trade numbers, so a check of plausibility, not of a law.
/// </summary>
public class CartonCountTests
{
    private static readonly (double Mm, double PerKg)[] Table =
        [(75, 8), (70, 9), (65, 10), (55, 13), (50, 20), (47, 23), (44, 30), (41, 33), (37, 44)];

    [Fact]
    public void A_mass_law_through_the_table_has_the_exponent_of_garlic_and_meets_every_count_within_a_fifth()
    {
        (double a, double b) = Fit.Line([.. Table.Select(r => Math.Log(r.Mm))], [.. Table.Select(r => Math.Log(1000 / r.PerKg))]);
        var law = new MassLaw(a, b, 0);

        // Recomputed from the table: m = 0.00289 d^2.494.
        Assert.Equal(2.494, b, 0.001);
        Assert.Equal(0.00289, Math.Exp(a), 0.00001);
        foreach ((double mm, double perKg) in Table)
            Assert.InRange(1000 / Math.Exp(law.A + law.B * Math.Log(mm)) / perKg, 0.8, 1.25);
    }
}
