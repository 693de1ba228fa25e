using System.Net;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Dock;

/// <summary>Orders entered, changed and cancelled, and a load that came back, by the forms of the dock.</summary>
public sealed class OrderFormTests
{
    private static readonly (string, string)[] TwoLines =
    [
        ("order", "O9"), ("customer", "Quail Foods"), ("due", "2026-10-02"), ("ship_from", ""), ("product-1", "M30"), ("units-1", "60"), ("price-1", "44"), ("late_cost-1", "1.5"), ("short_cost-1", "4"),
        ("product-2", "L30"), ("units-2", "20"), ("price-2", "50.25"), ("reason", "By telephone"),
    ];

    [Fact]
    public async Task An_order_with_two_lines_is_two_facts_of_one_batch_and_is_then_on_the_dock()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/dock");
        for (int time = 0; time < 2; time++)
        {
            Got answer = await visitor.Fill(page, "/dock-orders/add", TwoLines);
            Assert.Equal((HttpStatusCode.SeeOther, "/dock/O9"), (answer.Status, answer.Header("Location")));
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        Fact[] facts = [.. shed.Ledger.Read(head)];
        Assert.Equal(["order-line.entered", "order-line.entered"], facts.Select(fact => fact.Kind));
        Assert.Single(facts.Select(fact => fact.Batch).Distinct());
        OrderLine[] lines = [.. shed.Ledger.Now().Season!.Orders.Where(line => line.Order.Text == "O9")];
        Assert.Equal([("1", 60, 44m, 1.5m, 4m, true), ("2", 20, 50.25m, 0m, 0m, true)], lines.Select(line => (line.Number, line.Units, line.Price, line.LateCost, line.ShortCost, line.Firm)));
        string order = (await visitor.Get("/dock/O9")).Read();
        Assert.Contains("O9 is in, with 2 lines", order, StringComparison.Ordinal);
        Assert.Contains("$3,645 in all", order, StringComparison.Ordinal); // 60 x 44 + 20 x 50.25
        Assert.Contains("not in a plan", order, StringComparison.Ordinal);
        Assert.Contains("O9 / 2", (await visitor.Get("/dock?customer=Quail+Foods")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_is_told_above_the_form_and_nothing_typed_is_lost()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got refused = await visitor.Fill(await visitor.Get("/dock"), "/dock-orders/add", [.. TwoLines, ("units-2", "half")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains("orders.csv", refused.Read(), StringComparison.Ordinal);
        Assert.Contains("half", refused.Read(), StringComparison.Ordinal);
        Dictionary<string, string> kept = SmallShed.Fields(refused, "/dock-orders/add");
        Assert.Equal(("O9", "Quail Foods", "60", "half", "By telephone"), (kept["order"], kept["customer"], kept["units-1"], kept["units-2"], kept["reason"]));
        Assert.Equal(head, shed.Ledger.Head().Seq);
        Got mended = await visitor.Fill(refused, "/dock-orders/add", ("units-2", "21"));
        Assert.Equal(HttpStatusCode.SeeOther, mended.Status);
        Assert.Equal(2, shed.Ledger.Read(head).Count());
    }

    [Theory]
    [InlineData("order", "O1", "There is an order O1 already")]
    [InlineData("product-1", "", "orders.csv")] // units and a price without a product
    public async Task An_order_that_cannot_be_is_refused(string field, string value, string told)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got refused = await visitor.Fill(await visitor.Get("/dock"), "/dock-orders/add", [.. TwoLines, (field, value)]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains(told, refused.Read(), StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task A_line_is_changed_and_one_cancelled_and_a_line_added_gets_the_next_number()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/dock/O1");
        for (int time = 0; time < 2; time++)
        {
            await visitor.Fill(page, "/dock-orders/change", ("units", "90"), ("reason", "They want less"));
            await visitor.Send(page, "/dock-orders/add", ("product-1", "L30"), ("units-1", "5"), ("price-1", "51"), ("due", "2026-09-30"));
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        Assert.Equal(["order-line.changed", "order-line.entered"], shed.Ledger.Read(head).Select(fact => fact.Kind));
        Assert.Equal([("1", 90), ("2", 50), ("3", 5)], shed.Ledger.Now().Season!.Orders.Select(line => (line.Number, line.Units)));
        Assert.Equal("Brask Foods", shed.Ledger.Now().Season!.Orders[2].Customer);

        Got now = await visitor.Get("/dock/O1");
        for (int time = 0; time < 2; time++)
        {
            await visitor.Fill(now, "/dock-orders/cancel", ("reason", "Cancelled by mail"));
        }

        Assert.Equal([("2", 50), ("3", 5)], shed.Ledger.Now().Season!.Orders.Select(line => (line.Number, line.Units)));
        Fact dropped = shed.Ledger.ReadBack(1)[0];
        Assert.Equal((FactKinds.Dropped("orders.csv"), "Cancelled by mail"), (dropped.Kind, dropped.Body.GetProperty("reason").GetString()));
    }

    [Fact]
    public async Task A_line_that_another_hand_changed_meanwhile_is_not_changed_over_it()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor one = shed.Visitor(), other = shed.Visitor();
        Got seen = await one.Get("/dock/O1"), also = await other.Get("/dock/O1");
        await one.Fill(seen, "/dock-orders/change", ("units", "90"), ("reason", "one"));
        await other.Fill(also, "/dock-orders/change", ("price", "44"), ("reason", "other"));
        Assert.Contains("was changed meanwhile", (await other.Get("/dock/O1")).Read(), StringComparison.Ordinal);
        Assert.Equal((90, 45.50m), (shed.Ledger.Now().Season!.Orders[0].Units, shed.Ledger.Now().Season!.Orders[0].Price));
    }

    [Fact]
    public async Task The_due_day_of_all_lines_moves_at_once_and_an_impossible_one_moves_none()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get("/dock/O1"), "/dock-orders/due", ("due", "2026-10-08"), ("ship_from", ""), ("reason", "The truck is late"));
        Assert.All(shed.Ledger.Now().Season!.Orders, line => Assert.Equal((new NodaTime.LocalDate(2026, 10, 8), new NodaTime.LocalDate(2026, 10, 5)), (line.Due, line.ShipFrom)));
        long head = shed.Ledger.Head().Seq;
        await visitor.Send(await visitor.Get("/dock/O1"), "/dock-orders/due", ("due", "2026-10-08"), ("ship_from", "2026-10-20"), ("reason", "r"));
        Assert.Contains("class=\"said refused\"", (await visitor.Get("/dock/O1")).Text, StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    [Theory]
    [InlineData("again", 25, 125)]
    [InlineData("counted", 25, 100)]
    [InlineData("off", 25, 75)]
    [InlineData("off", 100, null)]
    public async Task A_load_that_came_back_is_stock_again_and_its_line_says_what_the_customer_wants(string becomes, int units, int? left)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/dock/O1");
        (string, string)[] fields =
            [("line", "1"), ("product", "M30"), ("units", $"{units}"), ("made", "2026-08-31"), ("lot", "L0"), ("becomes", becomes), ("due", becomes == "again" ? "2026-10-01" : ""), ("reason", "Two pallets crushed")];
        for (int time = 0; time < 2; time++)
        {
            await visitor.Send(page, "/dock-orders/back", fields);
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        Season season = shed.Ledger.Now().Season!;
        // The 40 that were there of the same product, week and lot, and what came back: once.
        Assert.Equal(40 + units, Assert.Single(season.Stock).Units);
        Assert.Equal(left, season.Orders.FirstOrDefault(line => line.Number == "1")?.Units);
        Assert.Equal(becomes == "again" ? new NodaTime.LocalDate(2026, 10, 1) : left is null ? null : new NodaTime.LocalDate(2026, 9, 24), season.Orders.FirstOrDefault(line => line.Number == "1")?.Due);
        Fact[] facts = [.. shed.Ledger.Read(head)];
        Assert.Equal(FactKinds.Note, facts[0].Kind);
        Assert.Contains("Two pallets crushed", facts[0].Body.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Equal(becomes == "counted" ? 2 : 3, facts.Length);
    }

    [Fact]
    public async Task Goods_made_after_the_as_of_week_cannot_come_back_and_the_reader_says_so()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        await visitor.Send(await visitor.Get("/dock/O1"), "/dock-orders/back", ("line", "1"), ("product", "M30"), ("units", "5"), ("made", "2026-09-21"), ("lot", ""), ("becomes", "again"), ("due", ""), ("reason", "r"));
        Got page = await visitor.Get("/dock/O1");
        Assert.Contains("class=\"said refused\"", page.Text, StringComparison.Ordinal);
        Assert.Contains("stock.csv", page.Read(), StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }
}
