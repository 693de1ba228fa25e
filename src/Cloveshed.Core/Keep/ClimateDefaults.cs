using Cloveshed.Core.Lots;

namespace Cloveshed.Core.Keep;

/// <summary>
/// What the air of a place is taken to be where places.csv and place-weeks.csv leave it empty.
/// </summary>
/// <param name="ColdC">-0.5 °C, the middle of -1 to 0 °C (UC Davis Produce Facts: Garlic; USDA AH-66).</param>
/// <param name="ColdRh">65%, the middle of 60 to 70% (same).</param>
/// <param name="YardMeanC">Mean over the year of an open yard in a dry inland valley; our default, no published value.</param>
/// <param name="YardSwingC">Half the difference between its warmest and its coldest week; our default.</param>
/// <param name="YardRh">Its mean humidity; our default.</param>
/// <param name="YardRhSwing">Half the difference between its most humid (coldest) and its driest week; our default.</param>
/// <param name="SealedO2">Percent; our default within the range tried (0.1 to 1%, Cantwell et al., Acta Hort.).</param>
/// <param name="SealedCo2">Percent; our default within the range tried (0 to 20%) and under the 15% that may injure.</param>
public sealed record ClimateDefaults(
    double ColdC, double ColdRh, double YardMeanC, double YardSwingC, double YardRh, double YardRhSwing, double SealedO2, double SealedCo2)
{
    /// <summary>The shipped defaults.</summary>
    public static ClimateDefaults Default { get; } = new(
        ColdC: -0.5, ColdRh: 65, YardMeanC: 17, YardSwingC: 10, YardRh: 52, YardRhSwing: 18, SealedO2: 1, SealedCo2: 10);

    private const string Ours = "our default, no published value";

    /// <summary>Every number here, by name.</summary>
    public static IReadOnlyList<Dial<ClimateDefaults>> Dials { get; } =
    [
        new("cold_c", d => d.ColdC, (d, v) => d with { ColdC = v }, "UC Davis Produce Facts: Garlic, -1 to 0 °C"),
        new("cold_rh", d => d.ColdRh, (d, v) => d with { ColdRh = v }, "UC Davis Produce Facts: Garlic, 60 to 70%"),
        new("yard_mean_c", d => d.YardMeanC, (d, v) => d with { YardMeanC = v }, Ours),
        new("yard_swing_c", d => d.YardSwingC, (d, v) => d with { YardSwingC = v }, Ours),
        new("yard_rh", d => d.YardRh, (d, v) => d with { YardRh = v }, Ours),
        new("yard_rh_swing", d => d.YardRhSwing, (d, v) => d with { YardRhSwing = v }, Ours),
        new("sealed_o2", d => d.SealedO2, (d, v) => d with { SealedO2 = v }, Ours),
        new("sealed_co2", d => d.SealedCo2, (d, v) => d with { SealedCo2 = v }, Ours),
    ];

    /// <summary>The names of all numbers here.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Dials.Select(d => d.Name)];

    /// <summary>These defaults with one number multiplied.</summary>
    public ClimateDefaults With(string name, double factor) => Dial.Named(Dials, name).Turned(this, factor);

    /// <summary>The note that one of these numbers was taken for a number of places.</summary>
    public DefaultTaken Taken(string name, int count)
    {
        Dial<ClimateDefaults> dial = Dial.Named(Dials, name);
        return new DefaultTaken(name, dial.Read(this).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture), dial.Why, count);
    }
}
