using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// Finished stock: what is shipped or sold of a product in a week was made in that week or at most shelf_weeks before it, or was
/// in stock on as_of. Units made are expectations and may be fractional; units shipped are whole, and no unit ships twice.
/// </summary>
internal static class StockRules
{
    public static void Check(SeasonData season, AnswerData answer, Findings findings)
    {
        var flows = season.Products.Keys.ToDictionary(name => name, _ => new SupplyFlow(season.Weeks));
        foreach (StockRow stock in season.Stock.Where(stock => flows.ContainsKey(stock.Product)))
        {
            Supply(season, flows, stock.Product, Math.Max(stock.Made, season.Calendar.AsOfWeek), stock.Made, stock.Units);
        }

        foreach (MadeRow made in answer.Made)
        {
            Supply(season, flows, made.Product, made.Week, made.Week, made.Units);
        }

        foreach (FillRow fill in answer.Fills)
        {
            flows[fill.Product].Take(fill.Week, fill.Units);
        }

        foreach (SaleRow sale in answer.Sales)
        {
            flows[sale.Product].Take(sale.Week, sale.Units);
        }

        foreach ((string product, SupplyFlow flow) in flows)
        {
            if (flow.FirstShort() is (int week, double missing, bool cameInTime))
            {
                findings.Add(
                    cameInTime ? RuleNames.ShelfLife : RuleNames.Stock,
                    $"fills.csv and sales.csv product {product}, week {season.Calendar.Show(week)}",
                    $"{Figures.Show(missing)} units more than there are",
                    cameInTime ? $"units at most {season.Products[product].ShelfWeeks} weeks old" : "units made or in stock by then, and not yet shipped");
            }
        }
    }

    private static void Supply(SeasonData season, Dictionary<string, SupplyFlow> flows, string product, int from, int made, double units) =>
        flows[product].Add(from, made + season.Products[product].ShelfWeeks, units);
}
