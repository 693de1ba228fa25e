using System.Globalization;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Plan.Since;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Today;

/// <summary>Decisions of the last few weeks that were looked at, by plan, season and week.</summary>
public sealed class DecisionShelf(BasisShelf bases)
{
    private const int Room = 16;

    private readonly Shelf<DecisionList> shelf = new(Room);

    /// <summary>By the clocks that are believed now; null where no plan is adopted.</summary>
    public DecisionList? Of(ShedReading shed, int week)
    {
        if (shed.SeenBook is not { } book)
        {
            return null;
        }

        string key = string.Create(CultureInfo.InvariantCulture, $"{shed.State.Adopted!.Document} {shed.ClockKey} {shed.State.Adopted.Basis} {week}");
        return shelf.Of(key, () =>
        {
            SincePlan since = bases.SinceAdopted(shed.State);
            return DecisionList.Of(book, week, since.Has, shed.Clocks.Of);
        });
    }

    /// <summary>Hours and overtime that a line has in a week.</summary>
    public static (double Hours, double Overtime) HoursOf(Season season, Core.Seasons.Line line, int week) =>
        season.LineWeeks.FirstOrDefault(row => row.Line == line.Id && row.Week == week) is { } exception
            ? (exception.Hours, exception.OvertimeOf(line)) : (line.HoursPerWeek, line.OvertimeHours);
}
