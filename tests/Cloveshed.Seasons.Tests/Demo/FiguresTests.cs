using System.Globalization;

namespace Cloveshed.Seasons.Tests.Demo;

/// <summary>The season is of the size and kind that the manual page says: counts, totals and the spread of its terms.</summary>
public sealed class FiguresTests
{
    private static readonly IReadOnlyList<Dictionary<string, string>> Lots = Committed.Rows("demo-season/lots.csv");
    private static readonly IReadOnlyList<Dictionary<string, string>> Orders = Committed.Rows("demo-season/orders.csv");
    private static readonly IReadOnlyList<Dictionary<string, string>> Samples = Committed.Rows("demo-season/samples.csv");

    private static double Figure(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    [Fact]
    public void Ninety_lots_fill_fourteen_to_sixteen_thousand_bins()
    {
        Assert.Equal(90, Lots.Select(l => l["lot"]).Distinct().Count());
        Assert.InRange(Lots.Sum(l => Figure(l["bins"])), 14_000, 16_000);
        Assert.InRange(Lots.Sum(l => Figure(l["net"])), 14e6, 16e6);
        Assert.Equal(Lots.Count, Lots.Select(l => (l["lot"], l["place"])).Distinct().Count());
    }

    [Fact]
    public void A_bin_holds_what_32_cubic_feet_of_garlic_weigh()
    {
        // Bulk density 449.5 to 594.6 kg/m3 (Akola 2024; AREEO Iran, project 100320) is 28.06 to 37.12 lb/ft3; an apple-type bin of
        // 4 x 4 x 2 ft inside holds 32 ft3: 898 to 1188 lb.
        Assert.All(Lots, l => Assert.InRange(Figure(l["net"]) / Figure(l["bins"]), 880, 1188));
    }

    [Fact]
    public void Places_hold_what_stands_in_them_at_the_start()
    {
        Dictionary<string, double> capacity = Committed.Rows("demo-season/places.csv").ToDictionary(p => p["place"], p => Figure(p["capacity_bins"]), StringComparer.Ordinal);
        foreach (IGrouping<string, Dictionary<string, string>> place in Lots.GroupBy(l => l["place"], StringComparer.Ordinal))
        {
            Assert.InRange(place.Sum(l => Figure(l["bins"])), 1, capacity[place.Key]);
        }

        Assert.Equal(4, Lots.Select(l => l["place"]).Distinct().Count());
        Assert.InRange(capacity.Where(p => p.Key != "Open yard").Sum(p => p.Value), 9_000, 12_000);
    }

    [Fact]
    public void Seventy_five_lots_were_sampled_with_60_to_120_bulbs_each()
    {
        int[] counts = [.. Samples.GroupBy(s => s["lot"], StringComparer.Ordinal).Select(g => g.Count())];
        Assert.Equal(75, counts.Length);
        Assert.All(counts, n => Assert.InRange(n, 60, 120));
        Assert.InRange(Samples.Count, 6_000, 8_000);
    }

    [Fact]
    public void Measured_bulbs_keep_to_the_shapes_of_real_garlic()
    {
        // Mass over the cube of the diameter, g/mm3: derived from the BC table (2.9e-4 to 4.6e-4), Tashkopru (3.26e-4) and Akola (4.44e-4);
        // beyond 2.5e-4 to 5.0e-4 a figure is taken for a slip. Single bulbs scatter by about 10 % about their variety.
        Dictionary<string, string>[] measured = [.. Samples.Where(s => s["diameter_mm"].Length > 0)];
        Assert.InRange(measured.Length / (double)Samples.Count, 0.4, 0.8);
        double[] k = [.. measured.Select(s => Figure(s["weight_g"]) / Math.Pow(Figure(s["diameter_mm"]), 3))];
        Assert.InRange(k.Average(), 3.3e-4, 4.5e-4);
        Assert.True(k.Count(v => v is < 2.5e-4 or > 5.5e-4) < 0.02 * k.Length);
    }

    [Fact]
    public void Forty_buyers_ask_for_fifteen_hundred_lines()
    {
        Assert.Equal(40, Orders.Select(o => o["customer"]).Distinct().Count());
        Assert.InRange(Orders.Count, 1_450, 1_550);
        Assert.InRange(Orders.Select(o => o["order"]).Distinct().Count(), 700, 900);
        Assert.InRange(Part("firm", "no"), 0.10, 0.14);
        Assert.InRange(Part("larger_ok", "yes"), 0.30, 0.40);
        Assert.InRange(Part("whole", "yes"), 0.03, 0.06);
        Assert.Equal(Orders.Count, Orders.Select(o => (o["order"], o["line"])).Distinct().Count());
        Assert.Equal(Orders.Count, Orders.Select(o => (o["order"], o["product"])).Distinct().Count());
    }

    [Fact]
    public void Terms_of_orders_lie_in_their_ranges()
    {
        Assert.All(Orders, o =>
        {
            double price = Figure(o["price"]);
            Assert.InRange(Figure(o["late_cost"]) / price, 0.0185, 0.0615);
            Assert.InRange(Figure(o["short_cost"]) / price, 0.0485, 0.2515);
            Assert.InRange(Figure(o["units"]), 1, 2_000);
        });
    }

    [Fact]
    public void Thirty_pound_prices_rise_with_size_between_the_published_points()
    {
        // USDA market news quoted by a Mississippi State University extension blog, January 2016, and trade press: small about $20, medium about
        // $30, large $40-45, jumbo $54-56.50 a 30-lb carton. Classes between are scaled, so only the ends and the order are held to.
        string[] sizes = ["Small tube 30", "Medium tube 30", "Large tube 30", "Giant 30", "Jumbo 30", "Extra jumbo 30", "Super jumbo 30", "Colossal 30"];
        double[] mean = [.. sizes.Select(s => Orders.Where(o => o["product"] == s).Average(o => Figure(o["price"])))];
        Assert.Equal(mean.Order(), mean);
        Assert.InRange(mean[0], 19, 23);
        Assert.InRange(mean[^1], 54, 61);
    }

    private static double Part(string column, string value) => Orders.Count(o => o[column] == value) / (double)Orders.Count;
}
