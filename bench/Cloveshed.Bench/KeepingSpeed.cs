using System.Diagnostics;
using System.Globalization;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Bench;

/// <summary>Keeping of a whole shed: so many lots, each along so many paths, week by week, on one core.</summary>
internal static class KeepingSpeed
{
    public static void Run(int lots, int paths, int weeks, int repeats)
    {
        // Every lot its own life used; three classes, cured or not, inhibitor or not, harvested over ten weeks.
        ForecastLot[] shed = [.. Enumerable.Range(0, lots).Select(i => new ForecastLot(new KeepingTraits((KeepClass)(i % 3), i % 7 == 0, i % 5 != 0), i * 0.7 / lots, i % 10))];
        Climate[][] ways = [.. Enumerable.Range(0, paths).Select(k => Enumerable.Range(0, weeks)
            .Select(w => w < k ? new Climate(17 + 10 * Math.Cos(w / 8.3), 50, KeepingLaw.AirO2, KeepingLaw.AirCo2) : new Climate(-0.5, 65, KeepingLaw.AirO2, KeepingLaw.AirCo2)).ToArray())];
        ForecastQuestion question = new(shed, ways, KeepingParameters.Default);
        for (int round = 0; round <= repeats; round++)
        {
            var clock = Stopwatch.StartNew();
            ForecastAnswer answer = KeepingForecast.Of(question);
            double seconds = clock.Elapsed.TotalSeconds;
            // The first round warms up the compiler and is said apart.
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{(round == 0 ? "warm-up" : "round " + round)}: {lots:#,##0} lots x {paths} paths x {weeks} weeks in {seconds:0.000} s; last sound share {answer.Sound[^1]:0.0000}"));
        }
    }
}
