using System.Globalization;
using System.Runtime.CompilerServices;

namespace Cloveshed.Seasons.Tests.Golden;

/// <summary>
/// The expected figures, in the file demo-season.txt beside this one: a line each, "name = figure ± slack", the slack in
/// percent of the figure or as it stands; a line without one is held to the letter.
/// </summary>
internal static class ExpectedFigures
{
    /// <summary>Set to 1 to have the file rewritten with what the planner finds now; the slacks stay. Then read the difference.</summary>
    private const string Accept = "CLOVESHED_ACCEPT";

    private const string PlusMinus = " ± ";

    /// <summary>A sentence for each figure that is not as expected; none where all are.</summary>
    public static IReadOnlyList<string> Differences(IReadOnlyDictionary<string, string> found, [CallerFilePath] string beside = "")
    {
        string file = Path.Combine(Path.GetDirectoryName(beside)!, "demo-season.txt");
        string[] lines = File.ReadAllLines(file);
        var expected = lines.Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split(" = ", 2)).ToDictionary(p => p[0], p => p[1].Split(PlusMinus), StringComparer.Ordinal);
        if (Environment.GetEnvironmentVariable(Accept) == "1")
            File.WriteAllLines(file, [.. lines.TakeWhile(l => l.StartsWith('#')), .. found.Select(f => $"{f.Key} = {f.Value}{(Slack(f.Key, expected) is { } slack ? PlusMinus + slack : "")}")]);
        return
        [
            .. expected.Keys.Except(found.Keys).Select(name => $"{name}: not in this plan, expected {expected[name][0]}"),
            .. found.Where(f => !expected.TryGetValue(f.Key, out string[]? e) || !Near(f.Value, e))
                .Select(f => $"{f.Key}: {f.Value}, expected {(expected.TryGetValue(f.Key, out string[]? e) ? string.Join(PlusMinus, e) : "nothing")}"),
        ];
    }

    /// <summary>A new name takes the slack of its kind: what stands before its first colon.</summary>
    private static string? Slack(string name, Dictionary<string, string[]> expected) =>
        expected.TryGetValue(name, out string[]? own) ? own.ElementAtOrDefault(1)
            : expected.Where(e => name.Contains(':', StringComparison.Ordinal) && e.Key.Split(':')[0] == name.Split(':')[0]).Select(e => e.Value.ElementAtOrDefault(1)).FirstOrDefault();

    internal static bool Near(string found, string[] expected)
    {
        if (expected.Length == 1) return found == expected[0];
        double middle = Number(expected[0]);
        double slack = expected[1].EndsWith('%') ? Number(expected[1][..^1]) / 100 * Math.Abs(middle) : Number(expected[1]);
        return Math.Abs(Number(found) - middle) <= slack;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
