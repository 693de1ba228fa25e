namespace Cloveshed.Core.Shift;

/// <summary>What a schedule is held to.</summary>
public enum ShiftRule
{
    /// <summary>Each run of the week is there once, and no other.</summary>
    EachOnce,

    /// <summary>A run is on the line that the plan gives it.</summary>
    OwnLine,

    /// <summary>A run begins and ends in working time, not outside a shift.</summary>
    InShift,

    /// <summary>Nor in a break.</summary>
    NotInBreak,

    /// <summary>Nor in maintenance or on a closed day.</summary>
    NotInMaintenance,

    /// <summary>Nor before the line is clean for food.</summary>
    Cleaned,

    /// <summary>Between its start and end a line works as many minutes as the run takes: it stops only where the line stops.</summary>
    Length,

    /// <summary>A line runs one lot at a time.</summary>
    OneAtATime,

    /// <summary>Between two runs stands their set-up.</summary>
    SetUp,

    /// <summary>Organic garlic comes onto a line that was cleaned out after conventional.</summary>
    CleanOut,

    /// <summary>Bins set out when the run before has ended, or the line's week begins, and take their time.</summary>
    Bins,

    /// <summary>Lines that run together need no more people than are there.</summary>
    Heads,

    /// <summary>Sorted-out bulbs are run no sooner than they are sorted out.</summary>
    SortedFirst,

    /// <summary>The costs that are told are the schedule's.</summary>
    Costs,
}

/// <summary>
/// A rule that does not hold. Found and Allowed are minutes of working time for Length, SetUp, CleanOut and Bins; minutes of the week for
/// the rules of when; people for Heads; money for Costs; a count for EachOnce; 0 and 0 for OwnLine.
/// </summary>
/// <param name="Run">The run that it is about; null for Costs.</param>
/// <param name="Other">The run beside it, where there is one.</param>
/// <param name="Minute">When, in minutes of the week; null where there is no one moment.</param>
/// <param name="What">The cost's name, for Costs; what row stands there, for breaks and maintenance.</param>
public sealed record ShiftBreach(ShiftRule Rule, LineId? Line, string? Run, string? Other, int? Minute, double Found, double Allowed, string? What = null)
{
    /// <summary>By how much it does not hold, in the same measure.</summary>
    public double By => Math.Abs(Found - Allowed);
}
