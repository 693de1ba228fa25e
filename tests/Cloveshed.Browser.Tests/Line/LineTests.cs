using Cloveshed.Ledger;
using Cloveshed.Web.Tests;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Line;

/// <summary>The sizer and what goes with it, in a real browser.</summary>
public sealed class LineTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("/line", Screen.Desk, false, "en")]
    [InlineData("/line", Screen.Phone, true, "es")]
    [InlineData("/line/sizer/26-003", Screen.Tablet, false, "es")]
    [InlineData("/line/sizer/25-071?pounds=50", Screen.Desk, true, "en")]
    [InlineData("/line/drum/26-035?most=20", Screen.Phone, true, "es")]
    [InlineData("/line/sample/26-003", Screen.Tablet, true, "en")]
    [InlineData("/line/count/26-003", Screen.Phone, false, "es")]
    [InlineData("/line/sheet/26-003?in=both", Screen.Desk, false, "en")]
    public Task A_page_is_sound(string path, int width, bool dark, string language) => Screen.SoundUnfolded(chromium, demo, path, width, dark, language);

    /// <summary>The main task: a cut is moved by keys, by hand and by typing, its figures follow without the page being loaded, and the setting is put in force.</summary>
    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Phone)]
    public async Task A_cut_is_moved_and_its_figures_follow(int width)
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        await using Screen screen = await Screen.Open(chromium, shed, width);
        IPage page = screen.Page;
        await screen.Go("/line/sizer/26-003");
        await page.EvaluateAsync("window.loadedOnce = true");
        ILocator handle = page.Locator(".cut-handle[data-class='5']"), field = page.Locator("#cut-5"), share = page.Locator("[data-row='5'] [data-out='share-5']");
        string before = await share.InnerTextAsync(), cut = await field.InputValueAsync();
        await handle.FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.Equal(double.Parse(cut, System.Globalization.CultureInfo.InvariantCulture) + 1.1, double.Parse(await field.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture), 1e-6);
        await Assertions.Expect(share).Not.ToHaveTextAsync(before);

        // By hand: dragged to the left it takes bulbs from the class below.
        before = await share.InnerTextAsync();
        LocatorBoundingBoxResult grip = (await handle.Locator(".grip").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(grip.X + grip.Width / 2, grip.Y + grip.Height / 2);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(grip.X + grip.Width / 2 - 12, grip.Y + grip.Height / 2, new() { Steps = 4 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(share).Not.ToHaveTextAsync(before);

        await field.FillAsync("63.4");
        await Assertions.Expect(handle).ToHaveAttributeAsync("aria-valuenow", "63.4");
        await Assertions.Expect(page.Locator("#setting-sent")).ToHaveValueAsync(new System.Text.RegularExpressions.Regex("cut=63\\.4"));
        Assert.True(await page.EvaluateAsync<bool>("window.loadedOnce === true"));
        await screen.Sound();
        await page.Locator("button", new() { HasText = "Put this setting in force" }).ClickAsync();
        await page.WaitForSelectorAsync(".said.done");
        Assert.Contains(shed.Ledger.Now().SizerSettings.Single().Boxes, box => box is { Class: "Extra jumbo", MinG: 63.4 });
    }

    /// <summary>A scale types its weights and Enter; the defect is given by a touch; what was typed outlives a closed page; then the sample is taken.</summary>
    [Fact]
    public async Task A_sample_is_typed_by_a_scale_and_taken()
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Tablet);
        IPage page = screen.Page;
        await screen.Go("/line/sample/26-032");
        await page.FocusAsync("#bulbs");
        await page.Keyboard.TypeAsync("61.5\n58.2\n");
        await page.Locator("[data-defect=mold]").ClickAsync();
        await page.Keyboard.TypeAsync("70\n");
        await Assertions.Expect(page.Locator("#bulbs-tally")).ToHaveTextAsync("3 bulbs, mean 63.2 g.");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#bulbs")).ToHaveValueAsync("61.5\n58.2 mold\n70\n");
        await page.Locator("button", new() { HasText = "Take the sample" }).ClickAsync();
        await page.WaitForSelectorAsync(".said.done");
        Assert.Equal(["61.5 None", "58.2 Mold", "70 None"], shed.Ledger.Now().Season!.Samples.Where(bulb => bulb.Lot.Text == "26-032").Select(bulb => System.FormattableString.Invariant($"{bulb.WeightG} {bulb.Defect}")));
        await Assertions.Expect(page.Locator("#bulbs")).ToHaveValueAsync("");
        await screen.Sound();
    }

    /// <summary>A sizer's file is chosen, sent, read and stands against what was expected, without a page being loaded by hand.</summary>
    [Fact]
    public async Task A_sizers_file_is_taken_in()
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Desk);
        IPage page = screen.Page;
        await screen.Go("/line/count/26-003");
        await page.FillAsync("input[name=bins]", "30");
        byte[] file = System.Text.Encoding.UTF8.GetBytes("weight_g\n" + string.Concat(Enumerable.Range(0, 200_000).Select(k => FormattableString.Invariant($"{30 + k % 700 / 10.0:0.0}\n"))));
        await page.Locator("input[name=file]").SetInputFilesAsync(new FilePayload { Name = "morning.csv", MimeType = "text/csv", Buffer = file });
        await page.Locator("button", new() { HasText = "Take it in" }).ClickAsync();
        await page.WaitForSelectorAsync("[data-table=against]");
        Assert.Equal(200_000, shed.Ledger.Now().SizerTotal(new Core.LotId("26-003"))!.Counts.Bulbs);
        await screen.Sound();
        await screen.Go("/line/sizer/26-003");
        Assert.Equal(1, await page.Locator("path.curve-counted").CountAsync());
    }
}
