using System.Globalization;
using System.Reflection;
using System.Text;
using Cloveshed.Pictures;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.App.Words;

/// <summary>
/// What the program says in one language: an embedded file of lines "Key = text", # for comments. Every <see cref="Phrase"/>
/// must be there once and nothing else; loading fails otherwise, so that no message can be missing.
/// </summary>
public sealed class Phrasebook
{
    private readonly Dictionary<Phrase, string> phrases;

    private Phrasebook(Language language, Dictionary<Phrase, string> phrases) => (Language, this.phrases) = (language, phrases);

    public Language Language { get; }

    /// <summary>The same language, as the season's files name it.</summary>
    public TextLanguage FileLanguage => Language == Language.Es ? TextLanguage.Spanish : TextLanguage.English;

    public static Phrasebook English { get; } = Load(Language.En, "Words/en.txt");

    public static Phrasebook Spanish { get; } = Load(Language.Es, "Words/es.txt");

    public static Phrasebook Of(Language language) => language == Language.Es ? Spanish : English;

    public string this[Phrase phrase] => phrases[phrase];

    /// <summary>The phrase with its values in place.</summary>
    public string Say(Phrase phrase, params ReadOnlySpan<object?> values) => string.Format(CultureInfo.InvariantCulture, phrases[phrase], values);

    private static Phrasebook Load(Language language, string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The build left out the embedded file {resource}.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return new(language, Parse(reader.ReadToEnd(), resource));
    }

    internal static Dictionary<Phrase, string> Parse(string text, string name)
    {
        Dictionary<Phrase, string> phrases = [];
        foreach ((int number, string line) in text.Split('\n').Index().Select(found => (found.Index + 1, found.Item.Trim())))
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            int at = line.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || !char.IsLetter(line[0]) || !Enum.TryParse(line[..at].Trim(), out Phrase key))
            {
                throw new FormatException($"{name} line {number}: expected \"Key = text\" with a key that is used, found \"{line}\".");
            }

            if (!phrases.TryAdd(key, line[(at + 1)..].Trim()))
            {
                throw new FormatException($"{name} line {number}: {key} is there twice.");
            }
        }

        Phrase[] missing = [.. Enum.GetValues<Phrase>().Where(phrase => !phrases.ContainsKey(phrase))];
        return missing.Length == 0 ? phrases : throw new FormatException($"{name} lacks {string.Join(", ", missing)}.");
    }
}
