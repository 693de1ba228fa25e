using System.CommandLine;
using System.Text.RegularExpressions;

namespace Cloveshed.App.Tests;

/// <summary>Read from the command tree: each command has a page that mentions each of its arguments and options.</summary>
public sealed class ManualTests
{
    public static TheoryData<string> Commands => UsageTests.Commands;

    [Theory, MemberData(nameof(Commands))]
    public void A_page_mentions_every_argument_and_option(string command)
    {
        string page = Manual.Page(command);
        Command asked = Manual.Tree().Subcommands.Single(c => c.Name == command);
        string[] names = [.. asked.Arguments.Select(argument => argument.Name), .. OptionsOf(asked), .. asked.Subcommands.Select(sub => sub.Name)];
        Assert.All(names, name => Assert.Matches($@"`[^`\n]*(?<![\w-]){Regex.Escape(name)}(?![\w-])[^`\n]*`", page));
    }

    /// <summary>What all commands have stands in the index.</summary>
    [Fact]
    public void The_index_mentions_the_options_of_every_command() =>
        Assert.All(Manual.Tree().Options, option => Assert.Matches($"`[^`\n]*{option.Name}[^`\n]*`", Manual.Page("README")));

    /// <summary>And no page promises an option that is not there.</summary>
    [Theory, MemberData(nameof(Commands))]
    public void A_page_mentions_no_option_that_is_not_there(string command)
    {
        Command asked = Manual.Tree().Subcommands.Single(c => c.Name == command);
        string[] known = [.. OptionsOf(asked), .. OptionsOf(Manual.Tree())];
        Assert.All(Regex.Matches(Manual.Page(command), @"(?<![\w-])--[a-z][a-z0-9-]*").Select(match => match.Value), name => Assert.Contains(name, known));
    }

    /// <summary>Its own and those of the commands in it; the tree's only its own.</summary>
    private static IEnumerable<string> OptionsOf(Command command) =>
        command.Options.Concat(command is RootCommand ? [] : command.Subcommands.SelectMany(sub => sub.Options)).Select(option => option.Name).Distinct();
}
