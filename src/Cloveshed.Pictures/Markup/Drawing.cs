namespace Cloveshed.Pictures.Markup;

/// <summary>An SVG being drawn, in its own units (one unit is one CSS pixel at natural size). Colours come by class.</summary>
public sealed class Drawing(double width, double height)
{
    /// <summary>What pictures.css leaves for names on a phone: 158 less the gap at their right and a hair.</summary>
    private const double PhoneRoom = 146;

    private readonly MarkupText body = new();

    public double Width => width;

    public double Height => height;

    public Drawing Rect(double x, double y, double w, double h, string kind, string? title = null, double round = 0)
    {
        if (w <= 0 || h <= 0)
        {
            return this;
        }
        return Shape("rect", title, ("class", kind), ("x", N(x)), ("y", N(y)), ("width", N(w)), ("height", N(h)),
            ("rx", round > 0 ? N(round) : null));
    }

    public Drawing Line(double x1, double y1, double x2, double y2, string kind) =>
        Shape("line", null, ("class", kind), ("x1", N(x1)), ("y1", N(y1)), ("x2", N(x2)), ("y2", N(y2)));

    public Drawing Path(string d, string kind, string? title = null, double? strokeWidth = null) =>
        Shape("path", title, ("class", kind), ("d", d), ("stroke-width", strokeWidth is { } w ? N(w) : null));

    public Drawing Circle(double x, double y, double r, string kind, string? title = null) =>
        Shape("circle", title, ("class", kind), ("cx", N(x)), ("cy", N(y)), ("r", N(r)));

    /// <summary>Anchor is start, middle or end.</summary>
    public Drawing Text(double x, double y, string text, string kind, string anchor = "start")
    {
        body.Element("text", text, ("class", kind), ("x", N(x)), ("y", N(y)), ("text-anchor", anchor == "start" ? null : anchor));
        return this;
    }

    /// <summary>A lot and its variety, ending at x; a phone leaves out the variety where both have no room on it.</summary>
    public Drawing Names(double x, double y, string lot, string variety, string kind, double room, double em)
    {
        string whole = Fit($"{lot} · {variety}", room, em);
        int head = Math.Min(lot.Length, whole.Length);
        body.Open("text", ("class", kind), ("x", N(x)), ("y", N(y)), ("text-anchor", "end")).Text(whole[..head]);
        body.Element("tspan", whole[head..], ("class", whole.Length * 0.5 * em > PhoneRoom ? "more" : null)).Close("text");
        return this;
    }

    /// <summary>What is drawn inside leads somewhere. It is followed by hand, or by the page's own means by keyboard. Without a label it is named by what is inside: words, and titles of shapes.</summary>
    public Drawing Link(string href, string key, string kind, string? label, Action<Drawing> inside)
    {
        body.Open("a", ("href", href), ("class", kind), ("data-key", key), ("tabindex", "-1"), ("aria-label", label));
        inside(this);
        body.Close("a");
        return this;
    }

    public Drawing Add(Drawing other)
    {
        body.Add(other.body);
        return this;
    }

    /// <summary>The whole picture; Label null hides it from screen readers (a label column beside a named picture).</summary>
    /// <param name="links">It holds links, and is then a group of them and no single image.</param>
    public string ToSvg(string kind, string? label, bool links = false)
    {
        var svg = new MarkupText();
        svg.Open("svg", ("xmlns", "http://www.w3.org/2000/svg"), ("class", kind), ("viewBox", $"0 0 {N(width)} {N(height)}"),
            ("width", N(width)), ("height", N(height)), ("role", label is null ? null : links ? "group" : "img"), ("aria-label", label),
            ("aria-hidden", label is null ? "true" : null));
        return svg.Add(body).Close("svg").ToString();
    }

    /// <summary>Cuts a label to what fits; the full name stays in the table behind the picture.</summary>
    /// <param name="em">Font size.</param>
    public static string Fit(string text, double room, double em)
    {
        int most = Math.Max(3, (int)(room / WidthOf("0", em)));
        return text.Length <= most ? text : string.Concat(text.AsSpan(0, most - 1).TrimEnd(), "…");
    }

    /// <summary>About how wide a text is: 0.5 em a character, an estimate for this face, no source.</summary>
    public static double WidthOf(string text, double em) => 0.5 * em * text.Length;

    private Drawing Shape(string tag, string? title, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        if (title is null)
        {
            body.Empty(tag, attributes);
        }
        else
        {
            body.Open(tag, attributes).Element("title", title).Close(tag);
        }
        return this;
    }

    private static string N(double value) => MarkupText.Number(value);
}
