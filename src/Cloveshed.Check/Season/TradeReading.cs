using Cloveshed.Check.Reading;

namespace Cloveshed.Check.Season;

/// <summary>Products, stock, orders, the market, seed needs and prices as is.</summary>
internal static class TradeReading
{
    public static void Read(string folder, SeasonData season, Findings findings)
    {
        Products(folder, season, findings);
        Stock(folder, season, findings);
        if (season.Contract == 1)
        {
            Orders(folder, season, findings);
        }
        else
        {
            TermsReading.Read(folder, season, findings);
        }

        Market(folder, season, findings);
        SeedNeeds(folder, season, findings);
        AsIsPrices(folder, season, findings);
    }

    private static void Products(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "products.csv", false, season: true, findings, "product", "form", "from", "net");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            string name = row.Name("product");
            season.Products.Add(table!, row, name, new Product(
                name, row.OneOf("form", "bulb", "clove"), row.Name("from"), row.Amount("net"), row.FiniteOr("unit_cost", 0),
                ShedReading.WeeksOf(row.AmountOr("shelf_weeks", 0)), row.Flag("organic", false)));
        }
    }

    private static void Stock(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "stock.csv", true, season: true, findings, "product", "made", "units");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            var stock = new StockRow(row.Name("product"), season.Calendar.WeekOf(row.Date("made")), row.Amount("units"));
            if (row.Sound)
            {
                season.Stock.Add(stock);
            }
        }
    }

    private static void Orders(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(
            folder, "orders.csv", false, season: true, findings, "order", "line", "product", "due", "units", "price");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            int due = season.Calendar.WeekOf(row.Date("due"));
            int shipFrom = row.DateOrNull("ship_from") is DateOnly date ? season.Calendar.WeekOf(date) : due;
            var line = new OrderLine(
                row.Name("order"), row.Text("line"), row.Name("product"), shipFrom, due, row.Amount("units"), row.Finite("price"),
                row.Flag("firm", true), row.FiniteOr("late_cost", 0), row.FiniteOr("short_cost", 0), row.Flag("larger_ok", false),
                row.Flag("whole", false));
            if (row.Sound && !season.Products.ContainsKey(line.Product))
            {
                table!.Report(RuleNames.UnknownName, row.Where, $"product {line.Product}", "a product of products.csv");
            }

            season.Orders.Add(table!, row, (line.Order, line.Number), line);
        }
    }

    private static void Market(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "market.csv", true, season: true, findings, "product", "week", "price", "p50");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            season.Market.Add(
                table!, row, (row.Name("product"), season.Calendar.WeekOf(row.Date("week"))),
                new MarketWeek(row.Finite("price"), row.Amount("p50")));
        }
    }

    private static void SeedNeeds(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(
            folder, "seed-needs.csv", true, season: true, findings, "variety", "net", "by", "seed_class", "short_cost");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            var need = new SeedNeed(
                row.Name("variety"), row.Amount("net"), row.Date("by"), row.OneOf("seed_class", "A", "B", "C"), row.Finite("short_cost"));
            season.SeedNeeds.Add(table!, row, (need.Variety, need.By, need.Class), need);
        }
    }

    private static void AsIsPrices(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "sell-as-is.csv", true, season: true, findings, "price");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            var price = new AsIsPrice(row.Text("variety").Length == 0 ? "" : row.Name("variety"), row.Finite("price"), row.AmountOrNull("limit"));
            season.AsIsPrices.Add(table!, row, price.Variety, price);
        }
    }
}
