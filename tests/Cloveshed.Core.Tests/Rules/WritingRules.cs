using System.Text.RegularExpressions;

namespace Cloveshed.Core.Tests.Rules;

/// <summary>How the tree is written: names by matter, files of a readable length, nothing half done, nothing of one machine.</summary>
public partial class WritingRules
{
    private const int MostLines = 500;

    [Fact]
    public void No_type_is_named_for_what_it_is_not() =>
        Faults.None(
            from file in Repository.Sources
            where file.EndsWith(".cs", StringComparison.Ordinal)
            from Match match in DeclaredType().Matches(Repository.Text(file))
            where EmptyName().IsMatch(match.Groups["name"].Value)
            select $"{file}: {match.Groups["name"].Value}");

    [Fact]
    public void No_folder_is_named_for_what_it_is_not() =>
        Faults.None(Repository.Sources.SelectMany(file => file.Split('/')[..^1]).Distinct().Where(folder => EmptyName().IsMatch(folder)));

    [Fact]
    public void No_source_file_is_longer_than_can_be_read() =>
        Faults.None(Repository.Sources.Select(file => (File: file, Lines: Repository.Lines(file).Length)).Where(found => found.Lines > MostLines));

    [Fact]
    public void Namespaces_follow_folders() =>
        Faults.None(
            from file in Repository.Sources
            where file.StartsWith("src/", StringComparison.Ordinal) && file.EndsWith(".cs", StringComparison.Ordinal)
            let declared = Namespace().Match(Repository.Text(file))
            where declared.Success
            let expected = string.Join('.', file.Split('/')[1..^1])
            where declared.Groups["name"].Value != expected
            select $"{file}: {declared.Groups["name"].Value}, not {expected}");

    /// <summary>Whoever reads this on another machine must find nothing of the one that it was written on.</summary>
    [Fact]
    public void No_path_of_a_machine() => Faults.None(FoundIn(Repository.Files.Where(Readable), MachinePath()));

    [Fact]
    public void Nothing_half_done() =>
        Faults.None(FoundIn(Repository.Sources, HalfDone()));

    /// <summary>Skipping needs a reason that the run prints; an empty catch swallows one.</summary>
    [Fact]
    public void No_exception_is_swallowed() =>
        Faults.None(FoundIn(Repository.Sources.Where(file => file.EndsWith(".cs", StringComparison.Ordinal)), EmptyCatch()));

    [Fact]
    public void Scripts_run_as_they_are()
    {
        Assert.All(new[] { "check", "cloveshed", ".ci/run" }, script =>
        {
            Assert.StartsWith("#!/usr/bin/env bash\n", Repository.Text(script), StringComparison.Ordinal);
            if (!OperatingSystem.IsWindows())
            {
                Assert.True(File.GetUnixFileMode(Path.Combine(Repository.Root, script)).HasFlag(UnixFileMode.UserExecute), $"{script} is not executable.");
            }
        });
        Assert.Contains("check.cmd", Repository.Files);
        Assert.Contains("cloveshed.cmd", Repository.Files);
    }

    [Theory]
    [InlineData("public cl" + "ass LotHelper", true)]
    [InlineData("internal static cl" + "ass StringUtils", true)]
    [InlineData("public sealed rec" + "ord OrderService(int A)", true)]
    [InlineData("public readonly record struct LotId(string Text)", false)]
    [InlineData("public inter" + "face IBinManager", true)]
    public void The_name_rule_sees(string line, bool faulty) =>
        Assert.Equal(faulty, DeclaredType().Matches(line).Any(match => EmptyName().IsMatch(match.Groups["name"].Value)));

    [Theory]
    [InlineData("see /ro" + "ot/x", true)]
    [InlineData("\"/ho" + "me/ada/x\"", true)]
    [InlineData("(/t" + "mp/a)", true)]
    [InlineData("C:\\Us" + "ers\\ada", true)]
    [InlineData("api/v1/work/orders and a/tmp/b", false)]
    public void The_path_rule_sees(string line, bool faulty) => Assert.Equal(faulty, MachinePath().IsMatch(line));

    [Theory]
    [InlineData("// TO" + "DO later", true)]
    [InlineData("throw new NotImplemented" + "Exception();", true)]
    [InlineData("// todos los lotes", false)]
    public void The_half_done_rule_sees(string line, bool faulty) => Assert.Equal(faulty, HalfDone().IsMatch(line));

    [Theory]
    [InlineData("cat" + "ch (IOException) { }", true)]
    [InlineData("cat" + "ch\n{\n}", true)]
    [InlineData("catch (IOException e) { throw new ShedException(e); }", false)]
    public void The_catch_rule_sees(string line, bool faulty) => Assert.Equal(faulty, EmptyCatch().IsMatch(line));

    private static IEnumerable<string> FoundIn(IEnumerable<string> files, Regex pattern) =>
        from file in files
        let text = Repository.Text(file)
        from Match match in pattern.Matches(text)
        select $"{file}:{text.AsSpan(0, match.Index).Count('\n') + 1}: {match.Value}";

    private static bool Readable(string file) =>
        Path.GetExtension(file) is not (".png" or ".jpg" or ".woff2" or ".gz" or ".zip" or ".db" or ".ico" or ".pdf");

    [GeneratedRegex(@"\b(?:class|struct|interface|enum|record)\s+(?:class\s+|struct\s+)?(?<name>[A-Z]\w*)")]
    private static partial Regex DeclaredType();

    [GeneratedRegex(@"(Util|Utils|Utility|Utilities|Helper|Helpers|Manager|Managers|Service|Services|Common|Misc)$")]
    private static partial Regex EmptyName();

    [GeneratedRegex(@"^namespace (?<name>[\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex(@"(?<![\w.~/])/(?:tmp|root|work|home/\w+|Users/\w+)/|[A-Z]:\\Users\\")]
    private static partial Regex MachinePath();

    [GeneratedRegex("\\bTO" + "DO\\b|\\bFIX" + "ME\\b|\\bHA" + "CK\\b|NotImplemented" + "Exception")]
    private static partial Regex HalfDone();

    [GeneratedRegex(@"catch\s*(\([^)]*\))?\s*(when\s*\([^{]*\))?\s*\{\s*\}")]
    private static partial Regex EmptyCatch();
}
