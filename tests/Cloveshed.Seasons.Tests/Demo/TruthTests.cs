using System.Globalization;

namespace Cloveshed.Seasons.Tests.Demo;

/// <summary>The season's files are estimates of the truth: near it, never it.</summary>
public sealed class TruthTests
{
    private static readonly Dictionary<(string, string), Dictionary<string, string>> Truth =
        Committed.Rows("demo-truth/lots.csv").ToDictionary(t => (t["lot"], t["place"]));

    private static readonly IReadOnlyList<Dictionary<string, string>> Lots = Committed.Rows("demo-season/lots.csv");

    private static double Figure(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    [Fact]
    public void Every_lot_has_its_truth_and_the_truth_has_no_other()
    {
        Assert.Equal(Truth.Keys.Order(), Lots.Select(l => (l["lot"], l["place"])).Order());
    }

    [Fact]
    public void Estimated_nets_are_some_percent_out_and_their_bands_hold_most_truths()
    {
        Dictionary<string, string>[] estimated = [.. Lots.Where(l => l["state"] == "estimated")];
        double[] off = [.. estimated.Select(l => Math.Log(Figure(l["net"]) / Net(l)))];
        Assert.InRange(Math.Sqrt(off.Average(v => v * v)), 0.04, 0.12);
        int within = estimated.Count(l => Net(l) >= Figure(l["net_low"]) && Net(l) <= Figure(l["net_high"]));
        Assert.InRange(within / (double)estimated.Length, 0.75, 0.97);
        Assert.DoesNotContain(estimated, l => Figure(l["net"]) == Net(l));
    }

    [Fact]
    public void Given_means_and_sampled_means_scatter_about_the_true_mean()
    {
        double[] given = [.. Lots.Where(l => l["mean_g"].Length > 0).Select(l => Math.Log(Figure(l["mean_g"]) / Figure(Truth[(l["lot"], l["place"])]["mean_g"])))];
        Assert.InRange(Math.Sqrt(given.Average(v => v * v)), 0.03, 0.09);

        Dictionary<string, Dictionary<string, string>> lots = Truth.Values.GroupBy(t => t["lot"], StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        double[] z =
        [
            .. Committed.Rows("demo-season/samples.csv").GroupBy(s => s["lot"], StringComparer.Ordinal).Select(g =>
            {
                Dictionary<string, string> t = lots[g.Key];
                double standardError = Figure(t["mean_g"]) * Figure(t["cv"]) / Math.Sqrt(g.Count());
                return (g.Average(s => Figure(s["weight_g"])) - Figure(t["mean_g"])) / standardError;
            }),
        ];
        // Sample means are drawn from the truth: standard scores of 75 lots, held to four standard errors of their own mean and spread.
        Assert.InRange(z.Average(), -4 / Math.Sqrt(z.Length), 4 / Math.Sqrt(z.Length));
        Assert.InRange(Math.Sqrt(z.Average(v => v * v)), 0.70, 1.30);
    }

    [Fact]
    public void Nothing_of_the_truth_stands_in_the_season()
    {
        string[] hidden = ["small_share", "law_shift", "weight_loss_factor", "rot_factor", "life_factor", "main_mean_g"];
        foreach (string file in Directory.GetFiles(Path.Combine(Committed.Data, "demo-season")))
        {
            string text = File.ReadAllText(file);
            Assert.All(hidden, word => Assert.DoesNotContain(word, text, StringComparison.Ordinal));
            Assert.DoesNotContain("truth", text, StringComparison.OrdinalIgnoreCase);
        }
    }

    private static double Net(Dictionary<string, string> lot) => Figure(Truth[(lot["lot"], lot["place"])]["net"]);
}
