namespace Cloveshed.Core.Sizes;

/// <summary>A row of a sample: a weight, the bulbs' diameter where it was measured, how many such bulbs, and the line it stands on.</summary>
public readonly record struct SampledBulb(double WeightG, double? DiameterMm, long Count, int Line)
{
    /// <summary>g/mm^3: mass over the cube of the diameter; null where none was measured.</summary>
    public double? Shape => DiameterMm is { } mm ? WeightG / (mm * mm * mm) : null;
}
