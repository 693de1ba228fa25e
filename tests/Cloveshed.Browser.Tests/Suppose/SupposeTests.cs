using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using Cloveshed.Ledger;
using Cloveshed.Web.Promises;
using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Plan;
using Cloveshed.Web.Tests.Promises;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Suppose;

/// <summary>A change put to a plan by form and script, in a real browser: the page waits by itself and says the answer that programs get.</summary>
public sealed class SupposeTests(Chromium chromium)
{
    [Theory]
    [InlineData(Screen.Desk, false, "en")]
    [InlineData(Screen.Phone, true, "es")]
    public async Task A_change_is_supposed_waited_for_and_answered(int width, bool dark, string language)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        await using Screen screen = await Screen.Open(chromium, shed, width, dark, language);
        IPage page = screen.Page;
        await screen.Go($"/plan/{plan.Fact}/suppose");
        await Assertions.Expect(page.Locator("section.job")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await screen.Sound();

        // Answers take less time here than axe does, so they are held up while the page that waits is looked at.
        using HeldAnswers held = new(shed.Part<PromiseRoom>());
        await page.ClickAsync("#order summary");
        await page.FillAsync("#order-order", "last");
        await page.SelectOptionAsync("#order select[name=what]", "units");
        await page.FillAsync("#order-units", "20");
        await page.PressAsync("#order-units", "Enter");
        await page.WaitForSelectorAsync("section.job[data-progress*='units=20']");
        await Assertions.Expect(page.Locator(".changes li")).ToHaveCountAsync(1);
        await screen.Sound();
        held.Release();

        // 50 x 20 - 50 / 30 x 10, see PlanSeason: the ten that were short are short no more, and ten are not made.
        ILocator then = page.Locator("[data-figure=then]");
        await Assertions.Expect(then).ToHaveTextAsync("$983", new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("[data-figure=before]")).ToHaveTextAsync("$1,160");
        Assert.Equal(await Programs(shed), await then.InnerTextAsync());

        // A run that moves is a row of a table, or on a phone a block of close lines: none of its cells is taller than the others.
        double[] tall = await page.EvaluateAsync<double[]>("() => [...document.querySelectorAll('.suppose-told tbody tr:first-child > *')].map(cell => cell.offsetHeight).filter(height => height > 0)");
        Assert.True(tall.Length >= 6 && tall.Max() < 1.2 * tall.Min(), string.Join(", ", tall));
        await page.EvaluateAsync("document.querySelectorAll('main details').forEach(one => one.open = true)");
        await screen.Sound();
    }

    /// <summary>What a program is told of the same change, as a page writes it.</summary>
    private static async Task<string> Programs(ServedShed shed)
    {
        using Visitor visitor = shed.Visitor();
        using StringContent asked = new("""{"changes": [{"kind": "units", "order": "last", "line_number": "1", "units": 20}]}""", Encoding.UTF8, "application/json");
        HttpResponseMessage answer = await visitor.Client.PostAsync(new Uri("/api/v1/suppositions", UriKind.Relative), asked, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using JsonDocument read = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return string.Create(CultureInfo.InvariantCulture, $"${read.RootElement.GetProperty("value").GetDouble():N0}");
    }
}
