using Cloveshed.Web.Tests;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Today;

/// <summary>What waits and what it costs, in a real browser.</summary>
public sealed class TodayTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("/", Screen.Desk, false, "en")]
    [InlineData("/?week=2026-06-29", Screen.Phone, true, "es")]
    [InlineData("/?week=2026-08-17&all=yes", Screen.Tablet, true, "en")]
    public Task A_page_is_sound(string path, int width, bool dark, string language) => Screen.SoundUnfolded(chromium, demo, path, width, dark, language);

    /// <summary>The main task: see what is dearest, take its cost apart, and go where it can be done.</summary>
    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Tablet)]
    [InlineData(Screen.Phone)]
    public async Task The_dearest_decision_is_taken_apart_and_followed_without_a_mouse(int width)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, width);
        await screen.Go("/?week=2026-06-29");
        ILocator first = screen.Page.Locator(".decision").First;
        string cost = await first.Locator(".big").InnerTextAsync();
        await screen.TabTo(".decision summary");
        await screen.Page.Keyboard.PressAsync("Enter");
        string total = await first.Locator("tfoot td").Last.InnerTextAsync();
        // The cost is rounded to whole money and its total to cents, each from what is not rounded.
        Assert.InRange(Money(total), Money(cost) - 0.505m, Money(cost) + 0.505m);
        await screen.TabTo(".decision .do a");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.WaitForURLAsync(address => !address.Contains("?week=2026-06-29", StringComparison.Ordinal));
        Assert.NotEqual("There is nothing here", await screen.Page.Locator("h1").InnerTextAsync());
    }

    private static decimal Money(string text) => decimal.Parse(text.Split('$')[1], System.Globalization.NumberStyles.Number, System.Globalization.CultureInfo.InvariantCulture);
}
