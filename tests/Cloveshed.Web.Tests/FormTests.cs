using System.Net;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Tests;

/// <summary>What a form may do, and how often.</summary>
public sealed class FormTests
{
    [Fact]
    public async Task A_form_that_is_sent_twice_is_one_fact_and_the_second_answer_is_the_same()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/");
        Got first = await visitor.Send(page, "/notes", ("text", "Truck 4 came at noon"));
        shed.Clock.Pass(TimeSpan.FromSeconds(7));
        Got second = await visitor.Send(page, "/notes", ("text", "Truck 4 came at noon"));
        Assert.All([first, second], answer => Assert.Equal((HttpStatusCode.SeeOther, "/"), (answer.Status, answer.Header("Location"))));
        Assert.Contains("The note is kept.", (await visitor.Get("/")).Text, StringComparison.Ordinal);
        Fact note = Assert.Single(shed.Ledger.Read());
        Assert.Equal((FactKinds.Note, "Truck 4 came at noon"), (note.Kind, note.Body.GetProperty("text").GetString()));
        Assert.Equal((FactDesk.Office, FactDesk.Pages, "today"), (note.By, note.Device, note.Place));
        Assert.Equal(TimeSpan.FromHours(-4.5), note.HappenedAt.Offset);
    }

    [Fact]
    public async Task A_form_sent_again_with_other_words_is_refused_and_says_what_to_do()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/");
        await visitor.Send(page, "/notes", ("text", "one"));
        await visitor.Send(page, "/notes", ("text", "two"));
        Assert.Contains("Not done.", (await visitor.Get("/")).Text, StringComparison.Ordinal);
        Assert.Single(shed.Ledger.Read());
    }

    [Fact]
    public async Task What_is_said_after_a_form_is_said_once()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get("/"), "/notes", ("text", "one"));
        Assert.Contains("The note is kept.", (await visitor.Get("/")).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("The note is kept.", (await visitor.Get("/")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_its_token_a_form_is_refused_and_nothing_is_written()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got refused = await visitor.Post("/notes", ("fact", Guid.CreateVersion7().ToString()), ("back", "/"), ("text", "from elsewhere"));
        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Contains("That form was not taken", refused.Text, StringComparison.Ordinal);
        Assert.Empty(shed.Ledger.Read());
    }

    [Fact]
    public async Task Another_visitors_token_does_not_do()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor one = shed.Visitor(), other = shed.Visitor();
        await other.Get("/");
        Assert.Equal(HttpStatusCode.BadRequest, (await other.Send(await one.Get("/"), "/notes", ("text", "borrowed"))).Status);
        Assert.Empty(shed.Ledger.Read());
    }

    [Fact]
    public async Task A_past_day_is_only_to_look_at()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got now = await visitor.Get("/");
        await visitor.Send(now, "/view", ("lang", "en"), ("unit", "season"), ("theme", "system"), ("day", "2026-08-01"), ("known", "then"));
        Got then = await visitor.Get("/");
        Assert.Contains("as it was at the end of 1", WebUtility.HtmlDecode(then.Text).Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.Contains("<fieldset class=\"bare\" disabled>", then.Text, StringComparison.Ordinal);
        await visitor.Send(now, "/notes", ("text", "into the past"));
        Assert.Contains("A past day is only to look at.", (await visitor.Get("/")).Text, StringComparison.Ordinal);
        Assert.Empty(shed.Ledger.Read());
        await visitor.Send(then, "/view/now");
        Assert.DoesNotContain("class=\"as-of\"", (await visitor.Get("/")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/plan?week=3", "/plan?week=3")]
    [InlineData("//other.example/x", "/")]
    [InlineData("/\\other.example", "/")]
    [InlineData("https://other.example", "/")]
    [InlineData("", "/")]
    [InlineData("/a\r\nSet-Cookie: x=1", "/")]
    public void A_form_leads_back_into_this_shed_only(string asked, string led) => Assert.Equal(led, FactDesk.LocalPath(asked));
}
