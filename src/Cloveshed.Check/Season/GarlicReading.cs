using Cloveshed.Check.Reading;

namespace Cloveshed.Check.Season;

/// <summary>Sizes, grades, varieties, lots and yields.</summary>
internal static class GarlicReading
{
    public static void Read(string folder, SeasonData season, Findings findings)
    {
        Windows(folder, "sizes.csv", "class", mayBeMissing: false, season.Sizes, findings);
        Windows(folder, "clove-grades.csv", "grade", mayBeMissing: true, season.Grades, findings);
        Varieties(folder, season, findings);
        Yields(folder, season, findings);
        Lots(folder, season, findings);
    }

    private static void Windows(string folder, string file, string name, bool mayBeMissing, List<Window> windows, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, file, mayBeMissing, season: true, findings, name, "min_mm");
        var seen = new Dictionary<string, Window>();
        foreach (CsvRow row in table?.Rows ?? [])
        {
            var window = new Window(row.Name(name), row.Amount("min_mm"), row.AmountOrNull("max_mm"));
            seen.Add(table!, row, window.Name, window);
        }

        // Small to large is what the next larger class goes by, whatever the order of the rows.
        windows.AddRange(seen.Values.OrderBy(window => window.Min));
    }

    private static void Varieties(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "varieties.csv", false, season: true, findings, "variety");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            string name = row.Name("variety");
            season.Varieties.Add(table!, row, name, new Variety(
                name, Law(row, "mass"), Law(row, "clove"), row.AmountOrNull("cloves_per_bulb"), row.AmountOrNull("clove_cv")));
        }
    }

    private static MassLaw? Law(CsvRow row, string kind) =>
        row.FiniteOrNull($"{kind}_a") is double a && row.FiniteOrNull($"{kind}_b") is double b && row.AmountOrNull($"{kind}_s") is double s
            ? new MassLaw(a, b, s)
            : null;

    private static void Yields(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(folder, "yields.csv", false, season: true, findings, "mode", "kept_share");
        foreach (CsvRow row in table?.Rows ?? [])
        {
            season.KeptShares.Add(table!, row, row.OneOf("mode", "fresh", "crack", "seed"), row.Amount("kept_share"));
        }
    }

    private static void Lots(string folder, SeasonData season, Findings findings)
    {
        CsvTable? table = CsvTable.Read(
            folder, "lots.csv", false, season: true, findings, "lot", "place", "variety", "harvested", "bins", "net");
        Calendar calendar = season.Calendar;
        DateOnly described = calendar.AsOf > calendar.FirstWeek ? calendar.AsOf : calendar.FirstWeek;
        foreach (CsvRow row in table?.Rows ?? [])
        {
            var lot = new Lot(
                row.Name("lot"), row.Name("variety"), row.Flag("organic", false), row.Flag("inhibitor", false),
                row.OneOf("seed_class", "", "A", "B", "C"), row.FiniteOrNull("mean_g"), row.FiniteOrNull("cv"),
                row.DateOrNull("ready"), row.Flag("hold", false));
            string place = row.Name("place");
            DateOnly harvested = row.Date("harvested");
            int start = calendar.WeekOf(harvested > described ? harvested : described);
            if (row.Sound && !season.Varieties.ContainsKey(lot.Variety))
            {
                table!.Report(RuleNames.UnknownName, row.Where, $"variety {lot.Variety}", "a variety of varieties.csv");
            }

            season.Lots.TryAdd(lot.Name, lot);
            season.LotRows.Add(table!, row, (lot.Name, place), new LotRow(
                season.Lots[lot.Name], place, row.Amount("bins"), row.Amount("net"), row.AmountOrNull("fresh_share"),
                row.AmountOrNull("crack_share"), start, harvested < described));
        }
    }
}
