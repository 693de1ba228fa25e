namespace Cloveshed.Core.Shift;

/// <summary>How a search ended.</summary>
public enum ShiftStatus
{
    /// <summary>Both stages are proven: lateness and overrun first, then changeover.</summary>
    Proven,

    /// <summary>Time was up; the bounds say how much may be left.</summary>
    TimeReached,

    /// <summary>It was stopped; the same holds.</summary>
    Cancelled,
}

/// <summary>A week in order.</summary>
/// <param name="FirstBound">No schedule has less lateness and overrun together.</param>
/// <param name="ChangeoverBound">No schedule with this one's lateness and overrun has less changeover; 0 where nothing is known.</param>
/// <param name="Greedy">What the plain sequence by due time costs: where the search began.</param>
public sealed record ShiftAnswer(
    ShiftSchedule Schedule, ShiftCosts Costs, double FirstBound, double ChangeoverBound, ShiftStatus Status, double Seconds, ShiftCosts Greedy)
{
    /// <summary>Share of the first stage's cost that may be left to find.</summary>
    public double FirstGap => Gap(Costs.First, FirstBound);

    /// <summary>Share of the changeover that may be left to find.</summary>
    public double ChangeoverGap => Gap(Costs.Changeover, ChangeoverBound);

    private static double Gap(double cost, double bound) => Math.Max(0, cost - bound) / Math.Max(1, Math.Abs(cost));
}

/// <summary>How long to search.</summary>
/// <param name="Seconds">Of the clock, for both stages together.</param>
/// <param name="Effort">Of the solver's own measure of work, for each stage: the same on every machine. Null: no limit but the clock's.</param>
public sealed record ShiftSearch(double Seconds, int Seed = 1, int Threads = 1, double? Effort = null, CancellationToken Cancel = default);

/// <summary>Puts a week's runs in order. Always gives a schedule.</summary>
public interface IShiftScheduler
{
    /// <summary>The best that the search found, its bounds, and how it ended.</summary>
    ShiftAnswer Schedule(ShiftQuestion question, ShiftSearch search);
}
