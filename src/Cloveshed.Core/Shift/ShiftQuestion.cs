using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Shift;

/// <summary>Units of a product that a run makes, evenly while it runs; an expectation.</summary>
public sealed record RunMakes(ProductId Product, double Units);

/// <summary>One run of the week, as the plan has it.</summary>
/// <param name="Id">As runs.csv names it.</param>
/// <param name="Variety">Null where the season has no such lot any more.</param>
/// <param name="Sorted">Of bulbs that were sorted out of other runs, which stand nowhere.</param>
/// <param name="Mass">As weighed this week, in the season's unit.</param>
/// <param name="Bins">Bins to bring; 0 for sorted-out bulbs.</param>
/// <param name="Minutes">Of the line's working time, without set-up; rounded up, at least 1.</param>
/// <param name="CutSet">Classes or grades that the line is set for, small to large, joined by +.</param>
/// <param name="NotBefore">Runs of this week that this one takes sorted-out bulbs from: it neither begins nor ends before them.</param>
public sealed record ShiftRun(
    string Id, LineId Line, LineMode Mode, LotId Lot, VarietyId? Variety, bool Organic, bool Sorted, IReadOnlyList<PlaceId> Places, double Mass, double Bins,
    int Minutes, string CutSet, IReadOnlyList<RunMakes> Makes, IReadOnlyList<string> NotBefore);

/// <summary>A line in this week.</summary>
/// <param name="Heads">People that it needs while it runs.</param>
/// <param name="CostPerHour">Of its working time: what a minute of set-up costs.</param>
/// <param name="OverrunPerHour">Of a run's time after the week's last shift.</param>
/// <param name="SetupMinutes">From lines.csv: the set-up between any two runs where the season has no setups.csv.</param>
public sealed record ShiftLine(LineId Id, LineMode Mode, double Heads, double CostPerHour, double OverrunPerHour, double SetupMinutes)
{
    /// <summary>Its garlic is eaten: seed is not.</summary>
    public bool IsFood => Mode != LineMode.Seed;
}

/// <summary>Units that an order's line ships this week.</summary>
public sealed record DockLoad(OrderId Order, string Number, string Customer, int Units);

/// <summary>
/// What the dock needs of a product at a moment: so many units that this week's runs have made until then, over what stood ready before
/// the week. A unit that is short costs the late cost until the next dock.
/// </summary>
/// <param name="Minute">Minutes from Monday's first midnight.</param>
/// <param name="Units">Since the week's start, also those that earlier docks needed.</param>
/// <param name="CostPerUnit">Of one unit that is short at this moment: the orders' late cost for the days to the next dock.</param>
/// <param name="Loads">Due at this dock.</param>
public sealed record DockNeed(ProductId Product, int Minute, double Units, double CostPerUnit, IReadOnlyList<DockLoad> Loads);

/// <summary>
/// A week's runs to be put in order on their lines. Minutes count from the first midnight of the week's Monday; the week has
/// <see cref="WeekMinutes"/> of them, and what does not fit is run after them at the price of an overrun, so that there is always an answer.
/// </summary>
/// <param name="Defaults">What was taken for granted because a file is silent.</param>
public sealed record ShiftQuestion(
    SeasonSettings Settings, int Week, IReadOnlyList<ShiftLine> Lines, IReadOnlyList<ShiftRun> Runs, IReadOnlyList<SetupRow> Setups,
    IReadOnlyList<ShiftRow> Shifts, IReadOnlyList<DockNeed> Needs, IReadOnlyList<ShiftDefault> Defaults)
{
    /// <summary>Minutes of a week.</summary>
    public const int WeekMinutes = 7 * DayMinutes;

    /// <summary>Minutes of a day. The week of a clock change is taken as any other.</summary>
    public const int DayMinutes = 1440;

    /// <summary>The line by name.</summary>
    public ShiftLine LineOf(LineId id) => Lines.First(line => line.Id == id);

    /// <summary>A minute as a moment: of the week's shed, without a zone.</summary>
    public LocalDateTime At(int minute) => Settings.Monday(Week).AtMidnight().PlusMinutes(minute);

    /// <summary>A moment as a minute, rounded down.</summary>
    public int MinuteOf(LocalDateTime moment) => (int)Period.Between(Settings.Monday(Week).AtMidnight(), moment, PeriodUnits.Minutes).Minutes;
}

/// <summary>What a schedule takes for granted.</summary>
public enum ShiftDefault
{
    /// <summary>No setups.csv: every change takes lines.csv's set-up hours.</summary>
    SetupsOfLines,

    /// <summary>No working time in shifts.csv: each line's hours and overtime of the week, in equal days from 06:00.</summary>
    ShiftsOfLines,

    /// <summary>No dock in shifts.csv: loads leave at each day's end.</summary>
    DockAtDaysEnd,
}

/// <summary>A run's place in time. Both in minutes from Monday's first midnight; End is not included.</summary>
public sealed record PlacedRun(string Run, LineId Line, int Start, int End);

/// <summary>A week's runs in time. The order of a line is that of the starts.</summary>
public sealed record ShiftSchedule(IReadOnlyList<PlacedRun> Runs)
{
    /// <summary>The runs of a line in their order.</summary>
    public IReadOnlyList<PlacedRun> Of(LineId line) => [.. Runs.Where(run => run.Line == line).OrderBy(run => run.Start).ThenBy(run => run.End)];
}
