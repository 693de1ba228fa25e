using System.Net;
using System.Text;
using System.Text.Json;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Tests.Plan;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Promises;

/// <summary>
/// Orders asked of the plan of <see cref="PlanSeason"/>: 60 cartons can be made, 70 are ordered at $20 and $2 for each that is short, so that each carton that a new
/// order takes comes from the last order and costs 22. By the wait of the bulbs alone nothing is cheaper.
/// </summary>
public sealed class PromisePageTests
{
    private const string Page = "/dock/promise/ask";

    private const string Five = Page + "?asked=yes&due=2026-09-17&customer=Quail+Foods&product-1=M30&units-1=5&price-1=25&short_cost-1=3";

    [Fact]
    public async Task An_order_is_answered_and_taken_and_the_plan_stays_as_it_was()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "To ask"));
        using Visitor visitor = shed.Visitor();
        Got page = await Answered(visitor, Five);

        string text = page.Read();
        Assert.Contains("Asked of the plan To ask", text, StringComparison.Ordinal);
        Assert.Contains("It is the last plan that was made; none is adopted.", text, StringComparison.Ordinal);
        Assert.Contains("Yes: all of it by the day asked.", text, StringComparison.Ordinal);
        Assert.Contains("data-figure=\"cost\">$110<", page.Text, StringComparison.Ordinal); // 5 x (20 + 2)
        Assert.Contains("data-figure=\"paid\">$125<", page.Text, StringComparison.Ordinal); // 5 x 25
        Assert.Contains("data-figure=\"net\">$15<", page.Text, StringComparison.Ordinal);
        Assert.Contains("order last 1, M30 5 $110", text, StringComparison.Ordinal);
        Assert.Equal(plan.Fact, Assert.Single(shed.Ledger.Now().Plans).Fact);
        Assert.Equal(2, shed.Ledger.Now().Season!.Orders.Count);

        Got taken = await visitor.Fill(page, "/dock-orders/add", ("order", "Q1"), ("reason", "By telephone"));
        Assert.Equal((HttpStatusCode.SeeOther, "/dock/Q1"), (taken.Status, taken.Header("Location")));
        OrderLine line = shed.Ledger.Now().Season!.Orders.Single(one => one.Order.Text == "Q1");
        Assert.Equal(("Quail Foods", "M30", 5, 25m, 3m, true, new NodaTime.LocalDate(2026, 9, 17)), (line.Customer, line.Product.Text, line.Units, line.Price, line.ShortCost, line.Firm, line.Due));

        // The season is another now, and so is what the next order costs.
        Assert.Contains("The season has changed since the plan was made ready", (await visitor.Get(Five)).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_all_be_had_is_offered_in_part_and_the_answer_is_in_Spanish_too()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        Got page = await Answered(visitor, Page + "?asked=yes&due=2026-09-17&product-1=M30&units-1=90");

        Assert.Contains("In part: some by the day asked, and all of it at no time of this season.", page.Read(), StringComparison.Ordinal);
        Dictionary<string, string> offered = SmallShed.Fields(page, "/dock-orders/add");
        Assert.Equal(("60", "M30", "2026-09-17"), (offered["units-1"], offered["product-1"], offered["due"]));
        Assert.Contains("order first 1, M30 30 $660", page.Read(), StringComparison.Ordinal); // 30 x (20 + 2)
        visitor.Cookies.Add(shed.Root, new Cookie(Shared.Viewer.LanguageCookie, "es"));
        Assert.Contains("En parte: algo para el día pedido", (await visitor.Get(Page + "?asked=yes&due=2026-09-17&product-1=M30&units-1=90")).Read(), StringComparison.Ordinal);
    }

    /// <summary>The strip's prices are the model's: a carton more takes one from the last order.</summary>
    [Fact]
    public async Task The_strip_has_what_is_free_and_what_the_next_pallet_costs()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        Got page = await Answered(visitor, Page + "?of=M30&pallet=40");

        string text = page.Read();
        Assert.Contains("What is still free, and what the next would cost", text, StringComparison.Ordinal);
        Assert.Matches("14[^0-9]*2026 [0-9]+ 0 \\$22\\.00 \\$880", text);
        Assert.Contains("<svg", page.Text, StringComparison.Ordinal);
        Assert.Contains("units-1=40", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_plan_there_is_nothing_to_ask_and_a_past_day_is_only_to_look_at()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        using Visitor visitor = shed.Visitor();
        Assert.Contains("There is no plan to ask yet", (await visitor.Get(Page)).Read(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/dock/promise/progress")).Status);
        await using ServedShed other = await SmallShed.Open();
        using Visitor past = other.Visitor();
        past.LookAt(other, "2026-09-01+now");
        Assert.Contains("A past day is only to look at", (await past.Get(Page)).Read(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("?asked=yes&due=2026-09-17", "No line has units")]
    [InlineData("?due=2026-09-17&product-1=M40&units-1=5", "Line 1 needs a product of the season.")]
    [InlineData("?due=2026-09-17&product-1=M30&units-1=5.5", "Line 1 needs whole units")]
    [InlineData("?due=2026-09-17&product-2=M30&units-2=5&price-2=31,50", "The price of line 2 is no number")]
    [InlineData("?product-1=M30&units-1=5", "A day is needed by which it is due.")]
    [InlineData("?due=2026-09-17&ship_from=2026-09-18&product-1=M30&units-1=5", "is no day, or after the due day.")]
    public async Task A_question_with_a_slip_is_told_and_nothing_typed_is_lost(string query, string fault)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get(Page + query);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, page.Status);
        Assert.Contains(fault, page.Read(), StringComparison.Ordinal);
        Assert.Equal(query.Contains("units-1=5", StringComparison.Ordinal) ? query.Contains("5.5", StringComparison.Ordinal) ? "5.5" : "5" : "", SmallShed.Fields(page, Page + "#answer")["units-1"]);
    }

    [Fact]
    public async Task Programs_ask_the_same_and_the_interface_names_it()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        using Visitor visitor = shed.Visitor();
        Assert.Equal(HttpStatusCode.Conflict, (await Post(visitor, """{"due": "2026-09-17", "lines": [{"product": "M30", "units": 5}]}""")).StatusCode);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        HttpResponseMessage answer;
        do
        {
            answer = await Post(visitor, """{"due": "2026-09-17", "lines": [{"product": "M30", "units": 5, "price": 20}]}""");
        }
        while (answer.StatusCode == HttpStatusCode.Accepted);

        using JsonDocument read = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(("at-a-loss", 110, 100), (read.RootElement.GetProperty("verdict").GetString(), read.RootElement.GetProperty("cost").GetDouble(), read.RootElement.GetProperty("paid").GetDouble()), new Near());
        Assert.Equal("last 1", read.RootElement.GetProperty("expenses")[0].GetProperty("name").GetString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Post(visitor, """{"due": "2026-09-17", "lines": [{"product": "M40", "units": 5}]}""")).StatusCode);
        using JsonDocument prices = JsonDocument.Parse((await visitor.Get("/api/v1/promises/next-units")).Text);
        Assert.Equal(22, prices.RootElement.EnumerateArray().Single(one => one.GetProperty("week").GetString() == "2026-09-14").GetProperty("at_least").GetDouble(), 1e-6);
        using JsonDocument document = JsonDocument.Parse((await visitor.Get("/api/v1/openapi.json")).Text);
        Assert.All(["/api/v1/promises", "/api/v1/promises/next-units"], path => Assert.True(document.RootElement.GetProperty("paths").TryGetProperty(path, out _), path));
    }

    /// <summary>The page once there is nothing to wait for, as its script waits for it.</summary>
    private static async Task<Got> Answered(Visitor visitor, string path)
    {
        Got first = await visitor.Get(path);
        Assert.Equal(HttpStatusCode.OK, first.Status);
        string query = path.Contains('?', StringComparison.Ordinal) ? path[path.IndexOf('?', StringComparison.Ordinal)..] : "";
        using CancellationTokenSource late = new(TimeSpan.FromMinutes(2));
        while (!(await visitor.Get("/dock/promise/progress" + query)).Text.Contains("\"ended\":true", StringComparison.Ordinal))
        {
            await Task.Delay(50, late.Token);
        }

        Got page = await visitor.Get(path);
        Assert.DoesNotContain("data-progress", page.Text, StringComparison.Ordinal);
        return page;
    }

    private static Task<HttpResponseMessage> Post(Visitor visitor, string json) =>
        visitor.Client.PostAsync(new Uri("/api/v1/promises", UriKind.Relative), new StringContent(json, Encoding.UTF8, "application/json"), TestContext.Current.CancellationToken);

    private sealed class Near : IEqualityComparer<(string?, double, double)>
    {
        public bool Equals((string?, double, double) x, (string?, double, double) y) => x.Item1 == y.Item1 && Math.Abs(x.Item2 - y.Item2) < 1e-6 && Math.Abs(x.Item3 - y.Item3) < 1e-6;

        public int GetHashCode((string?, double, double) obj) => obj.Item1?.GetHashCode(StringComparison.Ordinal) ?? 0;
    }
}
