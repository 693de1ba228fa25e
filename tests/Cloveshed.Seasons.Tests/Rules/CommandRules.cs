using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Cloveshed.Seasons.Tests.Rules;

/// <summary>The program itself is asked what commands it has: each has its page in the manual, and no page is of a command that is gone.</summary>
public partial class CommandRules
{
    [Fact]
    public void Every_command_has_a_page_in_the_manual_and_every_page_a_command()
    {
        string[] commands = [.. CommandLine().Matches(AfterHeading(Ask("--help"), "Commands:")).Select(match => match.Groups["name"].Value)];
        if (commands.Length == 0)
        {
            Assert.Skip("The program lists no command yet: this checks the manual as soon as it does.");
        }

        string index = File.ReadAllText(Path.Combine(Root(), "docs", "manual", "README.md"));
        string listed = index.Split("\n## Commands\n")[1].Split("\n## ")[0];
        Assert.Equal(commands.Order(StringComparer.Ordinal), PageLink().Matches(listed).Select(match => match.Groups["page"].Value).Order(StringComparer.Ordinal));
    }

    private static string Ask(string argument)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "cloveshed.dll"), argument]) { RedirectStandardOutput = true };
        using Process program = Process.Start(start)!;
        string said = program.StandardOutput.ReadToEnd();
        program.WaitForExit();
        Assert.Equal(0, program.ExitCode);
        return said.ReplaceLineEndings("\n");
    }

    private static string AfterHeading(string text, string heading)
    {
        int at = text.IndexOf(heading, StringComparison.Ordinal);
        return at < 0 ? "" : text[at..].Split("\n\n")[0];
    }

    private static string Root()
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Cloveshed.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("Run the rules from a build inside the source tree.");
        }

        return folder.FullName;
    }

    [GeneratedRegex(@"^  (?<name>[a-z][a-z-]*)", RegexOptions.Multiline)]
    private static partial Regex CommandLine();

    [GeneratedRegex(@"^\| \[[^\]]+\]\((?<page>[^)]+)\.md\)", RegexOptions.Multiline)]
    private static partial Regex PageLink();
}
