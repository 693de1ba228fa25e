using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures.Paths;

/// <summary>
/// What stands on each path of a plan, week by week, taken from the answer alone: mass at start goes down by what is run,
/// sold as is and discarded, and the rest is kept at the end. Masses in the season's unit.
/// </summary>
public sealed class PathBook
{
    private readonly Dictionary<string, PathLine> lines = [];

    public PathBook(Season season, PlanAnswer answer)
    {
        Weeks = season.Settings.Weeks;
        foreach (IGrouping<string, PathWeek> path in answer.Paths.GroupBy(p => p.Path))
        {
            lines.Add(path.Key, new PathLine(path.Key, [.. path.OrderBy(p => p.Week)], Weeks));
        }
        foreach (RunRow run in answer.Runs)
        {
            if (run.Path is { } path)
            {
                lines[path].TakeOff(run.Week, run.MassAtStart);
            }
        }
        foreach (AsIsRow row in answer.AsIs)
        {
            lines[row.Path].TakeOff(row.Week, row.MassAtStart);
        }
        foreach (KeepRow keep in answer.Keeps)
        {
            if (keep.Week == Weeks - 1)
            {
                lines[keep.Path].KeepAtEnd(keep.MassAtStart);
            }
        }
    }

    public int Weeks { get; }

    public IEnumerable<PathLine> All => lines.Values;

    public PathLine this[string path] => lines[path];

    public IEnumerable<PathLine> Of(LotId lot) => lines.Values.Where(l => l.Lot == lot);
}

/// <summary>One path: its state by week, and the mass at start that is still on it.</summary>
public sealed class PathLine(string path, IReadOnlyList<PathWeek> states, int weeks)
{
    private readonly double[] takenOff = new double[weeks];

    public string Path => path;

    public LotId Lot => states[0].Lot;

    public PlaceId FromPlace => states[0].FromPlace;

    public int FirstWeek => states[0].Week;

    public int LastState => states[^1].Week;

    /// <summary>Mass at start that still stands after the last week.</summary>
    public double EndMassAtStart { get; private set; }

    /// <summary>Everything that the plan put on this path.</summary>
    public double MassAtStart => EndMassAtStart + takenOff.Sum();

    /// <summary>The state at a week's start. Weeks outside the path's own are a fault of the caller.</summary>
    public PathWeek State(int week) => states[week - FirstWeek];

    public bool Has(int week) => week >= FirstWeek && week <= LastState;

    /// <summary>Mass at start that stands when the week begins, before that week's runs.</summary>
    public double StandingAtStart(int week)
    {
        double standing = EndMassAtStart;
        for (int w = Math.Max(week, 0); w < takenOff.Length; w++)
        {
            standing += takenOff[w];
        }
        return standing;
    }

    /// <summary>What would be weighed when the week begins, before that week's runs.</summary>
    public double WeighedAtStart(int week) => Has(week) ? StandingAtStart(week) * State(week).MassRatio : 0;

    /// <summary>What would be weighed after the season's last week.</summary>
    public double EndMass => EndMassAtStart * (Has(weeks) ? State(weeks) : states[^1]).MassRatio;

    /// <summary>When the storage life is used up, in weeks and parts from the season's start; null: not in view.</summary>
    public double? LifeEndsAt() => LifeReaches(1);

    /// <summary>When a share of the storage life is used, by a straight line within the week; null: not in view.</summary>
    public double? LifeReaches(double share)
    {
        if (states[0].LifeUsed >= share)
        {
            return states[0].Week;
        }
        for (int i = 1; i < states.Count; i++)
        {
            double before = states[i - 1].LifeUsed;
            double after = states[i].LifeUsed;
            if (after >= share)
            {
                return states[i - 1].Week + (share - before) / (after - before);
            }
        }
        return null;
    }

    internal void TakeOff(int week, double massAtStart) => takenOff[week] += massAtStart;

    internal void KeepAtEnd(double massAtStart) => EndMassAtStart += massAtStart;
}
