using System.Text.Json;
using System.Text.Json.Nodes;
using Cloveshed.Core;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Ledger.Tests;

/// <summary>What the sizer counted and what the line is set to: kept, added up, corrected, refused.</summary>
public sealed class LineFactTests
{
    private static readonly LotId Lot = new("A");

    [Fact]
    public void Counts_of_a_lot_add_up_whatever_file_they_came_in()
    {
        using Shed shed = Shed.WithSeason();
        shed.Take(shed.Here.SizerCounted(Lot, "morning.csv", 12, Of((401, 3), (550, 7))));
        shed.Take(shed.Here.SizerCounted(Lot, "noon.csv", 5, Of((550, 2), (60_000, 1))));
        SizerTotal total = shed.Ledger.Now().SizerTotal(Lot)!;
        Assert.Equal((17, 12L, 3L, 9L, 1L), (total.BinsRun, total.Counts.Bulbs, total.Counts[401], total.Counts[550], total.Counts.TooHeavy));
        Assert.Null(shed.Ledger.Now().SizerTotal(new LotId("B")));
        // The read tables give the same after a start, and the proof finds nothing.
        shed.Reopen();
        Assert.Equal(9, shed.Ledger.Now().SizerTotal(Lot)!.Counts[550]);
        Assert.Empty(shed.Ledger.Verify().Flaws);
        Assert.True(shed.Ledger.Rebuild().Differences.Count == 0);
    }

    [Fact]
    public void What_is_known_of_a_lot_is_brought_up_to_date_by_what_was_counted_of_it()
    {
        using Shed shed = Shed.WithSeason();
        ShedState before = shed.Ledger.Now();
        shed.Take(shed.Here.SizerCounted(Lot, "morning.csv", 12, Of((401, 3), (550, 7))));
        shed.Take(shed.Here.SizerCounted(Lot, "noon.csv", 5, Of((550, 2))));
        ShedState now = shed.Ledger.Now();
        SizerCounted counted = Assert.Single(now.Season!.SizerCounts);
        Assert.Equal((Lot, 17, 12L), (counted.Lot, counted.BinsRun, counted.Counts.Bulbs));
        Assert.Same(now.Season, now.Season);
        Assert.Empty(before.Season!.SizerCounts);
        Assert.Equal(before.InputDigest, now.InputDigest);
        Assert.NotEqual(before.KnowledgeDigest, now.KnowledgeDigest);
        // Later facts of other kinds leave it as it is; a new start reads it again.
        shed.Take(shed.Here.Note("x"));
        Assert.Equal(now.KnowledgeDigest, shed.Ledger.Now().KnowledgeDigest);
        shed.Reopen();
        Assert.Equal(12, shed.Ledger.Now().Season!.SizerCounts.Single().Counts.Bulbs);
        Assert.Equal(17, LotKnowing.Know(shed.Ledger.Now().Season!).Lots[Lot].Sources.BinsSized);
    }

    [Fact]
    public void A_count_that_corrects_another_takes_its_place()
    {
        using Shed shed = Shed.WithSeason();
        NewFact first = shed.Here.SizerCounted(Lot, "wrong-lot.csv", 12, Of((401, 3)));
        shed.Take(first);
        shed.Take(shed.Here.SizerCounted(Lot, "right.csv", 2, Of((700, 5)), corrects: first.Id));
        Assert.Equal((2, 5L), (shed.Ledger.Now().SizerTotal(Lot)!.BinsRun, shed.Ledger.Now().SizerTotal(Lot)!.Counts.Bulbs));
        Assert.Equal("corrects-unknown", Refused(shed, shed.Here.SizerCounted(Lot, "x.csv", 1, Of((1, 1)), corrects: shed.Here.Note("x").Id)));
    }

    [Fact]
    public void The_last_setting_of_a_lot_counts_and_a_past_day_has_the_one_before()
    {
        using Shed shed = Shed.WithSeason();
        shed.Take((shed.Here with { HappenedAt = shed.Here.HappenedAt.AddDays(-3) }).SizerSet(Lot, [new("M", "M", 30)], null));
        shed.Take(shed.Here.SizerSet(Lot, [new("M", "M", 31.5), new("M", "M", 62.1)], 120));
        shed.Take(shed.Here.DrumSet(Lot, [9.5, 12], true));
        ShedState now = shed.Ledger.Now();
        SizerSetting setting = Assert.Single(now.SizerSettings);
        Assert.Equal((120.0, 62.1, "M"), (setting.OverG, setting.Boxes[1].MinG, setting.Boxes[1].Last));
        Assert.True(Assert.Single(now.DrumSettings).LargestFirst);
        shed.Reopen();
        Assert.Equal(31.5, shed.Ledger.Now().SizerSettings.Single().Boxes[0].MinG);
        Assert.Equal([9.5, 12], shed.Ledger.Now().DrumSettings.Single().HolesMm);
        DateTimeOffset before = shed.Here.HappenedAt.AddDays(-1);
        ShedState then = shed.Ledger.AsOf(new AsOf(new NodaTime.LocalDate(before.Year, before.Month, before.Day), Knowledge.AsKnownNow));
        Assert.Equal(30, Assert.Single(then.SizerSettings).Boxes[0].MinG);
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Theory]
    [InlineData("sizer.counted", """{"lot":"A","file":"f","bins":1,"bulbs":3,"from":10,"counts":[1,1],"too_heavy":0}""", "body-form")]
    [InlineData("sizer.counted", """{"lot":"A","file":"f","bins":1,"bulbs":0,"from":10,"counts":[1,-1],"too_heavy":0}""", "body-form")]
    [InlineData("sizer.counted", """{"lot":"A","file":"f","bins":1,"bulbs":2,"from":50000,"counts":[1,1],"too_heavy":0}""", "body-form")]
    [InlineData("sizer.counted", """{"lot":"A","file":"f","bins":0,"bulbs":1,"from":1,"counts":[1],"too_heavy":0}""", "body-form")]
    [InlineData("sizer.counted", """{"lot":"nobody's","file":"f","bins":1,"bulbs":1,"from":1,"counts":[1],"too_heavy":0}""", "hold-unknown")]
    [InlineData("sizer.set", """{"lot":"A","boxes":[]}""", "body-form")]
    [InlineData("sizer.set", """{"lot":"A","boxes":[{"class":"M","last":"M","min_g":40},{"class":"M","last":"M","min_g":30}]}""", "body-form")]
    [InlineData("sizer.set", """{"lot":"A","boxes":[{"class":"Huge","last":"Huge","min_g":40}]}""", "hold-unknown")]
    [InlineData("drum.set", """{"lot":"A","holes_mm":[12,9],"order":"smallest-first"}""", "body-form")]
    [InlineData("drum.set", """{"lot":"A","holes_mm":[9],"order":"upward"}""", "body-form")]
    public void What_does_not_agree_with_itself_or_the_season_is_refused(string kind, string body, string rule)
    {
        using Shed shed = Shed.WithSeason();
        long head = shed.Ledger.Head().Seq;
        Assert.Equal(rule, Refused(shed, shed.Here.Make(kind, (JsonObject)JsonNode.Parse(body)!)));
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    private static string Refused(Shed shed, NewFact fact) => Assert.Single(Assert.IsType<Appended.Refused>(shed.Ledger.Append([fact])).Refusals).Rule;

    private static WeightHistogram Of(params (int Tenths, long Bulbs)[] bulbs)
    {
        WeightHistogram histogram = new();
        foreach ((int tenths, long count) in bulbs)
            histogram.AddTenths(tenths, count);
        return histogram;
    }
}
