namespace Cloveshed.Pictures.Look;

/// <summary>Patterns that stand with the colours, once a page: ticks for cold, strokes for sealed, strokes the other way for sold at market.</summary>
public static class Patterns
{
    public const string Svg =
        "<svg class=\"defs\" width=\"0\" height=\"0\" aria-hidden=\"true\" focusable=\"false\"><defs>"
        + "<pattern id=\"ticks-cold\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\"><path class=\"pattern-line\" d=\"M4.5 0V9\"/></pattern>"
        + "<pattern id=\"strokes-sealed\" width=\"8\" height=\"8\" patternUnits=\"userSpaceOnUse\"><path class=\"pattern-line\" d=\"M-1 9L9 -1M-1 1L1 -1M7 9L9 7\"/></pattern>"
        + "<pattern id=\"strokes-sold\" width=\"4\" height=\"4\" patternUnits=\"userSpaceOnUse\"><path class=\"pattern-line\" d=\"M-1 -1L5 5M3 -1L5 1M-1 3L1 5\"/></pattern>"
        + "</defs></svg>";
}
