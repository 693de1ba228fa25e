using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Answers;

/// <summary>
/// A season's plan as the answer files carry it, one record list per file, weeks as indices from the season's first week,
/// masses in the season's unit. Every amount is the number that is written: the value is summed from these, not from the model.
/// </summary>
public sealed record PlanAnswer(
    PlanSummary Summary,
    IReadOnlyList<PathWeek> Paths,
    IReadOnlyList<LotShare> Shares,
    IReadOnlyList<RunRow> Runs,
    IReadOnlyList<SortedRow> Sorted,
    IReadOnlyList<MadeRow> Made,
    IReadOnlyList<FillRow> Fills,
    IReadOnlyList<SaleRow> Sales,
    IReadOnlyList<AsIsRow> AsIs,
    IReadOnlyList<ShortRow> Shorts,
    IReadOnlyList<KeepRow> Keeps,
    IReadOnlyList<MoveRow> Moves,
    IReadOnlyList<RoomRow> Rooms,
    IReadOnlyList<SeedRow> Seed,
    IReadOnlyList<WorthRow> Worths);

/// <summary>paths.csv: the state of a path at a week's start. MassRatio is to the path's start, where it is 1.</summary>
public sealed record PathWeek(
    string Path, LotId Lot, PlaceId FromPlace, int Week, PlaceId Place, double MassRatio, double FreshShare, double CrackShare, double LifeUsed);

/// <summary>The two kinds of shares.csv.</summary>
public enum ShareKind { BulbClass, CloveGrade }

/// <summary>shares.csv: a lot's share by mass in one class or grade; Name also "under" and "ungraded".</summary>
public sealed record LotShare(LotId Lot, ShareKind Kind, string Name, double Share);

/// <summary>
/// runs.csv: one row per run, line, week, lot and path. Lot is always given; Path and Place are null when sorted-out bulbs are
/// run (FromSorted), and MassAtStart is then 0. MassIn is as weighed in that week.
/// </summary>
public sealed record RunRow(
    string Run, int Week, LineId Line, LineMode Mode, bool FromSorted, LotId Lot, string? Path, PlaceId? Place, double MassIn,
    double MassAtStart, double Hours, double OvertimeHours, string Reason);

/// <summary>sorted.csv: mass sorted out of a fresh run.</summary>
public sealed record SortedRow(string Run, LotId Lot, int Week, double Mass);

/// <summary>made.csv: units of a product that a run makes of a lot; an expectation, so Units may be fractional.</summary>
public sealed record MadeRow(string Run, int Week, ProductId Product, LotId Lot, double Units, double Mass);

/// <summary>fills.csv: Product is what is shipped, which may be larger than, or the organic twin of, what was ordered.</summary>
public sealed record FillRow(OrderId Order, string Line, int Week, ProductId Product, int Units);

/// <summary>sales.csv: market sales.</summary>
public sealed record SaleRow(int Week, ProductId Product, int Units);

/// <summary>as-is.csv: sold as is, or discarded.</summary>
public sealed record AsIsRow(bool Discarded, int Week, LotId Lot, string Path, PlaceId Place, double Mass, double MassAtStart);

/// <summary>shorts.csv: units of an order line that the plan leaves unfilled, and why.</summary>
public sealed record ShortRow(OrderId Order, string Line, int Units, string Why);

/// <summary>keeps.csv: what stands at a week's end.</summary>
public sealed record KeepRow(int Week, LotId Lot, string Path, PlaceId Place, double Bins, double MassAtStart);

/// <summary>moves.csv: bins moved at a week's start.</summary>
public sealed record MoveRow(int Week, LotId Lot, PlaceId From, PlaceId To, double Bins);

/// <summary>rooms.csv: the last week with loading and the week of opening; Opened null: it stays closed to the end.</summary>
public sealed record RoomRow(PlaceId Place, int Sealed, int? Opened);

/// <summary>seed.csv: cloves of a seed run and the need (variety, By, NeedClass) that they serve.</summary>
public sealed record SeedRow(string Run, int Week, VarietyId Variety, LotId Lot, SeedClass SeedClass, SeedClass NeedClass, NodaTime.LocalDate By, double Cloves);

/// <summary>worths.csv: what one more unit would add to the season's value; Kind one of product, line, people, place, lot, seed.</summary>
public sealed record WorthRow(string Kind, string Name, int? Week, double Value);
