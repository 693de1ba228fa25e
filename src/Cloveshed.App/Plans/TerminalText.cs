namespace Cloveshed.App.Plans;

/// <summary>Figures come with no-break spaces and a true minus: right on a page, a nuisance to search for in a terminal.</summary>
internal static class TerminalText
{
    public static string Of(string text) => text.Replace('\u00A0', ' ').Replace('\u2212', '-');
}
