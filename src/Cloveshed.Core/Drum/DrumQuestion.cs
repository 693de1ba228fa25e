namespace Cloveshed.Core.Drum;

/// <summary>A grade that the drum is to give.</summary>
/// <param name="MinMm">Least width of a clove that belongs to it; null: set by its share.</param>
/// <param name="MaxMm">Cloves this wide or wider don't; null: no upper limit, or set by its share.</param>
/// <param name="Share">Wanted share of the mass; null: whatever the widths give.</param>
/// <param name="MostContamination">The most that its outflow may hold of cloves of other widths; null: no limit.</param>
public sealed record GradeWanted(string Name, double? MinMm, double? MaxMm, double? Share, double? MostContamination);

/// <summary>The order in which cloves meet the holes.</summary>
public enum HoleOrder
{
    /// <summary>One drum, sections in line: what falls through the first section is the smallest.</summary>
    SmallestFirst,

    /// <summary>Decks or drums one within the other: what stays on the first is the largest.</summary>
    LargestFirst,
}

/// <summary>What the drum is to be fitted with.</summary>
/// <param name="Grades">Small to large.</param>
/// <param name="Load">Mass fed per hour over the rated one.</param>
/// <param name="StepMm">Holes are made in these steps.</param>
/// <param name="Order">Null: whichever is better.</param>
public sealed record DrumQuestion(CloveWidths Cloves, IReadOnlyList<GradeWanted> Grades, DrumNature Nature, double Load, double StepMm, HoleOrder? Order);

/// <summary>One outflow of the drum.</summary>
/// <param name="Name">The grade; null: cloves between, under or over the grades.</param>
/// <param name="FromMm">Widths that belong to it.</param>
/// <param name="Share">Of the mass fed.</param>
/// <param name="Contamination">Share of the outflow that belongs elsewhere.</param>
/// <param name="Smaller">Therein, too small.</param>
/// <param name="Recovered">Of all mass fed that belongs to it, the share that arrives.</param>
/// <param name="Held">Within its limit of contamination.</param>
public sealed record Outflow(string? Name, double FromMm, double? ToMm, double Share, double Contamination, double Smaller, double Recovered, double? WantedShare, bool Held);

/// <summary>Holes, small to large, and what comes out.</summary>
/// <param name="Misplaced">Share of the mass that comes out where it does not belong.</param>
/// <param name="OtherOrderMisplaced">The same with the other order and its own best holes; null where the order was given.</param>
public sealed record DrumAnswer(IReadOnlyList<double> HolesMm, HoleOrder Order, IReadOnlyList<Outflow> Outflows, double Misplaced, double? OtherOrderMisplaced, bool AllHeld);
