using System.Globalization;

namespace Cloveshed.Seasons.Tests.Demo;

/// <summary>The manual's page on the demo season says what the files hold.</summary>
public sealed class ManualTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Committed.Data, "..", "docs", "manual", "demo-season.md"));

    [Fact]
    public void Its_totals_are_those_of_the_files()
    {
        IReadOnlyList<Dictionary<string, string>> lots = Committed.Rows("demo-season/lots.csv");
        IReadOnlyList<Dictionary<string, string>> orders = Committed.Rows("demo-season/orders.csv");
        Dictionary<string, int> net = Committed.Rows("demo-season/products.csv").ToDictionary(p => p["product"], p => Whole(p["net"]), StringComparer.Ordinal);
        Says($"{lots.Sum(l => Whole(l["bins"])):N0} bins, {lots.Sum(l => Whole(l["net"])):N0} lb");
        Says($"{Committed.Rows("demo-season/samples.csv").Count:N0} of {Committed.Rows("demo-season/samples.csv").Select(s => s["lot"]).Distinct().Count()} lots");
        Says($"{orders.Select(o => o["order"]).Distinct().Count()} orders with {orders.Count:N0} lines of {orders.Select(o => o["customer"]).Distinct().Count()} buyers, {orders.Sum(o => Whole(o["units"]) * net[o["product"]]):N0} lb");
        Says($"{Committed.Rows("demo-season/market.csv").Sum(m => Whole(m["p50"]) * net[m["product"]]):N0} lb at the middle estimate");
        Says($"{Committed.Rows("demo-season/seed-needs.csv").Sum(s => Whole(s["net"])):N0} lb of cloves");
        Says($"{Committed.Rows("demo-season/places.csv").Where(p => p["kind"] != "open").Sum(p => Whole(p["capacity_bins"])):N0} bins under a roof");
        Says($"the seed {Cloveshed.DemoSeason.Scenario.Seed} with");
    }

    private static int Whole(string cell) => int.Parse(cell, CultureInfo.InvariantCulture);

    private static void Says(FormattableString text) => Assert.Contains(text.ToString(CultureInfo.InvariantCulture), Page, StringComparison.Ordinal);
}
