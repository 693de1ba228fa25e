using System.Reflection;
using System.Text.RegularExpressions;
using Cloveshed.Pictures;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Tests;

/// <summary>Every place says everything in both languages, with the same values in it, and has no word that nothing says.</summary>
public sealed class WordTests
{
    private static readonly Assembly Web = typeof(ShellWord).Assembly;

    /// <summary>Found by their name, so that a new place is checked without being listed.</summary>
    public static TheoryData<Type> Places => new(Web.GetExportedTypes().Where(type => type.IsEnum && type.Name.EndsWith("Word", StringComparison.Ordinal)));

    [Theory, MemberData(nameof(Places))]
    public void Both_languages_have_every_word_with_the_same_values(Type words)
    {
        Dictionary<string, string> english = Read(words, Language.En), spanish = Read(words, Language.Es);
        Assert.NotEmpty(english);
        Assert.All(english, word =>
        {
            Assert.NotEmpty(word.Value);
            Assert.NotEmpty(spanish[word.Key]);
            Assert.Equal(Values(word.Value), Values(spanish[word.Key]));
        });
    }

    [Theory, MemberData(nameof(Places))]
    public void Every_word_is_said_somewhere(Type words)
    {
        string sources = Path.Combine(Root(), "src", "Cloveshed.Web");
        string all = string.Concat(Directory.EnumerateFiles(sources, "*.*", SearchOption.AllDirectories)
            .Where(file => Path.GetExtension(file) is ".cs" or ".razor" && !file.EndsWith(words.Name + ".cs", StringComparison.Ordinal) && !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(File.ReadAllText));
        Assert.All(Enum.GetNames(words), word => Assert.True(Regex.IsMatch(all, $@"\b{words.Name}\.{word}\b"), $"{words.Name}.{word} is said nowhere."));
    }

    [Theory]
    [InlineData("Title = a\nTitle = b", "twice")]
    [InlineData("Nothing = a", "a key that is used")]
    [InlineData("7 = a", "a key that is used")]
    [InlineData("Title = a", "lacks Lead")]
    public void Words_with_a_gap_or_a_slip_do_not_load(string text, string fault) =>
        Assert.Contains(fault, Assert.Throws<FormatException>(() => Words.Parse<TrialWord>(text, "x")).Message, StringComparison.Ordinal);

    private enum TrialWord { Title, Lead }

    private static Dictionary<string, string> Read(Type words, Language language)
    {
        object loaded = typeof(Words).GetMethod(nameof(Words.Of))!.MakeGenericMethod(words).Invoke(null, [language])!;
        PropertyInfo indexer = loaded.GetType().GetProperty("Item")!;
        return Enum.GetNames(words).ToDictionary(name => name, name => (string)indexer.GetValue(loaded, [Enum.Parse(words, name)])!);
    }

    private static IEnumerable<string> Values(string text) => Regex.Matches(text, @"\{\d+[^}]*\}").Select(match => match.Value).Distinct().Order(StringComparer.Ordinal);

    private static string Root()
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Cloveshed.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("Run the tests from a build inside the source tree.");
        }

        return folder.FullName;
    }
}
