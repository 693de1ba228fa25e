using System.Globalization;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Line;

/// <summary>A bulb as it was typed: weight, and diameter and defect where they were given.</summary>
public sealed record TypedBulb(double WeightG, double? DiameterMm, Defect Defect);

/// <summary>A line that holds no bulb.</summary>
/// <param name="Line">From 1.</param>
public sealed record TypedFault(int Line, string Text);

/// <summary>
/// A sample as it is typed, or as a scale types it: a line for each bulb, its weight in grams, then, if wanted, its diameter in mm and
/// what is wrong with it, in any order after the weight. Spaces, commas, semicolons and tabs stand between.
/// </summary>
/// <param name="Bulbs">In their order.</param>
public sealed record SampleText(IReadOnlyList<TypedBulb> Bulbs, IReadOnlyList<TypedFault> Faults)
{
    /// <summary>Bulbs of one form: the largest sample that is worth weighing by hand.</summary>
    public const int Most = 500;

    /// <summary>Limits of samples.csv.</summary>
    private const double MostG = 5000, MostMm = 500;

    private static readonly char[] Between = [' ', ',', ';', '\t'];

    public static SampleText Of(string text, Words<LineWord> words)
    {
        List<TypedBulb> bulbs = [];
        List<TypedFault> faults = [];
        foreach ((int at, string line) in text.ReplaceLineEndings("\n").Split('\n').Index())
        {
            string[] parts = line.Split(Between, StringSplitOptions.RemoveEmptyEntries);
            if (parts.Length == 0)
            {
                continue;
            }

            if (Bulb(parts, words) is { } bulb)
            {
                bulbs.Add(bulb);
            }
            else
            {
                faults.Add(new TypedFault(at + 1, line.Trim()));
            }
        }

        return new(bulbs, faults);
    }

    private static TypedBulb? Bulb(string[] parts, Words<LineWord> words)
    {
        // A scale may type its unit.
        List<string> said = [.. parts.Where(part => !part.Equals("g", StringComparison.OrdinalIgnoreCase))];
        if (said.Count == 0 || Number(said[0].TrimEnd('g'), MostG) is not { } weight)
        {
            return null;
        }

        double? mm = null;
        Defect? defect = null;
        foreach (string part in said.Skip(1))
        {
            if (mm is null && Number(part, MostMm) is { } width)
            {
                mm = width;
            }
            else if (defect is null && DefectTexts.Of(part, words) is { } found)
            {
                defect = found;
            }
            else
            {
                return null;
            }
        }

        return new(weight, mm, defect ?? Defect.None);
    }

    private static double? Number(string text, double most) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number > 0 && number <= most ? number : null;
}

/// <summary>What is wrong with a bulb, in the reader's words and in those of samples.csv.</summary>
internal static class DefectTexts
{
    private static readonly (Defect Defect, LineWord Word)[] All =
    [
        (Defect.Mold, LineWord.DefectMold), (Defect.Decay, LineWord.DefectDecay), (Defect.Sprout, LineWord.DefectSprout), (Defect.Shatter, LineWord.DefectShatter),
        (Defect.Mechanical, LineWord.DefectMechanical), (Defect.Skin, LineWord.DefectSkin), (Defect.Other, LineWord.DefectOther),
    ];

    public static IEnumerable<(Defect Defect, LineWord Word)> Each => All;

    /// <summary>As samples.csv has it.</summary>
    public static string Cell(Defect defect) => defect == Defect.None ? "" : defect.ToString().ToLowerInvariant();

    /// <summary>A defect by its word in either language, or by the beginning of one where no other begins so.</summary>
    public static Defect? Of(string text, Words<LineWord> words)
    {
        Defect[] begun = [.. All.Where(one => Cell(one.Defect).StartsWith(text, StringComparison.OrdinalIgnoreCase) || words[one.Word].StartsWith(text, StringComparison.OrdinalIgnoreCase)).Select(one => one.Defect)];
        Defect[] whole = [.. All.Where(one => Cell(one.Defect).Equals(text, StringComparison.OrdinalIgnoreCase) || words[one.Word].Equals(text, StringComparison.OrdinalIgnoreCase)).Select(one => one.Defect)];
        return whole.Length == 1 ? whole[0] : begun.Length == 1 ? begun[0] : null;
    }
}
