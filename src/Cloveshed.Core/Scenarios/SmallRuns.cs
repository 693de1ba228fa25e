using System.Diagnostics;
using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>How a planned run of a lot on a line is begun in a week where it might stay under the line's least.</summary>
internal enum SmallRun
{
    /// <summary>Small, where all that is meant of the week finishes one of its rows.</summary>
    ToFinish,

    /// <summary>Not small: filled up with what the lot has, or else left out.</summary>
    Filled,

    /// <summary>Not at all.</summary>
    LeftOut,
}

/// <summary>
/// Holds the runs of a replay to the least of their lines. A run under it must finish a row, and whether it does is seen only once all else
/// of the week is done: hours may cut another run of the row, people a second batch of the run itself, buyers what is sold as it stands.
/// A run that was small in vain is begun otherwise, and the season played again: it goes as before up to that week.
/// </summary>
internal sealed class SmallRuns
{
    private readonly Dictionary<(int Week, int Line, int Lot), SmallRun> begun = [];

    public SmallRun How(int week, int line, int lot) => begun.GetValueOrDefault((week, line, lot));

    /// <summary>Whether every run of a week may stand, when all of the week is done; where not, one is begun otherwise next time.</summary>
    public bool Stand(int week, IReadOnlyList<WeekRun> runs, PlanningInstance instance, Yard yard)
    {
        foreach (var run in runs.Where(r => r.Batch is not null).GroupBy(r => (r.Line, r.Lot)))
        {
            if (run.Sum(r => r.MassIn) >= instance.Lines[run.Key.Line].MinRun * (1 - 1e-7) || run.Any(r => yard.IsFinished(r.Batch!.Row))) continue;
            SmallRun so = How(week, run.Key.Line, run.Key.Lot);
            if (so == SmallRun.LeftOut) throw new UnreachableException("A run beyond the plan is under its line's least.");
            begun[(week, run.Key.Line, run.Key.Lot)] = so + 1;
            return false;
        }
        return true;
    }
}
