using Cloveshed.DemoSeason.Draws;
using Cloveshed.DemoSeason.Text;

namespace Cloveshed.DemoSeason.Sales;

/// <summary>Units that could be sold beyond orders in a week; Actual is what the market really takes, which no season file shows.</summary>
public sealed record MarketWeek(Product Product, int Week, decimal Price, int P10, int P50, int P90, int Actual);

/// <summary>The open market for part of the products: thin, and below the price of orders.</summary>
public static class Market
{
    // Pounds in an ordinary week, and the price against the usual one.
    private static readonly (string Product, double Pounds, double Price)[] Traded =
    [
        ("Medium tube 30", 900, 0.80), ("Large tube 30", 1_200, 0.80), ("Giant 30", 1_300, 0.82), ("Jumbo 30", 2_000, 0.84),
        ("Extra jumbo 30", 3_200, 0.84), ("Colossal 30", 900, 0.82), ("Peeling stock medium", 2_500, 0.78), ("Chopping stock", 2_400, 0.75),
        ("Small cloves", 1_000, 0.70),
    ];

    public static IReadOnlyList<MarketWeek> Draw(ulong seed)
    {
        Draw draw = Draws.Draw.For(seed, "market");
        List<MarketWeek> weeks = [];
        foreach ((string name, double pounds, double price) in Traded)
        {
            Product p = Products.All[Products.Index(name)];
            double drift = 0;
            for (int w = 0; w < Scenario.Weeks; w++)
            {
                drift = (0.8 * drift) + draw.Normal(0, 0.02);
                double at = p.Price * (price + drift) * (1 + (0.08 * w / Scenario.Weeks));
                double middle = pounds / p.Net * Calls.InSeason(w) * draw.Factor(0.15);
                double spread = draw.Between(0.30, 0.50);
                // The market's 10th and 90th percentile lie 1.2816 standard deviations from the middle of a lognormal.
                double actual = middle * draw.Factor(spread / 1.2816);
                weeks.Add(new MarketWeek(
                    p, w, Table.Round(at, 2), Whole(middle * Steady.Exp(-spread)), Whole(middle), Whole(middle * Steady.Exp(spread)), Whole(actual)));
            }
        }

        return weeks;
    }

    public static string File(IReadOnlyList<MarketWeek> weeks)
    {
        ArgumentNullException.ThrowIfNull(weeks);
        Table t = new("product", "week", "price", "p10", "p50", "p90");
        foreach (MarketWeek m in weeks)
        {
            t.Row(m.Product.Name, Scenario.Monday(m.Week), m.Price, m.P10, m.P50, m.P90);
        }

        return t.ToString();
    }

    public static string TruthFile(IReadOnlyList<MarketWeek> weeks)
    {
        ArgumentNullException.ThrowIfNull(weeks);
        Table t = new("product", "week", "units");
        foreach (MarketWeek m in weeks)
        {
            t.Row(m.Product.Name, Scenario.Monday(m.Week), m.Actual);
        }

        return t.ToString();
    }

    private static int Whole(double units) => (int)Math.Round(units, MidpointRounding.AwayFromZero);
}
