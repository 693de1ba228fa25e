using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>programs.csv: what a buyer takes of a product in every week from one to another, at least and at most, and at what price.</summary>
internal static class ProgramsFile
{
    /// <summary>A row gives up to two order lines for each week: with a season's most weeks about as many as orders.csv may have rows.</summary>
    public static readonly FileLayout Layout = new("programs.csv", needed: false, rowLimit: 1000, contract: 2);
    public static readonly Column Program = Layout.NeededText("program");
    private static readonly Column Customer = Layout.NeededText("customer");
    private static readonly Column Product = Layout.NeededText("product");
    private static readonly Column From = Layout.NeededDate("from");
    private static readonly Column To = Layout.NeededDate("to");
    private static readonly Column Least = Layout.NeededNumber("least", Bounds.Units);
    private static readonly Column Most = Layout.Number("most", Bounds.Units);
    public static readonly Column Price = Layout.Number("price", Bounds.Money);
    public static readonly Column PriceList = Layout.Text("price_list");
    public static readonly Column Destination = Layout.Text("destination");
    private static readonly Column LateCost = Layout.Number("late_cost", Bounds.Money);
    private static readonly Column ShortCost = Layout.Number("short_cost", Bounds.Money);
    private static readonly Column LargerOk = Layout.YesNo("larger_ok");

    public static void Read(Table table, SeasonDraft draft)
    {
        WeekSpans spans = new([Program, Product], From, To);
        Dictionary<string, (string Customer, int Line)> customers = new(StringComparer.Ordinal);
        OutsideSeason outside = new(draft);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? program = cells.Text(Program), customer = cells.Text(Customer), product = cells.Text(Product);
            if (program is not null && customer is not null && !customers.TryAdd(program, (customer, table.Line)) && customers[program] is var first && first.Customer != customer)
                table.Fault(FaultRule.ProgramDiffers, Customer, first.Customer, first.Line);
            draft.ProductNames.Require(table, Product, product);
            (int? from, int? to) = spans.Read(table, draft, program, product);
            int? least = cells.Whole(Least), most = cells.Whole(Most);
            if (least > most)
                table.Fault(FaultRule.LowAboveHigh, Least, Least.Name, Most.Name, most.Value);
            decimal? price = cells.Money(Price), late = cells.Money(LateCost);
            string? list = cells.Text(PriceList), destination = cells.Text(Destination);
            PriceCells.Check(table, draft, Price, price, PriceList, list, Destination, destination);
            BuyerProgram row = new(
                new ProgramId(program ?? ""), customer ?? "", new ProductId(product ?? ""), from ?? 0, to ?? 0, least ?? 0, most, price, PriceCells.List(list), PriceCells.To(destination),
                late, cells.Money(ShortCost) ?? 0, cells.YesNo(LargerOk) ?? false);
            if (table.RowSound && !outside.LeavesSpan(table, row.From, row.To))
                draft.Programs.Add((row, table.Line));
        }

        outside.Report(table, From.Name);
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (BuyerProgram row in season.Terms?.Programs ?? [])
            text.Text(row.Program.Text).Text(row.Customer).Text(row.Product.Text).Date(season.Settings.Monday(row.From)).Date(season.Settings.Monday(row.To)).Whole(row.Least).Whole(row.Most)
                .Money(row.Price).Text(row.PriceList?.Text).Text(row.Destination?.Text).Money(row.LateCost).Money(row.ShortCost).YesNo(row.LargerOk).EndRow();
        return text.ToBytes();
    }
}
