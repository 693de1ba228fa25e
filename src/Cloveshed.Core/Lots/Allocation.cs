namespace Cloveshed.Core.Lots;

/// <summary>One that takes part in a split: a key of its own and a weight of 0 or more (grams, cents, pieces, hours in minutes).</summary>
public readonly record struct Weighted(string Key, long Weight);

/// <summary>What one of them got.</summary>
public readonly record struct Allotted(string Key, long Amount);

/// <summary>
/// Splits a whole number (grams, cents, cartons) in proportion to weights, in whole numbers that total exactly what was split.
/// Both rules give each its exact share rounded down or up and never more or less; never give a lighter one more than a heavier
/// one; give nothing to a weight of 0; and depend on the set of keys and weights only, not on the order in which they are listed
/// (ties go to the key that comes first by its characters' codes). A negative total is split as its opposite and negated.
/// </summary>
/// <remarks>
/// What no rule gives is all that one may wish for. <see cref="ByLargestRemainder"/> comes closest to the exact shares and costs
/// one sort, but a larger total can leave one part a unit smaller (the "Alabama paradox"), so it is for totals that are known: a
/// weighed run, a paid bill. <see cref="Growing"/> never takes back what a smaller total gave, so it is for totals that grow:
/// cartons coming off a line; it counts every unit, and its cost grows with the total. That no rule within rounding can also
/// follow every change of weights is proved in M. L. Balinski and H. P. Young, Fair Representation (1982).
/// </remarks>
public static class Allocation
{
    /// <summary>The most units times takers that <see cref="Growing"/> counts through.</summary>
    public const long GrowingLimit = 100_000_000;

    /// <summary>
    /// Rounds every exact share down, then gives the units left over, one each, to the largest remainders (Hamilton's rule of 1792).
    /// </summary>
    /// <returns>One for each taker, in the order in which they were listed.</returns>
    public static IReadOnlyList<Allotted> ByLargestRemainder(long total, IReadOnlyList<Weighted> takers)
    {
        Int128 whole = WholeWeight(total, takers);
        Int128 size = Int128.Abs(total);
        var amounts = new long[takers.Count];
        var remainders = new Int128[takers.Count];
        Int128 left = size;
        for (int i = 0; i < takers.Count && whole > 0; i++)
        {
            (Int128 floor, remainders[i]) = Int128.DivRem(size * takers[i].Weight, whole);
            amounts[i] = (long)floor;
            left -= floor;
        }

        int[] order = [.. Enumerable.Range(0, takers.Count)];
        Array.Sort(order, (a, b) => remainders[a] != remainders[b]
            ? remainders[b].CompareTo(remainders[a])
            : string.CompareOrdinal(takers[a].Key, takers[b].Key));
        for (int k = 0; k < (int)left; k++)
        {
            amounts[order[k]]++;
        }

        return Answer(total, takers, amounts);
    }

    /// <summary>
    /// Gives the units one after another, each to the heaviest for its next unit (weight over units after it) among those still
    /// under their exact share of the units given so far: the quota method of M. L. Balinski and H. P. Young, American Mathematical
    /// Monthly 82 (1975) 701-730. A total larger by one gives one taker one more and everyone else the same.
    /// </summary>
    /// <returns>One for each taker, in the order in which they were listed.</returns>
    public static IReadOnlyList<Allotted> Growing(long total, IReadOnlyList<Weighted> takers)
    {
        Int128 whole = WholeWeight(total, takers);
        Int128 size = Int128.Abs(total);
        if (size * takers.Count > GrowingLimit)
        {
            throw new ArgumentOutOfRangeException(
                nameof(total), total, $"A growing split counts every unit, so units times takers may be {GrowingLimit} at most: split larger units, or a known total by largest remainder.");
        }

        var amounts = new long[takers.Count];
        for (long given = 1; given <= size; given++)
        {
            int best = -1;
            for (int i = 0; i < takers.Count; i++)
            {
                if (amounts[i] * whole < given * (Int128)takers[i].Weight && (best < 0 || GoesBefore(takers, amounts, i, best)))
                {
                    best = i;
                }
            }

            amounts[best]++;
        }

        return Answer(total, takers, amounts);
    }

    private static bool GoesBefore(IReadOnlyList<Weighted> takers, long[] amounts, int one, int other)
    {
        Int128 mine = takers[one].Weight * (Int128)(amounts[other] + 1);
        Int128 theirs = takers[other].Weight * (Int128)(amounts[one] + 1);
        return mine != theirs ? mine > theirs : string.CompareOrdinal(takers[one].Key, takers[other].Key) < 0;
    }

    private static Int128 WholeWeight(long total, IReadOnlyList<Weighted> takers)
    {
        var keys = new HashSet<string>(StringComparer.Ordinal);
        Int128 whole = 0;
        foreach (Weighted taker in takers)
        {
            if (taker.Weight < 0)
            {
                throw new ArgumentException($"The weight of '{taker.Key}' is {taker.Weight}: a weight is 0 or more.", nameof(takers));
            }

            if (!keys.Add(taker.Key))
            {
                throw new ArgumentException($"'{taker.Key}' takes part twice: add its weights first.", nameof(takers));
            }

            whole += taker.Weight;
        }

        return whole > 0 || total == 0
            ? whole
            : throw new ArgumentException($"{total} cannot be split: there is no weight to split it by.", nameof(takers));
    }

    private static Allotted[] Answer(long total, IReadOnlyList<Weighted> takers, long[] amounts) =>
        [.. takers.Select((taker, i) => new Allotted(taker.Key, total < 0 ? -amounts[i] : amounts[i]))];
}
