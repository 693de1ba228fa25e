namespace Cloveshed.Check.Rules;

/// <summary>
/// Supplies that come in one week and are good until the end of another, and what is taken in each week. Taking what expires
/// first is best: if that cannot serve every week, nothing can (the exchange argument for earliest deadlines).
/// </summary>
internal sealed class SupplyFlow(int weeks)
{
    private readonly List<(int Last, double Amount)>[] comes = [.. Enumerable.Range(0, weeks).Select(_ => new List<(int, double)>())];
    private readonly double[] taken = new double[weeks];

    /// <summary>An amount that is there from one week to the end of another; outside the season it is left out.</summary>
    public void Add(int first, int last, double amount)
    {
        if (first < weeks && last >= first)
        {
            comes[first].Add((last, amount));
        }
    }

    public void Take(int week, double amount) => taken[week] += amount;

    /// <summary>
    /// The first week whose taking cannot be served, by how much, and whether enough had come by then, so that it is time and not
    /// amount that is missing; null where all can be served.
    /// </summary>
    public (int Week, double Missing, bool CameInTime)? FirstShort()
    {
        var there = new PriorityQueue<double, int>();
        double came = 0;
        double wanted = 0;
        for (int week = 0; week < weeks; week++)
        {
            foreach ((int last, double amount) in comes[week])
            {
                there.Enqueue(amount, last);
                came += amount;
            }

            wanted += taken[week];
            double missing = TakeOldest(there, week, taken[week]);
            if (!Tolerance.IsNothing(missing, wanted))
            {
                return (week, missing, Tolerance.AtMost(wanted, came, came));
            }
        }

        return null;
    }

    // What cannot be served; a part that is left of a supply goes back to wait.
    private static double TakeOldest(PriorityQueue<double, int> there, int week, double amount)
    {
        while (amount > 0 && there.TryDequeue(out double supply, out int last))
        {
            if (last < week)
            {
                continue;
            }

            double part = Math.Min(supply, amount);
            amount -= part;
            if (supply > part)
            {
                there.Enqueue(supply - part, last);
            }
        }

        return amount;
    }
}
