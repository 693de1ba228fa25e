using System.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Ledger;
using Cloveshed.Pictures;

namespace Cloveshed.App.CommandLine;

/// <summary>
/// From arguments to an exit code: 0 done, 1 refused with the reason said, 2 used wrongly. Nothing that happens inside ends
/// without a line that says what to do.
/// </summary>
public static class Entry
{
    public const int Done = 0, Refused = 1, UsedWrongly = 2;

    /// <summary>Runs one command line.</summary>
    public static int Run(IReadOnlyList<string> arguments, World world)
    {
        Phrasebook phrases = Phrasebook.Of(Asked(arguments) ?? FromEnvironment(world.Variable));
        bool verbose = arguments.Contains(CommandTree.VerboseName);
        try
        {
            // No response files: a folder may be called @x.
            ParseResult parsed = CommandTree.Build(world, phrases).Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (UsageFault.Of(parsed, phrases) is { } fault)
            {
                world.Error.WriteLine(fault);
                return UsedWrongly;
            }

            return parsed.Invoke(new InvocationConfiguration { Output = world.Output, Error = world.Error, EnableDefaultExceptionHandler = false });
        }
        catch (LedgerFault fault)
        {
            world.Error.WriteLine(fault.Say(phrases.FileLanguage));
            if (verbose)
            {
                world.Error.WriteLine(fault);
            }

            return Refused;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return Told(Phrase.FilesFailed, problem, verbose, world, phrases);
        }
#pragma warning disable CA1031 // The program's edge: whatever happened is said in one line and ends in an exit code, never in a bare trace.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            return Told(Phrase.Unexpected, problem, verbose, world, phrases);
        }
    }

    /// <summary>The language of LC_ALL or else LANG ("es_MX.UTF-8"); English where they name another, or none.</summary>
    internal static Language FromEnvironment(Func<string, string?> variable)
    {
        string tongue = variable("LC_ALL") is { Length: > 0 } all ? all : variable("LANG") ?? "";
        return tongue == "es" || tongue.StartsWith("es_", StringComparison.OrdinalIgnoreCase) || tongue.StartsWith("es.", StringComparison.OrdinalIgnoreCase)
            ? Language.Es : Language.En;
    }

    /// <summary>Looked for before parsing, because what parsing says is to be in that language already.</summary>
    private static Language? Asked(IReadOnlyList<string> arguments)
    {
        for (int at = 0; at < arguments.Count; at++)
        {
            string? named = arguments[at] == CommandTree.LanguageName && at + 1 < arguments.Count ? arguments[at + 1]
                : arguments[at].StartsWith(CommandTree.LanguageName + "=", StringComparison.Ordinal) ? arguments[at][(CommandTree.LanguageName.Length + 1)..] : null;
            if (named is "en" or "es")
            {
                return named == "es" ? Language.Es : Language.En;
            }
        }

        return null;
    }

    private static int Told(Phrase phrase, Exception problem, bool verbose, World world, Phrasebook phrases)
    {
        world.Error.WriteLine(phrases.Say(phrase, problem.GetType().Name, problem.Message.ReplaceLineEndings(" ")));
        if (verbose)
        {
            world.Error.WriteLine(problem);
        }

        return Refused;
    }
}
