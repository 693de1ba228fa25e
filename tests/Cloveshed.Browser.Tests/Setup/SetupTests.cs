using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Web.Tests;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Setup;

/// <summary>What a hand does in Setup, in a real browser.</summary>
public sealed class SetupTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("/setup", Screen.Desk, false, "en")]
    [InlineData("/setup", Screen.Phone, true, "es")]
    [InlineData("/setup/lots?sort=net&down=1", Screen.Desk, true, "en")]
    [InlineData("/setup/lots", Screen.Phone, false, "es")]
    [InlineData("/setup/orders/3", Screen.Tablet, false, "en")]
    [InlineData("/setup/orders/3", Screen.Phone, true, "es")]
    [InlineData("/setup/season", Screen.Tablet, true, "es")]
    [InlineData("/setup/import", Screen.Phone, false, "en")]
    [InlineData("/setup/ledger", Screen.Desk, false, "es")]
    [InlineData("/setup/ledger", Screen.Phone, true, "en")]
    public Task A_page_is_sound(string path, int width, bool dark, string language) => Screen.SoundUnfolded(chromium, demo, path, width, dark, language);

    /// <summary>The page follows its trials and shows what they found by itself; the wait is for the trials, which give way to all else.</summary>
    [Fact]
    public async Task Trials_of_the_size_curves_are_followed_until_they_are_made()
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, Screen.Phone, dark: true, "es");
        await screen.Go("/setup/how-sure");
        await screen.Page.Locator("#own-head").WaitForAsync(new() { Timeout = 180_000 });
        Assert.Equal(0, await screen.Page.Locator(".job progress").CountAsync());
        await screen.Sound();
    }

    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Tablet)]
    [InlineData(Screen.Phone)]
    public async Task A_row_is_changed_without_a_mouse(int width)
    {
        await using ServedShed shed = await Small();
        await using Screen screen = await Screen.Open(chromium, shed, width);
        await screen.Go("/setup/orders");
        await screen.TabTo("a[href='/setup/orders/1']");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.WaitForSelectorAsync("#c-units");
        await screen.TabTo("#c-units");
        await screen.Page.Keyboard.TypeAsync("12,5");
        await screen.TabTo("input[name=reason]");
        await screen.Page.Keyboard.TypeAsync("the buyer called");
        await screen.Page.Keyboard.PressAsync("Enter");
        // A decimal comma is told at its field, which has the focus again, and typed over.
        await screen.Page.WaitForSelectorAsync("#c-units[aria-invalid=true]:focus");
        await screen.Sound();
        await screen.Page.Keyboard.PressAsync("Control+A");
        await screen.Page.Keyboard.TypeAsync("125");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.WaitForSelectorAsync(".said.done");
        Assert.Equal("125", await screen.Page.Locator("#r1 td").Nth(6).InnerTextAsync());
        Assert.Equal("the buyer called", shed.Ledger.ReadBack(1)[0].Body.GetProperty("reason").GetString());
        await screen.Sound();
    }

    [Theory]
    [InlineData(Screen.Desk, false)]
    [InlineData(Screen.Phone, true)]
    public async Task A_folder_is_brought_in_mended_and_taken(int width, bool dark)
    {
        string folder = Directory.CreateTempSubdirectory("cloveshed-sent-").FullName;
        try
        {
            await using ServedShed shed = await ServedShed.Open();
            await using Screen screen = await Screen.Open(chromium, shed, width, dark);
            new SmallSeason().Replace("lots.csv", "L2,Yard", "L2,Barn").WriteTo(folder);
            await Send(screen, folder);
            await screen.Page.WaitForSelectorAsync(".fault-list");
            Assert.Contains("Barn", await screen.Page.Locator(".fault-list").InnerTextAsync(), StringComparison.Ordinal);
            await screen.Sound();
            Assert.Equal(0, shed.Ledger.Head().Seq);

            new SmallSeason().WriteTo(folder);
            await Send(screen, folder);
            await screen.Page.WaitForSelectorAsync(".difference");
            await screen.Sound();
            await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Import it" }).ClickAsync();
            await screen.Page.WaitForSelectorAsync(".said.done");
            Assert.Equal("Quillon Flat 2026", shed.Ledger.Now().Season!.Settings.Name);
            await screen.Sound();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Phone)]
    public async Task A_line_that_is_down_is_set_from_the_first_page(int width)
    {
        await using ServedShed shed = await Small();
        await using Screen screen = await Screen.Open(chromium, shed, width);
        await screen.Go("/setup");
        await screen.TabTo("#line-down summary");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.SelectOptionAsync("#line-down select[name=line]", "Pack 1");
        await screen.Page.SelectOptionAsync("#line-down select[name=week]", "2026-09-21");
        await screen.Page.ClickAsync("#line-down button");
        await screen.Page.WaitForSelectorAsync(".said.done");
        Assert.Contains(shed.Ledger.Now().Season!.LineWeeks, week => week is { Week: 2, Hours: 0 } && week.Line.Text == "Pack 1");
        await screen.Sound();
    }

    [Theory]
    [InlineData(Screen.Desk)]
    [InlineData(Screen.Phone)]
    public async Task A_past_day_is_chosen_in_the_header_and_left_again(int width)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, width);
        await screen.Go("/setup/orders/3");
        await screen.Page.ClickAsync("details.view summary");
        await screen.Page.FillAsync("details.view input[name=day]", "2026-08-01");
        await screen.Page.ClickAsync("details.view button");
        await screen.Page.WaitForSelectorAsync(".as-of");
        Assert.True(await screen.Page.Locator("#c-units").IsDisabledAsync());
        await screen.Sound();
        await screen.Page.ClickAsync(".as-of button");
        await screen.Page.WaitForSelectorAsync("#c-units:enabled");
    }

    private static async Task Send(Screen screen, string folder)
    {
        await screen.Go("/setup/import");
        await screen.Page.SetInputFilesAsync("input[webkitdirectory]", folder);
        await screen.Page.ClickAsync(".ways-in form:first-of-type button");
    }

    private static Task<ServedShed> Small() => ServedShed.Open(ledger =>
        Assert.True(SeasonImport.Import(ledger, new SmallSeason().Files, new FactOrigin(new DateTimeOffset(2026, 9, 1, 8, 0, 0, TimeSpan.FromHours(-4.5)), "test")).Taken));
}
