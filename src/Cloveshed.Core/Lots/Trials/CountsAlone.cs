using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots.Trials;

/// <summary>A sampled lot as its class counts have it: what it is, and its bulbs by class, the last those that no class holds.</summary>
/// <param name="Counts">Shares by mass, times what the sample is worth in like bulbs.</param>
internal sealed record CountedLot(VarietyId Variety, string Field, double[] Counts);

/// <summary>
/// What class counts alone say of lots, pooled by field and variety and knowing nothing of weights. No lot speaks for itself through its
/// field or variety: a fifth of the lots at a time is judged by the others.
/// </summary>
internal static class CountsAlone
{
    private const int Folds = 5;

    /// <summary>A lot's bulbs as class counts; a bulb of twice the mass is two parts of its share.</summary>
    public static double[] Of(IReadOnlyList<(double G, double Mm)> bulbs, IReadOnlyList<SizeClass> chart)
    {
        double mass = bulbs.Sum(b => b.G), squares = bulbs.Sum(b => b.G * b.G), worth = squares > 0 ? mass * mass / squares : 0;
        double[] counts = new double[chart.Count + 1];
        foreach ((double g, double mm) in bulbs)
        {
            int c = 0;
            while (c < chart.Count && !(mm >= chart[c].MinMm && mm < (chart[c].MaxMm ?? double.PositiveInfinity)))
                c++;
            counts[c] += worth * g / mass;
        }

        return counts;
    }

    /// <summary>Shares of each lot, its own counts joined with what the lots of the other folds say of its kind.</summary>
    public static IReadOnlyList<double[]> Shares(IReadOnlyList<CountedLot> lots)
    {
        int folds = Math.Min(Folds, lots.Count);
        ClassCountPooling[] pooled = [.. Enumerable.Range(0, folds).Select(fold => Pooled([.. lots.Where((_, k) => k % folds != fold)], lots))];
        return [.. lots.Select((lot, k) => pooled[k % folds].Prior(Number(lots, lot, l => l.Variety.Text), Number(lots, lot, l => l.Field)).With(lot.Counts).Shares)];
    }

    /// <summary>Shares of lots that were not seen, by their kind alone.</summary>
    public static IReadOnlyList<double[]> Unseen(IReadOnlyList<CountedLot> seen, IReadOnlyList<CountedLot> asked)
    {
        CountedLot[] all = [.. seen, .. asked];
        ClassCountPooling pooled = Pooled(seen, all);
        return [.. asked.Select(lot => pooled.Prior(Number(all, lot, l => l.Variety.Text), Number(all, lot, l => l.Field)).Shares)];
    }

    private static ClassCountPooling Pooled(IReadOnlyList<CountedLot> lots, IReadOnlyList<CountedLot> all) =>
        ClassCountPooling.Of([.. lots.Select(lot => new ClassCounts(Number(all, lot, l => l.Variety.Text), Number(all, lot, l => l.Field), lot.Counts))], all[0].Counts.Length);

    // Varieties and fields by where they first stand among the lots.
    private static int Number(IReadOnlyList<CountedLot> all, CountedLot lot, Func<CountedLot, string> name)
    {
        string asked = name(lot);
        int k = 0;
        while (name(all[k]) != asked)
            k++;
        return k;
    }
}
