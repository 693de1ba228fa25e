using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger;

/// <summary>The vocabulary: every kind of fact by its stored name. Names are for good; a kind that means something else is a new kind.</summary>
public static class FactKinds
{
    public const string SeasonOpened = "season.opened", SeasonChanged = "season.changed";
    public const string RunPinned = "run.pinned", RunBarred = "run.barred", HoldLifted = "hold.lifted";
    public const string PlanAsked = "plan.asked", PlanMade = "plan.made", PlanRefused = "plan.refused", PlanStopped = "plan.stopped", PlanAdopted = "plan.adopted", WeekOrdered = "week.ordered";
    public const string WeekAsked = "week.asked", WeekFound = "week.found", RunDone = "run.done";
    public const string AirRead = "air.read", RoomStepped = "room.stepped", RoomTested = "room.tested", RoomDescribed = "room.described", RecordWithdrawn = "record.withdrawn";
    public const string SizerCounted = "sizer.counted", SizerSet = "sizer.set", DrumSet = "drum.set";
    public const string WeatherTold = "weather.told", YardDescribed = "yard.described", SackWeighed = "sack.weighed", LotInspected = "lot.inspected", YardRecordWithdrawn = "yard-record.withdrawn";
    public const string Note = "note";

    private const string EnteredEnd = ".entered", ChangedEnd = ".changed", DroppedEnd = ".dropped";

    /// <summary>What a row of each file is called.</summary>
    private static readonly (string Noun, string File)[] Nouns =
    [
        ("size-class", "sizes.csv"), ("variety", "varieties.csv"), ("place", "places.csv"), ("place-week", "place-weeks.csv"), ("lot", "lots.csv"),
        ("sample", "samples.csv"), ("yield", "yields.csv"), ("line", "lines.csv"), ("line-week", "line-weeks.csv"), ("people-week", "people.csv"),
        ("clove-grade", "clove-grades.csv"), ("product", "products.csv"), ("stock", "stock.csv"), ("sealed-room", "rooms.csv"),
        ("order-line", "orders.csv"), ("market-week", "market.csv"), ("seed-need", "seed-needs.csv"), ("as-is-price", "sell-as-is.csv"),
        ("set-up", "setups.csv"), ("shift", "shifts.csv"), ("list-price", "price-lists.csv"), ("freight", "freight.csv"), ("program", "programs.csv"), ("promotion", "promotions.csv"),
    ];

    private static readonly Dictionary<string, RowKind> Rows = Nouns.SelectMany(pair =>
    {
        SeasonTable table = SeasonTable.Of(pair.File)!;
        return new[]
        {
            new RowKind(pair.Noun + EnteredEnd, table, RowStep.Entered), new RowKind(pair.Noun + ChangedEnd, table, RowStep.Changed),
            new RowKind(pair.Noun + DroppedEnd, table, RowStep.Dropped),
        };
    }).ToDictionary(kind => kind.Name, StringComparer.Ordinal);

    /// <summary>Those that are not about a row of a season's file.</summary>
    public static IReadOnlyList<string> Others { get; } =
        [SeasonOpened, SeasonChanged, RunPinned, RunBarred, HoldLifted, PlanAsked, PlanMade, PlanRefused, PlanStopped, PlanAdopted, WeekOrdered, WeekAsked, WeekFound, RunDone, SizerCounted, SizerSet, DrumSet, Note];

    /// <summary>What was read and done in places. There may be many, and no plan is made of them: <see cref="Rooms.PlaceLog"/> reads them apart from the shed's state.</summary>
    public static IReadOnlyList<string> OfRooms { get; } = [AirRead, RoomStepped, RoomTested, RoomDescribed, RecordWithdrawn];

    /// <summary>Weather, drying and looks at lots, which <see cref="Yard.YardLog"/> reads, likewise apart.</summary>
    public static IReadOnlyList<string> OfYard { get; } = [WeatherTold, YardDescribed, SackWeighed, LotInspected, YardRecordWithdrawn];

    /// <summary>Every kind.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Others, .. OfRooms, .. OfYard, .. Rows.Keys];

    /// <summary>Kinds that stand apart from the shed's state.</summary>
    internal static bool StandsApart(string kind) => OfRooms.Contains(kind) || OfYard.Contains(kind);

    /// <summary>The kind of a new row of a file.</summary>
    public static string Entered(string file) => Noun(file) + EnteredEnd;

    /// <summary>The kind of a row's change.</summary>
    public static string Changed(string file) => Noun(file) + ChangedEnd;

    /// <summary>The kind of a row that no longer counts.</summary>
    public static string Dropped(string file) => Noun(file) + DroppedEnd;

    internal static RowKind? OfRow(string kind) => Rows.GetValueOrDefault(kind);

    internal static bool IsKnown(string kind) => Rows.ContainsKey(kind) || Others.Contains(kind) || StandsApart(kind);

    private static string Noun(string file) =>
        Nouns.FirstOrDefault(pair => pair.File == file).Noun ?? throw new ArgumentException($"{file} is no table of a season.", nameof(file));
}

/// <summary>What happens to a row.</summary>
internal enum RowStep { Entered, Changed, Dropped }

/// <summary>A kind of fact about a row of a file.</summary>
internal sealed record RowKind(string Name, SeasonTable Table, RowStep Step);
