namespace Cloveshed.Core.Drum;

/// <summary>
/// A section of the drum: what share of the cloves of a width goes over its holes. Logistic in ln(width/d50), the partition (Tromp)
/// curve of screening; sharpness k gives x75/x25 = exp(2 ln 3 / k), 1 being perfect.
/// </summary>
/// <param name="D50Mm">Half of the cloves this wide go over.</param>
/// <param name="Sharpness">Above 0; infinite: by the width alone.</param>
public readonly record struct Partition(double D50Mm, double Sharpness)
{
    /// <summary>Share that goes over.</summary>
    public double Over(double widthMm) =>
        double.IsPositiveInfinity(Sharpness) ? (widthMm >= D50Mm ? 1 : 0) : widthMm <= 0 ? 0 : 1 / (1 + Math.Exp(-Sharpness * Math.Log(widthMm / D50Mm)));

    /// <summary>Width at which this share goes over.</summary>
    public double WidthAt(double share) => D50Mm * Math.Exp(Math.Log(share / (1 - share)) / Sharpness);

    /// <summary>x75/x25: 1 is perfect, over 3 is poor (a powder-technology handbook's scale).</summary>
    public double Imperfection => WidthAt(0.75) / WidthAt(0.25);

    /// <summary>
    /// The linear form of the same curve, 1/(1 + exp(-ln 3 (d - d50)/Ep)), whose Ep is half of x75 - x25: Ep that meets this
    /// curve's slope at d50.
    /// </summary>
    public double Ep => Math.Log(3) * D50Mm / Sharpness;
}

/// <summary>How a drum behaves. No published values for cloves were found: ours, until a drum's own outflows have been sampled.</summary>
/// <param name="D50Ratio">d50 over the hole, of a drum that runs nearly empty: a clove as wide as the hole hardly finds it upright.</param>
/// <param name="Sharpness">Of a drum that runs nearly empty.</param>
/// <param name="Crowding">By how much a full load blunts it: sharpness / (1 + Crowding x load^2).</param>
/// <param name="Shortening">By how much a full load lowers d50, since fewer cloves get to a hole: x (1 - Shortening x load).</param>
/// <param name="RatedKgPerHour">Load 1.</param>
public sealed record DrumNature(double D50Ratio, double Sharpness, double Crowding, double Shortening, double RatedKgPerHour)
{
    /// <summary>The shipped values.</summary>
    public static DrumNature Usual { get; } = new(1, 40, 0.5, 0.02, 1000);

    /// <summary>A hole's partition at a load (1: rated).</summary>
    public Partition At(double holeMm, double load)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(load);
        return new(holeMm * D50Ratio * Math.Max(0.5, 1 - Shortening * load), Sharpness / (1 + Crowding * load * load));
    }

    /// <summary>The hole whose d50 is this at a load.</summary>
    public double HoleFor(double d50Mm, double load) => d50Mm / At(1, load).D50Mm;
}
