using System.Globalization;
using Cloveshed.DemoSeason.Draws;
using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Sales;

/// <summary>orders.csv: the calls with their quantities, prices and terms, numbered by due date.</summary>
public static class OrderBook
{
    // The late programme: from the middle of November to the end of April, every week, in pounds.
    private const int LateFrom = 20;
    private const int LateWeeks = 24;

    private static readonly (string Product, double Pounds)[] LateWeek = [("Extra jumbo 30", 11_000), ("Jumbo 30", 6_000), ("Peeling stock large", 7_000)];

    public static IReadOnlyList<OrderLine> Draw(ulong seed)
    {
        IReadOnlyList<Call> calls = Calls.Draw(seed);
        Dictionary<string, double> weights = calls.SelectMany(c => c.Lines).GroupBy(l => l.Product.Name, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(l => l.Weight), StringComparer.Ordinal);
        Draw draw = Draws.Draw.For(seed, "orders");
        List<List<OrderLine>> orders = [.. calls.Select(c => Order(draw, c, (p, w) => w * p.Pounds / weights[p.Name]))];

        Buyer late = Buyers.All.Single(b => b.Name == Buyers.Late);
        for (int i = 0; i < LateWeeks; i++)
        {
            List<(Product, double)> lines = [.. LateWeek.Select(l => (Products.All[Products.Index(l.Product)], l.Pounds * draw.Factor(0.08)))];
            orders.Add(Order(draw, new Call(late, LateFrom + i, 4, lines), (_, pounds) => pounds));
        }

        return [.. orders.OrderBy(o => o[0].Due).ThenBy(o => o[0].Customer, StringComparer.Ordinal).SelectMany((o, i) =>
            o.Select((l, n) => l with { Order = string.Create(CultureInfo.InvariantCulture, $"SO-{1001 + i}"), Number = n + 1 }))];
    }

    public static string File(IReadOnlyList<OrderLine> orders)
    {
        ArgumentNullException.ThrowIfNull(orders);
        Table t = new(
            "order", "line", "customer", "product", "ship_from", "due", "units", "price", "firm", "late_cost", "short_cost", "larger_ok", "whole");
        foreach (OrderLine l in orders)
        {
            t.Row(
                l.Order, l.Number, l.Customer, l.Product.Name, l.ShipFrom, l.Due, l.Units, l.Price, l.Firm, l.LateCost, l.ShortCost,
                l.LargerOk, l.Whole);
        }

        return t.ToString();
    }

    private static List<OrderLine> Order(Draw draw, Call call, Func<Product, double, double> pounds)
    {
        LocalDate monday = Scenario.Monday(call.Week);
        bool spot = call.Buyer.Cadence == 0;
        // Programmes are firm; spot orders are asked for, and one in four is not yet confirmed. Together about 12 %.
        bool firm = !draw.Chance(spot ? 0.30 : 0.08);
        bool whole = draw.Chance(0.045);
        int early = draw.Weighted([0.35, 0.40, 0.25]);
        LocalDate? from = early == 0 ? null : monday.PlusDays(-7 * early) is var d && d < Scenario.FirstWeek ? Scenario.FirstWeek : monday.PlusDays(-7 * early);
        // Prices creep up as the crop is used: about 8 % from the new crop to the last of it.
        double time = 1 + (0.08 * call.Week / Scenario.Weeks);
        List<OrderLine> lines = [];
        foreach ((Product p, double weight) in call.Lines)
        {
            int layers = (int)Math.Round(pounds(p, weight) / p.Net / p.Layer, MidpointRounding.AwayFromZero);
            double price = Math.Round(p.Price * call.Buyer.PriceFactor * time * draw.Factor(0.015) * 20, MidpointRounding.AwayFromZero) / 20;
            bool larger = p.HasLarger && draw.Chance(0.62);
            lines.Add(new OrderLine(
                "", 0, call.Buyer.Name, p, from, monday.PlusDays(call.DueDay), Math.Max(1, layers) * p.Layer, Table.Round(price, 2), firm,
                Table.Round(price * draw.Between(0.02, 0.06), 2), Table.Round(price * draw.Between(0.05, spot ? 0.15 : 0.25), 2), larger, whole));
        }

        return lines;
    }
}
