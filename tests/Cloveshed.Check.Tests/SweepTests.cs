using System.Globalization;
using CsCheck;

namespace Cloveshed.Check.Tests;

/// <summary>Not single faults but all of a kind: every figure of every honest answer, every row, and files that are no files.</summary>
public class SweepTests
{
    public static TheoryData<string> Names => [.. Scenarios.All.Keys];

    /// <summary>Life used may be more than need be; every other figure is tied to something.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Every_figure_that_is_made_larger_is_a_breach(string name)
    {
        Folders folders = Scenarios.All[name].Folders();
        foreach ((string note, CheckResult result) in folders.CheckEach(folders.AnswerFiles.Where(IsTable).SelectMany(file => Larger(file, folders.AnswerText(file)))))
        {
            Assert.False(result.Holds, note);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_row_that_is_left_out_or_written_twice_is_a_breach(string name)
    {
        Folders folders = Scenarios.All[name].Folders();
        foreach ((string note, CheckResult result) in folders.CheckEach(folders.AnswerFiles.Where(IsTable).SelectMany(file => RowsWrong(file, folders.AnswerText(file)))))
        {
            Assert.False(result.Holds, note);
        }
    }

    /// <summary>A fill may honestly be later, and a room sealed or opened at another time; every other date is tied to a path or a run.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Every_row_that_is_put_into_the_next_week_is_a_breach(string name)
    {
        Folders folders = Scenarios.All[name].Folders();
        IEnumerable<string> files = folders.AnswerFiles.Where(file => IsTable(file) && file is not ("fills.csv" or "rooms.csv"));
        foreach ((string note, CheckResult result) in folders.CheckEach(files.SelectMany(file => Later(file, folders.AnswerText(file)))))
        {
            Assert.False(result.Holds, note);
        }
    }

    [Fact]
    public void No_text_in_any_file_makes_it_throw()
    {
        Folders honest = Scenarios.SortedToCracker();
        string[] answers = [.. honest.AnswerFiles];
        string[] seasons = [.. honest.SeasonFiles];
        string[] strange =
        [
            "", ",", "\"", "\n", "\r", "-1", "1e308", "-1e308", "NaN", "0001-01-01", "9999-12-27", "\0", "\uFEFF", "\u00e9", "p1", "r1", "{", "}",
            "999999999999", "1e-320",
        ];
        Gen.Select(Gen.Int[0, answers.Length + seasons.Length - 1], Gen.Int[0, 2000], Gen.Int[0, 12], Gen.Int[0, strange.Length - 1]).Sample(
            (which, from, length, what) =>
            {
                Folders folders = Scenarios.SortedToCracker();
                bool inAnswer = which < answers.Length;
                string file = inAnswer ? answers[which] : seasons[which - answers.Length];
                string text = inAnswer ? folders.AnswerText(file) : folders.SeasonText(file);
                int at = from % text.Length;
                string changed = text[..at] + strange[what] + text[Math.Min(text.Length, at + length)..];
                _ = inAnswer ? folders.WithText(file, changed) : folders.SeasonWithText(file, changed);
                Assert.NotNull(folders.Check().Breaches);
            },
            iter: 500, threads: 1);
    }

    private static bool IsTable(string file) => file.EndsWith(".csv", StringComparison.Ordinal);

    private static IEnumerable<(string, string, string)> Larger(string file, string text) => EachCell(file, text, (column, cell) =>
        column != "life_used" && double.TryParse(cell, CultureInfo.InvariantCulture, out double figure) ? Folders.Figure((figure * 1.05) + 0.05) : null);

    private static IEnumerable<(string, string, string)> Later(string file, string text) => EachCell(file, text, (_, cell) =>
        DateOnly.TryParseExact(cell, "O", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date)
            ? date.AddDays(7).ToString("O", CultureInfo.InvariantCulture)
            : null);

    // The file once for each cell that the change has something for, with that cell changed.
    private static IEnumerable<(string, string, string)> EachCell(string file, string text, Func<string, string, string?> change)
    {
        string[] lines = text.TrimEnd('\n').Split('\n');
        string[] columns = lines[0].Split(',');
        for (int row = 1; row < lines.Length; row++)
        {
            string[] cells = lines[row].Split(',');
            for (int column = 0; column < cells.Length; column++)
            {
                if (change(columns[column], cells[column]) is string other)
                {
                    string[] changed = [.. cells];
                    changed[column] = other;
                    yield return ($"{file}: {string.Join(',', changed)}", file, string.Join('\n', [.. lines[..row], string.Join(',', changed), .. lines[(row + 1)..]]) + "\n");
                }
            }
        }
    }

    // What may be left out: a share of nothing; bulbs sorted out that nobody cracks (they are waste then); the sealing of a room that
    // serves as a cold place as well.
    private static IEnumerable<(string, string, string)> RowsWrong(string file, string text)
    {
        string[] lines = text.TrimEnd('\n').Split('\n');
        for (int row = 1; row < lines.Length; row++)
        {
            yield return ($"{file} twice: {lines[row]}", file, string.Join('\n', [.. lines[..row], lines[row], .. lines[row..]]) + "\n");
            if (!lines[row].EndsWith(",0", StringComparison.Ordinal) && file is not ("sorted.csv" or "rooms.csv"))
            {
                yield return ($"{file} without: {lines[row]}", file, string.Join('\n', [.. lines[..row], .. lines[(row + 1)..]]) + "\n");
            }
        }
    }
}
