using System.Globalization;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Seasons.Tests.Demo;

/// <summary>
/// What the crop holds against what is asked for, reckoned here from the truth by the contract's laws with the normal
/// distribution of MathNet.Numerics, and with no part of the planner.
/// </summary>
public sealed class BalanceTests
{
    // A year's storage takes about 14 % of the weight on the way to the lines, by the keeping law's usual week.
    private const double AtRun = 0.86;

    private static readonly IReadOnlyList<Dictionary<string, string>> Orders = Committed.Rows("demo-season/orders.csv");
    private static readonly IReadOnlyList<Dictionary<string, string>> Lots = Committed.Rows("demo-season/lots.csv");
    private static readonly Dictionary<string, Dictionary<string, string>> Products = By("demo-season/products.csv", "product");
    private static readonly Dictionary<string, Dictionary<string, string>> Varieties = By("demo-season/varieties.csv", "variety");
    private static readonly Dictionary<string, double> Kept =
        Committed.Rows("demo-season/yields.csv").ToDictionary(y => y["mode"], y => Figure(y["kept_share"]), StringComparer.Ordinal);

    private static double Figure(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    [Fact]
    public void Sizes_bind_in_places_but_none_is_out_of_reach()
    {
        Dictionary<string, double> supply = [];
        foreach (Dictionary<string, string> lot in Committed.Rows("demo-truth/lots.csv"))
        {
            foreach ((string size, double share) in ClassShares(lot))
            {
                supply[size] = supply.GetValueOrDefault(size) + (share * Figure(lot["net"]) * Figure(lot["fresh_share"]));
            }
        }

        Dictionary<string, double> asked = Asked("bulb").GroupBy(a => a.From, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(a => a.Pounds), StringComparer.Ordinal);
        double scale = asked.Values.Sum() / supply.Values.Sum();
        Assert.Equal(8, asked.Count);
        // Against what the crop holds of each size: some sizes ask for more than their part, none for a third more or less.
        double[] tight = [.. asked.Select(a => a.Value / (supply[a.Key] * scale))];
        Assert.All(tight, t => Assert.InRange(t, 0.75, 1.33));
        Assert.Contains(tight, t => t > 1.05);
    }

    [Fact]
    public void Orders_ask_for_about_what_can_be_packed_and_the_late_programme_for_more()
    {
        Dictionary<string, string>[] truth = [.. Committed.Rows("demo-truth/lots.csv")];
        double net = truth.Sum(t => Figure(t["net"])) * AtRun;
        double fresh = truth.Sum(t => Figure(t["net"]) * Figure(t["fresh_share"])) * AtRun / net;
        double fit = truth.Sum(t => Figure(t["net"]) * (Figure(t["fresh_share"]) + Figure(t["crack_share"]))) * AtRun / net;
        double bulbs = Asked("bulb").Sum(a => a.Pounds);
        double cloves = Asked("clove").Sum(a => a.Pounds);
        double seed = Committed.Rows("demo-season/seed-needs.csv").Sum(s => Figure(s["net"]));

        // Pounds over the lines: the fresh line for the cartons, the seed line for the cloves to plant, the cracker for the rest.
        double freshIn = bulbs / (fresh * Kept["fresh"]);
        double seedIn = seed / (fresh * Kept["seed"]);
        double crackedFit = (freshIn * (fit - fresh)) + ((net - freshIn - seedIn) * fit);
        double packable = bulbs + (crackedFit * Kept["crack"]);
        double late = Orders.Where(o => o["customer"] == "Hasplock Wholesale").Sum(Pounds);
        Assert.InRange((bulbs + cloves - late) / packable, 0.92, 1.00);
        Assert.InRange((bulbs + cloves) / packable, 1.00, 1.06);
    }

    [Fact]
    public void By_no_week_is_more_asked_for_than_has_been_dug()
    {
        double[] dug = new double[52], asked = new double[52];
        foreach (Dictionary<string, string> lot in Lots)
        {
            dug[Math.Max(0, Week(lot["ready"].Length > 0 ? lot["ready"] : lot["harvested"]))] += Figure(lot["net"]);
        }

        foreach (Dictionary<string, string> order in Orders)
        {
            asked[Week(order["due"])] += Pounds(order);
        }

        for (int w = 0; w < 52; w++)
        {
            // 0.68: a pound dug gives about two thirds of a pound of cartons and cloves.
            Assert.True(asked.Take(w + 1).Sum() < 0.68 * dug.Take(w + 1).Sum(), $"week {w}");
        }
    }

    [Fact]
    public void The_lines_have_hours_for_the_year_but_not_for_every_week()
    {
        double fresh = Committed.Rows("demo-season/lines.csv").Where(l => l["mode"] == "fresh").Sum(l => Figure(l["rate_per_hour"]) * Figure(l["hours_per_week"]));
        double[] weeks = new double[52];
        foreach (Dictionary<string, string> order in Orders.Where(o => Products[o["product"]]["form"] == "bulb"))
        {
            weeks[Week(order["due"])] += Pounds(order) / (0.78 * Kept["fresh"]);
        }

        Assert.InRange(weeks.Sum() / (52 * fresh), 0.60, 0.85);
        Assert.Contains(weeks, w => w > fresh);
    }

    private static int Week(string date) =>
        (int)(DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture).DayNumber - new DateOnly(2026, 6, 29).DayNumber + 700) / 7 - 100;

    private static double Pounds(Dictionary<string, string> order) => Figure(order["units"]) * Figure(Products[order["product"]]["net"]);

    private static IEnumerable<(string From, double Pounds)> Asked(string form) =>
        Orders.Where(o => Products[o["product"]]["form"] == form).Select(o => (Products[o["product"]]["from"], Pounds(o)));

    private static Dictionary<string, Dictionary<string, string>> By(string file, string key) =>
        Committed.Rows(file).ToDictionary(r => r[key], r => r, StringComparer.Ordinal);

    // By mass: a lognormal of bulb mass by count has, by mass, the same spread about a mean of ln g one variance higher.
    private static IEnumerable<(string Size, double Share)> ClassShares(Dictionary<string, string> lot)
    {
        Dictionary<string, string> variety = Varieties[Lots.First(l => l["lot"] == lot["lot"])["variety"]];
        double a = Figure(variety["mass_a"]) + Figure(lot["law_shift"]), b = Figure(variety["mass_b"]), s = Figure(variety["mass_s"]);
        double small = Figure(lot["small_share"]);
        (double Weight, double Mean, double Cv)[] kinds =
            [(1 - small, Figure(lot["main_mean_g"]), Figure(lot["main_cv"])), (small, Figure(lot["small_mean_g"]), Figure(lot["small_cv"]))];
        double whole = kinds.Sum(k => k.Weight * k.Mean);
        foreach (Dictionary<string, string> size in Committed.Rows("demo-season/sizes.csv"))
        {
            double share = 0;
            foreach ((double weight, double mean, double cv) in kinds)
            {
                double variance = Math.Log(1 + (cv * cv));
                Normal lnMm = new((Math.Log(mean) + (variance / 2) - a) / b, Math.Sqrt(variance + (s * s)) / b);
                double upper = size["max_mm"].Length > 0 ? lnMm.CumulativeDistribution(Math.Log(Figure(size["max_mm"]))) : 1;
                share += weight * mean / whole * (upper - lnMm.CumulativeDistribution(Math.Log(Figure(size["min_mm"]))));
            }

            yield return (size["class"], share);
        }
    }
}
