using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.App.CommandLine;

/// <summary>
/// Options whose value is a number or one of a few words. Numbers have a decimal point and no thousands separator: "1,5"
/// is refused, not read as fifteen.
/// </summary>
internal static class Given
{
    /// <summary>A number from low to high, both included unless lowOpen.</summary>
    public static Option<double?> Number(string name, string helpName, string description, double low, double high, string example, Phrasebook phrases, bool lowOpen = false) =>
        new(name)
        {
            Description = description, HelpName = helpName,
            CustomParser = result => double.TryParse(result.Tokens[^1].Value, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number)
                && (lowOpen ? number > low : number >= low) && number <= high
                ? number : Refuse<double?>(result, name, phrases.Say(lowOpen ? Phrase.NumberAbove : Phrase.NumberFrom, Text(low), Text(high)), example, phrases),
        };

    /// <summary>A whole number from low to high, both included.</summary>
    public static Option<int?> Whole(string name, string helpName, string description, int low, int high, string example, Phrasebook phrases) =>
        new(name)
        {
            Description = description, HelpName = helpName,
            CustomParser = result => int.TryParse(result.Tokens[^1].Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number) && number >= low && number <= high
                ? number : Refuse<int?>(result, name, phrases.Say(Phrase.WholeFrom, Text(low), Text(high)), example, phrases),
        };

    /// <summary>A folder as an argument; an empty name, as an unset variable of a script leaves it, is refused.</summary>
    public static Argument<string> Folder(string name, string description, Phrasebook phrases)
    {
        Argument<string> argument = new(name) { Description = description };
        argument.Validators.Add(result => NotEmpty(result, name, phrases));
        return argument;
    }

    /// <summary>A folder as an option's value.</summary>
    public static Option<string> FolderOption(string name, string helpName, string description, Phrasebook phrases)
    {
        Option<string> option = new(name) { Description = description, HelpName = helpName };
        option.Validators.Add(result => NotEmpty(result, name, phrases));
        return option;
    }

    /// <summary>--db URL.</summary>
    public static Option<string> Database(Phrasebook phrases) => Ledger("URL", phrases[Phrase.ServeDb], phrases);

    /// <summary>A file as an argument.</summary>
    public static Argument<string> FileName(string name, string description, Phrasebook phrases)
    {
        Argument<string> argument = new(name) { Description = description };
        argument.Validators.Add(result => NotEmpty(result, name, phrases, Phrase.FileNameEmpty));
        return argument;
    }

    /// <summary>A file as an option's value.</summary>
    public static Option<string> FileOption(string name, string helpName, string description, Phrasebook phrases)
    {
        Option<string> option = new(name) { Description = description, HelpName = helpName };
        option.Validators.Add(result => NotEmpty(result, name, phrases, Phrase.FileNameEmpty));
        return option;
    }

    /// <summary>--db: which ledger.</summary>
    public static Option<string> Ledger(string helpName, string description, Phrasebook phrases)
    {
        Option<string> option = new("--db") { Description = description, HelpName = helpName };
        option.Validators.Add(result => NotEmpty(result, "--db", phrases, Phrase.FileNameEmpty));
        return option;
    }

    /// <summary>A word as an option's value.</summary>
    public static Option<string> Word(string name, string helpName, string description) => new(name) { Description = description, HelpName = helpName };

    /// <summary>One of a few words.</summary>
    public static Option<T?> Word<T>(string name, string description, IReadOnlyDictionary<string, T> words, Phrasebook phrases) where T : struct =>
        new(name)
        {
            Description = description, HelpName = string.Join('|', words.Keys),
            CustomParser = result => words.TryGetValue(result.Tokens[^1].Value, out T word) ? word
                : Refuse<T?>(result, phrases.Say(Phrase.NotAmong, name, result.Tokens[^1].Value, string.Join('|', words.Keys))),
        };

    /// <summary>--mass lb|kg.</summary>
    public static Option<MassUnit?> Mass(Phrasebook phrases) =>
        new("--mass")
        {
            Description = phrases[Phrase.MassOption], HelpName = "lb|kg",
            CustomParser = result => result.Tokens[^1].Value switch
            {
                "lb" => MassUnit.Pound,
                "kg" => MassUnit.Kilogram,
                string other => Refuse<MassUnit?>(result, phrases.Say(Phrase.NotAmong, "--mass", other, "lb|kg")),
            },
        };

    /// <summary>A day as ISO 8601 writes it.</summary>
    public static Option<LocalDate?> Date(string name, string description, string example, Phrasebook phrases) =>
        new(name)
        {
            Description = description, HelpName = "DATE",
            CustomParser = result => LocalDatePattern.Iso.Parse(result.Tokens[^1].Value) is { Success: true, Value: var day } ? day
                : Refuse<LocalDate?>(result, name, phrases[Phrase.DateWanted], example, phrases),
        };

    /// <summary>--line PRODUCT=UNITS[@PRICE], as often as there are lines.</summary>
    public static Option<PromiseLine[]?> PromiseLines(Phrasebook phrases)
    {
        const string Name = "--line";
        return new(Name)
        {
            Description = phrases[Phrase.PromiseLineOption], HelpName = "PRODUCT=UNITS[@PRICE]", Arity = ArgumentArity.OneOrMore,
            CustomParser = result =>
            {
                PromiseLine?[] lines = [.. result.Tokens.Select(token => Line(token.Value))];
                int wrong = Array.IndexOf(lines, null);
                if (wrong >= 0)
                {
                    result.AddError(phrases.Say(Phrase.NotANumber, Name, phrases[Phrase.PromiseLineWanted], "\"M30=400@31.50\"", result.Tokens[wrong].Value));
                }
                else if (lines.Length > StandingPlan.LinesAtMost)
                {
                    result.AddError(phrases.Say(Phrase.NotANumber, Name, phrases.Say(Phrase.PromiseLinesAtMost, StandingPlan.LinesAtMost), "\"M30=400\"", Text(lines.Length)));
                }

                return [.. lines.OfType<PromiseLine>()];
            },
        };
    }

    private static PromiseLine? Line(string text)
    {
        int equals = text.LastIndexOf('=');
        if (equals < 1)
        {
            return null;
        }

        string[] said = text[(equals + 1)..].Split('@');
        decimal price = 0;
        return said.Length <= 2 && int.TryParse(said[0], NumberStyles.None, CultureInfo.InvariantCulture, out int units) && units is >= 1 and <= 10_000_000
            && (said.Length == 1 || (decimal.TryParse(said[1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out price) && price <= 1_000_000))
            ? new PromiseLine(new(text[..equals].Trim()), units, said.Length == 1 ? null : price, false) : null;
    }

    /// <summary>--json.</summary>
    public static Option<bool> Json(string description) => new("--json") { Description = description };

    private static void NotEmpty(SymbolResult result, string name, Phrasebook phrases, Phrase said = Phrase.FolderEmpty)
    {
        if (result.Tokens.Any(token => string.IsNullOrWhiteSpace(token.Value)))
        {
            result.AddError(phrases.Say(said, name));
        }
    }

    private static T? Refuse<T>(ArgumentResult result, string name, string expected, string example, Phrasebook phrases) =>
        Refuse<T>(result, phrases.Say(Phrase.NotANumber, name, expected, example, result.Tokens[^1].Value));

    private static T? Refuse<T>(ArgumentResult result, string message)
    {
        result.AddError(message);
        return default;
    }

    private static string Text(double number) => number.ToString(CultureInfo.InvariantCulture);
}
