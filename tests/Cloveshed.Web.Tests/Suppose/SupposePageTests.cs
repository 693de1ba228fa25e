using System.Net;
using System.Text;
using System.Text.Json;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Ledger;
using Cloveshed.Web.Suppose;
using Cloveshed.Web.Tests.Plan;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Suppose;

/// <summary>
/// Changes put to the plan of <see cref="PlanSeason"/>: 60 cartons are made of two lots of 1,000 lb in two hours at $10, 70 are ordered at $20 and $2 for each that is short.
/// </summary>
public sealed class SupposePageTests
{
    [Fact]
    public async Task Changes_are_added_one_to_another_answered_and_lead_to_where_they_are_made_real()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "To suppose"));
        using Visitor visitor = shed.Visitor();
        string page = SupposeDoors.Page(plan.Fact);
        Assert.Contains("Nothing is supposed yet.", (await visitor.Get(page)).Read(), StringComparison.Ordinal);
        Assert.Contains(page, (await visitor.Get("/plan")).Text, StringComparison.Ordinal);

        // 20 cartons fewer of 70: the ten that were short are short no more, and ten are not made. 10 x (2 - 20), and a third of an hour spared.
        Got first = await Answered(visitor, page, "?kind=order&order=last&what=units&units=20");
        Assert.Contains("last/1 asks for 20 units", first.Read(), StringComparison.Ordinal);
        Assert.Contains("Asked of the plan To suppose", first.Read(), StringComparison.Ordinal);
        Assert.Contains($"data-figure=\"before\">$1,160<", first.Text, StringComparison.Ordinal);
        Assert.Contains($"data-figure=\"then\">$983<", first.Text, StringComparison.Ordinal); // 50 x 20 - 50 / 30 x 10
        Assert.Contains("href=\"/dock/last\"", first.Text, StringComparison.Ordinal);
        Assert.Contains("Nobody gets less.", first.Read(), StringComparison.Ordinal);

        // And lot B weighs a half: 45 cartons of 50, in an hour and a half: 45 x 20 - 5 x 2 - 15.
        string both = $"?{SupposeForm.Change}={Uri.EscapeDataString(ChangeText.Of(new SeasonChange.OrderResized(new("last"), "1", 20)))}&kind=lot&lot=B&what=lighter&much=50";
        Got second = await Answered(visitor, page, both);
        Assert.Contains("data-figure=\"then\">$875<", second.Text, StringComparison.Ordinal);
        Assert.Contains("B weighs 50 percent less", second.Read(), StringComparison.Ordinal);
        Assert.Contains("The season would be worth $285 less.", second.Read(), StringComparison.Ordinal);
        Assert.Contains($"was looked for, for {SupposedAnswer.NearestSeconds} seconds at most.", second.Read(), StringComparison.Ordinal);
        Assert.Equal(2, second.Text.Split(">Take out<").Length - 1);
        visitor.Cookies.Add(shed.Root, new Cookie(Shared.Viewer.LanguageCookie, "es"));
        string spanish = (await visitor.Get(page + both)).Read();
        Assert.Contains("La temporada valdría $285 menos.", spanish, StringComparison.Ordinal);
        Assert.Contains($"por {SupposedAnswer.NearestSeconds} segundos como mucho.", spanish, StringComparison.Ordinal);
    }

    /// <summary>
    /// The last week's cartons bring $15 and not $20, so that they are the ones to give way: 30 x 20 + 30 x 15 - 10 x 2 - 2 x 10 = 1,010. A carton that is made or not made there is $15 and the $2
    /// of a short one.
    /// </summary>
    [Fact]
    public async Task Who_gets_less_and_who_gets_more_are_told_with_what_it_is_worth()
    {
        Dictionary<string, string> files = new(PlanSeason.Files);
        files["orders.csv"] = files["orders.csv"].Replace("40,20,2", "40,15,2", StringComparison.Ordinal);
        await using ServedShed shed = await ServedShed.Open(ledger => PlanSeason.Import(ledger, files));
        string page = SupposeDoors.Page((await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger))).Fact);
        using Visitor visitor = shed.Visitor();

        // Lot B weighs a half: 15 cartons fewer for the last week, 15 x 17, and half an hour spared.
        string less = (await Answered(visitor, page, "?kind=lot&lot=B&what=lighter&much=50")).Read();
        Assert.Contains(" Worth now $1,010 Worth then $760 At most, with other runs $760 ", less, StringComparison.Ordinal);
        Assert.Contains("The season would be worth $250 less.", less, StringComparison.Ordinal);
        Assert.Matches(" Who would get less .* order last 1, M30 15 \\$255 Who would get more Nobody gets more.", less);

        // The first order is called off: the ten cartons that were short are made, 10 x 17, and twenty are not: 40 x 15 - 40 / 30 x 10.
        string more = (await Answered(visitor, page, "?kind=order&order=first&what=cancel")).Read();
        Assert.Contains(" Worth now $1,010 Worth then $587 At most, with other runs $587 ", more, StringComparison.Ordinal);
        Assert.Contains("The season would be worth $423 less.", more, StringComparison.Ordinal);
        Assert.Matches(" Nobody gets less. Who would get more .* order last 1, M30 10 \\$170 ", more);
    }

    /// <summary>The page says how long it is looked for at most, and so do the pages of the manual.</summary>
    [Theory]
    [InlineData("season-plan", "en", "seconds at most")]
    [InlineData("season-plan", "es", "segundos como mucho")]
    [InlineData("suppose", "en", "seconds at most")]
    public async Task The_manual_says_for_how_long_little_moves_are_looked_for(string name, string language, string words)
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor(language);
        Assert.Contains($" {SupposedAnswer.NearestSeconds} {words}", (await visitor.Get($"/help/{name}")).Read(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("?kind=order&order=none&what=cancel", "Name an order of the season, such as first")]
    [InlineData("?kind=order&order=last&what=units&units=2.5", "Whole units are needed")]
    [InlineData("?kind=add&product=M30&units=5&price=x&due=2026-09-17", "A price is needed")]
    [InlineData("?kind=stop&line=pack&first=2026-09-14&last=2026-09-07", "The last week comes before the first.")]
    [InlineData("?kind=people&week=2026-09-07&hours=-1", "Person-hours are needed")]
    [InlineData("?kind=lot&lot=C&what=later&much=1", "Name a lot of the season, such as A.")]
    [InlineData("?kind=lot&lot=A&what=lighter&much=96", "Percent are needed")]
    [InlineData("?kind=ran&lot=A&line=pack&mass=", "A mass is needed")]
    [InlineData("?c=stop|pack", "One of the changes in the address cannot be read")]
    public async Task A_change_with_a_slip_is_told_and_what_was_typed_stays(string query, string fault)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get(SupposeDoors.Page(plan.Fact) + query);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, page.Status);
        Assert.Contains(fault, page.Read(), StringComparison.Ordinal);
        if (query.Contains("units=2.5", StringComparison.Ordinal)) Assert.Contains("value=\"2.5\"", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_put_says_why_and_other_plans_and_past_days_lead_elsewhere()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry old = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "Old")), plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "New"));
        using Visitor visitor = shed.Visitor();
        Got refused = await Answered(visitor, SupposeDoors.Page(plan.Fact), "?kind=lot&lot=A&what=later&much=1");
        Assert.Contains("All of the lot is dug.", refused.Read(), StringComparison.Ordinal);
        Got other = await visitor.Get(SupposeDoors.Page(old.Fact));
        Assert.Contains("Changes are put to the plan that is held to, New; this one is another.", other.Read(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get(SupposeDoors.Page(Guid.NewGuid()))).Status);
        visitor.LookAt(shed, "2026-09-02+now");
        Assert.Contains("A past day is only to look at", (await visitor.Get(SupposeDoors.Page(plan.Fact))).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Programs_suppose_the_same()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        using Visitor visitor = shed.Visitor();
        Assert.Equal(HttpStatusCode.Conflict, (await Post(visitor, """{"changes": [{"kind": "cancel", "order": "last"}]}""")).StatusCode);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        HttpResponseMessage answer;
        do
        {
            answer = await Post(visitor, """{"changes": [{"kind": "weighs-less", "lot": "B", "percent": 50}, {"kind": "units", "order": "last", "line_number": "1", "units": 20}]}""");
        }
        while (answer.StatusCode == HttpStatusCode.Accepted);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using JsonDocument read = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(1160, read.RootElement.GetProperty("value_before").GetDouble(), 0.2);
        Assert.Equal(875, read.RootElement.GetProperty("value").GetDouble(), 0.2);
        Assert.InRange(read.RootElement.GetProperty("bound").GetDouble(), 874.8, 876);
        Assert.Equal("B", read.RootElement.GetProperty("runs")[0].GetProperty("lot").GetString());
        string fault = await (await Post(visitor, """{"changes": [{"kind": "dig-later", "lot": "A", "weeks": 1}]}""")).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("changes[0]: All of the lot is dug.", fault, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Post(visitor, """{"changes": [{"kind": "people", "day": "yesterday", "hours": 5}]}""")).StatusCode);
        using JsonDocument document = JsonDocument.Parse((await visitor.Get("/api/v1/openapi.json")).Text);
        Assert.True(document.RootElement.GetProperty("paths").TryGetProperty("/api/v1/suppositions", out _));
    }

    [Fact]
    public void Every_change_reads_back_from_its_address()
    {
        var day = new NodaTime.LocalDate(2026, 10, 5);
        SeasonChange[] changes =
        [
            new SeasonChange.OrderCancelled(new("a|b/c"), null), new SeasonChange.OrderResized(new("a"), "1", 5), new SeasonChange.OrderMoved(new("a"), null, day), SeasonChange.OrderAdded.Of(new("M 30"), 5, 46.5m, day),
            new SeasonChange.LineStopped(new("Pack 1"), day, day.PlusWeeks(1)), new SeasonChange.PeopleThere(day, 900.5), new SeasonChange.LotDugLater(new("x"), 2), new SeasonChange.LotKeepsLess(new("x"), 1.5),
            new SeasonChange.LotWeighsLess(new("x"), 0.08), new SeasonChange.RunDone(new("x"), new("é"), 1234.5, false), new SeasonChange.RunDone(new("x"), new("é"), 0, true), new SeasonChange.RoomOpened(new("D"), day), new SeasonChange.RoomOpened(new("D"), null),
        ];
        Assert.All(changes, change => Assert.Equal(change, ChangeText.Read(ChangeText.Of(change))));
    }

    /// <summary>The page once there is nothing to wait for, as its script waits for it.</summary>
    private static async Task<Got> Answered(Visitor visitor, string page, string query)
    {
        await visitor.Get(page + query);
        using CancellationTokenSource late = new(TimeSpan.FromMinutes(2));
        while (!(await visitor.Get(page + "/progress" + query)).Text.Contains("\"ended\":true", StringComparison.Ordinal))
        {
            await Task.Delay(50, late.Token);
        }

        Got answered = await visitor.Get(page + query);
        Assert.Equal(HttpStatusCode.OK, answered.Status);
        Assert.DoesNotContain("data-progress", answered.Text, StringComparison.Ordinal);
        return answered;
    }

    private static Task<HttpResponseMessage> Post(Visitor visitor, string json) =>
        visitor.Client.PostAsync(new Uri("/api/v1/suppositions", UriKind.Relative), new StringContent(json, Encoding.UTF8, "application/json"), TestContext.Current.CancellationToken);
}
