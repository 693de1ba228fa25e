using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Tests.Reading;

/// <summary>A run's reason in its four parts.</summary>
public class RunWhyTests
{
    private static readonly Reader English = new(HandSeason.Make().Settings, new ReportOptions(Language.En, MassUnit.Pound));

    [Fact]
    public void Each_remark_stands_under_what_it_is_about() => Assert.Equal(
        [
            (WhyKind.Serves, "serves SO-1 and 2 more; and the market"), (WhyKind.Clock, "61% of its storage life used, last good week 7\u00A0Aug\u00A02026"),
            (WhyKind.Binds, "Pack 1 has no hours left; Cold 1 is full"), (WhyKind.Next, "next best over Pack 2 in the week of 14\u00A0Aug\u00A02026, worth $120.50 less"),
        ],
        RunWhy.Of("serves SO-1 and 2 more; and the market; 61% of its storage life used, last good week 7 Aug 2026; Pack 1 has no hours left; Cold 1 is full; next best over Pack 2 in the week of 14 Aug 2026, worth 120.50 less", English)!);

    [Fact]
    public void A_part_of_which_nothing_is_said_is_empty() =>
        Assert.Equal(["for the market", "", "", ""], RunWhy.Of("for the market", English)!.Select(part => part.Text));

    [Fact]
    public void Words_that_are_not_the_planners_have_no_parts() => Assert.Null(RunWhy.Of("because I say so", English));

    /// <summary>What a run may say is of its four parts; what a short order line says is no reason for a run, and stands with what the run is for.</summary>
    [Fact]
    public void Every_choice_that_comes_next_is_told_as_such()
    {
        Remark[] next = [.. Enum.GetValues<Remark>().Where(remark => remark.ToString() is var name && (name.StartsWith("Next", StringComparison.Ordinal) || name.StartsWith("Alike", StringComparison.Ordinal) || name.StartsWith("Better", StringComparison.Ordinal)))];
        Assert.Equal(10, next.Length);
        Assert.All(next, remark => Assert.NotEqual("", RunWhy.Of(Remarks.Slot().Replace(Remarks.Words(remark), slot => slot.Groups["kind"].Value switch { "day" => "7 Aug 2026", "money" => "12.00", _ => "Pack 2" }), English)![^1].Text));
    }

    /// <summary>By hand: a run of 32 h that takes 64,000 lb moves 1,000 lb in each half hour.</summary>
    [Theory]
    [InlineData(40, "as good over Pack 2 in the week of 7\u00A0Aug\u00A02026: 40\u00A0h are free there, about enough for all of it")]
    [InlineData(10, "about 20,000\u00A0lb of it as good over Pack 2 in the week of 7\u00A0Aug\u00A02026, where 10\u00A0h are free")]
    [InlineData(0.1, "nothing pays more: Pack 2 in the week of 7\u00A0Aug\u00A02026 would do as well, but has no hours left")]
    public void What_is_as_good_says_how_much_could_go_there(double free, string said)
    {
        RunElsewhere elsewhere = new(64_000, 32, (_, _) => free);
        foreach (string words in new[] { "as good over Pack 2 in the week of 7 Aug 2026", "next best over Pack 2 in the week of 7 Aug 2026, worth 2.10 less" })
        {
            Assert.Equal(said.Replace('\u00A0', ' '), RunWhy.Of("serves SO-1; " + words, English, elsewhere)![^1].Text.Replace('\u00A0', ' '));
            Assert.Equal("serves SO-1", RunWhy.Short("serves SO-1; " + words));
        }

        const string dear = "serves SO-1; next best over Pack 2 in the week of 7 Aug 2026, worth 120.50 less";
        Assert.Equal(dear, RunWhy.Short(dear));
        Assert.Contains("worth", RunWhy.Of(dear, English, elsewhere)![^1].Text, StringComparison.Ordinal);
    }
}
