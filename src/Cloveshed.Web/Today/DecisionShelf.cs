using System.Globalization;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Today;

/// <summary>Decisions of the last few weeks that were looked at, by plan, season and week.</summary>
public sealed class DecisionShelf
{
    private const int Room = 16;

    private readonly Shelf<DecisionList> shelf = new(Room);

    public DecisionList Of(PlanBook book, ShedState state, int week)
    {
        string key = string.Create(CultureInfo.InvariantCulture, $"{state.Adopted!.Document} {state.InputDigest} {state.Adopted.Basis} {week}");
        return shelf.Of(key, () =>
        {
            SincePlan since = new(state);
            return DecisionList.Of(book, week, since.Has);
        });
    }

    /// <summary>Hours and overtime that a line has in a week.</summary>
    public static (double Hours, double Overtime) HoursOf(Season season, Core.Seasons.Line line, int week) =>
        season.LineWeeks.FirstOrDefault(row => row.Line == line.Id && row.Week == week) is { } exception
            ? (exception.Hours, exception.OvertimeHours ?? (exception.Hours == 0 ? 0 : line.OvertimeHours)) : (line.HoursPerWeek, line.OvertimeHours);
}
