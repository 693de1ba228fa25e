using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;
using MathNet.Numerics.Optimization;
using MathNet.Numerics.LinearAlgebra;

namespace Cloveshed.Core.Tests.Handbook;

/// <summary>A published stay in storage: a lot in one climate, then possibly in another, by whose end this share of it is lost.</summary>
/// <param name="Months">In the first climate.</param>
/// <param name="ThenMonths">In the second, 0 for none.</param>
/// <param name="Lost">A fifth, the end of life by our definition, unless the source says otherwise.</param>
/// <param name="Source">Published source and what the row is taken for; where the source gives a range its middle is used.</param>
public sealed record StorageRow(
    string Name, double TempC, double Rh, KeepClass Keeps, bool Inhibitor, double Months, double ThenMonths, double ThenTempC, string Source,
    double Lost = KeepingLaw.LostAtEndOfLife)
{
    private const double WeeksPerMonth = 365.25 / 12 / 7;

    /// <summary>ln of the life used at the end of the stay over that at which the share is lost: 0 if the law agrees, positive if it is too short-lived.</summary>
    public double Residual(KeepingParameters p)
    {
        var traits = new KeepingTraits(Keeps, Inhibitor, Cured: true);
        double used = Months * WeeksPerMonth * KeepingLaw.LifeUsed(p, traits, new Climate(TempC, Rh, KeepingLaw.AirO2, KeepingLaw.AirCo2))
            + ThenMonths * WeeksPerMonth * KeepingLaw.LifeUsed(p, traits, new Climate(ThenTempC, 65, KeepingLaw.AirO2, KeepingLaw.AirCo2));
        return Math.Log(used / LifeAt(p, 1 - Lost));
    }

    private static double LifeAt(KeepingParameters p, double sound)
    {
        double low = 0, high = 2;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = KeepingLaw.SoundShare(p, middle) > sound ? (middle, high) : (low, middle);
        }

        return high;
    }
}

/// <summary>The storage lives that the keeping law is fitted to, and the fit.</summary>
public static class StorageRows
{
    public static IReadOnlyList<StorageRow> All { get; } =
    [
        new("cold, over 9 months", -0.5, 65, KeepClass.Long, false, 9, 0, 0, "UC Davis Produce Facts: Garlic; USDA AH-66: -1 to 0 °C, 60-70% RH; taken for varieties that keep long"),
        new("cold, 6-7 months", 0, 65, KeepClass.Medium, false, 6.5, 0, 0, "WFLO Commodity Storage Manual, Garlic, 2018: 32 °F, 60-70% RH, if properly cured; taken for medium"),
        new("cold, inhibitor, 1 year", 0, 65, KeepClass.Medium, true, 12, 0, 0, "WFLO 2018: maleic hydrazide before harvest, 1 year at 32 °F with only about 10 (the copy seen breaks off there; read as percent lost)", Lost: 0.1),
        new("warm, 1-2 months", 25, 70, KeepClass.Short, false, 1.5, 0, 0, "UC Davis; USDA AH-66: 20-30 °C, RH under 75%; taken for varieties that keep short"),
        new("common storage, 3-4 months", 22, 50, KeepClass.Medium, false, 3.5, 0, 0, "WFLO 2018, USDA AH-66: California common storage; climate ours"),
        new("ambient, 4-6 months", 21.5, 65, KeepClass.Long, false, 5, 0, 0, "Embrapa AterMaisDigital: 20-23 °C; taken for long"),
        new("cold, 4-9 months", 1, 65, KeepClass.Medium, false, 6.5, 0, 0, "Embrapa AterMaisDigital: 0-2 °C, 60-70% RH"),
        new("ventilated, 5-6 months", 27, 65, KeepClass.Long, false, 5.5, 0, 0, "ICAR-DOGR: ambient, ventilated, RH under 70%; 27 °C ours; taken for long"),
        new("-3 °C 9 months, then 2 at room", -3, 65, KeepClass.Long, false, 9, 2, 23, "Volk et al., HortScience 39(3) 2004: at least 2 months of shelf life after 9 months at -3 °C"),
        new("10 °C, 3 months", 10, 65, KeepClass.Medium, false, 3, 0, 0, "our default, no published value: shorter than anywhere else, in the zone of fastest sprouting"),
    ];

    /// <summary>The six numbers that are fitted, read from and written to a set.</summary>
    public static KeepingParameters Of(Vector<double> x) => KeepingParameters.Default with
    {
        SproutPeak = Math.Exp(x[0]), SproutColdEdgeC = x[1], InhibitorShare = Math.Exp(x[2]), DecayAtZero = Math.Exp(x[3]),
        ShortLife = Math.Exp(x[4]), LongGain = Math.Exp(x[5]) - 1,
    };

    public static double SquaredError(KeepingParameters p) => All.Sum(r => r.Residual(p) * r.Residual(p));

    /// <summary>Least squares on ln life from a start far from the shipped numbers.</summary>
    public static KeepingParameters Fit()
    {
        Vector<double> x = Vector<double>.Build.Dense([Math.Log(0.05), 3, Math.Log(0.5), Math.Log(0.01), Math.Log(0.7), Math.Log(1.2)]);
        for (int round = 0; round < 30; round++)
            x = NelderMeadSimplex.Minimum(ObjectiveFunction.Value(v => SquaredError(Of(v))), x, 1e-14, 100000).MinimizingPoint;
        return Of(x);
    }
}

/// <summary>A published loss of weight over a whole storage, in air taken as steady.</summary>
public sealed record WeightRow(string Name, double TempC, double Rh, double Days, double Loss, string Source)
{
    /// <summary>ln of the weekly loss by the law over the published one, compounded.</summary>
    public double Residual(KeepingParameters p)
    {
        var cured = new KeepingTraits(KeepClass.Medium, Inhibitor: false, Cured: true);
        double weekly = KeepingLaw.WeightLoss(p, cured, new Climate(TempC, Rh, KeepingLaw.AirO2, KeepingLaw.AirCo2), 0);
        return Math.Log(Math.Log(1 - weekly) * Days / 7 / Math.Log(1 - Loss));
    }
}

/// <summary>The losses that the weight law is fitted to, and the fit. None of the sources states its air's humidity in what was seen: climates are ours.</summary>
public static class WeightRows
{
    public static IReadOnlyList<WeightRow> All { get; } =
    [
        new("cold, 180 days", 0, 65, 180, 0.1389, "AREEO, fooder.areeo.ac.ir article 100799: white garlic, cold storage (pink garlic, half rotten, left out)"),
        new("traditional, 180 days", 20, 60, 180, 0.259, "same: white garlic, traditional storage"),
        new("cold", 0, 65, 180, 0.1147, "Khater, Bahnasawy and Ibrahim 2021: cold; length of storage not in the abstract, taken as 180 days"),
        new("traditional", 25, 50, 180, 0.3689, "same: traditional (the ventilated store's 12.33% is left out: its air is not known)"),
    ];

    public static KeepingParameters Fit()
    {
        static KeepingParameters Of(Vector<double> x) =>
            KeepingParameters.Default with { LossBase = Math.Exp(x[0]), LossPerKpa = Math.Exp(x[1]) };
        Vector<double> x = Vector<double>.Build.Dense([Math.Log(0.001), Math.Log(0.02)]);
        for (int round = 0; round < 10; round++)
            x = NelderMeadSimplex.Minimum(ObjectiveFunction.Value(v => All.Sum(r => r.Residual(Of(v)) * r.Residual(Of(v)))), x, 1e-14, 100000).MinimizingPoint;
        return Of(x);
    }
}
