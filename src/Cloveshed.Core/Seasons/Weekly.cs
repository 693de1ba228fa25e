using NodaTime;

namespace Cloveshed.Core.Seasons;

/// <summary>
/// What a row of setups.csv is about. Variety, Organic and Cuts are what changes from one run of a line to the next; Cleaning stands before
/// a day's first food; Travel is of bins from where they stand to the line.
/// </summary>
public enum SetupKind { Variety, Organic, Cuts, Cleaning, Travel }

/// <summary>
/// setups.csv: minutes of a line's working time, and money beside what the line costs. Null From, To or Line: any. From and To name
/// varieties, "organic" or "conventional", cut sets, or (From of Travel) a place.
/// </summary>
/// <param name="Step">What is done, for the run sheet.</param>
public sealed record SetupRow(SetupKind Kind, LineId? Line, string? From, string? To, double Minutes, decimal Cost, string? Step)
{
    /// <summary>The words of Organic rows.</summary>
    public const string Organic = "organic", Conventional = "conventional";

    /// <summary>As From and To have it.</summary>
    public static string OrganicWord(bool organic) => organic ? Organic : Conventional;
}

/// <summary>
/// What a row of shifts.csv is about: time in which lines work, and what is taken out of it; Closed takes out all lines of a day that the
/// shed does not work; Dock is the time in which loads leave.
/// </summary>
public enum ShiftKind { Work, Break, Maintenance, Closed, Dock }

/// <summary>
/// shifts.csv: a time of day. Null Line: every line; null Week: every week; null Day: every day.
/// </summary>
/// <param name="StartMinute">Minutes after midnight, included, 0 to 1439.</param>
/// <param name="EndMinute">Minutes after the same midnight, not included; above 1440 where it ends on the next day.</param>
/// <param name="Heads">People there for all lines together; null: no limit known.</param>
public sealed record ShiftRow(ShiftKind Kind, string Name, LineId? Line, int? Week, IsoDayOfWeek? Day, int StartMinute, int EndMinute, double? Heads);
