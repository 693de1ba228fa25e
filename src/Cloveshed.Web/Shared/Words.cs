using System.Globalization;
using System.Text;
using Cloveshed.Pictures;

namespace Cloveshed.Web.Shared;

/// <summary>
/// What one place says in one language, by key. The words stand beside the pages of the place, in words.en.txt and
/// words.es.txt: lines "Key = text", # for comments. Every key must be there once and no other; loading fails otherwise,
/// so that a missing word can't reach a page.
/// </summary>
public sealed class Words<TKey>
    where TKey : struct, Enum
{
    private readonly Dictionary<TKey, string> words;

    internal Words(Dictionary<TKey, string> words) => this.words = words;

    public string this[TKey key] => words[key];

    /// <summary>The words with values in place of {0}, {1} ..., which come as text, already written for the reader.</summary>
    public string Say(TKey key, params ReadOnlySpan<object?> values) =>
        values.Length == 0 ? words[key] : string.Format(CultureInfo.InvariantCulture, words[key], values);
}

/// <summary>Loads the words of a place.</summary>
public static class Words
{
    /// <summary>The words of the place that the keys' namespace names: Cloveshed.Web.Plan has them in Plan/words.en.txt.</summary>
    public static Words<TKey> Of<TKey>(Language language)
        where TKey : struct, Enum =>
        language switch
        {
            Language.En => Loaded<TKey>.English,
            Language.Es => Loaded<TKey>.Spanish,
            _ => throw new ArgumentOutOfRangeException(nameof(language)),
        };

    internal static Words<TKey> Parse<TKey>(string text, string name)
        where TKey : struct, Enum
    {
        Dictionary<TKey, string> words = [];
        foreach ((int number, string line) in text.Split('\n').Index().Select(found => (found.Index + 1, found.Item.Trim())))
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            int at = line.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || !char.IsLetter(line[0]) || !Enum.TryParse(line[..at].Trim(), out TKey key))
            {
                throw new FormatException($"{name} line {number}: expected \"Key = text\" with a key that is used, found \"{line}\".");
            }

            if (!words.TryAdd(key, line[(at + 1)..].Trim()))
            {
                throw new FormatException($"{name} line {number}: {key} is there twice.");
            }
        }

        TKey[] missing = [.. Enum.GetValues<TKey>().Where(key => !words.ContainsKey(key))];
        return missing.Length == 0 ? new Words<TKey>(words) : throw new FormatException($"{name} lacks {string.Join(", ", missing)}.");
    }

    private static Words<TKey> Load<TKey>(string tongue)
        where TKey : struct, Enum
    {
        string name = $"{typeof(TKey).Namespace!.Split('.')[^1]}/words.{tongue}.txt";
        using Stream stream = typeof(TKey).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The build left out the embedded file {name}.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return Parse<TKey>(reader.ReadToEnd(), name);
    }

    private static class Loaded<TKey>
        where TKey : struct, Enum
    {
        public static readonly Words<TKey> English = Load<TKey>("en");
        public static readonly Words<TKey> Spanish = Load<TKey>("es");
    }
}
