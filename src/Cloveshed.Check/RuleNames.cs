namespace Cloveshed.Check;

/// <summary>The names of the rules: they stay as they are, so that scripts may rely on them.</summary>
public static class RuleNames
{
    // The files themselves.
    public const string Season = "season";
    public const string FileMissing = "file-missing";
    public const string FileForm = "file-form";
    public const string ColumnMissing = "column-missing";
    public const string Number = "number";
    public const string WholeNumber = "whole-number";
    public const string Week = "week";
    public const string Word = "word";
    public const string UnknownName = "unknown-name";
    public const string RowTwice = "row-twice";

    // Shares of a lot.
    public const string SharesSum = "shares-sum";
    public const string SharesCurve = "shares-curve";
    public const string SharesMissing = "shares-missing";

    // Paths.
    public const string PathRow = "path-row";
    public const string PathWeeks = "path-weeks";
    public const string PathStart = "path-start";
    public const string PathLoss = "path-loss";
    public const string PathShares = "path-shares";
    public const string PathLife = "path-life";
    public const string PathMove = "path-move";
    public const string PathUse = "path-use";
    public const string PlaceUse = "place-use";

    // Pounds, bins and places.
    public const string LotBalance = "lot-balance";
    public const string MassWeighed = "mass-weighed";
    public const string Keeps = "keeps";
    public const string KeepsBins = "keeps-bins";
    public const string Moves = "moves";
    public const string Capacity = "capacity";
    public const string RoomKind = "room-kind";
    public const string RoomWeeks = "room-weeks";
    public const string RoomAlreadySealed = "room-already-sealed";
    public const string RoomIn = "room-in";
    public const string RoomOut = "room-out";
    public const string RoomRunOut = "room-run-out";

    // Runs.
    public const string RunRows = "run-rows";
    public const string RunMode = "run-mode";
    public const string RunHold = "run-hold";
    public const string RunReady = "run-ready";
    public const string HoursShort = "hours-short";
    public const string HoursOver = "hours-over";
    public const string OvertimeOver = "overtime-over";
    public const string PeopleOver = "people-over";
    public const string MinRun = "min-run";

    // What comes out of them.
    public const string MadeRun = "made-run";
    public const string MadeForm = "made-form";
    public const string MadeMass = "made-mass";
    public const string MadeSize = "made-size";
    public const string MadeGrade = "made-grade";
    public const string Organic = "organic";
    public const string SortedRun = "sorted-run";
    public const string SortedAmount = "sorted-amount";
    public const string SortedTime = "sorted-time";
    public const string SeedRun = "seed-run";
    public const string SeedNeed = "seed-need";
    public const string SeedClass = "seed-class";
    public const string SeedInhibitor = "seed-inhibitor";
    public const string SeedLate = "seed-late";
    public const string SeedAmount = "seed-amount";

    // Stock, orders, market, as is.
    public const string Stock = "stock";
    public const string ShelfLife = "shelf-life";
    public const string FillEarly = "fill-early";
    public const string FillLate = "fill-late";
    public const string FillProduct = "fill-product";
    public const string FillOver = "fill-over";
    public const string OrderWhole = "order-whole";
    public const string Shorts = "shorts";
    public const string Market = "market";
    public const string AsIsPrice = "as-is-price";
    public const string AsIsLimit = "as-is-limit";
    public const string AsIsHold = "as-is-hold";

    // The summary.
    public const string Summary = "summary";
    public const string Value = "value";
    public const string Bound = "bound";
    public const string Gap = "gap";
}
