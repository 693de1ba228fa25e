using System.Net;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>Two things that happen in every season, each in one short form: a line that is down, a harvest that is late.</summary>
public sealed class QuickTests
{
    [Fact]
    public async Task A_line_that_is_down_gets_a_row_of_its_week_and_the_row_is_changed_when_it_is_there()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got form = await visitor.Get("/setup");
        for (int time = 0; time < 2; time++)
        {
            Assert.Equal(HttpStatusCode.SeeOther, (await visitor.Fill(form, "/setup/line-weeks/down", ("line", "Cracker"), ("week", "2026-09-14"))).Status);
        }

        Assert.Equal(new LineWeek(new("Cracker"), 1, 0, null), shed.Ledger.Now().Season!.LineWeeks[1]);
        Assert.Equal(2, shed.Ledger.Now().Season!.LineWeeks.Count);
        Got again = await visitor.Get("/setup/line-weeks");
        for (int time = 0; time < 2; time++)
        {
            Assert.Equal(HttpStatusCode.SeeOther, (await visitor.Fill(again, "/setup/line-weeks/down", ("line", "Cracker"), ("week", "2026-09-14"), ("hours", "16"))).Status);
        }

        Assert.Equal(16, shed.Ledger.Now().Season!.LineWeeks[1].Hours);
        Assert.Equal(["line-week.entered", "line-week.changed"], shed.Ledger.ReadBack(2).Reverse().Select(fact => fact.Kind));
        Got faulty = await visitor.Fill(await visitor.Get("/setup"), "/setup/line-weeks/down", ("line", "Cracker"), ("week", "2026-09-21"), ("hours", "none"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, faulty.Status);
        Assert.Matches("id=\"c-hours\"[^>]*value=\"none\"[^>]*aria-invalid=\"true\"", faulty.Text);
    }

    [Fact]
    public async Task A_late_harvest_moves_all_rows_of_the_lot_in_one_batch()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got form = await visitor.Get("/setup");
        for (int time = 0; time < 2; time++)
        {
            await visitor.Fill(form, "/setup/lots/late", ("lot", "L1"), ("ready", "2026-09-21"));
            Assert.Contains("Lot L1 now has these days.", (await visitor.Get("/setup")).Read(), StringComparison.Ordinal);
        }

        Fact[] facts = [.. shed.Ledger.Read(head)];
        Assert.Equal(["lot.changed", "lot.changed"], facts.Select(fact => fact.Kind));
        Assert.Equal(facts[0].Id, facts[1].Batch);
        Assert.All(shed.Ledger.Now().Season!.Lots.Where(row => row.Lot.Text == "L1"), row => Assert.Equal(new NodaTime.LocalDate(2026, 9, 21), row.Ready));
    }

    [Theory]
    [InlineData("L9", "2026-09-21", "There is no lot")]
    [InlineData("L1", "", "Give the day")]
    public async Task A_late_harvest_says_what_it_lacks(string lot, string ready, string said)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        await visitor.Fill(await visitor.Get("/setup"), "/setup/lots/late", ("lot", lot), ("ready", ready));
        Assert.Contains(said, (await visitor.Get("/setup")).Read(), StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }
}
