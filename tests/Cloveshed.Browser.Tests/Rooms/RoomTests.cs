using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Rooms;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Rooms;

/// <summary>Rooms, what comes out of them next, and what stands before what, in a real browser.</summary>
public sealed class RoomTests(Chromium chromium, DemoShed demo)
{
    private static Task<ServedShed> WithDays() => ServedShed.OpenDemo(RoomDays.Put);

    [Theory]
    [InlineData("/keep/rooms/Sealed%20A", Screen.Desk, true, "en")]
    [InlineData("/keep/rooms/Cold%201", Screen.Tablet, false, "es")]
    [InlineData("/keep/rooms/Sealed%20C", Screen.Phone, false, "en")]
    public async Task A_rooms_page_is_sound_with_all_its_pictures_drawn(string path, int width, bool dark, string language)
    {
        await using ServedShed shed = await WithDays();
        await using Screen screen = await Screen.Open(chromium, shed, width, dark, language);
        await screen.Go(path);
        await screen.Page.EvaluateAsync("document.querySelectorAll('main details').forEach(one => one.open = true)");
        foreach (ILocator chart in await screen.Page.Locator("shed-chart").AllAsync())
        {
            await chart.ScrollIntoViewIfNeededAsync();
            await Assertions.Expect(chart).ToHaveAttributeAsync("data-drawn", "");
        }

        await screen.Sound();
    }

    [Theory]
    [InlineData("/keep/release/order", Screen.Desk, false, "en")]
    [InlineData("/keep/release/order?differs=yes", Screen.Phone, true, "es")]
    [InlineData("/keep/reach/Cold%201", Screen.Tablet, true, "en")]
    [InlineData("/keep/reach/Sealed%20A", Screen.Phone, false, "es")]
    public Task What_comes_out_next_is_sound(string path, int width, bool dark, string language) => Screen.SoundUnfolded(chromium, demo, path, width, dark, language);

    /// <summary>The main task at a door: a reading written down on a phone, without a mouse.</summary>
    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Phone)]
    public async Task A_reading_is_written_down_by_keyboard(int width)
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        await using Screen screen = await Screen.Open(chromium, shed, width);
        await screen.Go("/keep/rooms/Cold%202");
        await screen.TabTo("#reading-temp_c");
        await screen.Page.Keyboard.TypeAsync("2.4");
        await screen.Page.Keyboard.PressAsync("Tab");
        await screen.Page.Keyboard.TypeAsync("66");
        await screen.TabTo("#reading-who");
        await screen.Page.Keyboard.TypeAsync("K7");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.WaitForSelectorAsync(".said.done");
        AirSaid kept = Assert.IsType<AirSaid>(Assert.Single(shed.Ledger.RoomRecords()).Said);
        Assert.Equal((2.4, 66.0, "K7"), (kept.TempC!.Value, kept.Rh!.Value, kept.Who));
        await screen.Sound();
    }
}
