namespace Cloveshed.Core.Lots;

/// <summary>
/// One estimate over the lots that were seen, once by variety and once over all: varieties with no lot seen are left out
/// of the first and take the second. Both are null where no lot was seen at all.
/// </summary>
internal sealed class Pool<T> where T : class
{
    private readonly Dictionary<int, int> placeOfLot = [];
    private readonly Dictionary<int, int> groupOfVariety = [];

    public T? ByVariety { get; private init; }

    public T? All { get; private init; }

    /// <summary>Where a seen lot stands in the estimate.</summary>
    public int PlaceOf(int lot) => placeOfLot[lot];

    /// <summary>The variety's group in <see cref="ByVariety"/>, null if none of its lots was seen.</summary>
    public int? GroupOf(int variety) => groupOfVariety.TryGetValue(variety, out int g) ? g : null;

    /// <param name="lots">The lots, with the variety of each as its group.</param>
    /// <param name="isSeen">Whether a lot (its index) has anything to be estimated from.</param>
    /// <param name="estimate">From the seen lots' indices, the group of each, and how many groups.</param>
    public static Pool<T> Of(LotEvidence[] lots, int varieties, Func<int, bool> isSeen, Func<int[], int[], int, T> estimate)
    {
        int[] seen = [.. Enumerable.Range(0, lots.Length).Where(isSeen)];
        if (seen.Length == 0)
            return new Pool<T>();
        var group = new Dictionary<int, int>();
        for (int v = 0; v < varieties; v++)
        {
            if (seen.Any(i => lots[i].Group == v))
                group.Add(v, group.Count);
        }

        var pool = new Pool<T>
        {
            ByVariety = estimate(seen, [.. seen.Select(i => group[lots[i].Group])], group.Count),
            All = estimate(seen, new int[seen.Length], 1),
        };
        foreach ((int variety, int g) in group)
            pool.groupOfVariety.Add(variety, g);
        for (int at = 0; at < seen.Length; at++)
            pool.placeOfLot.Add(seen[at], at);
        return pool;
    }
}
