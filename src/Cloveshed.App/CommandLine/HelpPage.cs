using System.CommandLine;
using System.CommandLine.Help;
using Cloveshed.App.Words;

namespace Cloveshed.App.CommandLine;

/// <summary>The help of one command: what it does, how it is written, its arguments and options, an example.</summary>
internal static class HelpPage
{
    private const int Width = 100;

    public static void Write(Command command, TextWriter output, Phrasebook phrases)
    {
        string[] path = [.. Path(command)];
        foreach (string line in Wrapped(command.Description ?? "", Width))
        {
            output.WriteLine(line);
        }

        output.WriteLine();
        output.WriteLine(phrases[Phrase.HelpUsage]);
        output.WriteLine("  " + string.Join(' ', [.. path, .. command.Subcommands.Count > 0 ? [phrases[Phrase.HelpCommandWord]] : command.Arguments.Select(a => a.Name), .. Required(command), phrases[Phrase.HelpOptionsWord]]));
        Section(output, phrases[Phrase.HelpArguments], command.Arguments.Select(a => (a.Name, a.Description ?? "")));
        Section(output, phrases[Phrase.HelpCommands], command.Subcommands.Select(c => (c.Name, FirstSentence(c.Description ?? ""))));
        Section(output, phrases[Phrase.HelpOptions], Options(command).Select(o => (Shape(o), o.Description ?? "")));
        if (command is ShedCommand { Examples.Count: > 0 } shed)
        {
            Section(output, phrases[Phrase.HelpExample], shed.Examples.Select(example => (example, "")));
        }

        output.WriteLine();
        output.WriteLine(phrases.Say(Phrase.HelpFoot, path.Length > 1 ? path[1] : "README"));
    }

    /// <summary>The command's own options, then those of every command.</summary>
    internal static IEnumerable<Option> Options(Command command) =>
        command.Options.Concat(command.Parents.OfType<Command>().SelectMany(parent => parent.Options.Where(option => option.Recursive))).Where(option => !option.Hidden);

    /// <summary>How a command is called: the program, the commands above it, its name.</summary>
    internal static IEnumerable<string> Path(Command command) =>
        command.Parents.OfType<Command>().SelectMany(Path).Append(command is RootCommand ? "cloveshed" : command.Name);

    private static IEnumerable<string> Required(Command command) => command.Options.Where(option => option.Required).Select(Shape);

    private static string Shape(Option option) =>
        string.Join(", ", option.Aliases.Append(option.Name).Order(StringComparer.Ordinal).OrderBy(name => name.Length))
        + (option is HelpOption or VersionOption || option.ValueType == typeof(bool) ? "" : " " + option.HelpName);

    private static void Section(TextWriter output, string title, IEnumerable<(string Left, string Right)> rows)
    {
        (string Left, string Right)[] all = [.. rows];
        if (all.Length == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine(title);
        int left = all.Max(row => row.Left.Length) + 4;
        foreach ((string name, string text) in all)
        {
            string[] lines = [.. Wrapped(text, Width - left)];
            output.WriteLine(("  " + name.PadRight(left - 2) + lines[0]).TrimEnd());
            foreach (string line in lines.Skip(1))
            {
                output.WriteLine(new string(' ', left) + line);
            }
        }
    }

    private static string FirstSentence(string text) => text.IndexOf(". ", StringComparison.Ordinal) is > 0 and var at ? text[..(at + 1)] : text;

    private static IEnumerable<string> Wrapped(string text, int width)
    {
        string line = "";
        foreach (string word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line += (line.Length == 0 ? "" : " ") + word;
        }

        yield return line;
    }
}
