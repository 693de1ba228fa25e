using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures.Promise;

/// <summary>
/// A product's week, in units. Shipped: to orders. Sold: at market. Held for orders or for market: on hand at the week's end
/// and shipped or sold later. Free: on hand and never promised or sold. NextPrice: what one more unit would cost the plan
/// (or bring, by its sign in worths.csv); null where the plan names none.
/// </summary>
public sealed record PromiseWeek(
    int Week, double Made, double Shipped, double Sold, double HeldForOrders, double HeldForMarket, double Free, double? NextPrice);

/// <summary>A product along the weeks. Ordered: units on its own order lines.</summary>
public sealed record PromiseRow(ProductId Product, ProductForm Form, double Net, int Ordered, double StockAtStart, IReadOnlyList<PromiseWeek> Weeks)
{
    public double Made => Weeks.Sum(w => w.Made);

    public double Shipped => Weeks.Sum(w => w.Shipped);

    public double Sold => Weeks.Sum(w => w.Sold);

    /// <summary>What was packed, or in stock, and neither shipped nor sold: parts of units, and what passed its shelf life.</summary>
    public double Left => StockAtStart + Made - Shipped - Sold;
}

/// <summary>What a promise strip shows: bulbs from the largest class down, then cloves likewise.</summary>
public sealed record PromiseFacts(SeasonSettings Settings, IReadOnlyList<PromiseRow> Rows)
{
    public static PromiseFacts From(Season season, PlanAnswer answer)
    {
        ILookup<ProductId, MadeRow> made = answer.Made.ToLookup(m => m.Product);
        ILookup<ProductId, FillRow> fills = answer.Fills.ToLookup(f => f.Product);
        ILookup<ProductId, SaleRow> sales = answer.Sales.ToLookup(s => s.Product);
        ILookup<ProductId, StockRow> stock = season.Stock.ToLookup(s => s.Product);
        ILookup<ProductId, OrderLine> orders = season.Orders.ToLookup(o => o.Product);
        ILookup<string, WorthRow> worths = answer.Worths.Where(w => w.Kind == "product" && w.Week is not null).ToLookup(w => w.Name);
        List<string> classes = [.. season.Sizes.Select(s => s.Id.Text).Reverse()];
        List<string> grades = [.. season.CloveGrades.Select(g => g.Id.Text).Reverse()];
        return new PromiseFacts(season.Settings,
            [.. season.Products
                .Where(p => made.Contains(p.Id) || fills.Contains(p.Id) || sales.Contains(p.Id) || stock.Contains(p.Id) || orders.Contains(p.Id))
                .OrderBy(p => p.Form).ThenBy(p => (p.Form == ProductForm.Bulb ? classes : grades).IndexOf(p.From)).ThenBy(p => p.Id.Text, StringComparer.Ordinal)
                .Select(p => new PromiseRow(p.Id, p.Form, p.Net, orders[p.Id].Sum(o => o.Units), stock[p.Id].Sum(s => s.Units),
                    Weeks(p, season.Settings.Weeks, made[p.Id], fills[p.Id], sales[p.Id], stock[p.Id], worths[p.Id.Text])))]);
    }

    // Oldest goes out first, which serves whatever the shelf life lets be served; what no one takes is free until it is too old.
    private static List<PromiseWeek> Weeks(
        Product product, int weeks, IEnumerable<MadeRow> made, IEnumerable<FillRow> fills, IEnumerable<SaleRow> sales,
        IEnumerable<StockRow> stock, IEnumerable<WorthRow> worths)
    {
        var batches = new ProductBatches(product.ShelfWeeks);
        foreach (StockRow row in stock)
        {
            batches.Add(row.Made, row.Units);
        }
        double[] packed = new double[weeks];
        foreach (MadeRow row in made)
        {
            packed[row.Week] += row.Units;
            batches.Add(row.Week, row.Units);
        }
        double[] shipped = Sum(weeks, fills.Select(f => (f.Week, (double)f.Units)));
        double[] sold = Sum(weeks, sales.Select(s => (s.Week, (double)s.Units)));
        for (int w = 0; w < weeks; w++)
        {
            batches.Take(w, shipped[w], forOrder: true);
            batches.Take(w, sold[w], forOrder: false);
        }
        Dictionary<int, double> prices = worths.GroupBy(w => w.Week!.Value).ToDictionary(g => g.Key, g => g.Max(w => w.Value));
        var rows = new List<PromiseWeek>(weeks);
        for (int w = 0; w < weeks; w++)
        {
            (double orders, double market, double free) = batches.OnHandAfter(w);
            rows.Add(new PromiseWeek(w, packed[w], shipped[w], sold[w], orders, market, free, prices.TryGetValue(w, out double price) ? price : null));
        }
        return rows;
    }

    private static double[] Sum(int weeks, IEnumerable<(int Week, double Units)> rows)
    {
        double[] sums = new double[weeks];
        foreach ((int week, double units) in rows)
        {
            sums[week] += units;
        }
        return sums;
    }
}
