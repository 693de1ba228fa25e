using System.Globalization;
using System.Reflection;
using System.Text;
using Cloveshed.Pictures;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Web.Setup;

/// <summary>What a column is called for a person, and what it holds.</summary>
public sealed record ColumnText(string Name, string Holds);

/// <summary>
/// The columns of a season's files in words. They stand in columns.en.txt and columns.es.txt by file and column, not by key:
/// the files' layouts are the list of what must be there, and loading fails where one is missing or another is there.
/// </summary>
public sealed class ColumnTexts
{
    private static readonly ColumnTexts English = Load("en"), Spanish = Load("es");

    private readonly Dictionary<string, ColumnText> texts;

    private ColumnTexts(Dictionary<string, ColumnText> texts) => this.texts = texts;

    public static ColumnTexts Of(Language language) => language == Language.Es ? Spanish : English;

    public ColumnText this[ColumnGuide column] => texts[Key(column)];

    /// <summary>What the column holds, with the season's unit of mass and currency in place.</summary>
    public string Holds(ColumnGuide column, string unit, string currency) => string.Format(CultureInfo.InvariantCulture, this[column].Holds, unit, currency);

    internal static ColumnTexts Parse(string text, string name)
    {
        HashSet<string> awaited = [.. SeasonTable.All.SelectMany(table => ColumnGuides.Of(table.File)).Concat(ColumnGuides.Settings).Select(Key)];
        Dictionary<string, ColumnText> texts = new(StringComparer.Ordinal);
        foreach (string line in text.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0 && line[0] != '#'))
        {
            string[] sides = line.Split(" = ", 2), parts = sides[^1].Split(" | ", 2);
            if (sides.Length < 2 || parts.Length < 2 || !awaited.Remove(sides[0]))
            {
                throw new FormatException($"{name}: expected \"file column = name | what it holds\" once for each column, found \"{line}\".");
            }

            texts.Add(sides[0], new ColumnText(parts[0], parts[1]));
        }

        return awaited.Count == 0 ? new ColumnTexts(texts) : throw new FormatException($"{name} lacks {string.Join(", ", awaited)}.");
    }

    private static string Key(ColumnGuide column) => $"{column.File} {column.Name}";

    private static ColumnTexts Load(string tongue)
    {
        string name = $"Setup/columns.{tongue}.txt";
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The build left out the embedded file {name}.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return Parse(reader.ReadToEnd(), name);
    }
}
