using Cloveshed.Check.Reading;

namespace Cloveshed.Check.Season;

/// <summary>
/// What buyers agreed to in a season of contract 2, as the order lines that it stands for: list prices, promotions, freight and programs, each
/// looked up row by row in the week that it is about.
/// </summary>
internal sealed class TermsReading
{
    private readonly SeasonData season;
    private readonly List<(string List, string Product, int From, int? To, double Price)> prices = [];
    private readonly List<(string Customer, string Product, int From, int To, double Cut, double Extra)> promotions = [];
    private readonly Dictionary<(string Destination, string Product), double> freight = [];

    private TermsReading(string folder, SeasonData season, Findings findings)
    {
        this.season = season;
        CsvTable? lists = CsvTable.Read(folder, "price-lists.csv", true, season: true, findings, "list", "product", "from", "price");
        foreach (CsvRow row in lists?.Rows ?? [])
        {
            (string, string, int, int?, double) price = (row.Name("list"), Product(row, lists!), WeekOf(row.Date("from")), row.DateOrNull("to") is DateOnly to ? WeekOf(to) : null, row.Amount("price"));
            if (row.Sound)
            {
                prices.Add(price);
            }
        }

        CsvTable? cuts = CsvTable.Read(folder, "promotions.csv", true, season: true, findings, "promotion", "product", "from", "to");
        foreach (CsvRow row in cuts?.Rows ?? [])
        {
            (string, string, int, int, double, double) promotion =
                (row.NameOrEmpty("customer"), Product(row, cuts!), WeekOf(row.Date("from")), WeekOf(row.Date("to")), row.AmountOr("cut", 0), row.AmountOr("extra", 0));
            if (row.Sound)
            {
                promotions.Add(promotion);
            }
        }

        CsvTable? ways = CsvTable.Read(folder, "freight.csv", true, season: true, findings, "destination", "cost");
        foreach (CsvRow row in ways?.Rows ?? [])
        {
            freight.Add(ways!, row, (row.Name("destination"), row.NameOrEmpty("product")), row.Amount("cost"));
        }
    }

    /// <summary>The lines of orders.csv at their prices at the dock, then those of the programs.</summary>
    public static void Read(string folder, SeasonData season, Findings findings)
    {
        var terms = new TermsReading(folder, season, findings);
        terms.Orders(folder, findings);
        terms.Programs(folder, findings);
    }

    private void Orders(string folder, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "orders.csv", false, season: true, findings, "order", "line", "customer", "product", "due", "units");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            int due = WeekOf(row.Date("due"));
            int shipFrom = row.DateOrNull("ship_from") is DateOnly date ? WeekOf(date) : due;
            string product = Product(row, table!);
            // What was agreed for the line stands; promotions are off a list.
            double off = row.Text("price_list").Length == 0 ? 0 : promotions.Where(one => Covers(one, row.Name("customer"), product, due)).Sum(one => one.Cut);
            double price = AtDock(table!, row, product, due, off);
            season.Orders.Add(table!, row, (row.Name("order"), row.Text("line")), new OrderLine(
                row.Name("order"), row.Text("line"), product, shipFrom, due, row.Amount("units"), price, row.Flag("firm", true), row.FiniteOr("late_cost", 0), row.FiniteOr("short_cost", 0),
                row.Flag("larger_ok", false), row.Flag("whole", false)));
        }
    }

    private void Programs(string folder, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "programs.csv", true, season: true, findings, "program", "customer", "product", "from", "to", "least");
        var before = new List<string>();
        foreach (CsvRow row in table?.Rows ?? [])
        {
            string program = row.Name("program"), product = Product(row, table!), customer = row.Name("customer");
            int from = WeekOf(row.Date("from")), to = WeekOf(row.Date("to"));
            if (to < 0 || from >= season.Weeks)
            {
                continue;
            }

            before.Add(program);
            int pairs = before.Count(name => name == program);
            for (int week = season.Calendar.AsOfWeek; week < season.Weeks && row.Sound; week++)
            {
                if (week < from || week > to)
                {
                    continue;
                }

                var covering = promotions.Where(one => Covers(one, customer, product, week)).ToList();
                double least = row.Amount("least"), most = row.AmountOr("most", least) + covering.Sum(one => one.Extra);
                var line = new OrderLine(
                    $"{program} {season.Calendar.Show(week)}", "", product, week, week, 0, AtDock(table!, row, product, week, covering.Sum(one => one.Cut)), true, row.AmountOr("late_cost", 0),
                    row.AmountOr("short_cost", 0), row.Flag("larger_ok", false), false)
                {
                    ThatWeekOnly = row.Text("late_cost").Length == 0,
                };
                Add(table!, row, line with { Number = Figures.Show((2 * pairs) - 1), Units = least });
                Add(table!, row, line with { Number = Figures.Show(2 * pairs), Units = most - least, Firm = false, ShortCost = 0 });
            }
        }
    }

    private void Add(CsvTable table, CsvRow row, OrderLine line)
    {
        if (line.Units > 0)
        {
            season.Orders.Add(table, row, (line.Order, line.Number), line);
        }
    }

    /// <summary>The row's own price or its list's in that week, less what is off, less what the way to its destination costs.</summary>
    private double AtDock(CsvTable table, CsvRow row, string product, int week, double off)
    {
        string list = row.NameOrEmpty("price_list"), destination = row.NameOrEmpty("destination");
        double price;
        if (row.Text("price_list").Length == 0)
        {
            price = row.Amount("price");
        }
        else
        {
            int at = prices.FindIndex(one => one.List == list && one.Product == product && one.From <= week && (one.To is null || one.To >= week));
            if (at < 0)
            {
                Refuse(table, row, $"price_list {list} in the week of {season.Calendar.Show(week)}", $"a price of {product} in price-lists.csv");
                return 0;
            }

            price = prices[at].Price;
        }

        if (row.Text("destination").Length == 0)
        {
            return price - off;
        }

        if (freight.TryGetValue((destination, product), out double cost) || freight.TryGetValue((destination, ""), out cost))
        {
            return price - off - cost;
        }

        Refuse(table, row, $"destination {destination}", $"freight for {product} in freight.csv");
        return 0;
    }

    private static bool Covers((string Customer, string Product, int From, int To, double Cut, double Extra) promotion, string customer, string product, int week) =>
        promotion.Product == product && week >= promotion.From && week <= promotion.To && (promotion.Customer.Trim().Length == 0 || promotion.Customer == customer);

    private string Product(CsvRow row, CsvTable table)
    {
        string name = row.Name("product");
        if (row.Sound && !season.Products.ContainsKey(name))
        {
            Refuse(table, row, $"product {name}", "a product of products.csv");
        }

        return name;
    }

    private static void Refuse(CsvTable table, CsvRow row, string found, string allowed)
    {
        row.NotSound();
        table.Report(RuleNames.UnknownName, row.Where, found, allowed);
    }

    private int WeekOf(DateOnly date) => season.Calendar.WeekOf(date);
}
