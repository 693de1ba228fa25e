using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;

namespace Cloveshed.App.Tests;

/// <summary>Help for everything, and one clear line for what is used wrongly.</summary>
public sealed class UsageTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    public static TheoryData<string> Commands => [.. Manual.Tree().Subcommands.Select(command => command.Name)];

    [Theory, MemberData(nameof(Commands))]
    public void Every_command_has_help_with_an_example_in_both_languages(string command)
    {
        Ended english = trial.Run(command, "--help"), spanish = trial.Run(command, "-h", "--lang", "es");
        Assert.Equal((0, "", 0, ""), (english.Code, english.Error, spanish.Code, spanish.Error));
        Assert.Contains($"\nExample:\n  cloveshed {command}", english.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains($"\nEjemplo:\n  cloveshed {command}", spanish.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        foreach (Option option in Manual.Tree().Subcommands.Single(c => c.Name == command).Options)
        {
            Assert.Contains(option.Name, english.Output, StringComparison.Ordinal);
            Assert.True(option.Description?.Length > 5, $"{option.Name} says nothing of itself.");
        }

        Assert.All(english.Output.Split('\n').TakeWhile(line => !line.StartsWith("Example", StringComparison.Ordinal)), line => Assert.True(line.Length <= 100, line));
    }

    /// <summary>An example that the parser refuses helps nobody.</summary>
    [Theory, MemberData(nameof(Commands))]
    public void Examples_can_be_used(string command) =>
        Assert.All(
            Assert.IsType<ShedCommand>(Manual.Tree().Subcommands.Single(c => c.Name == command)).Examples,
            example => Assert.Empty(Manual.Tree().Parse(example.Split(" > ")[0].Split(' ')[1..]).Errors));

    [Fact]
    public void Asked_nothing_it_lists_the_commands()
    {
        Ended ended = trial.Run();
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        Assert.All(Commands, command => Assert.Contains($"\n  {command.Data} ", ended.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal));
        Assert.Equal(ended.Output, trial.Run("--help").Output);
    }

    [Fact]
    public void The_version_is_three_numbers() => Assert.Matches(@"^\d+\.\d+\.\d+\r?\n$", trial.Run("--version").Output);

    [Theory]
    [InlineData("plann", "There is no command plann. Did you mean plan? See cloveshed --help.")]
    [InlineData("plan", "FOLDER is missing. See cloveshed plan --help.")]
    [InlineData("plan season", "--out OUT is missing. See cloveshed plan --help.")]
    [InlineData("plan season --out", "--out wants a value. See cloveshed plan --help.")]
    [InlineData("plan season --out plan --secnds 5", "There is no option --secnds. Did you mean --seconds? See cloveshed plan --help.")]
    [InlineData("plan season other --out plan", "\"other\" is one argument too many. See cloveshed plan --help.")]
    [InlineData("plan season --out plan --seconds 1,5", "found \"1,5\". See cloveshed plan --help.")]
    [InlineData("plan season --out plan --seconds 0", "--seconds wants a number above 0, at most 604800, with a decimal point, such as 60; found \"0\".")]
    [InlineData("plan season --out plan --seconds NaN", "found \"NaN\"")]
    [InlineData("plan season --out plan --gap 1.5", "--gap wants a number from 0 to 1 with a decimal point, such as 0.001; found \"1.5\".")]
    [InlineData("plan season --out plan --gap -0.1", "found \"-0.1\"")]
    [InlineData("plan season --out plan --seed 1.5", "--seed wants a whole number from 0 to 2147483647, such as 7; found \"1.5\".")]
    [InlineData("plan season --out plan --seed 3000000000", "found \"3000000000\"")]
    [InlineData("plan season --out plan --mass st", "--mass does not know \"st\"; it is one of lb|kg.")]
    [InlineData("plan season --out plan --lang fr", "--lang does not know \"fr\"; it is one of en|es.")]
    [InlineData("plan  --out plan", "FOLDER is empty: it names no folder. See cloveshed plan --help.")]
    [InlineData("plan season --out=", "--out wants a value. See cloveshed plan --help.")]
    [InlineData("check-plan season ", "OUT is empty")]
    [InlineData("demo --folder ", "--folder is empty")]
    [InlineData("check-plan season", "OUT is missing. See cloveshed check-plan --help.")]
    [InlineData("demo --port 70000", "--port wants a whole number from 1 to 65535")]
    [InlineData("seed-need --bed-inches 40 --lines 2 --spacing-inches 3", "--clove-g G is missing. See cloveshed seed-need --help.")]
    [InlineData("seed-need --bed-inches 40 --lines 2 --spacing-inches 3 --clove-g 4 --germination 0", "found \"0\"")]
    public void What_is_used_wrongly_ends_with_2_and_one_line(string line, string said)
    {
        Ended ended = trial.Run(line.Split(' '));
        Assert.Equal((2, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
        Assert.Equal(1, ended.Error.Count(c => c == '\n'));
    }

    [Fact]
    public void Usage_faults_are_said_in_Spanish_too() =>
        Assert.StartsWith("Falta --out OUT. Vea cloveshed plan --help.", trial.Run("plan", "x", "--lang", "es").Error, StringComparison.Ordinal);

    /// <summary>Its clock breaks: something that no command expects.</summary>
    [Fact]
    public void The_unexpected_is_said_in_one_line_and_whole_when_asked()
    {
        string season = SmallShed.In(trial);
        trial.Meanwhile = () => throw new NotSupportedException("no clock");
        Ended brief = trial.Run("plan", season, "--out", trial.At("plan")), whole = trial.Run("plan", season, "--out", trial.At("plan"), "--verbose");
        Assert.Equal((1, "", 1), (brief.Code, brief.Output, whole.Code));
        Assert.Contains("NotSupportedException: no clock", brief.Error, StringComparison.Ordinal);
        Assert.Contains("--verbose", brief.Error, StringComparison.Ordinal);
        Assert.Equal(1, brief.Error.Count(c => c == '\n'));
        Assert.Contains("   at ", whole.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(trial.At("plan")));
    }

    /// <summary>A folder named with @ is a folder, not a file of arguments.</summary>
    [Fact]
    public void A_folder_may_be_named_as_its_owner_likes() =>
        Assert.StartsWith("@season was refused for one fault", trial.Run("plan", "@season", "--out", trial.At("plan")).Error, StringComparison.Ordinal);
}
