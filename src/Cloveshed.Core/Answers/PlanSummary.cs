using Cloveshed.Core.Lots;

namespace Cloveshed.Core.Answers;

/// <summary>How the search ended.</summary>
public enum PlanStatus { GapReached, TimeReached, Cancelled }

/// <summary>A default that the plan rests on, and what 20% more and less of it would change in value (null: not computed).</summary>
public sealed record DefaultUsed(string Name, string Value, string Why, double? MinusFifth, double? PlusFifth);

/// <summary>summary.json. Value, bound, revenue and costs are in the season's currency; gaps are shares.</summary>
/// <param name="Bound">Of the whole problem as read.</param>
/// <param name="GapGivenRooms">The gap to the bound with the plan's room weeks held.</param>
/// <param name="Costs">By kind: making, line, overtime, storage, place, moves, late, short, seed short.</param>
/// <param name="FillShares">Units filled over units ordered, by product ordered.</param>
public sealed record PlanSummary(
    double Value, double Bound, double Gap, double GapOfRevenue, double GapGivenRooms, double Seconds, PlanStatus Status,
    double Revenue, IReadOnlyDictionary<string, double> Revenues, IReadOnlyDictionary<string, double> Costs,
    IReadOnlyDictionary<string, double> FillShares, IReadOnlyList<DefaultUsed> Defaults, IReadOnlyList<string> Warnings,
    string Version, string InputDigest, IReadOnlyDictionary<string, double> Model)
{
    /// <summary>How sure the plan is of each lot's sizes; empty where an answer does not say.</summary>
    public IReadOnlyList<LotSizes> Sizes { get; init; } = [];

    /// <summary>How sure the plan is of each size class that it packs, over all lots, in the season's unit; empty where an answer does not say.</summary>
    public IReadOnlyList<SizeTotal> SizeTotals { get; init; } = [];
}

/// <summary>What the plan takes a lot to hold, and how that is known ("samples n=60, shrunk toward variety").</summary>
public sealed record LotSizes(LotId Lot, string How, double MeanG, double MeanLow80, double MeanHigh80, IReadOnlyList<SizeShare> Classes);

/// <summary>A class's share by mass of a lot's good bulbs, with its 80% band.</summary>
public readonly record struct SizeShare(SizeClassId Class, double Share, double Low80, double High80);
