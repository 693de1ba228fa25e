using System.Globalization;
using System.Text.RegularExpressions;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Tests.Reading;

/// <summary>Everything that the planner can say is said in both languages, told from its English words alone.</summary>
public class PlannerWordsTests
{
    private static readonly Reader English = new(HandSeason.Make().Settings, new ReportOptions(Language.En, MassUnit.Pound));
    private static readonly Reader Spanish = new(HandSeason.Make().Settings, new ReportOptions(Language.Es, MassUnit.Pound));

    public static TheoryData<Remark> All => new(Enum.GetValues<Remark>());

    private static string Sample(Remark remark) => Remarks.Slot().Replace(Remarks.Words(remark), slot => slot.Groups["kind"].Value switch
    {
        "day" => "7 Aug 2026",
        "percent" => "61%",
        "money" => "1234.50",
        "count" => "12",
        "text" => "SO-1 and Pack 2",
        string kind => throw new InvalidOperationException(kind),
    });

    [Theory, MemberData(nameof(All))]
    public void A_remark_is_told_from_all_others_and_has_words_for_its_values_in_both_languages(Remark remark)
    {
        Assert.Equal(remark, PlannerWords.Told(Sample(remark))!.Value.Remark);
        Assert.DoesNotContain(Remarks.Between, Remarks.Words(remark), StringComparison.Ordinal);
        string[] slots = [.. Remarks.Slot().Matches(Remarks.Words(remark)).Select(s => $"{{{s.Groups["at"].Value}}}").Order()];
        Assert.All(new[] { TextTable.English, TextTable.Spanish }, words =>
            Assert.Equal(slots, Regex.Matches(words[PlannerWords.Key(remark)], @"\{\d\}").Select(m => m.Value).Order()));
    }

    /// <summary>Nothing but names, days and figures is alike; what is left of the Spanish has no word of the English.</summary>
    [Theory, MemberData(nameof(All))]
    public void In_Spanish_nothing_is_left_in_English(Remark remark)
    {
        Cell told = Spanish.Planner(Sample(remark));
        Assert.Null(told.Language);
        string[] words = Words(told.Text);
        Assert.Empty(words.Intersect(Words(Remarks.Words(remark))).Except(["a", "no"]));
        Assert.Empty(words.Intersect(["Aug"]));

        static string[] Words(string text) => [.. Regex.Matches(Remarks.Slot().Replace(text.Replace("SO-1 and Pack 2", "", StringComparison.Ordinal), ""), @"\p{L}+").Select(m => m.Value.ToLower(CultureInfo.InvariantCulture))];
    }

    [Fact]
    public void Days_money_and_shares_are_written_as_the_reader_writes_them()
    {
        const string why = "in its best week, that of 7 Aug 2026, the next unit of Jumbo 30 costs 1234.50 and this line gives 60.55";
        Assert.Equal("In its best week, that of 7\u00A0Aug\u00A02026, the next unit of Jumbo 30 costs $1,234.50 and this line gives $60.55", English.Planner(why).Text);
        Assert.Equal("En su mejor semana, la del 7\u00A0ago\u00A02026, la siguiente unidad de Jumbo 30 cuesta $1,234.50 y este renglón da $60.55", Spanish.Planner(why).Text);
    }

    [Fact]
    public void Remarks_of_several_rows_are_said_once() =>
        Assert.Equal("Surte SO-1, SO-2; y el mercado; a Pack 1 no le quedan horas",
            Spanish.Planner("serves SO-1, SO-2; and the market; Pack 1 has no hours left; serves SO-1, SO-2; Pack 1 has no hours left").Text);

    [Theory]
    [InlineData("its clock runs out first")]
    [InlineData("and the market; its clock runs out first")]
    [InlineData("room 1 opens in the week of 31 Feb 2026")]
    public void What_no_remark_says_stays_as_written_and_is_marked_as_English(string words)
    {
        Cell cell = Spanish.Planner(words);
        Assert.Equal(("en", words), (cell.Language, char.ToLowerInvariant(cell.Text[0]) + cell.Text[1..]));
        Assert.Equal(words, Spanish.Reason(words));
    }
}
