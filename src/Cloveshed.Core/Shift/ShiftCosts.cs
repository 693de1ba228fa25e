namespace Cloveshed.Core.Shift;

/// <summary>Units of a product that a dock does not find ready.</summary>
public sealed record DockShort(DockNeed Need, double Units, double Cost);

/// <summary>What a schedule costs, in the season's currency.</summary>
/// <param name="Late">Of units short at docks.</param>
/// <param name="Overrun">Of runs' minutes after the week's last shift.</param>
/// <param name="Changeover">Of set-ups: their rows' money and the line's cost for their minutes.</param>
public sealed record ShiftCosts(double Late, double Overrun, double Changeover, int OverrunMinutes, int SetupMinutes, int CleanOuts, IReadOnlyList<DockShort> Shorts)
{
    /// <summary>What is made small first; changeover comes after it.</summary>
    public double First => Late + Overrun;

    /// <summary>Units within this are rounding.</summary>
    public const double Nothing = 1e-6;

    /// <summary>Of a schedule whose runs all have a place; pure.</summary>
    public static ShiftCosts Of(ShiftQuestion question, ShiftTiming timing, ShiftSchedule schedule)
    {
        Dictionary<string, ShiftRun> runs = question.Runs.ToDictionary(run => run.Id);
        double overrun = 0, changeover = 0;
        int overrunMinutes = 0, setupMinutes = 0, cleanOuts = 0;
        foreach (ShiftLine line in question.Lines)
        {
            ShiftRun? before = null;
            foreach (PlacedRun placed in schedule.Of(line.Id))
            {
                int over = Math.Max(0, placed.End - Math.Max(placed.Start, ShiftQuestion.WeekMinutes));
                overrunMinutes += over;
                overrun += over / 60.0 * line.OverrunPerHour;
                if (before is not null)
                {
                    SetUp setUp = timing.Setups.Between(before, runs[placed.Run]);
                    setupMinutes += setUp.Minutes;
                    changeover += setUp.Cost;
                    cleanOuts += setUp.CleanOut ? 1 : 0;
                }

                before = runs[placed.Run];
            }
        }

        DockShort[] shorts = [.. question.Needs.Select(need => (need, Units: need.Units - Ready(timing, schedule, runs, need)))
            .Where(found => found.Units > Nothing).Select(found => new DockShort(found.need, found.Units, found.Units * found.need.CostPerUnit))];
        return new ShiftCosts(shorts.Sum(row => row.Cost), overrun, changeover, overrunMinutes, setupMinutes, cleanOuts, shorts);
    }

    /// <summary>Units that runs have made by a minute, evenly over their worked minutes.</summary>
    private static double Ready(ShiftTiming timing, ShiftSchedule schedule, Dictionary<string, ShiftRun> runs, DockNeed need)
    {
        double ready = 0;
        foreach (PlacedRun placed in schedule.Runs)
            foreach (RunMakes makes in runs[placed.Run].Makes.Where(makes => makes.Product == need.Product))
            {
                LineHours line = timing.Hours(placed.Line);
                int worked = Math.Clamp(line.Worked(need.Minute) - line.Worked(placed.Start), 0, runs[placed.Run].Minutes);
                ready += makes.Units * worked / runs[placed.Run].Minutes;
            }

        return ready;
    }
}
