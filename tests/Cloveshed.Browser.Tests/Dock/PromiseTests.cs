using Cloveshed.Core.Seasons;
using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Plan;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Dock;

/// <summary>An order asked of a plan by keys and script, in a real browser: the page waits by itself, says the answer, and takes the order.</summary>
public sealed class PromiseTests(Chromium chromium)
{
    [Theory]
    [InlineData(Screen.Desk, false, "en")]
    [InlineData(Screen.Phone, true, "es")]
    public async Task An_order_is_asked_answered_and_taken(int width, bool dark, string language)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        await using Screen screen = await Screen.Open(chromium, shed, width, dark, language);
        IPage page = screen.Page;
        await screen.Go("/dock");
        await page.ClickAsync("a[href='/dock/promise/ask']");
        // The dock has a form with fields of the same names.
        await page.WaitForURLAsync("**/dock/promise/ask");
        await page.FillAsync("input[name=due]", "2026-09-17");
        await page.FillAsync("input[name=customer]", "Quail Foods");
        await page.SelectOptionAsync("select[name=product-1]", "M30");
        await page.FillAsync("input[name=units-1]", "5");
        await page.FillAsync("input[name=price-1]", "25");
        await page.PressAsync("input[name=price-1]", "Enter");

        await page.WaitForSelectorAsync(".verdict[data-verdict=Yes]", new() { Timeout = 60_000 });
        Assert.Contains("110", await page.Locator("[data-figure=cost]").InnerTextAsync(), StringComparison.Ordinal); // 5 x (20 + 2), see PlanSeason
        await screen.Sound();

        await page.FillAsync(".take input[name=order]", "Q1");
        await page.PressAsync(".take input[name=order]", "Enter");
        await page.WaitForSelectorAsync(".said.done");
        Assert.Equal((5, 25m), shed.Ledger.Now().Season!.Orders.Where(line => line.Order.Text == "Q1").Select(line => (line.Units, line.Price)).Single());
    }
}
