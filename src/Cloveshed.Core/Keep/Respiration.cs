namespace Cloveshed.Core.Keep;

/// <summary>Carbon dioxide given off by intact bulbs, mL per kg and hour: the published low and high, and their middle.</summary>
public readonly record struct RespirationRate(double Low, double High)
{
    /// <summary>Middle of the range.</summary>
    public double Middle => (Low + High) / 2;

    /// <summary>Heat, W per tonne (1000 kg) at the middle rate: 122 kcal per tonne and day for each mL (UC Davis).</summary>
    public double HeatWPerTonne => Middle * 122 * 4184 / 86400;
}

/// <summary>
/// UC Davis Produce Facts: Garlic. It peaks at 10 °C, in the sprouting zone, so it is a table read by straight lines, not a
/// Q10 law. Outside 0 to 20 °C the nearest end is held: the source says nothing there.
/// </summary>
public static class Respiration
{
    private static readonly double[] TempC = [0, 5, 10, 15, 20];
    private static readonly double[] Low = [2, 4, 6, 7, 7];
    private static readonly double[] High = [6, 12, 18, 15, 13];

    /// <summary>At °C.</summary>
    public static RespirationRate MlCo2PerKgHour(double tempC)
    {
        double at = Math.Clamp(tempC, TempC[0], TempC[^1]) / 5;
        int left = Math.Min((int)at, TempC.Length - 2);
        double part = at - left;
        return new RespirationRate(
            Low[left] + part * (Low[left + 1] - Low[left]),
            High[left] + part * (High[left + 1] - High[left]));
    }
}
