using System.Runtime.CompilerServices;
using Cloveshed.Core.Quantities;

namespace Cloveshed.Core.Sizes;

/// <summary>
/// How many bulbs of each tenth of a gram a sizer has weighed: exact, of fixed size, and joined in any order and grouping with
/// the same result, since it only counts. Taking a bulb allocates nothing. From 0 to 5 kg; a heavier piece is not a bulb and is
/// counted apart, never dropped.
/// </summary>
public sealed class WeightHistogram
{
    /// <summary>Tenths of a gram that have a cell of their own: 0 to 5000.0 g.</summary>
    public const int Cells = 50_001;

    private readonly long[] counts = new long[Cells];

    /// <summary>Pieces above 5 kg.</summary>
    public long TooHeavy { get; private set; }

    /// <summary>How many bulbs weigh so many tenths of a gram.</summary>
    public long this[int tenths] => counts[tenths];

    /// <summary>All bulbs, without those that are too heavy.</summary>
    public long Bulbs
    {
        get
        {
            long all = 0;
            foreach (long count in counts)
                all += count;
            return all;
        }
    }

    /// <summary>Takes one bulb.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(PieceMass bulb) => AddTenths(bulb.Tenths, 1);

    /// <summary>Takes some bulbs of one weight, in tenths of a gram; a negative weight or number is refused.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddTenths(int tenths, long bulbs)
    {
        if (bulbs < 0)
            throw new ArgumentOutOfRangeException(nameof(bulbs), bulbs, "A sizer counts upward.");
        if (unchecked((uint)tenths) < Cells)
            counts[tenths] += bulbs;
        else if (tenths < 0)
            throw new ArgumentOutOfRangeException(nameof(tenths), tenths, "No bulb weighs less than nothing.");
        else
            TooHeavy += bulbs;
    }

    /// <summary>Takes all that another sizer, shift or thread has counted.</summary>
    public void Join(WeightHistogram other)
    {
        for (int cell = 0; cell < Cells; cell++)
            counts[cell] += other.counts[cell];
        TooHeavy += other.TooHeavy;
    }

    /// <summary>Mean and spread in grams, of weights rounded to the tenth.</summary>
    public Moments Moments
    {
        get
        {
            Moments moments = default;
            for (int cell = 0; cell < Cells; cell++)
            {
                if (counts[cell] > 0)
                    moments.Add(cell / 10.0, counts[cell]);
            }

            return moments;
        }
    }
}
