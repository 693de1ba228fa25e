using System.Text.Json.Nodes;

namespace Cloveshed.Web.Charts;

/// <summary>Room above a picture for its legend, which takes more lines the narrower the picture is.</summary>
internal static class LegendRoom
{
    /// <summary>Pixels, in the letters of shed-chart.js: a name's mark with its gaps, a letter of a name on average or somewhat more, a line, and what stays free under the last one.</summary>
    private const double Mark = 37, Letter = 6.6, Line = 19.2, Free = 9;

    /// <summary>The media of the library's option: the top of the grid by the width of the picture.</summary>
    public static JsonArray Media(IReadOnlyList<string> names)
    {
        // Where several queries are met, the last of them holds; where none is, the one without a query.
        JsonArray media = [new JsonObject { ["option"] = Top(1) }];
        for (int lines = 2; lines <= names.Count; lines++)
        {
            media.Add((JsonNode)new JsonObject { ["query"] = new JsonObject { ["maxWidth"] = NarrowestWith(lines - 1, names) - 1 }, ["option"] = Top(lines) });
        }

        return media;
    }

    private static JsonObject Top(int lines) => new() { ["grid"] = new JsonObject { ["top"] = Math.Ceiling((Line * lines) + Free) } };

    private static int NarrowestWith(int lines, IReadOnlyList<string> names)
    {
        int width = 1;
        while (Lines(width, names) > lines)
        {
            width++;
        }

        return width;
    }

    /// <summary>A name that has no room beside those before it begins a line.</summary>
    private static int Lines(int width, IReadOnlyList<string> names)
    {
        int lines = 1;
        double taken = 0;
        foreach (string name in names)
        {
            double wide = Mark + (Letter * name.Length);
            (lines, taken) = taken > 0 && taken + wide > width ? (lines + 1, wide) : (lines, taken + wide);
        }

        return lines;
    }
}
