using System.Text;

namespace Cloveshed.Pictures.Look;

/// <summary>
/// Every colour of the look, once. Kinds of place and of work each have a colour, and everywhere also a pattern, a shape
/// or a word. A test computes the contrasts and the colour-blind distances from this list.
/// </summary>
public static class Tokens
{
    public static readonly Token Paper = new("paper", new(97.2, .012, 85), new(21, .015, 60));
    public static readonly Token Sheet = new("sheet", new(99.2, .006, 85), new(24.5, .015, 60));
    public static readonly Token Ink = new("ink", new(25, .02, 60), new(93, .015, 85));
    public static readonly Token SoftInk = new("soft-ink", new(48, .02, 70), new(72, .02, 80));
    public static readonly Token Rule = new("rule", new(88, .015, 80), new(36, .015, 70));
    public static readonly Token Streak = new("streak", new(42, .12, 330), new(78, .1, 330));
    public static readonly Token Open = new("open", new(74, .09, 80), new(68, .09, 80));
    public static readonly Token Cold = new("cold", new(70, .07, 235), new(66, .08, 230));
    public static readonly Token Sealed = new("sealed", new(60, .09, 300), new(56, .12, 300));
    // Fills of the look are light; an edge of the same hue stands out from the ground by 3 to 1, as WCAG 2.2 asks of graphics (1.4.11).
    public static readonly Token OpenEdge = new("open-edge", new(59, .09, 80), new(76, .09, 80));
    public static readonly Token ColdEdge = new("cold-edge", new(56, .08, 235), new(72, .08, 235));
    public static readonly Token SealedEdge = new("sealed-edge", new(47, .1, 300), new(70, .1, 300));
    public static readonly Token Packing = new("packing", new(50, .12, 150), new(56, .12, 150));
    public static readonly Token Cracking = new("cracking", new(64, .13, 58), new(79, .11, 72));
    public static readonly Token Seed = new("seed", new(43, .09, 110), new(65, .1, 110));
    public static readonly Token Warning = new("warning", new(57, .19, 33), new(72, .16, 40));

    public static IReadOnlyList<Token> All { get; } =
        [Paper, Sheet, Ink, SoftInk, Rule, Streak, Open, Cold, Sealed, OpenEdge, ColdEdge, SealedEdge, Packing, Cracking, Seed, Warning];

    /// <summary>The tokens as custom properties: light always, dark on a screen that asks for it. Print stays light.</summary>
    public static string ToCss()
    {
        var css = new StringBuilder(":root{color-scheme:light");
        foreach (Token token in All)
        {
            css.Append(";--").Append(token.Name).Append(':').Append(token.Light.ToCss());
        }
        css.Append("}\n@media screen and (prefers-color-scheme:dark){:root{color-scheme:dark");
        foreach (Token token in All)
        {
            css.Append(";--").Append(token.Name).Append(':').Append(token.Dark.ToCss());
        }
        return css.Append("}}\n").ToString();
    }
}
