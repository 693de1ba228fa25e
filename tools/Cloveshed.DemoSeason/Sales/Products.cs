using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Sales;

/// <summary>
/// A product: Price is the season's usual price per unit, Pounds what the year's ordinary orders ask for in all.
/// The pounds by size follow what the crop holds by size (docs/manual/demo-season.md), so that sizes bind.
/// </summary>
public sealed record Product(
    string Name, bool Bulb, string From, int Net, decimal UnitCost, int ShelfWeeks, bool Organic, double Price, double Pounds, bool HasLarger)
{
    /// <summary>Units are ordered in whole layers of a pallet, or in whole crates four at a time.</summary>
    public int Layer => Net == 30 ? 5 : Net == 10 ? 12 : Net == 5 ? 20 : 4;
}

public static class Products
{
    // 30-lb prices run between about $20 (small) and $56 (jumbo) as in USDA market news of 2015 quoted by an extension service;
    // the classes between are scaled. Prices of cloves are invented.
    public static readonly IReadOnlyList<Product> All =
    [
        new("Small tube 30", true, "Small tube", 30, 1.55m, 4, false, 20.5, 140_000, true),
        new("Medium tube 30", true, "Medium tube", 30, 1.55m, 4, false, 25.0, 240_000, true),
        new("Large tube 30", true, "Large tube", 30, 1.60m, 4, false, 30.5, 410_000, true),
        new("Giant 30", true, "Giant", 30, 1.60m, 4, false, 36.0, 480_000, true),
        new("Jumbo 30", true, "Jumbo", 30, 1.65m, 4, false, 43.0, 900_000, true),
        new("Extra jumbo 30", true, "Extra jumbo", 30, 1.65m, 4, false, 49.0, 1_560_000, true),
        new("Super jumbo 30", true, "Super jumbo", 30, 1.75m, 4, false, 53.0, 440_000, true),
        new("Colossal 30", true, "Colossal", 30, 1.85m, 3, false, 56.0, 235_000, false),
        new("Giant 5", true, "Giant", 5, 0.62m, 3, false, 6.9, 130_000, false),
        new("Jumbo 10", true, "Jumbo", 10, 0.95m, 3, false, 15.6, 230_000, true),
        new("Extra jumbo 10", true, "Extra jumbo", 10, 0.95m, 3, false, 17.4, 240_000, false),
        new("Organic jumbo 30", true, "Jumbo", 30, 1.80m, 4, true, 69.0, 110_000, true),
        new("Organic extra jumbo 30", true, "Extra jumbo", 30, 1.80m, 4, true, 78.0, 190_000, false),
        new("Peeling stock large", false, "Peeling large", 50, 1.35m, 3, false, 84.0, 1_030_000, false),
        new("Peeling stock medium", false, "Peeling medium", 50, 1.35m, 3, false, 74.0, 1_540_000, false),
        new("Chopping stock", false, "Chopping", 50, 1.25m, 2, false, 57.0, 1_200_000, false),
        new("Small cloves", false, "Small", 50, 1.25m, 2, false, 40.0, 420_000, false),
        new("Seasoning stock", false, "Seasoning", 50, 1.15m, 2, false, 24.0, 45_000, false),
    ];

    public static int Index(string name)
    {
        for (int i = 0; i < All.Count; i++)
        {
            if (All[i].Name == name)
            {
                return i;
            }
        }

        throw new ArgumentException($"No product is called {name}.", nameof(name));
    }

    public static string File()
    {
        Table t = new("product", "form", "from", "net", "unit_cost", "shelf_weeks", "organic");
        foreach (Product p in All)
        {
            t.Row(p.Name, p.Bulb ? "bulb" : "clove", p.From, p.Net, p.UnitCost, p.ShelfWeeks, p.Organic);
        }

        return t.ToString();
    }

    /// <summary>Finished stock on the first day, packed in the two weeks before from lots of the last crop.</summary>
    public static string StockFile()
    {
        LocalDate before = Scenario.FirstWeek.PlusDays(-7);
        LocalDate earlier = Scenario.FirstWeek.PlusDays(-14);
        Table t = new("product", "made", "units", "lot");
        t.Row("Jumbo 30", earlier, 140, "25-071");
        t.Row("Jumbo 30", before, 260, "25-080");
        t.Row("Extra jumbo 30", before, 410, "25-080");
        t.Row("Large tube 30", earlier, 95, "25-063");
        t.Row("Giant 5", before, 300, "25-063");
        t.Row("Peeling stock medium", before, 180, "25-074");
        t.Row("Chopping stock", before, 150, null);
        return t.ToString();
    }
}
