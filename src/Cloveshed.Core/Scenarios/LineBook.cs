using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>Hours of lines and people in one week: what is used, and what mass there is still time for.</summary>
internal sealed class LineBook
{
    // Solver and file digits: hours this little over are none.
    private const double Hair = 1e-6;

    private readonly PlanningInstance instance;
    private readonly int week;
    private readonly double[] hours, overtime, used;
    private readonly HashSet<int>[] setUp;
    private double people;

    public LineBook(PlanningInstance instance, Scenario scenario, int week)
    {
        (this.instance, this.week) = (instance, week);
        hours = [.. instance.Lines.Select((l, i) => l.Hours[week] * (1 - scenario.HoursLost[i][week]))];
        overtime = [.. instance.Lines.Select(l => l.Overtime[week])];
        used = new double[hours.Length];
        setUp = [.. hours.Select(_ => new HashSet<int>())];
        people = instance.People[week];
    }

    /// <summary>Person-hours kept for others while set.</summary>
    public double Reserved { get; set; }

    /// <summary>Hours of a line in use.</summary>
    public double Used(int line) => used[line];

    public bool IsSetUp(int line, int lot) => setUp[line].Contains(lot);

    /// <summary>Hours that a set-up for a lot would take now (lot -1: sorted-out bulbs).</summary>
    public double SetUp(int line, int lot) => IsSetUp(line, lot) ? 0 : instance.Lines[line].SetUp;

    /// <summary>Scaled mass-in of a lot that there is time and people for.</summary>
    public double Room(int line, int lot)
    {
        InstanceLine l = instance.Lines[line];
        double all = hours[line] + overtime[line], left = all * (1 + Hair) - used[line];
        if (!double.IsInfinity(people)) left = Math.Min(left, (people + instance.People[week] * Hair - Reserved) / Math.Max(1e-9, l.Heads));
        return Math.Max(0, left - SetUp(line, lot)) * l.Rate;
    }

    /// <summary>Cost of the next hour.</summary>
    public double NextHour(int line) => used[line] < hours[line] ? instance.Lines[line].Cost : instance.Lines[line].OvertimeCost;

    /// <summary>Takes the hours of a run; their number.</summary>
    public double Run(int line, int lot, double massIn)
    {
        double needed = massIn / instance.Lines[line].Rate + SetUp(line, lot);
        setUp[line].Add(lot);
        used[line] += needed;
        people -= needed * instance.Lines[line].Heads;
        return needed;
    }

    /// <summary>Regular and overtime hours of a line, the cheaper first. What exceeds both is digits.</summary>
    public (double Hours, double Overtime) Split(int line)
    {
        bool overtimeFirst = instance.Lines[line].OvertimeCost < instance.Lines[line].Cost;
        double first = Math.Min(used[line], overtimeFirst ? overtime[line] : hours[line]), rest = used[line] - first;
        if (!overtimeFirst && overtime[line] == 0) return (used[line], 0);
        return overtimeFirst ? (rest, first) : (first, rest);
    }
}
