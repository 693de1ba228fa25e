using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>The frame that all sections of a report share: an anchor, a heading, folds that open.</summary>
internal static class Section
{
    public static MarkupText Begin(string id, string title, string? kind = null) =>
        new MarkupText().Open("section", ("id", id), ("aria-labelledby", id + "-title"), ("class", kind)).Element("h2", title, ("id", id + "-title")).NewLine();

    public static MarkupText Lead(this MarkupText markup, string text) => markup.Element("p", text, ("class", "lead")).NewLine();

    public static MarkupText Fold(this MarkupText markup, string summary, params ReadOnlySpan<MarkupText> inside)
    {
        markup.Open("details").Element("summary", summary).NewLine();
        foreach (MarkupText part in inside)
        {
            markup.Add(part);
        }
        return markup.Close("details").NewLine();
    }

    /// <summary>The tables behind a picture, folded.</summary>
    public static MarkupText Behind(this MarkupText markup, Picture picture, string name, Reader reader)
    {
        markup.Open("details", ("class", "behind")).Element("summary", reader.Say(Say.TableBehind, picture.Name)).NewLine();
        for (int i = 0; i < picture.Tables.Count; i++)
        {
            markup.Add(picture.Tables[i].Write(i == 0 ? name : $"{name}-{i + 1}"));
        }
        return markup.Close("details").NewLine();
    }

    public static MarkupText End(this MarkupText markup) => markup.Close("section").NewLine();
}
