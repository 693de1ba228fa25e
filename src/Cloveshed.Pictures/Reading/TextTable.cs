using System.Reflection;
using System.Text;

namespace Cloveshed.Pictures.Reading;

/// <summary>
/// The words of one language: an embedded file of lines "Key = text", # for comments. Every key of <see cref="Say"/>
/// must be there once, and no other; loading fails otherwise, so that a missing word can't reach a page.
/// </summary>
public sealed class TextTable
{
    private readonly Dictionary<Say, string> words;

    private TextTable(Dictionary<Say, string> words) => this.words = words;

    public static TextTable English { get; } = Load("Reading/en.txt");

    public static TextTable Spanish { get; } = Load("Reading/es.txt");

    public static TextTable Of(Language language) => language switch
    {
        Language.En => English,
        Language.Es => Spanish,
        _ => throw new ArgumentOutOfRangeException(nameof(language)),
    };

    public string this[Say key] => words[key];

    private static TextTable Load(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The build left out the embedded file {resource}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return Parse(reader.ReadToEnd(), resource);
    }

    internal static TextTable Parse(string text, string name)
    {
        var words = new Dictionary<Say, string>();
        int number = 0;
        foreach (string raw in text.Split('\n'))
        {
            number++;
            string line = raw.Trim();
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }
            int at = line.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || !Enum.TryParse(line[..at].Trim(), out Say key))
            {
                throw new FormatException($"{name} line {number}: expected \"Key = text\" with a key that is used, found \"{line}\".");
            }
            if (!words.TryAdd(key, line[(at + 1)..].Trim()))
            {
                throw new FormatException($"{name} line {number}: {key} is there twice.");
            }
        }
        string[] missing = [.. Enum.GetValues<Say>().Where(k => !words.ContainsKey(k)).Select(k => k.ToString())];
        return missing.Length == 0
            ? new TextTable(words)
            : throw new FormatException($"{name} lacks {string.Join(", ", missing)}.");
    }
}
