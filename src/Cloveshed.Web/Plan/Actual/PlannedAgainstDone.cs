using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Web.Plan.Actual;

/// <summary>A lot on a line in a week: what the plan gave, and what ran. Masses in the season's unit.</summary>
/// <param name="Run">The plan's run; null where it gave none.</param>
/// <param name="Done">What was told of it; several days of one week, or none.</param>
public sealed record DoneRow(LineId Line, LotId Lot, bool Sorted, PlanRun? Run, double Planned, double Ran, double Bins, IReadOnlyList<DoneRun> Done)
{
    public double Difference => Ran - Planned;
}

/// <summary>A week of the plan that was adopted when it began, against what ran.</summary>
/// <param name="Plan">Null where none was adopted that has this week.</param>
public sealed record DoneWeek(LocalDate Monday, PlanSight? Plan, IReadOnlyList<DoneRow> Rows)
{
    public double Planned => Rows.Sum(row => row.Planned);

    public double Ran => Rows.Sum(row => row.Ran);

    /// <summary>Planned runs of which nothing ran.</summary>
    public int NotRun => Rows.Count(row => row.Run is not null && row.Ran <= 0);

    /// <summary>What ran without being planned.</summary>
    public int Unplanned => Rows.Count(row => row.Run is null && row.Ran > 0);

    /// <summary>Pounds that ran as planned: of each row the smaller of the two. Lots or lines that changed places do not make up for each other.</summary>
    public double AsPlanned => Rows.Sum(row => Math.Min(row.Planned, row.Ran));
}

/// <summary>An adoption, in the order of facts.</summary>
public sealed record Adopted(LocalDate Day, PlanSight Plan);

/// <summary>What was adopted against what ran, week by week. Pure.</summary>
public static class PlannedAgainstDone
{
    /// <param name="adoptions">In the order in which they were made.</param>
    /// <param name="from">The first week, a Monday.</param>
    /// <param name="through">The last week, a Monday.</param>
    /// <param name="unit">Of the masses answered.</param>
    public static IReadOnlyList<DoneWeek> Of(IReadOnlyList<Adopted> adoptions, IReadOnlyList<DoneRun> done, LocalDate from, LocalDate through, MassUnit unit)
    {
        ILookup<LocalDate, DoneRun> byWeek = done.ToLookup(run => Week(run.Day));
        List<DoneWeek> weeks = [];
        for (LocalDate monday = from; monday <= through; monday = monday.PlusWeeks(1))
        {
            weeks.Add(Of(monday, InForce(adoptions, monday), [.. byWeek[monday]], unit));
        }

        return weeks;
    }

    /// <summary>The plan by which a week was begun: the last one adopted by its Monday, else the first one adopted after; of these only one that has the week.</summary>
    public static PlanSight? InForce(IReadOnlyList<Adopted> adoptions, LocalDate monday)
    {
        bool Has(Adopted adopted) => adopted.Plan.Season.Settings is var season && season.WeekOf(monday) is var week && week >= season.AsOfWeek && week < season.Weeks;
        return (adoptions.LastOrDefault(adopted => adopted.Day <= monday && Has(adopted)) ?? adoptions.FirstOrDefault(adopted => adopted.Day > monday && Has(adopted)))?.Plan;
    }

    private static DoneWeek Of(LocalDate monday, PlanSight? plan, DoneRun[] done, MassUnit unit)
    {
        Dictionary<(LineId, LotId, bool), PlanRun> planned = plan is null ? [] : plan.Runs.In(plan.Season.Settings.WeekOf(monday)).ToDictionary(run => (run.Line, run.Lot, run.FromSorted));
        ILookup<(LineId, LotId, bool), DoneRun> ran = done.ToLookup(run => (run.Line, run.Lot, run.Sorted));
        return new DoneWeek(monday, plan,
        [
            .. planned.Keys.Union(ran.Select(runs => runs.Key)).Select(key =>
            {
                PlanRun? run = planned.GetValueOrDefault(key);
                DoneRun[] told = [.. ran[key].OrderBy(one => one.Day)];
                return new DoneRow(key.Item1, key.Item2, key.Item3, run, run?.Mass ?? 0, told.Sum(one => one.MassIn(unit)), told.Sum(one => one.Bins), told);
            }).Where(row => row.Run is not null || row.Done.Count > 0).OrderBy(row => row.Line.Text, StringComparer.Ordinal).ThenByDescending(row => Math.Max(row.Planned, row.Ran)).ThenBy(row => row.Lot.Text, StringComparer.Ordinal),
        ]);
    }

    private static LocalDate Week(LocalDate day) => day.PlusDays(1 - (int)day.DayOfWeek);
}
