using System.Diagnostics;
using System.Globalization;
using System.Text;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Sizes;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Weighing;
using MathNet.Numerics.Statistics;

namespace Cloveshed.Bench;

/// <summary>
/// A sizer's file: nanoseconds a bulb into the histogram beside MathNet's, and a whole file of ten million bulbs read, counted and fitted
/// from memory on one core, beside a plain reading into MathNet's histogram and a plain EM over its buckets.
/// </summary>
internal static class Sizing
{
    private const int Bulbs = 10_000_000;

    public static void Run(int repeats)
    {
        int[] tenths = Weights(Bulbs);
        double[] grams = [.. tenths.Select(t => t / 10.0)];
        PieceMass[] pieces = [.. tenths.Select(PieceMass.FromTenths)];
        Console.WriteLine($"{Bulbs} bulbs; medians of {repeats}");
        Console.WriteLine("| what | ours | MathNet, plain | ratio |\n| --- | ---: | ---: | ---: |");

        var histogram = new WeightHistogram();
        double own = Median(repeats, () =>
        {
            foreach (PieceMass piece in pieces)
                histogram.Add(piece);
        });
        double referee = Median(repeats, () =>
        {
            // Its buckets are found by search, so it is given as many bulbs as a minute bears.
            Histogram other = new(grams.AsSpan(0, Bulbs / 10).ToArray(), 4000, 0, 400);
            GC.KeepAlive(other);
        }) * 10;
        Row("a bulb into the histogram", own / Bulbs * 1e9, referee / Bulbs * 1e9, "ns");
        WeightHistogram part = new();
        for (int k = 0; k < 1000; k++)
            part.Add(pieces[k]);
        Row("two histograms joined", Median(repeats, () => histogram.Join(part)) * 1e6, double.NaN, "µs");

        byte[] file = File(tenths);
        double read = 0, fitted = 0;
        double whole = Median(repeats, () =>
        {
            var clock = Stopwatch.StartNew();
            WeighedBulbs bulbs = WeightFile.Parse("sizer.csv", file, TextLanguage.English).Value!;
            read = clock.Elapsed.TotalSeconds;
            FittedMixture fit = MixtureFit.Usual(bulbs.Cells);
            fitted = clock.Elapsed.TotalSeconds - read;
            GC.KeepAlive(fit);
        });
        double plain = Median(1, () => Plain(file));
        Row($"file of {file.Length / 1_000_000} MB read, counted, fitted ({read:0.00} + {fitted:0.00} s)", whole, plain, "s");
    }

    // Lines split and parsed by the base library, MathNet's histogram at the tenth, EM of three parts over its buckets, no joining of cells.
    private static void Plain(byte[] file)
    {
        List<double> grams = [];
        using StreamReader reader = new(new MemoryStream(file));
        reader.ReadLine();
        while (reader.ReadLine() is { } line)
            grams.Add(double.Parse(line, CultureInfo.InvariantCulture));
        Histogram buckets = new(grams, 4000, 0, 400);
        double[] at = new double[4000], count = new double[4000];
        for (int b = 0; b < 4000; b++)
            (at[b], count[b]) = (Math.Log((buckets[b].LowerBound + buckets[b].UpperBound) / 2), buckets[b].Count);
        for (int parts = 1; parts <= 3; parts++)
        {
            double[] share = [.. Enumerable.Repeat(1.0 / parts, parts)], mu = [.. Enumerable.Range(0, parts).Select(k => Math.Log(30 + 20 * k))], sigma = [.. Enumerable.Repeat(0.3, parts)];
            for (int round = 0; round < 200; round++)
            {
                double[] n = new double[parts], one = new double[parts], two = new double[parts];
                for (int b = 0; b < 4000; b++)
                {
                    if (count[b] == 0)
                        continue;
                    double[] density = [.. Enumerable.Range(0, parts).Select(k => share[k] * MathNet.Numerics.Distributions.Normal.PDF(mu[k], sigma[k], at[b]))];
                    double all = density.Sum();
                    for (int k = 0; k < parts; k++)
                    {
                        double weight = count[b] * density[k] / all;
                        n[k] += weight;
                        one[k] += weight * at[b];
                        two[k] += weight * at[b] * at[b];
                    }
                }

                for (int k = 0; k < parts; k++)
                    (share[k], mu[k], sigma[k]) = (n[k] / n.Sum(), one[k] / n[k], Math.Sqrt(two[k] / n[k] - one[k] / n[k] * (one[k] / n[k])));
            }
        }
    }

    private static int[] Weights(int n)
    {
        Chance chance = new(1);
        var tenths = new int[n];
        for (int k = 0; k < n; k++)
        {
            double g = chance.Uniform() < 0.15 ? 32 * Math.Exp(0.3 * chance.Normal()) : 58 * Math.Exp(0.27 * chance.Normal());
            tenths[k] = (int)Math.Round(10 * g, MidpointRounding.ToEven);
        }

        return tenths;
    }

    private static byte[] File(int[] tenths)
    {
        StringBuilder text = new("weight_g\n");
        foreach (int t in tenths)
            text.Append(t / 10).Append('.').Append(t % 10).Append('\n');
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    internal static double Median(int repeats, Action once)
    {
        once(); // compiled and warm
        double[] seconds = new double[repeats];
        for (int k = 0; k < repeats; k++)
        {
            var clock = Stopwatch.StartNew();
            once();
            seconds[k] = clock.Elapsed.TotalSeconds;
        }

        Array.Sort(seconds);
        return seconds[repeats / 2];
    }

    internal static void Row(string what, double own, double other, string unit) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {own:0.00} {unit} | {(double.IsNaN(other) ? "" : $"{other:0.00} {unit}")} | {(double.IsNaN(other) ? "" : $"{other / own:0.0}")} |"));
}
