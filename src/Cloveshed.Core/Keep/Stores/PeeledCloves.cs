namespace Cloveshed.Core.Keep.Stores;

/// <summary>Days that peeled cloves can be sold: the published low and high, and between them.</summary>
public readonly record struct PeeledLife(double Days, double Low, double High);

/// <summary>
/// Peeled cloves in sealed bags. Three to four weeks at 0 °C, two to three at 5, one to two at 10 (Tanamati, Hong and Cantwell, UC
/// Davis 2015, in modified atmosphere as sold). Between the temperatures straight lines of ln days; warmer than 10 °C the
/// line goes on, which no source covers. With 5 to 15% CO2, or 1 to 3% O2, three weeks at 5 and 10 °C (Cantwell, Acta Hort.); with 3% O2 and
/// 15% CO2, 20 days at 5 °C and good for 16 at 10 (Future of Food Journal, article 650).
/// </summary>
public static class PeeledCloves
{
    /// <summary>Share of weight that goes in a week out of a sealed bag; our default, no published value.</summary>
    public const double WeightLossPerWeek = 0.002;

    private static readonly double[] TempC = [0, 5, 10];
    private static readonly double[] Low = [21, 14, 7], High = [28, 21, 14];
    private static readonly double[] LowInAtmosphere = [21, 20, 16], HighInAtmosphere = [28, 21, 21];
    private static readonly double[] BreathLow = [12, 15, 35], BreathHigh = [12, 20, 50];

    /// <summary>In a climate; colder than 0 °C is taken as 0, because nothing is published there and cloves freeze.</summary>
    public static PeeledLife Life(Climate climate)
    {
        // 0 in air, 1 from 5% CO2 up or from 3% O2 down; our default between.
        double atmosphere = Math.Max(Math.Clamp(climate.Co2 / 5, 0, 1), Math.Clamp((KeepingLaw.AirO2 - climate.O2) / (KeepingLaw.AirO2 - 3), 0, 1));
        double low = Mixed(Low, LowInAtmosphere), high = Mixed(High, HighInAtmosphere);
        return new PeeledLife((low + high) / 2, low, high);

        double Mixed(double[] air, double[] inside) =>
            Math.Exp((1 - atmosphere) * At(air, climate.TempC) + atmosphere * At(inside, climate.TempC));
    }

    /// <summary>UC Davis Produce Facts: Garlic, fresh peeled cloves at 0, 5 and 10 °C, straight lines between; outside of that the nearest end is held.</summary>
    public static RespirationRate MlCo2PerKgHour(double tempC)
    {
        double at = Math.Clamp(tempC, 0, 10) / 5;
        int left = Math.Min((int)at, 1);
        double part = at - left;
        return new RespirationRate(BreathLow[left] + part * (BreathLow[left + 1] - BreathLow[left]), BreathHigh[left] + part * (BreathHigh[left + 1] - BreathHigh[left]));
    }

    // ln days.
    private static double At(double[] days, double tempC)
    {
        double at = Math.Max(0, tempC) / 5;
        int left = Math.Min((int)at, TempC.Length - 2);
        return Math.Log(days[left]) + (at - left) * (Math.Log(days[left + 1]) - Math.Log(days[left]));
    }
}
