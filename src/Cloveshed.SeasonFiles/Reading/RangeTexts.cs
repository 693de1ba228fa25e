using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>Bounds in words, to stand after "a number".</summary>
internal static class RangeTexts
{
    public static string Of(Bounds bounds, TextLanguage language)
    {
        string min = NumberText.Of(bounds.Min), max = NumberText.Of(bounds.Max);
        return (language, bounds.AboveMin) switch
        {
            (TextLanguage.Spanish, true) => $"mayor que {min} y como máximo {max}",
            (TextLanguage.Spanish, false) => $"de {min} a {max}",
            (_, true) => $"above {min} and at most {max}",
            _ => $"from {min} to {max}",
        };
    }
}
