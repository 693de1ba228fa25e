using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Cloveshed.App.Words;

namespace Cloveshed.App.CommandLine;

/// <summary>What is wrong with a command line, in one line that ends with where the help is.</summary>
internal static class UsageFault
{
    /// <summary>Null when the line can be run, as one that asks for help always can.</summary>
    public static string? Of(ParseResult parsed, Phrasebook phrases)
    {
        if (parsed.Errors.Count == 0)
        {
            return null;
        }

        Command command = parsed.CommandResult.Command;
        string asked = string.Join(' ', HelpPage.Path(command)) + " --help";
        return $"{What(parsed, command, phrases)} {phrases.Say(Phrase.SeeHelp, asked)}";
    }

    private static string What(ParseResult parsed, Command command, Phrasebook phrases)
    {
        if (parsed.UnmatchedTokens.Count > 0)
        {
            string stray = parsed.UnmatchedTokens[0];
            Phrase phrase = stray.StartsWith('-') ? Phrase.UnknownOption : command.Subcommands.Count > 0 ? Phrase.UnknownCommand : Phrase.TooMany;
            return phrases.Say(phrase, stray) + (Nearest(stray, command) is { } near ? " " + phrases.Say(Phrase.DidYouMean, near) : "");
        }

        ParseError error = parsed.Errors.FirstOrDefault(found => found.SymbolResult is ArgumentResult) ?? parsed.Errors[0];
        return error.SymbolResult switch
        {
            ArgumentResult { Tokens.Count: 0, Argument: var argument, Parent: CommandResult } => phrases.Say(Phrase.ArgumentMissing, argument.Name),
            OptionResult { IdentifierToken: null, Option: var option } => phrases.Say(Phrase.OptionMissing, $"{option.Name} {option.HelpName}"),
            OptionResult { Tokens.Count: 0, Option: var option } => phrases.Say(Phrase.ValueMissing, option.Name),
            OptionResult { Tokens: [var value, ..], Option: { Name: CommandTree.LanguageName, HelpName: var known } } => phrases.Say(Phrase.NotAmong, CommandTree.LanguageName, value.Value, known),
            _ => error.Message.ReplaceLineEndings(" "),
        };
    }

    /// <summary>What was probably meant: at most two letters away, or null.</summary>
    private static string? Nearest(string stray, Command command) =>
        HelpPage.Options(command).SelectMany(option => option.Aliases.Append(option.Name)).Where(name => name.StartsWith("--", StringComparison.Ordinal))
            .Concat(command.Subcommands.Select(sub => sub.Name))
            .Select(name => (Name: name, Away: Distance(stray, name))).Where(found => found.Away <= 2).OrderBy(found => found.Away).Select(found => found.Name).FirstOrDefault();

    /// <summary>Letters to insert, remove or change (Levenshtein 1966).</summary>
    private static int Distance(string left, string right)
    {
        int[] row = [.. Enumerable.Range(0, right.Length + 1)];
        for (int i = 1; i <= left.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= right.Length; j++)
            {
                int changed = diagonal + (left[i - 1] == right[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(changed, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
