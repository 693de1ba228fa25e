using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Web.Dock;

/// <summary>Where units of a shipment come from: a run's output of a lot, or finished stock.</summary>
/// <param name="Run">Null: from finished stock.</param>
/// <param name="Made">The week of making; negative before the season.</param>
/// <param name="Lot">Null where the stock names none.</param>
/// <param name="Units">May be a part of a unit: what a run makes is an expectation.</param>
public sealed record FillSource(string? Run, int Made, LotId? Lot, double Units);

/// <summary>A shipment of an order line and its sources, oldest first.</summary>
public sealed record TracedFill(FillRow Fill, IReadOnlyList<FillSource> Sources)
{
    /// <summary>Units that no run and no stock accounts for; more than a hair only where the season changed under the plan.</summary>
    public double Untraced => Math.Max(0, Fill.Units - Sources.Sum(source => source.Units));
}

/// <summary>
/// Which runs and which finished stock fill which order line. A plan does not tie units to orders; this reads it as a dock ships: what
/// was made first leaves first, as long as its shelf life lets it; within a week orders go before the market, in the plan's order.
/// What is allotted of a product is never more than what was made of it.
/// </summary>
public sealed class FillTrace
{
    /// <summary>Parts of units below this are the planner's rounding.</summary>
    private const double Hair = 1e-6;

    private readonly ILookup<(OrderId, string), TracedFill> byLine;
    private readonly ILookup<string, (TracedFill Traced, FillSource Source)> byRun;
    private readonly ILookup<LotId, (TracedFill Traced, FillSource Source)> byLot;

    private FillTrace(IReadOnlyList<TracedFill> fills, IReadOnlyDictionary<StockRow, double> stockLeft)
    {
        Fills = fills;
        StockLeft = stockLeft;
        byLine = fills.ToLookup(one => (one.Fill.Order, one.Fill.Line));
        byRun = fills.SelectMany(one => one.Sources.Select(source => (one, source))).Where(pair => pair.source.Run is not null).ToLookup(pair => pair.source.Run!);
        byLot = fills.SelectMany(one => one.Sources.Select(source => (one, source))).Where(pair => pair.source.Lot is not null).ToLookup(pair => pair.source.Lot!.Value);
    }

    /// <summary>Every shipment to an order, by week.</summary>
    public IReadOnlyList<TracedFill> Fills { get; }

    /// <summary>Units of each row of finished stock that the plan neither ships nor sells.</summary>
    public IReadOnlyDictionary<StockRow, double> StockLeft { get; }

    public IEnumerable<TracedFill> Of(OrderId order, string line) => byLine[(order, line)];

    /// <summary>The shipments that a run's output goes to.</summary>
    public IEnumerable<(TracedFill Traced, FillSource Source)> OfRun(string run) => byRun[run];

    /// <summary>The shipments that something made of a lot goes to, by week.</summary>
    public IEnumerable<(TracedFill Traced, FillSource Source)> OfLot(LotId lot) => byLot[lot];

    public static FillTrace Of(Season season, PlanAnswer answer)
    {
        Dictionary<ProductId, int> shelf = season.Products.ToDictionary(product => product.Id, product => product.ShelfWeeks);
        ILookup<ProductId, MadeRow> made = answer.Made.ToLookup(row => row.Product);
        ILookup<ProductId, StockRow> stock = season.Stock.ToLookup(row => row.Product);
        ILookup<ProductId, FillRow> fills = answer.Fills.ToLookup(row => row.Product);
        ILookup<ProductId, SaleRow> sales = answer.Sales.ToLookup(row => row.Product);
        List<TracedFill> traced = [];
        Dictionary<StockRow, double> left = new(ReferenceEqualityComparer.Instance);
        foreach (ProductId product in made.Select(group => group.Key).Concat(stock.Select(group => group.Key)).Concat(fills.Select(group => group.Key)).Distinct())
        {
            Product(shelf.GetValueOrDefault(product), made[product], stock[product], fills[product], sales[product], traced, left);
        }

        return new FillTrace([.. traced.OrderBy(one => one.Fill.Week)], left);
    }

    private static void Product(
        int shelf, IEnumerable<MadeRow> made, IEnumerable<StockRow> stock, IEnumerable<FillRow> fills, IEnumerable<SaleRow> sales,
        List<TracedFill> traced, Dictionary<StockRow, double> stockLeft)
    {
        // Stable sorts: rows of one week stay as the files have them, stock before what is made.
        List<Batch> batches =
        [
            .. stock.Select(row => new Batch(row.Made, null, row.Lot, row.Units, row))
                .Concat(made.Select(row => new Batch(row.Week, row.Run, row.Lot, row.Units, null))).OrderBy(batch => batch.Made),
        ];
        int first = 0;
        foreach ((int week, FillRow? fill, int units) in fills.Select(row => (row.Week, (FillRow?)row, row.Units))
            .Concat(sales.Select(row => (row.Week, (FillRow?)null, row.Units))).OrderBy(shipment => shipment.Week).ThenBy(shipment => shipment.Item2 is null))
        {
            while (first < batches.Count && (batches[first].Left <= Hair || batches[first].Made + shelf < week))
            {
                first++;
            }

            double need = units;
            List<FillSource> sources = [];
            for (int at = first; at < batches.Count && need > Hair && batches[at].Made <= week; at++)
            {
                double taken = Math.Min(need, batches[at].Left);
                if (taken <= Hair)
                {
                    continue;
                }

                batches[at].Left -= taken;
                need -= taken;
                sources.Add(new FillSource(batches[at].Run, batches[at].Made, batches[at].Lot, taken));
            }

            if (fill is not null)
            {
                traced.Add(new TracedFill(fill, sources));
            }
        }

        foreach (Batch batch in batches.Where(batch => batch.Row is not null))
        {
            stockLeft[batch.Row!] = batch.Left;
        }
    }

    private sealed class Batch(int made, string? run, LotId? lot, double units, StockRow? row)
    {
        public int Made => made;

        public string? Run => run;

        public LotId? Lot => lot;

        public StockRow? Row => row;

        public double Left { get; set; } = units;
    }
}
