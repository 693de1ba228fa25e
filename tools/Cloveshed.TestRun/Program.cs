using System.Globalization;
using Cloveshed.TestRun;

// Runs every built test project, one after another, and adds up what they report. The last line printed is always
// "N passed, N failed, N skipped". A project that crashes, runs out of time or runs no test counts as one failure: silence
// must never look like success.

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
Arguments? asked = Arguments.Read(args);
if (asked is null)
{
    Console.Error.WriteLine(Arguments.Usage);
    return 2;
}

Directory.CreateDirectory(asked.Results);
int passed = 0, failed = 0, skipped = 0;
var reports = new List<ProjectReport>();
foreach (string project in asked.Projects())
{
    ProjectReport report = ProjectRun.Of(project, asked.Results, asked.Limit);
    Console.WriteLine(report.Line());
    reports.Add(report);
    passed += report.Passed;
    failed += report.Failed + (report.Trouble is null ? 0 : 1);
    skipped += report.Skipped;
}

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
