using System.Net;
using System.Text.Json;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>Rows entered, changed and dropped by their forms.</summary>
public sealed class RowTests
{
    [Fact]
    public async Task A_change_is_a_fact_with_its_reason_and_the_list_shows_it()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Guid before = shed.Ledger.Now().Rows!.Find("orders.csv", 1)!.Fact;
        Got form = await visitor.Get("/setup/orders/1?sort=due");
        Got answer = await visitor.Fill(form, "/setup/orders/1/change", ("c.units", "120"), ("reason", "The buyer called"));
        Assert.Equal((HttpStatusCode.SeeOther, "/setup/orders?sort=due#r1"), (answer.Status, answer.Header("Location")));

        Fact fact = shed.Ledger.ReadBack(1)[0];
        Assert.Equal((FactKinds.Changed("orders.csv"), before, "The buyer called"), (fact.Kind, fact.Corrects, fact.Body.GetProperty("reason").GetString()));
        // As entered: only the cell that was changed, and none that was not there.
        Assert.Equal(
            """{"customer":"Brask Foods","due":"2026-09-24","firm":"","larger_ok":"yes","late_cost":"2","line":"1","order":"O1","price":"45.50","product":"M30","ship_from":"","short_cost":"10","units":"120","whole":""}""",
            fact.Body.GetProperty("cells").GetRawText());
        Got list = await visitor.Get("/setup/orders?sort=due");
        Assert.Contains("O1 1 in Orders now reads so.", list.Read(), StringComparison.Ordinal);
        Assert.Contains(">120</td>", list.Text, StringComparison.Ordinal);
        Assert.Contains("by hand", (await visitor.Get("/setup")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cell_that_was_not_touched_stays_to_the_letter()
    {
        await using ServedShed shed = await ServedShed.Open(ledger =>
            Assert.True(SeasonImport.Import(ledger, new SmallSeason().Replace("orders.csv", "100,45.50,,2", "100,\" 45.50\", YES,2").Files, SmallShed.Origin).Taken));
        using Visitor visitor = shed.Visitor();
        Assert.Equal(HttpStatusCode.SeeOther, (await visitor.Fill(await visitor.Get("/setup/orders/1"), "/setup/orders/1/change", ("c.units", "120"), ("reason", "r"))).Status);
        IReadOnlyDictionary<string, string> cells = shed.Ledger.Now().Rows!.Find("orders.csv", 1)!.Cells;
        Assert.Equal((" 45.50", " YES", "120"), (cells["price"], cells["firm"], cells["units"]));
    }

    [Fact]
    public async Task A_form_sent_twice_is_one_fact_of_each_kind()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got change = await visitor.Get("/setup/orders/2"), enter = await visitor.Get("/setup/people/new"), drop = await visitor.Get("/setup/market/1");
        for (int time = 0; time < 2; time++)
        {
            Got[] answers =
            [
                await visitor.Fill(change, "/setup/orders/2/change", ("c.units", "55"), ("reason", "r")),
                await visitor.Fill(enter, "/setup/people/enter", ("c.week", "2026-09-14"), ("c.hours", "800"), ("reason", "r")),
                await visitor.Fill(drop, "/setup/market/1/drop", ("reason", "r")),
            ];
            Assert.All(answers, answer => Assert.Equal(HttpStatusCode.SeeOther, answer.Status));
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        Assert.Equal(["order-line.changed", "people-week.entered", "market-week.dropped"], shed.Ledger.Read(head).Select(fact => fact.Kind));
        Assert.Equal(2, shed.Ledger.Now().Season!.People.Count);
        Assert.Empty(shed.Ledger.Now().Season!.Market);
    }

    [Fact]
    public async Task A_fault_stands_at_its_field_in_the_readers_words_and_nothing_typed_is_lost()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor(), spanish = shed.Visitor("es");
        long head = shed.Ledger.Head().Seq;
        Got answer = await visitor.Fill(await visitor.Get("/setup/lots/1"), "/setup/lots/1/change", ("c.net", "54,5"), ("c.fresh_share", "80"), ("c.bins", "61"), ("reason", "weighed <again>"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Matches("id=\"c-net\"[^>]*value=\"54,5\"[^>]*aria-invalid=\"true\"", answer.Text);
        Assert.Matches("id=\"c-fresh_share\"[^>]*value=\"80\"[^>]*aria-invalid=\"true\"", answer.Text);
        Assert.Matches("id=\"c-bins\"[^>]*value=\"61\"", answer.Text);
        Assert.Contains("weighed &lt;again&gt;", answer.Text, StringComparison.Ordinal);
        Assert.Contains("Expected a number with a decimal point.", answer.Read(), StringComparison.Ordinal);
        Assert.Contains("Write 85 percent as 0.85.", answer.Read(), StringComparison.Ordinal);
        Assert.Contains("href=\"#c-net\"", answer.Text, StringComparison.Ordinal);
        Got otra = await spanish.Fill(await spanish.Get("/setup/lots/1"), "/setup/lots/1/change", ("c.net", "54,5"), ("reason", "r"));
        Assert.Contains("Se esperaba un número con punto decimal.", otra.Read(), StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);

        // Mended there, it is taken, and is the fact that the form was for.
        Got mended = await visitor.Fill(answer, "/setup/lots/1/change", ("c.net", "54500"), ("c.fresh_share", "0.8"), ("reason", "weighed again"));
        Assert.Equal(HttpStatusCode.SeeOther, mended.Status);
        Assert.Equal(head + 1, shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task A_key_that_is_there_already_is_a_fault_at_the_keys_first_field()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got answer = await visitor.Fill(await visitor.Get("/setup/people/new"), "/setup/people/enter", ("c.week", "2026-09-07"), ("c.hours", "1"), ("reason", "r"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Matches("id=\"c-week\"[^>]*aria-invalid=\"true\"", answer.Text);
        Assert.Contains("in one row only", answer.Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_row_that_others_name_is_not_dropped_and_they_are_shown()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got form = await visitor.Get("/setup/products/1");
        Assert.Contains("Orders: 1", form.Read(), StringComparison.Ordinal);
        Assert.Contains("Packed stock: 1", form.Read(), StringComparison.Ordinal);
        Got answer = await visitor.Fill(form, "/setup/products/1/drop", ("reason", "not packed any more"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains("It is still needed", answer.Read(), StringComparison.Ordinal);
        Assert.Contains("Orders that name it: O1 1", answer.Read(), StringComparison.Ordinal);
        Assert.Contains("href=\"/setup/orders/1\"", answer.Text, StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task A_dropped_row_no_longer_counts_and_its_life_is_still_told()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Fill(await visitor.Get("/setup/sell-as-is/2"), "/setup/sell-as-is/2/drop", ("reason", "nobody buys it"));
        Got list = await visitor.Get("/setup/sell-as-is"), gone = await visitor.Get("/setup/sell-as-is/2");
        Assert.DoesNotContain("id=\"r2\"", list.Text, StringComparison.Ordinal);
        Assert.Single(shed.Ledger.Now().Season!.AsIsPrices);
        Assert.Equal(HttpStatusCode.OK, gone.Status);
        Assert.Contains("This row was dropped", gone.Text, StringComparison.Ordinal);
        Assert.Contains("nobody buys it", gone.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("/setup/sell-as-is/2/change", gone.Text, StringComparison.Ordinal);
        Assert.Contains("Sale as is 1 2 Sep 2026, by hand", (await visitor.Get("/setup")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_second_of_two_who_change_one_row_is_told_and_changes_nothing()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor one = shed.Visitor(), other = shed.Visitor();
        Got seenByOne = await one.Get("/setup/orders/1"), seenByOther = await other.Get("/setup/orders/1");
        await one.Fill(seenByOne, "/setup/orders/1/change", ("c.units", "90"), ("reason", "r"));
        Got answer = await other.Fill(seenByOther, "/setup/orders/1/change", ("c.price", "46"), ("reason", "r"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains("was changed meanwhile", answer.Read(), StringComparison.Ordinal);
        Assert.Equal(("90", "45.50"), (shed.Ledger.Now().Rows!.Find("orders.csv", 1)!.Cells["units"], shed.Ledger.Now().Rows!.Find("orders.csv", 1)!.Cells["price"]));
    }

    [Fact]
    public async Task A_life_tells_what_happened_when_it_was_recorded_and_what_it_was_before()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Fill(await visitor.Get("/setup/lines/1"), "/setup/lines/1/change", ("c.rate_per_hour", "5500"), ("reason", "timed it"), ("day", "2026-09-01"));
        string text = (await visitor.Get("/setup/lines/1")).Read();
        Assert.Contains("Lines: changed 1 Sep 2026 12:00 2 Sep 2026 10:34 rate_per_hour 6000 → 5500 timed it", text, StringComparison.Ordinal);
        Assert.Contains("Lines: entered 1 Sep 2026 08:00 2 Sep 2026 10:34 First entered", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "", "Say why")]
    [InlineData("r", "2026-09-03", "a day that has come already")]
    [InlineData("r", "2026-02-30", "a day that has come already")]
    public async Task A_change_needs_a_reason_and_a_day_that_has_come(string reason, string day, string said)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got answer = await visitor.Fill(await visitor.Get("/setup/orders/1"), "/setup/orders/1/change", ("c.units", "7"), ("reason", reason), ("day", day));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains(said, answer.Read(), StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task One_row_after_another_keeps_the_reason()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got answer = await visitor.Fill(await visitor.Get("/setup/samples/new"), "/setup/samples/enter", ("c.lot", "L1"), ("c.date", "2026-09-02"), ("c.weight_g", "44"), ("reason", "sampled today"), ("next", "new"));
        Assert.Equal("/setup/samples/new?reason=sampled%20today", answer.Header("Location"));
        Assert.Equal("sampled today", SmallShed.Fields(await visitor.Get(answer.Header("Location")), "/setup/samples/enter")["reason"]);
        Assert.Equal(4, shed.Ledger.Now().Season!.Samples.Count);
    }

    [Fact]
    public async Task Looking_at_a_past_day_nothing_can_be_sent()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got now = await visitor.Get("/setup/orders/1");
        long head = shed.Ledger.Head().Seq;
        visitor.LookAt(shed, "2026-09-01+now");
        Got then = await visitor.Get("/setup/orders/1");
        Assert.Contains("<fieldset class=\"bare\" disabled>", then.Text, StringComparison.Ordinal);
        Assert.Contains("A past day is only to look at.", then.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("/setup/orders/new", (await visitor.Get("/setup/orders")).Text, StringComparison.Ordinal);
        await visitor.Fill(now, "/setup/orders/1/change", ("c.units", "7"), ("reason", "r"));
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task The_season_itself_is_changed_by_its_form_and_other_keys_stay()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got form = await visitor.Get("/setup/season");
        for (int time = 0; time < 2; time++)
        {
            Got answer = await visitor.Fill(form, "/setup/season/change", ("c.weeks", "12"), ("c.end_price", "0.1"), ("reason", "longer"));
            Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        }

        Fact fact = shed.Ledger.ReadBack(1)[0];
        using JsonDocument text = JsonDocument.Parse(fact.Body.GetProperty("text").GetString()!);
        Assert.Equal((FactKinds.SeasonChanged, 12, 1, "0.1"), (fact.Kind, text.RootElement.GetProperty("weeks").GetInt32(), text.RootElement.GetProperty("contract").GetInt32(), text.RootElement.GetProperty("end_price").GetRawText()));
        Assert.Equal((12, 0.1m), (shed.Ledger.Now().Season!.Settings.Weeks, shed.Ledger.Now().Season!.Settings.EndPrice));
        Assert.Contains("weeks 10 → 12", (await visitor.Get("/setup/season")).Read(), StringComparison.Ordinal);
        Assert.Single(shed.Ledger.Read(kind: FactKinds.SeasonChanged));

        Got faulty = await visitor.Fill(await visitor.Get("/setup/season"), "/setup/season/change", ("c.weeks", "many"), ("c.first_week", "2026-09-08"), ("reason", "r"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, faulty.Status);
        Assert.Matches("id=\"c-weeks\"[^>]*value=\"many\"[^>]*aria-invalid=\"true\"", faulty.Text);
        Assert.Matches("id=\"c-first_week\"[^>]*aria-invalid=\"true\"", faulty.Text);
        Got late = await visitor.Fill(form, "/setup/season/change", ("fact", Guid.CreateVersion7().ToString()), ("c.weeks", "11"), ("reason", "r"));
        Assert.Contains("Somebody changed the season meanwhile", late.Text, StringComparison.Ordinal);
    }
}
