using System.Diagnostics;
using System.Globalization;

namespace Cloveshed.Check.Tests;

/// <summary>
/// A season of the size that the tool is for: 90 lots, 52 weeks, 540 paths (28,620 rows of paths.csv), 3,120 fills. Each path stands in the yard
/// until it is run, whole, in one week; what is made ships in that week.
/// </summary>
public class LargeSeasonTests
{
    private const int Lots = 90;
    private const int Weeks = 52;
    private const int PathsOfLot = 6;
    private const int LinesOfOrder = 60;

    [Fact]
    public void Ninety_lots_and_a_year_are_checked_in_under_two_seconds()
    {
        Folders folders = Large();
        Assert.True(Rows(folders, "paths.csv") > 28_000);
        Assert.True(Rows(folders, "fills.csv") > 3_000);

        // The best of up to twenty, because the machine has other things to do too: one time is enough to show that it can.
        (string, string, string)[] same = [.. Enumerable.Repeat(("as it is", "sales.csv", folders.AnswerText("sales.csv")), 20)];
        double best = double.PositiveInfinity;
        var watch = Stopwatch.StartNew();
        foreach ((_, CheckResult result) in folders.CheckEach(same))
        {
            best = Math.Min(best, watch.Elapsed.TotalSeconds);
            Assert.Equal([], result.Breaches);
            if (best < 2)
            {
                break;
            }

            watch.Restart();
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{best:0.000} s");
        Assert.InRange(best, 0, 2);
    }

    private static int Rows(Folders folders, string file) => folders.AnswerText(file).Count(c => c == '\n') - 1;

    private static Folders Large()
    {
        Folders folders = Shed.Bare(Weeks).ChangeSeason("places.csv", "yard,open,100", "yard,open,100000")
            .ChangeSeason("lines.csv", "pack,fresh,500,40,10", "pack,fresh,500,4000,10");
        double value = 0;
        var paths = new List<string>();
        var runs = new List<string>();
        var made = new List<string>();
        var keeps = new List<string>();
        double[] cartons = new double[Weeks];
        for (int lot = 0; lot < Lots; lot++)
        {
            folders.WithLot($"L{lot}", bins: 60, net: 6000);
            for (int path = 0; path < PathsOfLot; path++)
            {
                string name = $"p{lot}-{path}";
                int runWeek = ((lot * PathsOfLot) + (path * 9)) % Weeks;
                for (int week = 0; week <= Weeks; week++)
                {
                    paths.Add(Text($"{name},L{lot},yard,@{week},yard,{1 - (0.01 * week):0.00},{0.8 - (0.01 * week):0.00},0.15,{0.01 * week:0.00}"));
                }

                for (int week = 0; week < runWeek; week++)
                {
                    keeps.Add(Text($"@{week},L{lot},{name},yard,10,1000"));
                    value -= 10 * 0.5;
                }

                double massIn = 1000 * (1 - (0.01 * runWeek));
                double hours = (massIn / 500) + 0.5;
                double units = Math.Floor(massIn * (0.8 - (0.01 * runWeek)) * 0.95 * 0.5 / 30 * 10) / 10;
                runs.Add(Text($"r{name},@{runWeek},pack,fresh,lot,L{lot},{name},yard,{massIn:R},1000,{hours:R},0,"));
                made.Add(Text($"r{name},@{runWeek},L-30,L{lot},{units:R},{units * 30:R}"));
                cartons[runWeek] += units;
                value -= (hours * 100) + (units * 2);
            }
        }

        folders.Answer("paths.csv", [.. paths]).Answer("runs.csv", [.. runs]).Answer("made.csv", [.. made]).Answer("keeps.csv", [.. keeps]);
        return folders.Summary(value + Ship(folders, cartons));
    }

    // Each week's cartons, in equal order lines at 40 each; what does not divide is left over.
    private static double Ship(Folders folders, double[] cartons)
    {
        var orders = new List<string>();
        var fills = new List<string>();
        double income = 0;
        for (int week = 0; week < Weeks; week++)
        {
            for (int line = 1; line <= LinesOfOrder; line++)
            {
                int units = (int)Math.Floor(cartons[week] / LinesOfOrder);
                orders.Add(Text($"o{week},{line},Buyer,L-30,,@{week},{units},40,,,,,"));
                fills.Add(Text($"o{week},{line},@{week},L-30,{units}"));
                income += units * 40;
            }
        }

        folders.Season("orders.csv", [.. orders]).Answer("fills.csv", [.. fills]);
        return income;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
