using System.Net;
using Cloveshed.Ledger;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Keep;

/// <summary>A lot corrected, held, found spoiled, by the forms of its page.</summary>
public sealed class LotFormTests
{
    [Fact]
    public async Task A_correction_is_a_fact_with_its_reason_and_the_page_then_shows_it()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Guid before = shed.Ledger.Now().Rows!.Find("lots.csv", 1)!.Fact;
        Got page = await visitor.Get("/keep/L1");
        Got answer = await visitor.Fill(page, "/keep-rows/change", ("net", "53500"), ("bins", "59"), ("reason", "Weighed again"));
        Assert.Equal((HttpStatusCode.SeeOther, "/keep/L1"), (answer.Status, answer.Header("Location")));
        Fact fact = shed.Ledger.ReadBack(1)[0];
        Assert.Equal((FactKinds.Changed("lots.csv"), before, "Weighed again", "keep"), (fact.Kind, fact.Corrects, fact.Body.GetProperty("reason").GetString(), fact.Place));
        string after = (await visitor.Get("/keep/L1")).Read();
        Assert.Contains("The row of L1 in Yard reads so now.", after, StringComparison.Ordinal);
        Assert.Contains("lot.changed bins 60 → 59, net 54000 → 53500 Weighed again", after, StringComparison.Ordinal);
        Assert.Contains("53,500", after, StringComparison.Ordinal);
        Assert.Contains("89,500", after, StringComparison.Ordinal); // with the 36,000 in the cold
        Assert.Equal((53500, 59), (shed.Ledger.Now().Season!.Lots[0].Net, shed.Ledger.Now().Season!.Lots[0].Bins));
    }

    [Theory]
    [InlineData("net", "many", "net", "en")]
    [InlineData("fresh_share", "1.4", "fresh_share", "en")]
    [InlineData("bins", "900", "500", "en")] // more than the yard holds
    [InlineData("net", "muchas", "un número", "es")]
    public async Task What_the_reader_refuses_is_told_in_its_words_and_nothing_is_written(string column, string cell, string told, string language)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor(language);
        long head = shed.Ledger.Head().Seq;
        await visitor.Fill(await visitor.Get("/keep/L1"), "/keep-rows/change", (column, cell), ("reason", "r"));
        Got page = await visitor.Get("/keep/L1");
        Assert.Contains("class=\"said refused\"", page.Text, StringComparison.Ordinal);
        Assert.Contains("lots.csv", page.Read(), StringComparison.Ordinal);
        Assert.Contains(told, page.Read(), StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task Forms_sent_twice_are_one_fact_each()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got row = await visitor.Get("/keep/L2"), spoiled = await visitor.Get("/keep/L1?of=Cold+1&spoiled=1000&how=out&emptied=1");
        for (int time = 0; time < 2; time++)
        {
            await visitor.Fill(row, "/keep-rows/change", ("net", "91000"), ("reason", "r"));
            await visitor.Fill(spoiled, "/keep-rows/spoiled", ("reason", "r"));
            await visitor.Send(row, "/keep-rows/lot", ("hold", "yes"), ("ready", ""), ("reason", "r"));
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        // The row of L2 was seen before its net was corrected, so that holding it is refused, both times.
        Assert.Equal(["lot.changed", "lot.changed"], shed.Ledger.Read(head).Select(fact => fact.Kind));
        Assert.Equal([54_000, 35_000, 91_000], shed.Ledger.Now().Season!.Lots.Select(lot => lot.Net));
        Assert.Equal(39, shed.Ledger.Now().Season!.Lots[1].Bins);
    }

    [Fact]
    public async Task Spoiled_is_looked_at_before_it_is_sent()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got look = await visitor.Get("/keep/L1?of=Yard&spoiled=5400&how=in&emptied=");
        Assert.Equal(head, shed.Ledger.Head().Seq);
        // 54,000 lb, 0.8 and 0.1: a tenth of the sound spoils.
        Assert.Contains("Makes grade 43,200 lb 38,880 lb −4,320 lb", look.Read(), StringComparison.Ordinal);
        Assert.Contains("Waste 5,400 lb 10,260 lb 4,860 lb", look.Read(), StringComparison.Ordinal);
        Assert.Contains("The row will read: fresh_share 0.72, crack_share 0.09.", look.Read(), StringComparison.Ordinal);
        await visitor.Fill(look, "/keep-rows/spoiled", ("reason", "Mold in the west stack"));
        Assert.Contains("What was found spoiled is recorded.", (await visitor.Get("/keep/L1")).Read(), StringComparison.Ordinal);
        var lot = shed.Ledger.Now().Season!.Lots[0];
        Assert.Equal((54_000, 0.72, 0.09), (lot.Net, lot.FreshShare, lot.CrackShare));
        Assert.Equal("Mold in the west stack", shed.Ledger.ReadBack(1)[0].Body.GetProperty("reason").GetString());
    }

    [Fact]
    public async Task All_of_a_row_spoiled_drops_it_and_the_rest_of_the_lot_stays()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got look = await visitor.Get("/keep/L1?of=Cold+1&spoiled=36000&how=out&emptied=40");
        Assert.Contains("Nothing is left of it there", look.Read(), StringComparison.Ordinal);
        await visitor.Fill(look, "/keep-rows/spoiled", ("reason", "The compressor stopped"));
        Assert.Equal(FactKinds.Dropped("lots.csv"), shed.Ledger.ReadBack(1)[0].Kind);
        Assert.Equal(["Yard"], shed.Ledger.Now().Season!.Lots.Where(lot => lot.Lot.Text == "L1").Select(lot => lot.Place.Text));
        Assert.Equal(HttpStatusCode.OK, (await visitor.Get("/keep/L1")).Status);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("99999999")]
    [InlineData("lots")]
    public async Task Spoiled_that_cannot_be_says_what_can(string mass)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got look = await visitor.Get($"/keep/L1?of=Yard&spoiled={mass}&how=out");
        Assert.Contains("at most what stands there (54,000 lb)", look.Read(), StringComparison.Ordinal);
        Assert.DoesNotContain("/keep-rows/spoiled", look.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Holding_a_lot_holds_all_of_its_rows()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        await visitor.Send(await visitor.Get("/keep/L1"), "/keep-rows/lot", ("hold", "yes"), ("ready", "2026-09-20"), ("reason", "Residue test"));
        Assert.Equal(["lot.changed", "lot.changed"], shed.Ledger.Read(head).Select(fact => fact.Kind));
        Assert.All(shed.Ledger.Now().Season!.Lots.Where(lot => lot.Lot.Text == "L1"), lot => Assert.Equal((true, new NodaTime.LocalDate(2026, 9, 20)), (lot.Hold, lot.Ready)));
        Assert.Contains("on hold", (await visitor.Get("/keep/L1")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lot_that_is_not_there_is_said_to_be_gone()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/keep/L9");
        Assert.Equal(HttpStatusCode.NotFound, page.Status);
        Assert.Contains("There is no such lot", page.Read(), StringComparison.Ordinal);
        Assert.Contains("L9", page.Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lot_whose_name_has_a_slash_has_a_page()
    {
        await using ServedShed shed = await ServedShed.Open(ledger => Assert.True(SeasonImport.Import(
            ledger, new SeasonFiles.Tests.SmallSeason().Replace("lots.csv", "L2,", "L/2 é%,").Replace("samples.csv", "L2,", "L/2 é%,").Files, SmallShed.Origin).Taken));
        using Visitor visitor = shed.Visitor();
        Got keep = await visitor.Get("/keep");
        string link = System.Text.RegularExpressions.Regex.Match(keep.Text, "<th scope=\"row\"><a href=\"(/keep/L[^1\"]+)\"").Groups[1].Value;
        Got page = await visitor.Get(link);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("L/2 é%", page.Read(), StringComparison.Ordinal);
    }
}
