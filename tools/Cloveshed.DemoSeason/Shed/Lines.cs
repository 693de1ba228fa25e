using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Shed;

/// <summary>Two packing lines, a cracker and a seed line, their short weeks, and the hands of each week.</summary>
public static class Lines
{
    private const string PackOne = "Pack 1";
    private const string PackTwo = "Pack 2";
    private const string Cracker = "Cracker";
    private const string SeedLine = "Seed line";

    private static readonly (LocalDate Monday, decimal Part)[] HolidayWeeks =
    [
        (new(2026, 6, 29), 0.8m), (new(2026, 9, 7), 0.8m), (new(2026, 11, 23), 0.6m), (new(2026, 12, 21), 0.6m),
        (new(2026, 12, 28), 0.6m), (new(2027, 5, 31), 0.8m),
    ];

    public static string File()
    {
        Table t = new(
            "line", "mode", "rate_per_hour", "hours_per_week", "overtime_hours", "cost_per_hour", "overtime_cost_per_hour", "heads",
            "min_run", "setup_hours");
        t.Row(PackOne, "fresh", 3400, 40, 8, 395m, 540m, 15, 8000, 0.6m);
        t.Row(PackTwo, "fresh", 2100, 40, 10, 262m, 355m, 10, 4000, 0.4m);
        t.Row(Cracker, "crack", 3700, 40, 8, 318m, 432m, 11, 10000, 0.5m);
        t.Row(SeedLine, "seed", 3000, 40, 10, 228m, 310m, 8, 6000, 0.8m);
        return t.ToString();
    }

    public static string WeeksFile()
    {
        Table t = new("line", "week", "hours", "overtime_hours");
        foreach (string line in new[] { PackOne, PackTwo, Cracker })
        {
            foreach ((LocalDate monday, decimal part) in HolidayWeeks)
            {
                t.Row(line, monday, 40 * part, 4);
            }
        }

        // The sizer of the first line is rebuilt in the busiest weeks of the autumn: the part did not come sooner.
        t.Row(PackOne, new LocalDate(2026, 11, 2), 0, null);
        t.Row(PackOne, new LocalDate(2026, 11, 9), 0, null);
        // The cracker's rollers are changed in the slack of the late winter.
        t.Row(Cracker, new LocalDate(2027, 2, 15), 16, 0);
        // The seed line runs from August to October only.
        for (int w = 0; w < Scenario.Weeks; w++)
        {
            if (w is < 5 or > 16)
            {
                t.Row(SeedLine, Scenario.Monday(w), 0, null);
            }
        }

        return t.ToString();
    }

    /// <summary>Person-hours: in the harvest most hands are in the fields.</summary>
    public static string PeopleFile()
    {
        Table t = new("week", "hours");
        for (int w = 0; w < Scenario.Weeks; w++)
        {
            LocalDate monday = Scenario.Monday(w);
            bool holiday = HolidayWeeks.Any(h => h.Monday == monday);
            int hours = w switch
            {
                < 2 => 1500,
                < 5 => 1010,
                < 10 => 970,
                < 17 => 2050,
                < 28 => 1950,
                _ => 1750,
            };
            t.Row(monday, holiday && w > 5 ? hours * 7 / 10 : hours);
        }

        return t.ToString();
    }
}
