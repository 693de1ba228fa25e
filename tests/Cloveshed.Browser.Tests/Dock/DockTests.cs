using Cloveshed.Web.Tests;

namespace Cloveshed.Browser.Tests.Dock;

/// <summary>Orders and what fills them, in a real browser.</summary>
public sealed class DockTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("/dock", Screen.Desk, true, "en")]
    [InlineData("/dock?state=short", Screen.Phone, false, "es")]
    [InlineData("/dock/SO-1014", Screen.Desk, false, "es")]
    [InlineData("/dock/SO-1014", Screen.Phone, true, "en")]
    [InlineData("/dock/SO-1007", Screen.Tablet, true, "es")]
    public Task A_page_is_sound(string path, int width, bool dark, string language) => Screen.SoundUnfolded(chromium, demo, path, width, dark, language);

    /// <summary>The main task: an order comes in by telephone and is on the dock.</summary>
    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Tablet)]
    [InlineData(Screen.Phone)]
    public async Task An_order_is_added_mended_and_then_seen(int width)
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        await using Screen screen = await Screen.Open(chromium, shed, width);
        await screen.Go("/dock");
        await screen.Page.FillAsync("input[name=order]", "TEL 1");
        await screen.Page.FillAsync("input[name=customer]", "Quail Foods");
        await screen.Page.FillAsync("input[name=due]", "2026-09-18");
        await screen.Page.SelectOptionAsync("select[name=product-1]", "Jumbo 30");
        await screen.Page.FillAsync("input[name=units-1]", "1,200");
        await screen.Page.FillAsync("input[name=price-1]", "41.5");
        await screen.Page.PressAsync("input[name=price-1]", "Enter");
        await screen.Page.WaitForSelectorAsync(".faults");
        Assert.Equal("1,200", await screen.Page.InputValueAsync("input[name=units-1]"));
        await screen.Sound();
        await screen.Page.FillAsync("input[name=units-1]", "1200");
        await screen.Page.PressAsync("input[name=units-1]", "Enter");
        await screen.Page.WaitForSelectorAsync(".said.done");
        Assert.StartsWith("TEL 1", await screen.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(1200, shed.Ledger.Now().Season!.Orders.Single(line => line.Order.Text == "TEL 1").Units);
        await screen.Sound();
    }
}
