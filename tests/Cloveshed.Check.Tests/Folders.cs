using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Cloveshed.Check.Tests;

/// <summary>
/// A season's folder and an answer's folder, written by hand from the contract, file by file. In every row @k stands for the Monday
/// of week k (@-1: the week before the season). Files that may be missing are missing until a row is put into them.
/// </summary>
internal sealed partial class Folders
{
    private static readonly DateOnly FirstWeek = new(2026, 8, 3);

    private readonly Dictionary<string, string> season = [];
    private readonly Dictionary<string, string> answer = [];

    public static IReadOnlyDictionary<string, string> SeasonColumns { get; } = new Dictionary<string, string>
    {
        ["sizes.csv"] = "class,min_mm,max_mm",
        ["clove-grades.csv"] = "grade,min_mm,max_mm",
        ["varieties.csv"] = "variety,mass_a,mass_b,mass_s,keeps,cloves_per_bulb,clove_cv,clove_a,clove_b,clove_s",
        ["places.csv"] = "place,kind,capacity_bins,cost_per_bin_week,cost_per_week,move_in_cost,run_out_weeks",
        ["lots.csv"] = "lot,place,variety,field,harvested,bins,net,fresh_share,crack_share,organic,inhibitor,seed_class,mean_g,cv,ready,hold",
        ["yields.csv"] = "mode,kept_share",
        ["lines.csv"] = "line,mode,rate_per_hour,hours_per_week,overtime_hours,cost_per_hour,overtime_cost_per_hour,heads,min_run,setup_hours",
        ["line-weeks.csv"] = "line,week,hours,overtime_hours",
        ["people.csv"] = "week,hours",
        ["products.csv"] = "product,form,from,net,unit_cost,shelf_weeks,organic",
        ["stock.csv"] = "product,made,units,lot",
        ["rooms.csv"] = "place,sealed",
        ["orders.csv"] = "order,line,customer,product,ship_from,due,units,price,firm,late_cost,short_cost,larger_ok,whole",
        ["price-lists.csv"] = "list,product,from,to,price",
        ["freight.csv"] = "destination,product,cost",
        ["programs.csv"] = "program,customer,product,from,to,least,most,price,price_list,destination,late_cost,short_cost,larger_ok",
        ["promotions.csv"] = "promotion,customer,product,from,to,cut,extra",
        ["market.csv"] = "product,week,price,p10,p50,p90",
        ["seed-needs.csv"] = "variety,net,by,seed_class,short_cost",
        ["sell-as-is.csv"] = "variety,price,limit",
    };

    public static IReadOnlyDictionary<string, string> AnswerColumns { get; } = new Dictionary<string, string>
    {
        ["paths.csv"] = "path,lot,from_place,week,place,mass_ratio,fresh_share,crack_share,life_used",
        ["shares.csv"] = "lot,kind,name,share",
        ["runs.csv"] = "run,week,line,mode,source,lot,path,place,mass_in,mass_at_start,hours,overtime_hours,reason",
        ["sorted.csv"] = "run,lot,week,mass",
        ["made.csv"] = "run,week,product,lot,units,mass",
        ["fills.csv"] = "order,line,week,product,units",
        ["sales.csv"] = "week,product,units",
        ["as-is.csv"] = "kind,week,lot,path,place,mass,mass_at_start",
        ["shorts.csv"] = "order,line,units,why",
        ["keeps.csv"] = "week,lot,path,place,bins,mass_at_start",
        ["moves.csv"] = "week,lot,from,to,bins",
        ["rooms.csv"] = "place,sealed,opened",
        ["seed.csv"] = "run,week,variety,lot,seed_class,need_class,by,cloves",
        ["worths.csv"] = "kind,name,week,value",
    };

    public Folders()
    {
        foreach (string file in new[] { "sizes.csv", "varieties.csv", "places.csv", "lots.csv", "yields.csv", "lines.csv", "products.csv", "orders.csv" })
        {
            season[file] = SeasonColumns[file] + "\n";
        }

        foreach ((string file, string columns) in AnswerColumns)
        {
            answer[file] = columns + "\n";
        }

        Settings();
    }

    public IEnumerable<string> AnswerFiles => answer.Keys;

    public string AnswerText(string file) => answer[file];

    public IEnumerable<string> SeasonFiles => season.Keys;

    public string SeasonText(string file) => season[file];

    public Folders Settings(int weeks = 4, string asOf = "", string endPrice = "", string unit = "lb", int contract = 1)
    {
        var more = new StringBuilder();
        more.Append(asOf.Length > 0 ? $", \"as_of\": \"{asOf}\"" : "").Append(endPrice.Length > 0 ? $", \"end_price\": {endPrice}" : "");
        season["season.json"] =
            $$"""{"contract": {{contract}}, "name": "Quillon Flat Garlic", "first_week": "2026-08-03", "weeks": {{weeks}}, "mass_unit": "{{unit}}", "currency": "USD"{{more}}}""";
        return this;
    }

    public Folders Season(string file, params string[] rows)
    {
        season.TryAdd(file, SeasonColumns[file] + "\n");
        season[file] += Rows(rows);
        return this;
    }

    public Folders Answer(string file, params string[] rows)
    {
        answer[file] += Rows(rows);
        return this;
    }

    /// <summary>summary.json of a proven optimum with this value.</summary>
    public Folders Summary(double value) => Summary(Figure(value), Figure(value), "0", "0");

    public Folders Summary(string value, string bound, string gap, string gapOfRevenue)
    {
        answer["summary.json"] = $$"""{"value": {{value}}, "bound": {{bound}}, "gap": {{gap}}, "gap_of_revenue": {{gapOfRevenue}}}""";
        return this;
    }

    /// <summary>Puts one text in the place of another, which must be there exactly once, so that no change comes to nothing.</summary>
    public Folders Change(string file, string old, string with) => Change(answer, file, old, with);

    public Folders ChangeSeason(string file, string old, string with) => Change(season, file, old, with);

    /// <summary>Takes out the one row that holds a text.</summary>
    public Folders Drop(string file, string text)
    {
        string[] lines = answer[file].Split('\n');
        string line = Assert.Single(lines, line => line.Contains(Dated(text), StringComparison.Ordinal));
        answer[file] = string.Join('\n', lines.Where(other => other != line));
        return this;
    }

    public Folders Without(string file)
    {
        Assert.True(answer.Remove(file));
        return this;
    }

    public Folders WithText(string file, string text)
    {
        answer[file] = text;
        return this;
    }

    public Folders SeasonWithText(string file, string text)
    {
        season[file] = text;
        return this;
    }

    public CheckResult Check()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("cloveshed-check-");
        try
        {
            string seasonFolder = Write(folder, "season", season);
            return PlanCheck.Check(seasonFolder, Write(folder, "answer", answer));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Checks the answer with one file put in the place of its own, for each in turn; the folders are written once.</summary>
    public IEnumerable<(string Note, CheckResult Result)> CheckEach(IEnumerable<(string Note, string File, string Text)> variants)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("cloveshed-check-");
        try
        {
            string seasonFolder = Write(folder, "season", season);
            string answerFolder = Write(folder, "answer", answer);
            foreach ((string note, string file, string text) in variants)
            {
                File.WriteAllText(Path.Combine(answerFolder, file), text);
                yield return (note, PlanCheck.Check(seasonFolder, answerFolder));
                File.WriteAllText(Path.Combine(answerFolder, file), answer[file]);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public static string Figure(double figure) => figure.ToString("R", CultureInfo.InvariantCulture);

    private Folders Change(Dictionary<string, string> files, string file, string old, string with)
    {
        string[] parts = files[file].Split(Dated(old));
        Assert.True(parts.Length == 2, $"{old} is {parts.Length - 1} times in {file}");
        files[file] = parts[0] + Dated(with) + parts[1];
        return this;
    }

    private static string Write(DirectoryInfo folder, string name, Dictionary<string, string> files)
    {
        string path = folder.CreateSubdirectory(name).FullName;
        foreach ((string file, string text) in files)
        {
            File.WriteAllText(Path.Combine(path, file), text);
        }

        return path;
    }

    private static string Rows(string[] rows) => string.Concat(rows.Select(row => Dated(row) + "\n"));

    private static string Dated(string text) => WeekMark().Replace(text, mark =>
        FirstWeek.AddDays(7 * int.Parse(mark.Groups[1].Value, CultureInfo.InvariantCulture)).ToString("O", CultureInfo.InvariantCulture));

    [GeneratedRegex("@(-?[0-9]+)")]
    private static partial Regex WeekMark();
}
