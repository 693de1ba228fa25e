using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Plan.Since;

/// <summary>What a plan does about a hold.</summary>
public enum HoldVerdict
{
    /// <summary>The run is in the plan as pinned, or not in it as barred.</summary>
    Kept,

    /// <summary>The run is there, with less than was pinned.</summary>
    Less,

    /// <summary>The pinned run is not there, or the barred one is.</summary>
    Missed,

    /// <summary>Set after the plan was made; the plan happens to do otherwise.</summary>
    NotYet,

    /// <summary>Of a week that is not in the plan's season.</summary>
    Outside,
}

/// <summary>A hold against a plan: what was asked and what the plan runs, in the season's unit.</summary>
public sealed record HoldKept(RunHold Hold, HoldVerdict Verdict, double Asked, double Run, PlanRun? There)
{
    /// <summary>Masses are written rounded; a pin is kept where no more than this share of it is missing.</summary>
    private const double Slack = 1e-4;

    /// <summary>All holds in force, in the order of their weeks.</summary>
    /// <param name="later">Facts that came after the plan's basis.</param>
    public static IReadOnlyList<HoldKept> All(IReadOnlyList<RunHold> holds, SeasonSettings season, RunBook runs, IReadOnlySet<Guid> later) =>
        [.. holds.OrderBy(hold => hold.Week).ThenBy(hold => hold.Line.Text, StringComparer.Ordinal).Select(hold => Of(hold, season, runs, later))];

    private static HoldKept Of(RunHold hold, SeasonSettings season, RunBook runs, IReadOnlySet<Guid> later)
    {
        int week = season.WeekOf(hold.Week);
        PlanRun? there = runs.Find(hold.Lot, hold.Line, week);
        double asked = hold.MassIn(season.MassUnit) ?? 0, run = there?.Mass ?? 0;
        HoldVerdict verdict = week < 0 || week >= season.Weeks ? HoldVerdict.Outside
            : Held(hold.Pinned, asked, run) ? HoldVerdict.Kept
            : later.Contains(hold.Fact) ? HoldVerdict.NotYet
            : hold.Pinned && run > 0 ? HoldVerdict.Less : HoldVerdict.Missed;
        return new HoldKept(hold, verdict, asked, run, there);
    }

    private static bool Held(bool pinned, double asked, double run) => pinned ? run > 0 && run >= asked * (1 - Slack) : run <= 0;
}
