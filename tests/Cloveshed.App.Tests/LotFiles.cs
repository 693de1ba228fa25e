using System.Globalization;
using System.Text;

namespace Cloveshed.App.Tests;

/// <summary>Sample files whose truth is known: ln g normal, ln mm normal given ln g.</summary>
internal static class LotFiles
{
    public const double A = -6.482, B = 2.646;

    public static string Bulbs(Trial trial, string name, int n, int seed, double scatter = 0.1, bool diameters = true)
    {
        Random random = new(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        StringBuilder text = new(diameters ? "weight_g,diameter_mm\n" : "weight_g\n");
        for (int i = 0; i < n; i++)
        {
            double g = Math.Exp(Math.Log(52) + 0.32 * Normal()), mm = Math.Exp((Math.Log(g) - A) / B + scatter / B * Normal());
            text.Append(CultureInfo.InvariantCulture, $"{g:0.0}").Append(diameters ? string.Create(CultureInfo.InvariantCulture, $",{mm:0.0}") : "").Append('\n');
        }

        return Put(trial, name, text.ToString());
    }

    public static string Put(Trial trial, string name, string text)
    {
        string path = trial.At(name);
        File.WriteAllText(path, text);
        return path;
    }
}
