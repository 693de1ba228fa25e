using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Tests.Keeping;

public class KeepingTests
{
    private static readonly Season Season = HandSeason.Make();
    private static readonly PlanAnswer Answer = HandAnswer.Make();

    [Fact]
    public void First_to_expire_is_on_top_and_what_outlasts_the_season_at_the_bottom()
    {
        IReadOnlyList<KeepingBar> bars = KeepingFacts.From(Season, Answer).Bars;
        double[] ends = [.. bars.Select(b => b.LastGood ?? double.MaxValue)];
        Assert.Equal(ends.Order(), ends);
        Assert.Null(bars[^1].LastGood);
    }

    /// <summary>By hand: 0.04 used, 1/14 a week: quarters after 0.21, 0.46 and 0.71 of 14 weeks.</summary>
    [Fact]
    public void The_quarters_are_where_the_life_reaches_them()
    {
        KeepingBar bar = KeepingFacts.From(Season, Answer).Bars.Single(b => b.Lot.Text == "Reedbank 1");
        Assert.Equal([2.94, 6.44, 9.94], bar.LifeAt.Select(x => Math.Round(x, 6)));
        // Its last tenth is cracked in week 1: none stands from the start of week 2, with 0.04 + 1/14 of its life used.
        Assert.Equal(2, bar.ClearedAt);
        Assert.Equal(.04 + 1 / 14.0, bar.LifeUsedWhenCleared, 9);
        Assert.Equal([(0, LineMode.Fresh), (1, (LineMode?)LineMode.Crack)], bar.Runs.Select(r => (r.Week, r.Mode)));
    }

    [Fact]
    public void A_lot_that_is_never_cleared_says_so()
    {
        KeepingBar bar = KeepingFacts.From(Season, Answer).Bars.Single(b => b.Lot.Text == "Tannery & Sons 1");
        Assert.Null(bar.ClearedAt);
        Picture picture = KeepingChart.Draw(KeepingFacts.From(Season, Answer), new Reader(Season.Settings, new ReportOptions(Language.En, MassUnit.Pound)));
        Assert.Equal("some stands at the end", picture.Tables[0].Rows.Single(r => r[0].Text == "Tannery & Sons 1")[5].Text);
    }
}
