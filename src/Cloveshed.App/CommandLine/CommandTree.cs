using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Reflection;
using Cloveshed.App.Commands;
using Cloveshed.App.Words;

namespace Cloveshed.App.CommandLine;

/// <summary>All commands and options, as one tree; the manual's test reads it.</summary>
public static class CommandTree
{
    public const string LanguageName = "--lang";
    public const string VerboseName = "--verbose";

    /// <summary>The program's version, as --version says it and as a plan carries it.</summary>
    public static string Version { get; } =
        typeof(CommandTree).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    /// <summary>The tree with its words in one language.</summary>
    public static RootCommand Build(World world, Phrasebook phrases)
    {
        RootCommand root = new(phrases[Phrase.ProgramDoes])
        {
            DemoCommand.Build(world, phrases), PlanCommand.Build(world, phrases), CheckPlanCommand.Build(world, phrases), PromiseCommand.Build(world, phrases), SupposeCommand.Build(world, phrases), ScenariosCommand.Build(world, phrases),
            ShiftCommand.Build(world, phrases), CheckShiftCommand.Build(world, phrases),
            SeedNeedCommand.Build(world, phrases), SizesCommand.Build(world, phrases), CutsCommand.Build(world, phrases), HolesCommand.Build(world, phrases),
            ServeCommand.Build(world, phrases), ImportCommand.Build(world, phrases),
            ExportCommand.Build(world, phrases),
            LedgerCommand.Build(world, phrases), BackupCommand.Build(world, phrases), RestoreCommand.Build(world, phrases),
            AirCommand.Build(world, phrases), KeepCommand.Build(world, phrases), CureCommand.Build(world, phrases),
        };
        foreach (Option given in root.Options.ToArray())
        {
            root.Options.Remove(given);
        }

        Option<string> language = new(LanguageName) { Description = phrases[Phrase.LanguageOption], HelpName = "en|es", Recursive = true };
        language.AcceptOnlyFromAmong("en", "es");
        root.Options.Add(language);
        root.Options.Add(new Option<bool>(VerboseName) { Description = phrases[Phrase.VerboseOption], Recursive = true });
        root.Options.Add(new HelpOption("--help", "-h") { Description = phrases[Phrase.HelpOption], Action = new HelpWriting(phrases, asked: true), Recursive = true });
        root.Options.Add(new VersionOption { Description = phrases[Phrase.VersionOption], Action = new VersionWriting() });
        // Asked nothing, the program says what can be asked; so does a command that only has commands in it.
        foreach (Command asked in root.Subcommands.Where(command => command.Subcommands.Count > 0).Append(root))
        {
            asked.Action = new HelpWriting(phrases, asked: false);
        }

        return root;
    }

    /// <param name="asked">By --help, whatever else is on the line: then nothing else is held against it.</param>
    private sealed class HelpWriting(Phrasebook phrases, bool asked) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => asked;

        public override int Invoke(ParseResult parseResult)
        {
            HelpPage.Write(parseResult.CommandResult.Command, parseResult.InvocationConfiguration.Output, phrases);
            return Entry.Done;
        }
    }

    private sealed class VersionWriting : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            parseResult.InvocationConfiguration.Output.WriteLine(Version);
            return Entry.Done;
        }
    }
}
