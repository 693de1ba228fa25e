using Cloveshed.Check.Reading;

namespace Cloveshed.Check.Season;

/// <summary>Places, rooms, lines and people.</summary>
internal static class ShedReading
{
    private const int Forever = 100_000;

    public static void Read(string folder, SeasonData season, Findings findings)
    {
        Places(folder, season, findings);
        Rooms(folder, season, findings);
        Lines(folder, season, findings);
        LineWeeks(folder, season, findings);
        People(folder, season, findings);
    }

    /// <summary>A number of weeks; beyond any season it is as good as endless.</summary>
    public static int WeeksOf(double weeks) => (int)Math.Min(Forever, Math.Floor(weeks));

    private static void Places(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "places.csv", false, season: true, findings, "place", "kind", "capacity_bins");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            string name = row.Name("place");
            season.Places.Add(table!, row, name, new Place(
                name, row.OneOf("kind", "open", "cold", "sealed"), row.Amount("capacity_bins"), row.FiniteOr("cost_per_bin_week", 0),
                row.FiniteOr("cost_per_week", 0), row.FiniteOr("move_in_cost", 0),
                row.AmountOrNull("run_out_weeks") is double weeks ? WeeksOf(weeks) : null));
        }
    }

    private static void Rooms(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "rooms.csv", true, season: true, findings, "place", "sealed");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            season.SealedRooms.Add(table!, row, row.Name("place"), (season.Calendar.WeekOf(row.Date("sealed")), row.Text("sealed")));
        }
    }

    private static void Lines(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(
            folder, "lines.csv", false, season: true, findings, "line", "mode", "rate_per_hour", "hours_per_week");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            string name = row.Name("line");
            double cost = row.FiniteOr("cost_per_hour", 0);
            season.Lines.Add(table!, row, name, new Line(
                name, row.OneOf("mode", "fresh", "crack", "seed"), row.Amount("rate_per_hour"), row.Amount("hours_per_week"),
                row.AmountOr("overtime_hours", 0), cost, row.FiniteOr("overtime_cost_per_hour", cost), row.AmountOr("heads", 1),
                row.AmountOr("min_run", 0), row.AmountOr("setup_hours", 0)));
        }
    }

    private static void LineWeeks(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "line-weeks.csv", true, season: true, findings, "line", "week", "hours");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            string line = row.Name("line");
            double hours = row.Amount("hours");
            double usual = season.Lines.TryGetValue(line, out Line? known) ? known.Overtime : 0;
            double overtime = row.AmountOr("overtime_hours", hours <= 0 ? 0 : usual);
            season.LineWeeks.Add(table!, row, (line, season.Calendar.WeekOf(row.Date("week"))), (hours, overtime));
        }
    }

    private static void People(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "people.csv", true, season: true, findings, "week", "hours");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            season.People.Add(table!, row, season.Calendar.WeekOf(row.Date("week")), row.Amount("hours"));
        }
    }
}
