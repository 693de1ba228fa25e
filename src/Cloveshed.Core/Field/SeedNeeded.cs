using Cloveshed.Core.Quantities;

namespace Cloveshed.Core.Field;

/// <summary>How a field is to be planted.</summary>
/// <param name="BedPitch">From the middle of one bed to the middle of the next, above 0.</param>
/// <param name="Lines">Seed lines on a bed, 1 or more.</param>
/// <param name="Spacing">From plant to plant in the line, above 0.</param>
/// <param name="CloveGrams">Mean mass of a planting clove, g, above 0.</param>
/// <param name="Germination">Share of the cloves set that come up, above 0.</param>
/// <param name="Loss">Share of the seed's mass that is lost between its scale ticket and the ground (skins, plates, cloves too small, breakage), below 1.</param>
/// <param name="Area">What is to be planted; null where only rates are asked for.</param>
public sealed record PlantingQuestion(Length BedPitch, int Lines, Length Spacing, double CloveGrams, Share Germination, Share Loss, Area? Area = null);

/// <summary>Plants that are to stand, and the seed for them.</summary>
/// <param name="SeedKilograms">For the whole area; null where none was given.</param>
public sealed record SeedNeeded(double PlantsPerHectare, double SeedKilogramsPerHectare, double? SeedKilograms)
{
    /// <summary>By the international acre.</summary>
    public double PlantsPerAcre => PlantsPerHectare * HectaresPerAcre;

    /// <summary>Exact: 4046.8564224 m² (from the international foot of 0.3048 m).</summary>
    public const double HectaresPerAcre = (double)Quantities.Area.SquareMetresPerAcre / 10_000;
}

/// <summary>
/// Plants and seed from spacing: each plant has the bed's pitch over its lines, times its spacing in the line, to itself, so
/// that plants to the acre are 43,560 x 144 x lines / (pitch x spacing) in inches (geometry, no source needed). Seed is plants x clove
/// / (germination x (1 - loss)): the drill is set closer than the stand by what will not come up.
/// </summary>
public static class SeedNeeding
{
    /// <summary>Pure; refuses what would need endless seed.</summary>
    public static SeedNeeded Of(PlantingQuestion question)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(question.BedPitch.Micrometres, nameof(question.BedPitch));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(question.Spacing.Micrometres, nameof(question.Spacing));
        ArgumentOutOfRangeException.ThrowIfLessThan(question.Lines, 1, nameof(question.Lines));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(question.CloveGrams, nameof(question.CloveGrams));
        ArgumentOutOfRangeException.ThrowIfEqual(question.Germination, Share.None, nameof(question.Germination));
        ArgumentOutOfRangeException.ThrowIfEqual(question.Loss, Share.All, nameof(question.Loss));
        double squareMetresPerPlant = (double)question.BedPitch.ToMetres() * (double)question.Spacing.ToMetres() / question.Lines;
        double plants = 10_000 / squareMetresPerPlant;
        double kilograms = plants * question.CloveGrams / 1000 / (question.Germination.Value * question.Loss.Rest().Value);
        return new(plants, kilograms, question.Area is { } area ? kilograms * (double)area.ToHectares() : null);
    }
}
