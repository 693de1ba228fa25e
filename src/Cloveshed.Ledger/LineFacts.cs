using Cloveshed.Core;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Ledger;

/// <summary>What a sizer counted of a lot in one file: bulbs by tenths of a gram.</summary>
/// <param name="Fact">The fact sizer.counted.</param>
/// <param name="File">As it was called where it came from.</param>
/// <param name="At">When it was counted.</param>
/// <param name="BinsRun">Bins that these bulbs came out of; at least one.</param>
/// <param name="From">Tenths of a gram of the first count.</param>
/// <param name="Counts">Bulbs of that weight, a tenth more, and so on.</param>
/// <param name="TooHeavy">Pieces over 5 kg: no bulbs, but counted.</param>
public sealed record SizerCount(Guid Fact, LotId Lot, string File, DateTimeOffset At, int BinsRun, int From, IReadOnlyList<long> Counts, long TooHeavy)
{
    /// <summary>All bulbs, without those that are too heavy.</summary>
    public long Bulbs => Counts.Sum();

    /// <summary>Adds these bulbs to a histogram.</summary>
    public void Into(WeightHistogram histogram)
    {
        for (int at = 0; at < Counts.Count; at++)
            histogram.AddTenths(From + at, Counts[at]);
        histogram.AddTenths(WeightHistogram.Cells, TooHeavy);
    }
}

/// <summary>One box of a sizer's setting.</summary>
/// <param name="Class">The size class that it is sold as.</param>
/// <param name="Last">The largest class merged into it; the same where none is.</param>
/// <param name="MinG">Bulbs from this weight on, in grams.</param>
public sealed record SetBox(string Class, string Last, double MinG);

/// <summary>The cuts that the sizer is to be set to for a lot.</summary>
/// <param name="Fact">The fact sizer.set.</param>
/// <param name="Boxes">Light to heavy.</param>
/// <param name="OverG">Bulbs from this weight on are taken off the top; null: none are.</param>
public sealed record SizerSetting(Guid Fact, LotId Lot, DateTimeOffset At, IReadOnlyList<SetBox> Boxes, double? OverG);

/// <summary>The holes that the clove drum is to be fitted with for a lot.</summary>
/// <param name="Fact">The fact drum.set.</param>
/// <param name="HolesMm">Small to large.</param>
/// <param name="LargestFirst">Cloves meet the largest holes first (decks), not the smallest (one drum).</param>
public sealed record DrumSetting(Guid Fact, LotId Lot, DateTimeOffset At, IReadOnlyList<double> HolesMm, bool LargestFirst);

/// <summary>All that the sizer counted of a lot, of all files that count.</summary>
/// <param name="BinsRun">Over all files.</param>
public sealed record SizerTotal(WeightHistogram Counts, int BinsRun);
