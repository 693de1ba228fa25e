using NodaTime;

namespace Cloveshed.Core.Seasons;

/// <summary>How a place keeps garlic: an open yard, a cold room, or a room that can be sealed (controlled atmosphere).</summary>
public enum PlaceKind { Open, Cold, Sealed }

/// <summary>places.csv. Empty climate cells are null; empty costs are 0. RunOutWeeks applies to sealed rooms; null: no limit.</summary>
public sealed record Place(
    PlaceId Id, PlaceKind Kind, double CapacityBins, double? TempC, double? Rh, double? O2, double? Co2,
    decimal CostPerBinWeek, decimal CostPerWeek, decimal MoveInCost, int? RunOutWeeks);

/// <summary>place-weeks.csv: an exception to a place's climate for one week.</summary>
public sealed record PlaceWeek(PlaceId Place, int Week, double? TempC, double? Rh);

/// <summary>
/// lines.csv. RatePerHour and MinRun are mass in. OvertimeCostPerHour null means that the file did not price overtime.
/// Heads is the number of people that the line needs while it runs (1 where the file is silent).
/// </summary>
public sealed record Line(
    LineId Id, LineMode Mode, double RatePerHour, double HoursPerWeek, double OvertimeHours, decimal CostPerHour,
    decimal? OvertimeCostPerHour, double Heads, double MinRun, double SetupHours);

/// <summary>line-weeks.csv: hours of one line in one week; OvertimeHours null: 0 where Hours is 0, else the line's.</summary>
public sealed record LineWeek(LineId Line, int Week, double Hours, double? OvertimeHours)
{
    /// <summary>Overtime hours of the week, of the line that the row is for.</summary>
    public double OvertimeOf(Line line) => OvertimeHours ?? (Hours == 0 ? 0 : line.OvertimeHours);
}

/// <summary>people.csv: person-hours that the lines may use together in a week. A week without a row has no limit.</summary>
public sealed record PeopleWeek(int Week, double Hours);

/// <summary>rooms.csv: a room already sealed on the as-of date.</summary>
public sealed record SealedRoom(PlaceId Place, LocalDate Sealed);
