using Cloveshed.Ledger;
using Cloveshed.Solver.Highs;
using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Plan;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>What a hand does at Plan, in a real browser; the numbers are reckoned by hand in <see cref="PlanSeason"/>.</summary>
public sealed class PlanTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("/plan?run=R00001", Screen.Desk, false, "en")]
    [InlineData("/plan?lot=26-011", Screen.Phone, true, "es")]
    [InlineData("/plan/again", Screen.Phone, false, "es")]
    [InlineData("/plan/all", Screen.Phone, true, "en")]
    [InlineData("/plan/all", Screen.Desk, false, "es")]
    public async Task A_page_is_sound(string path, int width, bool dark, string language)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, width, dark, language);
        await screen.Go(path);
        await screen.Sound();
    }

    /// <summary>A small plan with everything unfolded: what a large one has folded away is of the same kinds.</summary>
    [Theory]
    [InlineData(Screen.Desk, true)]
    [InlineData(Screen.Tablet, false)]
    [InlineData(Screen.Phone, false)]
    public async Task Unfolded_it_is_sound_as_well(int width, bool dark)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First"));
        await using Screen screen = await Screen.Open(chromium, shed, width, dark, "es");
        await screen.Go("/plan?lot=A");
        await screen.Page.EvaluateAsync("document.querySelectorAll('main details').forEach(one => one.open = true)");
        await screen.Sound();
    }

    /// <summary>A run dragged along its line, or moved by Shift and the arrows, is offered to be held in the week where it was let go.</summary>
    [Fact]
    public async Task A_run_is_dragged_to_another_week_by_a_mouse_and_by_keys()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First"));
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Desk);
        await screen.Go("/plan");
        ILocator block = screen.Page.Locator("#board a.to-run rect").First;
        await block.ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult box = (await block.BoundingBoxAsync())!, plot = (await screen.Page.Locator("#board .picture-plot svg").BoundingBoxAsync())!;
        await screen.Page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + box.Height / 2);
        await screen.Page.Mouse.DownAsync();
        await screen.Page.Mouse.MoveAsync(plot.X + plot.Width * 0.5f, box.Y + box.Height / 2, new() { Steps = 4 });
        await screen.Page.Mouse.UpAsync();
        ILocator week = screen.Page.Locator("#side details.move[open] select[name=week]");
        await Assertions.Expect(week).ToHaveValueAsync("2026-09-07");
        await screen.Page.Locator("#board .picture-box").FocusAsync();
        await screen.Page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(week).ToHaveValueAsync("2026-09-14");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(screen.Page.Locator(".said")).ToContainTextAsync("is held in the week of 14 Sep instead of 31 Aug");
        Assert.Equal(2, shed.Ledger.Now().Holds.Count);
    }

    /// <summary>The board is walked through by arrow keys, and what is chosen explains itself without the page being loaded again.</summary>
    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Phone)]
    public async Task Arrow_keys_walk_through_the_runs_and_the_side_follows(int width)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, width);
        await screen.Go("/plan");
        await screen.Page.EvaluateAsync("window.loadedOnce = true");
        await screen.TabTo("#board .picture-box");
        await screen.Page.Keyboard.PressAsync("ArrowRight");
        ILocator head = screen.Page.Locator("#chosen-head");
        await head.WaitForAsync();
        string first = await head.InnerTextAsync();
        await screen.Page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(head).Not.ToHaveTextAsync(first);
        Assert.Contains("run=", screen.Page.Url, StringComparison.Ordinal);
        Assert.True(await screen.Page.Locator("#board a[aria-current]").CountAsync() > 0);
        await screen.Page.GoBackAsync();
        await Assertions.Expect(head).ToHaveTextAsync(first);
        await screen.Page.Locator("#board .picture-box").FocusAsync();
        await screen.Page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(head).ToHaveCountAsync(0);
        Assert.True(await screen.Page.EvaluateAsync<bool>("window.loadedOnce === true"));
    }

    /// <summary>Main task: a run is chosen, held, planned again, watched, compared and adopted, at a desk and on a phone.</summary>
    [Theory]
    [InlineData(Screen.Desk, false)]
    [InlineData(Screen.Tablet, true)]
    [InlineData(Screen.Phone, false)]
    public async Task A_run_is_held_the_season_planned_again_and_the_new_plan_adopted(int width, bool dark)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry first = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First"));
        shed.Ledger.Append([PlanSeason.Origin.PlanAdopted(first)]);
        await using Screen screen = await Screen.Open(chromium, shed, width, dark);
        IPage page = screen.Page;
        await screen.Go("/plan");
        await page.Locator(".week-runs a[data-choose]").First.ClickAsync();
        await page.Locator("#side button", new() { HasText = "Not this week" }).ClickAsync();
        await page.WaitForSelectorAsync(".said.done");
        Assert.False(Assert.Single(shed.Ledger.Now().Holds).Pinned);
        await screen.Sound();
        await page.Locator(".plan-doors a", new() { HasText = "Plan again" }).ClickAsync();
        await page.FillAsync("#name", "Second");
        await page.Locator("button", new() { HasText = "Make the plan" }).ClickAsync();
        await page.Locator("h1", new() { HasText = "\"Second\" is made" }).WaitForAsync(new() { Timeout = 60_000 });
        await screen.Sound();
        await page.Locator("a", new() { HasText = "Open the plan" }).ClickAsync();
        await page.Locator(".hold-list", new() { HasText = "kept in this plan" }).WaitForAsync();
        await page.Locator("a", new() { HasText = "Compare with the adopted plan" }).First.ClickAsync();
        await page.Locator("[data-figure=difference]").WaitForAsync();
        await screen.Sound();
        await page.Locator("button", new() { HasText = "Adopt this plan" }).ClickAsync();
        await page.WaitForSelectorAsync(".said.done");
        Assert.Equal("Second", shed.Ledger.Now().Adopted?.Name);
    }

    /// <summary>While it is planned the page follows without being loaded; stopped, it keeps what there is.</summary>
    [Fact]
    public async Task A_plan_is_watched_and_stopped()
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid job = PlanSeason.Ask(shed.Ledger, "Long", seconds: 600);
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Desk);
        await screen.Go($"/plan/jobs/{job}");
        await screen.Page.EvaluateAsync("window.loadedOnce = true");
        await Assertions.Expect(screen.Page.Locator("#job-value")).ToHaveTextAsync("–");
        solver.LetOne();
        await Assertions.Expect(screen.Page.Locator("#job-value")).ToHaveTextAsync("$1,160", new() { Timeout = 20_000 });
        await Assertions.Expect(screen.Page.Locator("shed-chart[data-drawn] svg")).ToHaveCountAsync(1);
        Assert.True(await screen.Page.EvaluateAsync<bool>("window.loadedOnce === true"));
        await screen.Sound();
        await screen.Page.Locator("button", new() { HasText = "Stop here" }).ClickAsync();
        await screen.Page.WaitForSelectorAsync(".said.done");
        solver.Open();
        await screen.Page.Locator("h1", new() { HasText = "\"Long\" is made" }).WaitForAsync(new() { Timeout = 60_000 });
        Assert.Equal("cancelled", shed.Ledger.Now().Plans.Single().Status);
        await screen.Sound();
    }

    [Fact]
    public async Task Without_script_a_run_is_chosen_by_its_link_and_a_job_loads_itself_again()
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, Screen.Desk);
        await screen.Page.RouteAsync("**/*.js", route => route.AbortAsync());
        await screen.Go("/plan");
        string href = (await screen.Page.Locator("#board a.to-run").First.GetAttributeAsync("href"))!;
        await screen.Go(href);
        Assert.True(await screen.Page.Locator("#chosen-head").IsVisibleAsync());
        Assert.Equal(1, await screen.Page.Locator("#side button", new() { HasText = "Hold this run here" }).CountAsync());
    }
}
