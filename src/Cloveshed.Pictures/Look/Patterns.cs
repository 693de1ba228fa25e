namespace Cloveshed.Pictures.Look;

/// <summary>Patterns that stand with the colours, once a page: ticks for cold, strokes for sealed, strokes the other way for sold at market.</summary>
public static class Patterns
{
    public const string Svg =
        "<svg class=\"defs\" width=\"0\" height=\"0\" aria-hidden=\"true\" focusable=\"false\"><defs>"
        + "<pattern id=\"ticks-cold\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\"><path class=\"pattern-line\" d=\"M3.5 0V7\"/></pattern>"
        + "<pattern id=\"strokes-sealed\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\"><path class=\"pattern-line\" d=\"M-1 7L7 -1M-1 1L1 -1M5 7L7 5\"/></pattern>"
        + "<pattern id=\"strokes-sold\" width=\"4\" height=\"4\" patternUnits=\"userSpaceOnUse\"><path class=\"pattern-line\" d=\"M-1 -1L5 5M3 -1L5 1M-1 3L1 5\"/></pattern>"
        + "</defs></svg>";
}
