using Cloveshed.Core.Quantities;

namespace Cloveshed.Core.Keep.Rooms;

/// <summary>What a room costs, and how full it is.</summary>
/// <param name="PullDown">To bring it down and make its atmosphere once, however full it is.</param>
/// <param name="PerWeek">While it holds anything.</param>
/// <param name="PerBinWeek">For each bin in it.</param>
public sealed record RoomCostQuestion(double CapacityBins, double Bins, int Weeks, Money PullDown, Money PerWeek, Money PerBinWeek);

/// <param name="HalfFullPenalty">More that a bin costs than it would in a full room: what empty positions cost those that are there.</param>
/// <summary>Cost of a stay, rounded to the minor unit; per bin for the whole stay.</summary>
public sealed record RoomCostAnswer(Money Total, Money PerBin, Money PerBinFull, Money HalfFullPenalty);

/// <summary>Cost per pull-down and week, and the penalty of a room that is not full.</summary>
public static class RoomCost
{
    /// <summary>Pure; a room holds something to have a cost per bin.</summary>
    public static RoomCostAnswer Of(RoomCostQuestion question)
    {
        if (!(question.Bins > 0) || question.Bins > question.CapacityBins)
            throw new ArgumentOutOfRangeException(nameof(question), question.Bins, $"Bins are more than none and at most the {question.CapacityBins} that the room holds.");
        Money once = question.PullDown + question.PerWeek * question.Weeks, each = question.PerBinWeek * question.Weeks;
        Money perBin = once * (1 / (decimal)question.Bins) + each, full = once * (1 / (decimal)question.CapacityBins) + each;
        return new RoomCostAnswer((once + each * (decimal)question.Bins).Rounded(), perBin.Rounded(), full.Rounded(), (perBin - full).Rounded());
    }
}
