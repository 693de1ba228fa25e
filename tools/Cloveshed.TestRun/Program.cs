using System.Collections.Concurrent;
using System.Globalization;
using Cloveshed.TestRun;

// Runs every built test project, two at a time, and adds up what they report: one that waits leaves its core to the other. The last
// line printed is always "N passed, N failed, N skipped". A project that crashes, runs out of time or runs no test counts as one
// failure: silence must never look like success.

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
Arguments? asked = Arguments.Read(args);
if (asked is null)
{
    Console.Error.WriteLine(Arguments.Usage);
    return 2;
}

Directory.CreateDirectory(asked.Results);
var ended = new ConcurrentBag<ProjectReport>();
Parallel.ForEach(
    Partitioner.Create(asked.Projects(), EnumerablePartitionerOptions.NoBuffering), new ParallelOptions { MaxDegreeOfParallelism = asked.Together }, project =>
    {
        ProjectReport report = ProjectRun.Of(project, asked.Results, asked.Limit);
        Console.WriteLine(report.Line());
        ended.Add(report);
    });

ProjectReport[] reports = [.. ended.OrderBy(report => report.Name, StringComparer.Ordinal)];
int passed = reports.Sum(report => report.Passed), skipped = reports.Sum(report => report.Skipped);
int failed = reports.Sum(report => report.Failed + (report.Trouble is null ? 0 : 1));
foreach (string line in reports.SelectMany(report => report.Details()))
{
    Console.WriteLine(line);
}

if (passed + failed == 0)
{
    Console.WriteLine("No test was found.");
    failed = 1;
}

Console.WriteLine($"{passed} passed, {failed} failed, {skipped} skipped");
return failed == 0 ? 0 : 1;
