namespace Cloveshed.Pictures.Markup;

/// <summary>
/// A picture, its label column (a drawing of its own, so that names stay in view while weeks scroll), the same numbers as
/// tables, and a paragraph for those who do not see it.
/// </summary>
public sealed record Picture(string Name, Drawing Plot, Drawing? Labels, IReadOnlyList<DataTable> Tables, string Summary, bool Links = false)
{
    /// <summary>The drawing in a box that scrolls inside itself and is reachable by keyboard.</summary>
    public MarkupText WriteDrawing()
    {
        double whole = Plot.Width + (Labels?.Width ?? 0);
        var markup = new MarkupText();
        markup.Open("div", ("class", "picture-box"), ("tabindex", "0"), ("role", "group"), ("aria-label", Name),
            ("style", $"--whole:{MarkupText.Number(whole)};--tall:{MarkupText.Number(Plot.Height)}"));
        if (Labels is not null)
        {
            markup.Open("div", ("class", "picture-names"), ("style", $"--part:{MarkupText.Number(Labels.Width)}"))
                .Trusted(Labels.ToSvg("picture", null)).Close("div");
        }
        return markup.Open("div", ("class", "picture-plot"), ("style", $"--part:{MarkupText.Number(Plot.Width)}"))
            .Trusted(Plot.ToSvg("picture", Name + ". " + Summary, Links)).Close("div").Close("div").NewLine();
    }
}
