namespace Cloveshed.Core.Keep.Release;

/// <summary>A bin and when it will be needed: any number that grows with time, the same for bins needed at once.</summary>
public sealed record StackedBin(BinId Bin, int Needed);

/// <summary>A lane of a room or yard: bins are put in and taken out at its mouth only. First in the list is at the back.</summary>
public sealed record Lane(string Name, int Positions, IReadOnlyList<StackedBin> Bins);

/// <summary>A bin that has to be moved aside to reach one behind it.</summary>
public sealed record Dig(BinId Moved, BinId ToReach, string Lane);

/// <summary>Where bins go, and what digging for them will cost.</summary>
/// <param name="NotPlaced">Bins for which there is no position.</param>
public sealed record StackAnswer(IReadOnlyList<Lane> Lanes, IReadOnlyList<Dig> Digs, IReadOnlyList<StackedBin> NotPlaced);

/// <summary>Stacking so that what is needed next is not at the back.</summary>
public static class Stacks
{
    /// <summary>
    /// Digs by which all bins come out in the order of need: each bin in front of one that is needed sooner is moved aside once for it and put back where
    /// it was. Pure.
    /// </summary>
    public static IReadOnlyList<Dig> Digs(IReadOnlyList<Lane> lanes)
    {
        var digs = new List<Dig>();
        foreach (Lane lane in lanes)
        {
            var standing = lane.Bins.ToList();
            while (standing.Count > 0)
            {
                // Of bins needed at once the one nearest to the mouth comes first.
                int soonest = standing.Min(bin => bin.Needed), at = standing.FindLastIndex(bin => bin.Needed == soonest);
                for (int front = standing.Count - 1; front > at; front--)
                    digs.Add(new Dig(standing[front].Bin, standing[at].Bin, lane.Name));
                standing.RemoveAt(at);
            }
        }

        return digs;
    }

    /// <summary>
    /// Places bins that all arrive before any leaves: latest needed first, each before the lane's mouth where the least is dug. Lanes that are empty
    /// or in order come out without a dig, as long as there are positions. Pure.
    /// </summary>
    public static StackAnswer Arranged(IReadOnlyList<Lane> lanes, IReadOnlyList<StackedBin> arriving)
    {
        var standing = lanes.Select(lane => lane.Bins.ToList()).ToArray();
        var left = new List<StackedBin>();
        foreach (StackedBin bin in arriving.OrderByDescending(bin => bin.Needed).ThenBy(bin => bin.Bin.Text, StringComparer.Ordinal))
            if (!Placed(lanes, standing, bin))
                left.Add(bin);
        return Answer(lanes, standing, left);
    }

    /// <summary>Places bins one by one as they come, nothing known of those after. Pure.</summary>
    public static StackAnswer AsTheyCome(IReadOnlyList<Lane> lanes, IReadOnlyList<StackedBin> arriving)
    {
        var standing = lanes.Select(lane => lane.Bins.ToList()).ToArray();
        var left = new List<StackedBin>();
        foreach (StackedBin bin in arriving)
            if (!Placed(lanes, standing, bin))
                left.Add(bin);
        return Answer(lanes, standing, left);
    }

    /// <summary>
    /// The lane with the fewest bins needed sooner than this one, for each of them will be dug out from behind it; then the one whose soonest is
    /// nearest to it, so that lanes stay open for later bins.
    /// </summary>
    private static bool Placed(IReadOnlyList<Lane> lanes, List<StackedBin>[] standing, StackedBin bin)
    {
        int best = -1;
        (int Dug, long Gap) least = (int.MaxValue, long.MaxValue);
        for (int k = 0; k < lanes.Count; k++)
        {
            if (standing[k].Count >= lanes[k].Positions)
                continue;
            int dug = standing[k].Count(other => other.Needed < bin.Needed);
            long gap = standing[k].Count == 0 ? int.MaxValue : Math.Abs((long)standing[k].Min(other => other.Needed) - bin.Needed);
            if ((dug, gap).CompareTo(least) < 0)
                (best, least) = (k, (dug, gap));
        }

        if (best >= 0)
            standing[best].Add(bin);
        return best >= 0;
    }

    private static StackAnswer Answer(IReadOnlyList<Lane> lanes, List<StackedBin>[] standing, List<StackedBin> left)
    {
        Lane[] filled = [.. lanes.Select((lane, k) => lane with { Bins = standing[k] })];
        return new StackAnswer(filled, Digs(filled), left);
    }
}
