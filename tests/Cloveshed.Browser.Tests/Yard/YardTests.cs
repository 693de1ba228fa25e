using Cloveshed.Ledger;
using Cloveshed.Ledger.Yard;
using Cloveshed.Web.Tests;

namespace Cloveshed.Browser.Tests.Yard;

/// <summary>Curing rows, and looking at a lot with a thumb, in a real browser.</summary>
public sealed class YardTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("/yard", Screen.Desk, false, "en")]
    [InlineData("/yard", Screen.Tablet, true, "es")]
    [InlineData("/yard", Screen.Phone, false, "es")]
    [InlineData("/keep/25-071/look", Screen.Phone, true, "en")]
    [InlineData("/keep/25-071/look", Screen.Desk, false, "es")]
    public Task A_page_is_sound(string path, int width, bool dark, string language) => Screen.SoundUnfolded(chromium, demo, path, width, dark, language);

    /// <summary>Everything that a thumb meets on the way is 48 px high and wide or more, and three kinds of touches do it.</summary>
    [Fact]
    public async Task A_lot_is_looked_at_on_a_phone_with_a_thumb()
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Phone);
        await screen.Go("/keep/25-071");
        await screen.Page.Locator("a[href='/keep/25-071/look']").ClickAsync();
        await screen.Page.WaitForURLAsync("**/look");
        string[] small = await screen.Page.EvaluateAsync<string[]>(
            "[...document.querySelectorAll('.look button, .look input:not([type=hidden]):not([type=radio]), .look .tick, .look summary')].filter(one => one.getClientRects().length).filter(one => one.getBoundingClientRect().height < 48 || one.getBoundingClientRect().width < 48).map(one => one.outerHTML)");
        Assert.Equal([], small);
        for (int bulb = 0; bulb < 3; bulb++)
        {
            await screen.Page.Locator("[data-step=sprouted][data-by='1']").ClickAsync();
        }

        await screen.Page.Locator("[data-step=sprouted][data-by='-1']").ClickAsync();
        await screen.Page.Locator("#who").FillAsync("K7");
        await screen.Page.Locator(".go").ClickAsync();
        await screen.Page.WaitForSelectorAsync(".said.done");
        LookSaid said = Assert.IsType<LookSaid>(Assert.Single(shed.Ledger.YardRecords()).Said);
        Assert.Equal((50, 2, 0, "K7"), (said.Looked, said.Sprouted, said.Decayed, said.Who));
        // The device remembers who looks.
        await screen.Go("/keep/25-071/look");
        Assert.Equal("K7", await screen.Page.Locator("#who").InputValueAsync());
        await screen.Sound();
    }
}
