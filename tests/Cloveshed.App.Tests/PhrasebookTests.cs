using System.Text.RegularExpressions;
using Cloveshed.App.Words;

namespace Cloveshed.App.Tests;

/// <summary>Both languages say everything, with the same values in it.</summary>
public sealed class PhrasebookTests
{
    public static TheoryData<Phrase> Phrases => new(Enum.GetValues<Phrase>());

    [Theory, MemberData(nameof(Phrases))]
    public void A_phrase_fills_in_the_same_values_in_both_languages(Phrase phrase)
    {
        Assert.NotEmpty(Phrasebook.English[phrase]);
        Assert.Equal(Values(Phrasebook.English[phrase]), Values(Phrasebook.Spanish[phrase]));
    }

    [Theory]
    [InlineData("SeeHelp = a\nSeeHelp = b", "twice")]
    [InlineData("Nothing = a", "a key that is used")]
    [InlineData("77 = a", "a key that is used")]
    [InlineData("SeeHelp = a", "lacks")]
    public void A_phrasebook_with_a_gap_or_a_slip_does_not_load(string text, string fault) =>
        Assert.Contains(fault, Assert.Throws<FormatException>(() => Phrasebook.Parse(text, "x")).Message, StringComparison.Ordinal);

    private static IEnumerable<string> Values(string text) => Regex.Matches(text, @"\{\d+[^}]*\}").Select(match => match.Value).Distinct().Order(StringComparer.Ordinal);
}
