using System.Text;
using Cloveshed.Pictures.Look;

namespace Cloveshed.Web.Shared;

/// <summary>
/// The look's colours on their two grounds, for pages whose reader may choose: data-theme on the root says light or dark,
/// without it the device decides. Paper is always light.
/// </summary>
internal static class Grounds
{
    public static string ToCss()
    {
        StringBuilder css = new();
        Block(css, ":root", dark: false);
        css.Append("@media screen and (prefers-color-scheme:dark){");
        Block(css, ":root:not([data-theme])", dark: true);
        css.Append("}\n@media screen{");
        Block(css, ":root[data-theme=dark]", dark: true);
        return css.Append("}\n").ToString();
    }

    private static void Block(StringBuilder css, string selector, bool dark)
    {
        css.Append(selector).Append("{color-scheme:").Append(dark ? "dark" : "light");
        foreach (Token token in Tokens.All)
        {
            css.Append(";--").Append(token.Name).Append(':').Append((dark ? token.Dark : token.Light).ToCss());
        }

        css.Append("}\n");
    }
}
