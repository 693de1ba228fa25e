using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// Line hours that one scaled mass-in of a lot takes on a line in a week, set-up included. The charge of the bound spreads the
/// set-up over the most that the lot could run there in that week: no real run is charged more than it costs. Infinite: not allowed.
/// </summary>
public sealed class RunCharges
{
    private readonly double[,,] _hours;
    private readonly double[,] _sortedHours;

    private RunCharges(double[,,] hours, double[,] sortedHours)
    {
        _hours = hours;
        _sortedHours = sortedHours;
    }

    public static RunCharges ForBound(PlanningInstance instance)
    {
        double[,,] hours = new double[instance.Lots.Length, instance.Lines.Length, instance.Weeks];
        double[,] sorted = new double[instance.Lines.Length, instance.Weeks];
        HashSet<(int, int, int)> barred = instance.Wishes.Bars(instance);
        for (int i = 0; i < instance.Lines.Length; i++)
        {
            InstanceLine line = instance.Lines[i];
            for (int t = 0; t < instance.Weeks; t++)
            {
                double most = MostInAWeek(instance, i, t);
                sorted[i, t] = line.Mode == LineMode.Crack && most > 0 && t >= instance.AsOf ? 1 / line.Rate + line.SetUp / most : double.PositiveInfinity;
                for (int l = 0; l < instance.Lots.Length; l++)
                {
                    InstanceLot lot = instance.Lots[l];
                    double run = Math.Min(lot.Mass, most);
                    hours[l, i, t] = !lot.Hold && t >= lot.ReadyWeek && t >= instance.AsOf && run > 0 && !barred.Contains((l, i, t))
                        ? 1 / line.Rate + line.SetUp / run : double.PositiveInfinity;
                }
            }
        }
        return new RunCharges(hours, sorted);
    }

    /// <summary>The most mass-in that a line takes in a week with one set-up; people count too.</summary>
    public static double MostInAWeek(PlanningInstance instance, int line, int week)
    {
        InstanceLine l = instance.Lines[line];
        double hours = l.Hours[week] + l.Overtime[week];
        if (l.Heads > 0) hours = Math.Min(hours, instance.People[week] / l.Heads);
        return Math.Max(0, hours - l.SetUp) * l.Rate;
    }

    public double this[int lot, int line, int week]
    {
        get => _hours[lot, line, week];
        internal set => _hours[lot, line, week] = value;
    }

    public double OfSorted(int line, int week) => _sortedHours[line, week];

    public void SetSorted(int line, int week, double hours) => _sortedHours[line, week] = hours;

    public RunCharges Copy() => new((double[,,])_hours.Clone(), (double[,])_sortedHours.Clone());
}
