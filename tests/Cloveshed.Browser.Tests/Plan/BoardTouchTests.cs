using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Plan;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>The season board under a finger, over the plan of <see cref="PlanSeason"/>: held, a run lifts and goes along; a swipe scrolls.</summary>
public sealed class BoardTouchTests(Chromium chromium)
{
    /// <summary>On a phone the board is wider than its window: what is held at the edge has the weeks beyond come in, to the last.</summary>
    [Theory]
    [InlineData(Screen.Phone, "2026-09-14", "14 Sep")]
    [InlineData(Screen.Tablet, "2026-09-07", "7 Sep")]
    public async Task A_run_that_a_finger_holds_is_dragged_to_another_week(int width, string monday, string day)
    {
        await using ServedShed shed = await Planned();
        await using Screen screen = await Screen.Open(chromium, shed, width, touch: true);
        (Finger finger, LocatorBoundingBoxResult run, LocatorBoundingBoxResult plot) = await AtBoard(screen);
        ILocator held = screen.Page.Locator("#board rect.lifted"), ghost = screen.Page.Locator("#board text.ghost");
        await finger.Down(run.X + (run.Width / 2), run.Y + (run.Height / 2));
        await Assertions.Expect(held).ToHaveCountAsync(1);
        await finger.Move(width == Screen.Phone ? width - 20 : plot.X + (plot.Width / 2), run.Y + (run.Height / 2));
        await Assertions.Expect(ghost).ToContainTextAsync(day);
        await finger.Up();

        ILocator week = screen.Page.Locator("#side details.move[open] select[name=week]");
        await Assertions.Expect(week).ToHaveValueAsync(monday);
        await Assertions.Expect(held).ToHaveCountAsync(0);
        await screen.Sound();
        await screen.Page.Locator("#side [data-move-hold]").TapAsync();
        await Assertions.Expect(screen.Page.Locator(".said")).ToContainTextAsync($"is held in the week of {day} instead of 31 Aug");
        Assert.Equal([true, false], shed.Ledger.Now().Holds.Select(hold => hold.Pinned).OrderByDescending(pinned => pinned));
    }

    /// <summary>The clock stands while the finger moves, so that however slow the machine is it has not rested long enough to hold; then time passes.</summary>
    [Theory]
    [InlineData(0, -200, "scrollY")]
    [InlineData(-120, 0, "document.querySelector('#board .picture-box').scrollLeft")]
    public async Task A_finger_that_swipes_over_a_run_scrolls_and_drags_nothing(int right, int down, string scrolled)
    {
        await using ServedShed shed = await Planned();
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Phone, touch: true);
        IPage page = screen.Page;
        await page.Clock.InstallAsync();
        (Finger finger, LocatorBoundingBoxResult run, _) = await AtBoard(screen);
        string address = page.Url;
        double before = await page.EvaluateAsync<double>(scrolled);
        await page.Clock.PauseAtAsync(DateTime.UtcNow.AddHours(1));
        await finger.Down(run.X + (run.Width / 2), run.Y + (run.Height / 2));
        await finger.Move(run.X + (run.Width / 2) + right, run.Y + (run.Height / 2) + down);
        await page.Clock.RunForAsync(2000);
        ILocator moving = page.Locator("#board.moving, #board rect.lifted, #board .ghost");
        await Assertions.Expect(moving).ToHaveCountAsync(0);
        await finger.Up();
        await page.WaitForFunctionAsync($"() => {scrolled} > {before} + 60");
        await page.Clock.RunForAsync(2000);

        await Assertions.Expect(moving).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("#side details.move[open]")).ToHaveCountAsync(0);
        Assert.Equal(address, page.Url);
    }

    private static async Task<ServedShed> Planned()
    {
        ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First"));
        return shed;
    }

    private static async Task<(Finger Finger, LocatorBoundingBoxResult Run, LocatorBoundingBoxResult Plot)> AtBoard(Screen screen)
    {
        await screen.Go("/plan");
        ILocator run = screen.Page.Locator("#board a.to-run rect").First;
        await run.ScrollIntoViewIfNeededAsync();
        return (await Finger.On(screen.Page), (await run.BoundingBoxAsync())!, (await screen.Page.Locator("#board .picture-plot svg").BoundingBoxAsync())!);
    }
}
