using System.Net;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Pictures;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;
using NodaTime;

namespace Cloveshed.Web.Tests;

/// <summary>How pages are shown to whom.</summary>
public sealed class ViewTests(ShedWithoutSeason empty) : IClassFixture<ShedWithoutSeason>
{
    [Fact]
    public async Task What_was_chosen_is_kept_on_the_device_and_leads_back_to_the_page()
    {
        using Visitor visitor = empty.Shed.Visitor();
        Got page = await visitor.Get("/keep?open=3");
        Got answer = await visitor.Send(page, "/view", ("lang", "es"), ("unit", "kg"), ("theme", "dark"), ("day", ""), ("known", "now"));
        Assert.Equal((HttpStatusCode.SeeOther, "/keep?open=3"), (answer.Status, answer.Header("Location")));
        Got after = await visitor.Get("/keep?open=3");
        Assert.Contains("<html lang=\"es\" data-theme=\"dark\">", after.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"kg\" checked", after.Text, StringComparison.Ordinal);
        Assert.Contains("Las páginas se muestran como usted eligió", WebUtility.HtmlDecode(after.Text), StringComparison.Ordinal);
        Assert.All(answer.Answer.Headers.GetValues("Set-Cookie").Where(cookie => cookie.StartsWith("cloveshed-lang", StringComparison.Ordinal)),
            cookie => Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task A_day_that_is_none_is_refused_and_changes_nothing()
    {
        using Visitor visitor = empty.Shed.Visitor();
        await visitor.Send(await visitor.Get("/"), "/view", ("lang", "es"), ("unit", "kg"), ("theme", "dark"), ("day", "2026-02-31"), ("known", "now"));
        Assert.Contains("<html lang=\"en\">", (await visitor.Get("/")).Text, StringComparison.Ordinal);
    }

    // RFC 9110, 12.5.4: a quality of 0 means "not acceptable"; without one it is 1.
    [Theory]
    [InlineData("es", Language.Es)]
    [InlineData("es-MX, en;q=0.5", Language.Es)]
    [InlineData("en;q=0.5, es-419;q=0.9", Language.Es)]
    [InlineData("en-US, es;q=0.9", Language.En)]
    [InlineData("fr, es;q=0.2", Language.Es)]
    [InlineData("es;q=0, fr", Language.En)]
    [InlineData("fr, *;q=0.1, es;q=0.05", Language.En)]
    [InlineData("", Language.En)]
    [InlineData("est, esperanto", Language.En)]
    public void The_browsers_first_language_that_is_ours_is_taken(string accepted, Language language)
    {
        DefaultHttpContext context = new();
        context.Request.Headers.AcceptLanguage = accepted;
        Assert.Equal(language, Viewer.Of(context.Request).Language);
    }

    [Fact]
    public void Cookies_that_say_something_unknown_count_as_absent()
    {
        DefaultHttpContext context = new();
        context.Request.Headers.Cookie = "cloveshed-lang=fr; cloveshed-unit=stone; cloveshed-theme=pink; cloveshed-as-of=2026-13-01+then";
        Assert.Equal(new Viewer(Language.En, null, Theme.BySystem, null), Viewer.Of(context.Request));
    }

    [Theory]
    [InlineData(Knowledge.AsKnownNow)]
    [InlineData(Knowledge.AsKnownThen)]
    public void A_past_day_reads_back_as_it_was_written(Knowledge knowledge)
    {
        AsOf asOf = new(new LocalDate(2026, 9, 1), knowledge);
        Assert.Equal(asOf, Viewer.AsOfNamed(Viewer.AsOfName(asOf)));
    }

    [Theory]
    [InlineData("lb", MassUnit.Pound)]
    [InlineData("kg", MassUnit.Kilogram)]
    public void A_unit_reads_by_its_sign(string name, MassUnit unit) => Assert.Equal(unit, Viewer.UnitNamed(name));
}
