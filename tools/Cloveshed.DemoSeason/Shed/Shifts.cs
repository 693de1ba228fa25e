using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Shed;

/// <summary>When the lines work, and what stands between two runs. Minutes are the shed's own, common practice, no source.</summary>
public static class Shifts
{
    private static readonly string[] Weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday"];

    /// <summary>Days off in the weeks that lines.csv shortens.</summary>
    private static readonly (LocalDate Monday, string Name, string[] Days)[] Holidays =
    [
        (new(2026, 6, 29), "Independence Day", ["friday"]), (new(2026, 9, 7), "Labor Day", ["monday"]), (new(2026, 11, 23), "Thanksgiving", ["thursday", "friday"]),
        (new(2026, 12, 21), "Christmas", ["thursday", "friday"]), (new(2026, 12, 28), "New Year", ["thursday", "friday"]), (new(2027, 5, 31), "Memorial Day", ["monday"]),
    ];

    public static string File()
    {
        Table t = new("kind", "name", "line", "week", "day", "start", "end", "heads");
        Work(t, null, 46);
        // In the harvest most hands are in the fields: not all lines can run at once.
        for (int week = 2; week < 10; week++)
        {
            Work(t, Scenario.Monday(week), 28);
        }

        t.Row("break", "Morning break", null, null, null, "09:00", "09:15", null);
        foreach (string day in Weekdays)
        {
            t.Row("break", "Meal", null, null, day, "12:00", "12:30", null);
            t.Row("break", "Afternoon break", null, null, day, "14:30", "14:45", null);
        }

        t.Row("maintenance", "Sizer service", "Pack 1", null, "wednesday", "15:00", "16:30", null);
        t.Row("maintenance", "Roller check", "Cracker", null, "friday", "06:00", "07:00", null);
        t.Row("maintenance", "Sizer rebuilt", "Pack 1", new LocalDate(2026, 11, 2), null, "00:00", "24:00", null);
        t.Row("maintenance", "Sizer rebuilt", "Pack 1", new LocalDate(2026, 11, 9), null, "00:00", "24:00", null);
        foreach (string day in Weekdays[..3])
        {
            t.Row("maintenance", "Rollers changed", "Cracker", new LocalDate(2027, 2, 15), day, "00:00", "24:00", null);
        }

        foreach ((LocalDate monday, string name, string[] days) in Holidays)
        {
            foreach (string day in days)
            {
                t.Row("closed", name, null, monday, day, "00:00", "24:00", null);
            }
        }

        foreach (string day in Weekdays)
        {
            t.Row("dock", "Trucks", null, null, day, "07:00", "15:00", null);
        }

        return t.ToString();
    }

    public static string SetupsFile()
    {
        Table t = new("kind", "line", "from", "to", "minutes", "cost", "step");
        t.Row("variety", null, null, null, 20, 18m, "Run the line empty; sweep hoppers and belts; change lot tags and labels");
        t.Row("variety", "Pack 2", null, null, 12, 10m, "Run the line empty; sweep hoppers and belts; change lot tags and labels");
        t.Row("variety", "Cracker", null, null, 15, 12m, "Run the cracker empty; clear skins from the air leg; change lot tags");
        t.Row("variety", "Pack 1", "Streak", null, 30, 24m, "Loose red skins: blow down brushes and cups as well; then as for any change");
        t.Row("variety", "Seed line", null, null, 30, 20m, "Empty every bin and pan: not one clove of another variety may stay");
        t.Row("organic", null, "conventional", "organic", 75, 140m, "Clean-out: blow down; wash what food touches; inspect; sign the log");
        t.Row("cuts", "Pack 1", null, null, 15, 0m, "Set the sizer's cuts; check ten bulbs of each class on the scale");
        t.Row("cuts", "Pack 2", null, null, 12, 0m, "Set the sizer's cuts; check ten bulbs of each class on the scale");
        t.Row("cuts", "Cracker", null, null, 5, 0m, "Change the drum's sections; check a pan of each grade");
        t.Row("cleaning", null, null, null, 20, 0m, "Clean and inspect what food touches before the day's first run");
        t.Row("travel", null, Places.Yard, null, 10, 0m, null);
        t.Row("travel", null, null, null, 15, 0m, null);
        foreach (string room in new[] { "Sealed A", "Sealed B", "Sealed C", Places.FullRoom })
        {
            t.Row("travel", null, room, null, 25, 0m, null);
        }

        return t.ToString();
    }

    private static void Work(Table t, LocalDate? week, int heads)
    {
        foreach (string day in Weekdays)
        {
            t.Row("work", "Day", null, week, day, "06:00", "16:30", heads);
        }

        t.Row("work", "Saturday", null, week, "saturday", "06:00", "12:15", heads);
    }
}
