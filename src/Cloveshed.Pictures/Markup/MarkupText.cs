using System.Globalization;
using System.Text;

namespace Cloveshed.Pictures.Markup;

/// <summary>
/// HTML or SVG being written. Text and attribute values are always escaped, since lot names, customers and reasons are
/// the user's own words; only another <see cref="MarkupText"/> goes in as it is.
/// </summary>
public sealed class MarkupText
{
    private readonly StringBuilder written = new();

    /// <summary>Opens an element. An attribute whose value is null is left out.</summary>
    public MarkupText Open(string tag, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(tag, attributes);
        written.Append('>');
        return this;
    }

    /// <summary>An element without content, closed in place (SVG shapes, br, meta).</summary>
    public MarkupText Empty(string tag, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(tag, attributes);
        written.Append("/>");
        return this;
    }

    public MarkupText Close(string tag)
    {
        written.Append("</").Append(tag).Append('>');
        return this;
    }

    public MarkupText Text(string text)
    {
        Escape(text);
        return this;
    }

    /// <summary>An element that holds only text.</summary>
    public MarkupText Element(string tag, string text, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(tag, attributes);
        written.Append('>');
        Escape(text);
        return Close(tag);
    }

    /// <summary>Markup that was written (and escaped) elsewhere.</summary>
    public MarkupText Add(MarkupText other)
    {
        written.Append(other.written);
        return this;
    }

    /// <summary>Trusted text of the program's own: stylesheets. Never a user's words.</summary>
    public MarkupText Trusted(string text)
    {
        written.Append(text);
        return this;
    }

    public MarkupText NewLine()
    {
        written.Append('\n');
        return this;
    }

    /// <summary>A coordinate: two decimals at most, invariant.</summary>
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public override string ToString() => written.ToString();

    private void Start(string tag, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        written.Append('<').Append(tag);
        foreach ((string name, string? value) in attributes)
        {
            if (value is null)
            {
                continue;
            }
            written.Append(' ').Append(name).Append("=\"");
            Escape(value);
            written.Append('"');
        }
    }

    private void Escape(string text)
    {
        foreach (char c in text)
        {
            switch (c)
            {
                case '&': written.Append("&amp;"); break;
                case '<': written.Append("&lt;"); break;
                case '>': written.Append("&gt;"); break;
                case '"': written.Append("&quot;"); break;
                case '\'': written.Append("&#39;"); break;
                // Control characters are not allowed in XML; a reason or a name that holds one still shows.
                case < ' ' when c is not ('\n' or '\t'): written.Append('\uFFFD'); break;
                default: written.Append(c); break;
            }
        }
    }
}
