using Cloveshed.Check.Reading;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Answer;

/// <summary>
/// Reads the answer's folder. A fault is reported and the row left out, so that the other rules still see the rest. Two rows with
/// one key are reported, and both are kept: what they say together is then judged too. report.html is for people and is not read.
/// </summary>
internal sealed partial class AnswerReading
{
    private readonly string folder;
    private readonly SeasonData season;
    private readonly Findings findings;

    private AnswerReading(string folder, SeasonData season, Findings findings) =>
        (this.folder, this.season, this.findings) = (folder, season, findings);

    public static AnswerData Read(string folder, SeasonData season, Findings findings)
    {
        var reading = new AnswerReading(folder, season, findings);
        var answer = new AnswerData();
        reading.Garlic(answer);
        reading.Trade(answer);
        reading.Yard(answer);
        reading.Worths();
        answer.Complete = findings.None;
        answer.Summary = SummaryReading.Read(folder, findings);
        return answer;
    }

    /// <summary>Every row of a file through its maker; the key is what must not come twice (null: rows of one key add up).</summary>
    private void Each<T>(string file, List<T> into, Func<CsvRow, T> make, Func<T, object?> key, params string[] columns)
    {
        CsvTable? table = CsvTable.Read(folder, file, mayBeMissing: false, season: false, findings, columns);
        var seen = new HashSet<object>();
        foreach (CsvRow row in table?.Rows ?? [])
        {
            T made = make(row);
            if (!row.Sound)
            {
                continue;
            }

            into.Add(made);
            if (key(made) is object known && !seen.Add(known))
            {
                table!.Report(RuleNames.RowTwice, row.Where, $"{known} twice", "each key once");
            }
        }
    }

    // A week of the season, by its Monday; last is the last one allowed.
    private int Week(CsvRow row, string column, int last)
    {
        int week = AnyWeek(row, column);
        if (row.Sound && (week < 0 || week > last))
        {
            row.NotSound();
            findings.Add(
                RuleNames.Week, row.Where, $"{column} {row.Text(column)}", $"a week from {season.Calendar.Show(0)} to {season.Calendar.Show(last)}");
        }

        return week;
    }

    private int Week(CsvRow row) => Week(row, "week", season.Weeks - 1);

    private int AnyWeek(CsvRow row, string column)
    {
        DateOnly date = row.Date(column);
        if (row.Sound && date.DayOfWeek != DayOfWeek.Monday)
        {
            row.NotSound();
            findings.Add(RuleNames.Week, row.Where, $"{column} {row.Text(column)}", "a Monday");
        }

        return season.Calendar.WeekOf(date);
    }

    private string Known<T>(CsvRow row, string column, Dictionary<string, T> known, string file)
    {
        string name = row.Name(column);
        if (name.Length > 0 && !known.ContainsKey(name))
        {
            row.NotSound();
            findings.Add(RuleNames.UnknownName, row.Where, $"{column} {name}", $"a {column} of {file}");
        }

        return name;
    }

    private string Lot(CsvRow row) => Known(row, "lot", season.Lots, "lots.csv");

    private string Place(CsvRow row, string column) => Known(row, column, season.Places, "places.csv");

    private string Product(CsvRow row) => Known(row, "product", season.Products, "products.csv");
}
