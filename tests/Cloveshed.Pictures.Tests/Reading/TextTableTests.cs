using System.Text.RegularExpressions;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Tests.Reading;

public partial class TextTableTests
{
    public static TheoryData<Say> Keys => new(Enum.GetValues<Say>());

    [Theory, MemberData(nameof(Keys))]
    public void Both_languages_have_words_for_a_key_and_fill_in_the_same(Say key)
    {
        Assert.NotEqual("", TextTable.English[key]);
        Assert.NotEqual("", TextTable.Spanish[key]);
        Assert.Equal(Places(TextTable.English[key]), Places(TextTable.Spanish[key]));
    }

    /// <summary>Words that are spelt alike in both languages are listed; anything else that is alike was not translated.</summary>
    [Fact]
    public void Spanish_is_not_English()
    {
        Say[] alike = [.. Enum.GetValues<Say>().Where(k => TextTable.English[k] == TextTable.Spanish[k])];
        Assert.Equal(
            [Say.DayPattern, Say.DayYearPattern, Say.Total, Say.MassHead, Say.IntoUnits, Say.RunWords], alike.Order());
    }

    [Theory]
    [InlineData("Lot = Lot", "lacks")]
    [InlineData("Lot = Lot\nLot = Lot", "there twice")]
    [InlineData("Lott = Lot", "expected")]
    [InlineData("no sign of a key", "expected")]
    public void A_faulty_table_is_refused_by_name(string text, string said) =>
        Assert.Contains(said, Assert.Throws<FormatException>(() => TextTable.Parse(text, "a table")).Message, StringComparison.Ordinal);

    private static SortedSet<string> Places(string text) => [.. Place().Matches(text).Select(m => m.Value)];

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Place();
}
