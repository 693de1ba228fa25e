namespace Cloveshed.Pictures.Promise;

/// <summary>What was packed of one product, by week, and when each part of it leaves. Oldest first.</summary>
internal sealed class ProductBatches(int shelfWeeks)
{
    private readonly SortedDictionary<int, Batch> batches = [];

    /// <summary>Units that have gone out. Less than was asked for where the answer ships what it does not have.</summary>
    public double Taken => batches.Values.Sum(b => b.Taken.Sum(t => t.Units));

    public void Add(int week, double units)
    {
        if (!batches.TryGetValue(week, out Batch? batch))
        {
            batches.Add(week, batch = new Batch());
        }
        batch.Units += units;
    }

    /// <summary>Takes units out in a week from the oldest batch that is not too old (shelf weeks after packing included).</summary>
    public void Take(int week, double units, bool forOrder)
    {
        foreach ((int made, Batch batch) in batches)
        {
            if (units <= 0 || made > week)
            {
                return;
            }
            double part = Math.Min(units, batch.Units - batch.Taken.Sum(t => t.Units));
            if (part > 0 && made + shelfWeeks >= week)
            {
                batch.Taken.Add((week, part, forOrder));
                units -= part;
            }
        }
    }

    /// <summary>At a week's end: what later orders take, what later market sales take, and what no one takes.</summary>
    public (double Orders, double Market, double Free) OnHandAfter(int week)
    {
        double orders = 0;
        double market = 0;
        double free = 0;
        foreach ((int made, Batch batch) in batches)
        {
            if (made > week)
            {
                break;
            }
            orders += batch.Taken.Where(t => t.Week > week && t.ForOrder).Sum(t => t.Units);
            market += batch.Taken.Where(t => t.Week > week && !t.ForOrder).Sum(t => t.Units);
            if (made + shelfWeeks > week)
            {
                free += batch.Units - batch.Taken.Sum(t => t.Units);
            }
        }
        return (orders, market, free);
    }

    private sealed class Batch
    {
        public double Units { get; set; }

        public List<(int Week, double Units, bool ForOrder)> Taken { get; } = [];
    }
}
