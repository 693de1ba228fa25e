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

    /// <summary>By hand: a twentieth of Sorrel 5 is discarded in week 4, beside the quarter that is cracked.</summary>
    [Fact]
    public void What_is_discarded_is_marked_as_such()
    {
        KeepingBar bar = KeepingFacts.From(Season, Answer).Bars.Single(b => b.Lot.Text == "Sorrel 5");
        KeepingRun gone = Assert.Single(bar.Runs, r => r.Discarded);
        Assert.Equal((4, null, Answer.AsIs.Single(a => a.Discarded).Mass), (gone.Week, gone.Mode, gone.Mass));
        Picture picture = KeepingChart.Draw(KeepingFacts.From(Season, Answer), new Reader(Season.Settings, new ReportOptions(Language.En, MassUnit.Pound)));
        Assert.Contains("class=\"ring\"", picture.Plot.ToSvg("picture", null), StringComparison.Ordinal);
        Assert.Contains("discarded", picture.Tables[0].Rows.Single(r => r[0].Text == "Sorrel 5")[7].Text, StringComparison.Ordinal);
        // It is no run: the life used at the last run is that of the cracking.
        Assert.Equal(Answer.Paths.Single(p => p.Lot.Text == "Sorrel 5" && p.Week == 4).LifeUsed, bar.LifeUsedWhenCleared);
    }

    [Fact]
    public void A_lot_that_is_never_cleared_says_so()
    {
        KeepingBar bar = KeepingFacts.From(Season, Answer).Bars.Single(b => b.Lot.Text == "Tannery & Sons 1");
        Assert.Null(bar.ClearedAt);
        Picture picture = KeepingChart.Draw(KeepingFacts.From(Season, Answer), new Reader(Season.Settings, new ReportOptions(Language.En, MassUnit.Pound)));
        Assert.Equal("some stands at the end", picture.Tables[0].Rows.Single(r => r[0].Text == "Tannery & Sons 1")[5].Text);
    }

    /// <summary>By hand: half of a lot moves to the cold room in week 2; the half in the yard is run in week 3 and is spent after 13.44 weeks.</summary>
    [Fact]
    public void A_lot_in_two_places_has_the_flag_of_what_expires_first_and_the_margin_of_the_tightest()
    {
        PathWeek[] yard = [.. Answer.Paths.Where(p => p.Lot.Text == "Reedbank 1").OrderBy(p => p.Week)];
        IEnumerable<PathWeek> cold = yard.Select((p, i) => p with { Path = "cold", LifeUsed = .04 + Math.Min(i, 2) / 14.0 + Math.Max(0, i - 2) / 26.0 });
        RunRow run = Answer.Runs.First(r => r.Lot.Text == "Reedbank 1") with { Week = 3, MassAtStart = 120_000, MassIn = 117_000 };
        PlanAnswer answer = Answer with { Paths = [.. yard, .. cold], Runs = [run, run with { Path = "cold", Week = 18 }], AsIs = [], Keeps = [] };
        KeepingBar bar = Assert.Single(KeepingFacts.From(Season, answer).Bars);
        Assert.Equal(13.44, bar.LastGood!.Value, 6);
        Assert.Equal(double.PositiveInfinity, bar.LastGoodElsewhere);
        Assert.Equal((4.0, 19.0), (bar.PartClearedAt, bar.ClearedAt));
        Assert.Equal(13.44 - 4, bar.Margin!.Value, 6);
    }
}
