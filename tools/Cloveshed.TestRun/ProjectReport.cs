using System.Text.Json;

namespace Cloveshed.TestRun;

/// <summary>One test that failed: its name, what it said, and where.</summary>
internal sealed record Failure(string Test, string Message, string Trace);

/// <summary>One test that was skipped, and why.</summary>
internal sealed record Skip(string Test, string Why);

/// <summary>What one test project reported. Trouble is null when it ran to its end and ran at least one test.</summary>
internal sealed record ProjectReport(
    string Name, int Passed, int Failed, int Skipped, TimeSpan Took, string? Trouble,
    IReadOnlyList<Failure> Failures, IReadOnlyList<Skip> Skips, IReadOnlyList<string> LogTail)
{
    public static ProjectReport Broken(string name, string trouble, IReadOnlyList<string> tail) =>
        new(name, 0, 0, 0, TimeSpan.Zero, trouble, [], [], tail);

    /// <summary>A test project without a single source file: an empty place kept for later, said but not counted.</summary>
    public static ProjectReport NotBegun(string name) => new(name, 0, 0, 0, TimeSpan.Zero, null, [], [], []);

    /// <summary>Reads a CTRF report (Common Test Report Format, ctrf.io) as the test runner writes it.</summary>
    public static ProjectReport Read(string name, string file, int exitCode, TimeSpan took, RunLog log)
    {
        if (!File.Exists(file))
        {
            return Broken(name, $"crashed with exit code {exitCode} and left no report", log.Tail());
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(file));
            return Read(name, document, exitCode, took, log);
        }
        catch (JsonException broken)
        {
            return Broken(name, $"ended with exit code {exitCode} and left a broken report: {broken.Message}", log.Tail());
        }
    }

    private static ProjectReport Read(string name, JsonDocument document, int exitCode, TimeSpan took, RunLog log)
    {
        JsonElement results = document.RootElement.GetProperty("results");
        JsonElement summary = results.GetProperty("summary");
        int passed = summary.GetProperty("passed").GetInt32();
        int failed = summary.GetProperty("failed").GetInt32() + summary.GetProperty("other").GetInt32();
        int skipped = summary.GetProperty("skipped").GetInt32() + summary.GetProperty("pending").GetInt32();
        JsonElement[] tests = [.. results.GetProperty("tests").EnumerateArray()];
        string? trouble = (passed + failed, exitCode) switch
        {
            (0, _) => "ran no test",
            (_, not 0) when failed == 0 => $"ended with exit code {exitCode} although no test failed",
            _ => null,
        };
        return new ProjectReport(
            name, passed, failed, skipped, took, trouble,
            [.. tests.Where(test => Text(test, "status") is "failed" or "other")
                .Select(test => new Failure(Text(test, "name"), Text(test, "message"), Text(test, "trace")))],
            [.. tests.Where(test => Text(test, "status") is "skipped" or "pending")
                .Select(test => new Skip(Text(test, "name"), Text(test, "message")))],
            trouble is null ? [] : log.Tail());
    }

    public string Line() =>
        $"{Name,-32} {Passed,6} passed {Failed,4} failed {Skipped,4} skipped {Took.TotalSeconds,7:0.0} s{(Trouble is null ? "" : "   " + Trouble)}";

    public IEnumerable<string> Details()
    {
        foreach (IGrouping<string, Skip> skips in Skips.GroupBy(skip => skip.Why))
        {
            string others = skips.Count() == 1 ? "" : $" and {skips.Count() - 1} more";
            yield return $"SKIPPED {skips.First().Test}{others}: {skips.Key}";
        }

        foreach (Failure failure in Failures)
        {
            yield return "";
            yield return $"FAILED  {failure.Test}";
            foreach (string line in failure.Message.Split('\n').Concat(failure.Trace.Split('\n').Take(8)))
            {
                yield return "        " + line.TrimEnd();
            }
        }

        if (Trouble is not null)
        {
            yield return "";
            yield return $"FAILED  {Name} {Trouble}";
            foreach (string line in LogTail)
            {
                yield return "        " + line.TrimEnd();
            }
        }
    }

    private static string Text(JsonElement test, string key) =>
        test.TryGetProperty(key, out JsonElement value) ? value.GetString() ?? "" : "";
}
