using Cloveshed.Web.Tests;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Keep;

/// <summary>Lots and places, in a real browser.</summary>
public sealed class KeepTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("/keep", Screen.Desk, false, "en")]
    [InlineData("/keep?place=Sealed+D", Screen.Phone, true, "es")]
    [InlineData("/keep/25-071", Screen.Desk, true, "en")]
    [InlineData("/keep/25-071?of=Cold+1&spoiled=5000&how=in", Screen.Phone, false, "es")]
    [InlineData("/keep/26-003", Screen.Tablet, false, "en")]
    public async Task A_page_is_sound(string path, int width, bool dark, string language)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, width, dark, language);
        await screen.Go(path);
        await screen.Page.EvaluateAsync("document.querySelectorAll('main details').forEach(one => one.open = true)");
        if (path.StartsWith("/keep/", StringComparison.Ordinal))
        {
            await screen.Page.Locator("shed-chart").First.ScrollIntoViewIfNeededAsync();
            await screen.Page.WaitForSelectorAsync("shed-chart[data-drawn]", new() { State = WaitForSelectorState.Attached });
        }

        await screen.Sound();
    }

    /// <summary>The names beside the chart stand at their bars, whatever the width.</summary>
    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Phone)]
    public async Task Names_stand_beside_their_bars(int width)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, width);
        await screen.Go("/keep");
        double[] heights = await screen.Page.EvaluateAsync<double[]>("[...document.querySelectorAll('.picture-box')].flatMap(box => [...box.querySelectorAll('svg')].map(svg => svg.getBoundingClientRect().height))");
        Assert.Equal(4, heights.Length);
        Assert.Equal(heights[0], heights[1], 0.5);
        Assert.Equal(heights[2], heights[3], 0.5);
    }

    /// <summary>The main task: find the lot, see what was found spoiled does, record it.</summary>
    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Tablet)]
    [InlineData(Screen.Phone)]
    public async Task A_rotten_lot_is_found_looked_at_and_recorded_without_a_mouse(int width)
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        await using Screen screen = await Screen.Open(chromium, shed, width);
        await screen.Go("/keep");
        await screen.TabTo("input[name=find]");
        await screen.Page.Keyboard.TypeAsync("25-071");
        await screen.EnterTo("**find=25-071**");
        await screen.TabTo("tbody th a");
        await screen.EnterTo("**/keep/25-071");
        await screen.TabTo("input[name=spoiled]");
        await screen.Page.Keyboard.TypeAsync("2000");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.WaitForSelectorAsync(".before-after");
        double before = shed.Ledger.Now().Season!.Lots.First(lot => lot.Lot.Text == "25-071").Net;
        await screen.TabTo("form[action='/keep-rows/spoiled'] input[name=reason]", 120);
        await screen.Page.Keyboard.TypeAsync("Mold in the west stack");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.WaitForSelectorAsync(".said.done");
        // What was looked at is not offered a second time.
        Assert.Equal(0, await screen.Page.Locator(".before-after").CountAsync());
        Assert.Equal(before - 2000, shed.Ledger.Now().Season!.Lots.First(lot => lot.Lot.Text == "25-071").Net);
        await screen.Sound();
    }
}
