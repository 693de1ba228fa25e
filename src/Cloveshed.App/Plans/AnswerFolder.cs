using System.Text;
using Cloveshed.App.Words;
using Cloveshed.Check;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;

namespace Cloveshed.App.Plans;

/// <summary>
/// The folder OUT and what stands beside it: an answer is first written into a folder of its own and checked there. Only one
/// that holds comes into OUT; one that does not goes into OUT.failed, without a report and with a file that says why.
/// </summary>
internal static class AnswerFolder
{
    public const string ReportName = "report.html";
    public const string NoticeName = "DO-NOT-USE.txt";

    public static string FailedName(string folder) => Path.TrimEndingDirectorySeparator(folder) + ".failed";

    /// <summary>Why OUT cannot take an answer, before a minute is spent on one; null when it can.</summary>
    public static string? Obstacle(string folder, Phrasebook phrases)
    {
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(target))
        {
            return phrases.Say(Phrase.OutIsFile, folder);
        }

        // rooms.csv is a file of a season and of an answer: one would overwrite the other.
        if (File.Exists(Path.Combine(target, "season.json")))
        {
            return phrases.Say(Phrase.OutIsSeason, folder);
        }

        if (Path.GetDirectoryName(target) is not { } parent)
        {
            return phrases.Say(Phrase.OutIsRoot, folder);
        }

        try
        {
            // Into the nearest folder that is there, so that nothing is left behind.
            string there = parent;
            while (!Directory.Exists(there) && Path.GetDirectoryName(there) is { } above)
            {
                there = above;
            }

            string trial = Path.Combine(there, $".{Path.GetFileName(target)}.trial-{Path.GetRandomFileName()}");
            Directory.CreateDirectory(trial);
            Directory.Delete(trial);
            return null;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return phrases.Say(Phrase.OutNotWritable, folder, problem.Message.ReplaceLineEndings(" "));
        }
    }

    /// <summary>Checks the answer as files, then puts it into OUT, or beside it when it does not hold.</summary>
    public static CheckResult Deliver(PlanAnswer answer, Season season, string report, PlanQuestion question, Phrasebook phrases)
    {
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(question.Out));
        string waiting = Path.Combine(Path.GetDirectoryName(target)!, $".{Path.GetFileName(target)}.checking-{Path.GetRandomFileName()}");
        try
        {
            AnswerWriter.Write(answer, season, waiting);
            CheckResult check = PlanCheck.Check(question.Folder, waiting);
            // The same bytes again: writing an answer is a pure function of it.
            if (check.Holds)
            {
                AnswerWriter.Write(answer, season, question.Out, [(ReportName, Encoding.UTF8.GetBytes(report))]);
            }
            else
            {
                AnswerWriter.Write(answer, season, FailedName(question.Out), [(NoticeName, Encoding.UTF8.GetBytes(Notice(check, phrases)))]);
            }

            return check;
        }
        finally
        {
            if (Directory.Exists(waiting))
            {
                Directory.Delete(waiting, recursive: true);
            }
        }
    }

    private static string Notice(CheckResult check, Phrasebook phrases) =>
        string.Join('\n', check.Breaches.Select(breach => phrases.Say(Phrase.BreachLine, breach.Rule, breach.Where, breach.Found, breach.Allowed)).Prepend(phrases[Phrase.NotToBeUsed])) + "\n";
}
