namespace Cloveshed.Pictures.Flow;

/// <summary>Rounds parts to whole units so that they add up to a whole total (largest remainder; ties to the earlier part).</summary>
public static class WholeParts
{
    /// <summary>Parts must not be negative. All zero: everything is zero but the first, which takes the total.</summary>
    public static long[] Of(long total, IReadOnlyList<double> parts)
    {
        double sum = parts.Sum();
        long[] whole = new long[parts.Count];
        if (parts.Count == 0)
        {
            return whole;
        }
        if (sum <= 0)
        {
            whole[0] = total;
            return whole;
        }
        double[] exact = [.. parts.Select(p => p / sum * total)];
        for (int i = 0; i < parts.Count; i++)
        {
            whole[i] = (long)Math.Floor(exact[i]);
        }
        long missing = total - whole.Sum();
        foreach (int i in Enumerable.Range(0, parts.Count).OrderByDescending(i => exact[i] - whole[i]).ThenBy(i => i).Take((int)missing))
        {
            whole[i]++;
        }
        return whole;
    }
}
