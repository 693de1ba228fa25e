using System.Collections.Concurrent;
using System.Reflection;
using System.Text;
using Cloveshed.Pictures;
using Markdig;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Cloveshed.Web.Help;

/// <summary>A page of the manual as HTML.</summary>
/// <param name="Title">Its first heading.</param>
/// <param name="Tongue">The language that it is in: not every page of the manual is in Spanish.</param>
public sealed record ManualPage(string Name, string Title, string Html, Language Tongue)
{
    private const string Prefix = "manual/";

    private static readonly Assembly Own = typeof(ManualPage).Assembly;

    private static readonly HashSet<string> Resources = [.. Own.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))];

    private static readonly ConcurrentDictionary<(string Name, Language Language), ManualPage> Made = new();

    /// <summary>Tables and plain markdown; HTML in a page is shown as written.</summary>
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().UseAutoIdentifiers().DisableHtml().Build();

    /// <summary>Names of all pages in English, in order, without the index.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Resources.Select(name => name[Prefix.Length..^3]).Where(name => name != "README" && !name.EndsWith(".es", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>The page in the language, or in English where there is none; null when there is no such page.</summary>
    public static ManualPage? Find(string name, Language language)
    {
        if (!Names.Contains(name))
        {
            return null;
        }

        bool spanish = language == Language.Es && Resources.Contains($"{Prefix}{name}.es.md");
        return Made.GetOrAdd((name, spanish ? Language.Es : Language.En), static key => Make(key.Name, key.Language));
    }

    private static ManualPage Make(string name, Language tongue)
    {
        using Stream stream = Own.GetManifestResourceStream($"{Prefix}{name}{(tongue == Language.Es ? ".es" : "")}.md")!;
        using StreamReader reader = new(stream, Encoding.UTF8);
        MarkdownDocument document = Markdown.Parse(reader.ReadToEnd(), Pipeline);
        string title = name;
        if (document.Descendants<HeadingBlock>().FirstOrDefault(heading => heading.Level == 1) is { Inline: { } words } first)
        {
            title = string.Concat(words.Descendants<LiteralInline>().Select(part => part.Content.ToString()));
            document.Remove(first);
        }

        Turn(document);
        return new ManualPage(name, title, document.ToHtml(Pipeline), tongue);
    }

    /// <summary>Links between pages lead to their help pages; links out of the manual, which the program does not carry, become plain words.</summary>
    private static void Turn(MarkdownDocument document)
    {
        foreach (LinkInline link in document.Descendants<LinkInline>().ToArray())
        {
            string[] parts = (link.Url ?? "").Split('#', 2);
            string page = parts[0].EndsWith(".md", StringComparison.Ordinal) ? parts[0][..^3].Replace(".es", "", StringComparison.Ordinal) : "";
            if (Names.Contains(page))
            {
                link.Url = $"/help/{page}" + (parts.Length > 1 ? "#" + parts[1] : "");
            }
            else if (parts[0].Length > 0)
            {
                link.ReplaceBy(new LiteralInline(string.Concat(link.Descendants<LiteralInline>().Select(part => part.Content.ToString()))));
            }
        }

        foreach (Markdig.Extensions.Tables.Table table in document.Descendants<Markdig.Extensions.Tables.Table>())
        {
            table.GetAttributes().AddClass("manual-table");
        }
    }
}
