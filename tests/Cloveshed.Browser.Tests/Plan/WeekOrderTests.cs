using Cloveshed.Web.Tests;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>A week's order under a hand, in a real browser: by keys, by dragging, and back.</summary>
public sealed class WeekOrderTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData(Screen.Desk, false)]
    [InlineData(Screen.Phone, true)]
    public async Task A_run_is_moved_by_keys_and_dragged_and_going_back_undoes_it(int width, bool dark)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, width, dark);
        await screen.Go("/plan/week?week=2026-09-21");
        await screen.Sound();
        IPage page = screen.Page;
        await page.EvaluateAsync("window.loadedOnce = true");
        ILocator lane = page.Locator(".lane", new() { Has = page.Locator(".bit:nth-of-type(2)") }).First;
        Task<string[]> Runs() => lane.Locator(".bit").EvaluateAllAsync<string[]>("bits => bits.map(bit => bit.dataset.run)");
        string[] was = await Runs();

        await lane.Locator(".bit").First.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(lane.Locator(".bit").First).ToHaveAttributeAsync("data-run", was[1]);
        string[] now = await Runs(), swapped = [was[1], was[0], .. was.Skip(2)];
        Assert.Equal(swapped, now);
        Assert.Equal(was[0], await page.EvaluateAsync<string>("document.activeElement.dataset.run"));

        await page.GoBackAsync();
        await Assertions.Expect(lane.Locator(".bit").First).ToHaveAttributeAsync("data-run", was[0]);

        // By the first of its pieces to the lane's end.
        await lane.ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult from = (await lane.Locator(".bit rect").First.BoundingBoxAsync())!, all = (await lane.Locator("svg").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(from.X + (from.Width / 2), from.Y + (from.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(from.X + (from.Width / 2) + all.Width, from.Y + (from.Height / 2), new() { Steps = 4 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(lane.Locator(".bit").Last).ToHaveAttributeAsync("data-run", was[0]);
        Assert.True(await page.EvaluateAsync<bool>("window.loadedOnce === true"));
    }
}
