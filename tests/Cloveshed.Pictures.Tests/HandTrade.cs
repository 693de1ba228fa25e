using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures.Tests;

/// <summary>Ships what the hand season packs: orders by due date, oldest packing first, up to two weeks late; then medium at market.</summary>
internal static class HandTrade
{
    public static (List<FillRow> Fills, List<ShortRow> Shorts, List<SaleRow> Sales) Ship(Season season, IReadOnlyList<MadeRow> made)
    {
        var left = made.GroupBy(m => (m.Product, m.Week)).ToDictionary(g => g.Key, g => g.Sum(m => m.Units));
        foreach (StockRow row in season.Stock)
        {
            left[(row.Product, row.Made)] = left.GetValueOrDefault((row.Product, row.Made)) + row.Units;
        }
        var fills = new List<FillRow>();
        var shorts = new List<ShortRow>();
        foreach (OrderLine order in season.Orders.OrderBy(o => o.Due))
        {
            int want = order.Units;
            int due = season.Settings.WeekOf(order.Due);
            for (int w = Math.Max(0, season.Settings.WeekOf(order.ShipFrom)); w <= due + 2 && want > 0; w++)
            {
                int units = Take(left, season, order.Product, w, want);
                if (units > 0)
                {
                    fills.Add(new FillRow(order.Order, order.Number, w, order.Product, units));
                    want -= units;
                }
            }
            if (want > 0)
            {
                shorts.Add(new ShortRow(order.Order, order.Number, want, "No bulbs of this size are left by its week."));
            }
        }
        var sales = new List<SaleRow>();
        foreach (MarketWeek market in season.Market)
        {
            int units = Take(left, season, market.Product, market.Week, (int)market.P50);
            if (units > 0)
            {
                sales.Add(new SaleRow(market.Week, market.Product, units));
            }
        }
        return (fills, shorts, sales);
    }

    public static PlanSummary Summary(Season season, List<FillRow> fills, List<SaleRow> sales, List<AsIsRow> asIs, List<RunRow> runs)
    {
        double orders = fills.Sum(f => f.Units * (double)season.Orders.First(o => o.Order == f.Order).Price);
        double market = sales.Sum(s => s.Units * 22.0);
        double sold = asIs.Where(a => !a.Discarded).Sum(a => a.Mass) * .12;
        var revenues = new Dictionary<string, double> { ["orders"] = orders, ["market"] = market, ["as is"] = sold, ["standing"] = 4100 };
        var costs = new Dictionary<string, double>
        {
            ["making"] = 96_000, ["line"] = runs.Sum(r => r.Hours) * 280, ["overtime"] = 2100, ["storage"] = 14_200, ["place"] = 9800, ["moves"] = 1400, ["late"] = 800, ["short"] = 22_000, ["seed short"] = 0,
            ["hand-made kind"] = 12,
        };
        double value = revenues.Values.Sum() - costs.Values.Sum();
        return new PlanSummary(
            value, value * 1.009, .009, .0071, .0032, 61.4, PlanStatus.TimeReached, revenues.Values.Sum(), revenues, costs, new Dictionary<string, double>(),
            [new("kept share, seed", "0.84", "yields.csv has no row for seed", -1200, 900), new("storage of Late Pale", "long", "varieties.csv leaves keeps empty", null, null)],
            ["Order 108 asks for more jumbo than all lots hold."], "0.1.0", "sha256:0123456789abcdef", new Dictionary<string, double>());
    }

    private static int Take(Dictionary<(ProductId, int), double> left, Season season, ProductId product, int week, int want)
    {
        int shelf = season.Products.First(p => p.Id == product).ShelfWeeks;
        double have = left.Where(l => l.Key.Item1 == product && l.Key.Item2 <= week && l.Key.Item2 + shelf >= week).Sum(l => l.Value);
        int units = (int)Math.Min(want, Math.Floor(have + 1e-9));
        double rest = units;
        foreach ((ProductId, int) key in left.Keys.Where(k => k.Item1 == product && k.Item2 <= week && k.Item2 + shelf >= week).OrderBy(k => k.Item2).ToList())
        {
            double part = Math.Min(rest, left[key]);
            left[key] -= part;
            rest -= part;
        }
        return units;
    }
}
