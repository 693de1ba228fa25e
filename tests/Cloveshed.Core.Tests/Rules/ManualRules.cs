using System.Text.RegularExpressions;

namespace Cloveshed.Core.Tests.Rules;

/// <summary>
/// The manual has a page for each command, and its index lists each page. That the program has no command without a page is
/// checked where the program can be asked, in the tests of whole seasons.
/// </summary>
public partial class ManualRules
{
    private const string Folder = "docs/manual/", Spanish = ".es.md";

    private static string[] Pages =>
        [.. Repository.Files.Where(file => file.StartsWith(Folder, StringComparison.Ordinal) && file.EndsWith(".md", StringComparison.Ordinal) && !file.EndsWith(Spanish, StringComparison.Ordinal) && file != Folder + "README.md")
            .Select(file => file[Folder.Length..])];

    [Fact]
    public void The_index_lists_every_page_once_and_nothing_else()
    {
        string[] listed = [.. Listed("Commands"), .. Listed("Subjects"), .. Listed("Places")];
        Faults.None(Pages.Except(listed).Select(page => $"{Folder}README.md does not list {page}: add its row under Commands, Subjects or Places."));
        Faults.None(listed.Except(Pages).Select(page => $"{Folder}README.md lists {page}, which is not there."));
        Assert.Equal(listed.Length, listed.Distinct().Count());
    }

    /// <summary>People on the floor read the places' pages from the program, in their language.</summary>
    [Fact]
    public void A_place_has_its_page_in_Spanish_and_no_Spanish_page_is_alone()
    {
        string[] spanish = [.. Repository.Files.Where(file => file.StartsWith(Folder, StringComparison.Ordinal) && file.EndsWith(Spanish, StringComparison.Ordinal))
            .Select(file => file[Folder.Length..^Spanish.Length])];
        Faults.None(Listed("Places").Select(page => page[..^3]).Except(spanish).Select(name => $"{Folder}{name}{Spanish} is missing."));
        Faults.None(spanish.Except(Pages.Select(page => page[..^3])).Select(name => $"{Folder}{name}{Spanish} has no {name}.md beside it."));
    }

    [Fact]
    public void A_page_of_a_command_is_titled_by_it_and_shows_it_in_use() =>
        Faults.None(Listed("Commands").Where(page =>
        {
            string name = page[..^3], text = Repository.Text(Folder + page);
            return !text.StartsWith($"# {name}\n", StringComparison.Ordinal) || !text.Contains($"cloveshed {name}", StringComparison.Ordinal);
        }));

    [Fact]
    public void Links_between_pages_lead_somewhere() =>
        Faults.None(
            from file in Repository.Files
            where file.EndsWith(".md", StringComparison.Ordinal)
            from Match match in Link().Matches(Repository.Text(file))
            let target = match.Groups["target"].Value.Split('#')[0]
            where target.Length > 0 && !target.Contains(':', StringComparison.Ordinal)
            let path = Path.GetFullPath(Path.Combine(Repository.Root, Path.GetDirectoryName(file)!, target))
            where !File.Exists(path) && !Directory.Exists(path)
            select $"{file}: {target}");

    [Fact]
    public void Decisions_are_numbered_once_and_say_their_state()
    {
        string[] decisions = [.. Repository.Files.Where(file => file.StartsWith("docs/decisions/", StringComparison.Ordinal) && Path.GetFileName(file) != "README.md")];
        Assert.NotEmpty(decisions);
        Assert.All(decisions, file => Assert.Matches(@"^docs/decisions/\d{4}-[a-z0-9-]+\.md$", file));
        Assert.Equal(decisions.Length, decisions.Select(file => file.Split('/')[2][..4]).Distinct().Count());
        Assert.All(decisions, file => Assert.Matches(@"(?m)^(Accepted|Replaced by \d{4}|Proposed)\b", Repository.Text(file)));
    }

    private static IEnumerable<string> Listed(string section)
    {
        string after = Repository.Text(Folder + "README.md").Split($"\n## {section}\n")[1];
        return IndexLink().Matches(after.Split("\n## ")[0]).Select(match => match.Groups["page"].Value);
    }

    [GeneratedRegex(@"^\| \[[^\]]+\]\((?<page>[^)]+)\)", RegexOptions.Multiline)]
    private static partial Regex IndexLink();

    [GeneratedRegex(@"(?<!!)\[[^\]\n]+\]\((?<target>[^)\s]+)\)")]
    private static partial Regex Link();
}
