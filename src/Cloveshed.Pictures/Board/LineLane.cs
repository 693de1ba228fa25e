using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures.Board;

/// <summary>One lot's part of a line's week; sorted-out bulbs of several lots come as parts with FromSorted.</summary>
public sealed record LanePart(LotId Lot, bool FromSorted, double Mass, double Hours);

/// <summary>A line's week: hours used and available, and what they went to. Parts in the order of runs.csv.</summary>
public sealed record LaneWeek(
    int Week, double Hours, double OvertimeHours, double Available, double OvertimeAvailable, IReadOnlyList<LanePart> Parts)
{
    /// <summary>Full when less than half a percent of the regular hours is left.</summary>
    public bool Full => Available > 0 && Hours >= 0.995 * Available;
}

/// <summary>A line along the weeks.</summary>
public sealed record LineLane(LineId Line, LineMode Mode, IReadOnlyList<LaneWeek> Weeks)
{
    internal static LineLane From(Line line, Season season, PlanAnswer answer)
    {
        Dictionary<int, LineWeek> exceptions = season.LineWeeks.Where(w => w.Line == line.Id).ToDictionary(w => w.Week);
        ILookup<int, RunRow> runs = answer.Runs.Where(r => r.Line == line.Id && r.Mode == line.Mode).ToLookup(r => r.Week);
        var weeks = new List<LaneWeek>();
        for (int w = 0; w < season.Settings.Weeks; w++)
        {
            LineWeek? exception = exceptions.GetValueOrDefault(w);
            double hours = exception?.Hours ?? line.HoursPerWeek;
            double overtime = exception?.OvertimeOf(line) ?? line.OvertimeHours;
            IEnumerable<LanePart> parts = runs[w].GroupBy(r => (r.Lot, r.FromSorted))
                .Select(g => new LanePart(g.Key.Lot, g.Key.FromSorted, g.Sum(r => r.MassIn), g.Sum(r => r.Hours + r.OvertimeHours)));
            weeks.Add(new LaneWeek(w, runs[w].Sum(r => r.Hours), runs[w].Sum(r => r.OvertimeHours), hours, overtime, [.. parts]));
        }
        return new LineLane(line.Id, line.Mode, weeks);
    }
}
