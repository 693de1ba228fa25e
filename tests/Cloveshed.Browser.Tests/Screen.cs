using Cloveshed.Web.Tests;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(DemoShed))]

namespace Cloveshed.Browser.Tests;

/// <summary>Someone at a screen of a served shed: a desk's, a tablet's or a phone's, by day or by night, in a language.</summary>
public sealed class Screen : IAsyncDisposable
{
    public const int Desk = 1440, Tablet = 834, Phone = 390;

    private readonly List<string> trouble = [];
    private readonly Uri root;

    private Screen(IPage page, Uri root)
    {
        Page = page;
        this.root = root;
        page.Console += (_, said) =>
        {
            // A page that is answered with 422 or 404 is told to the console as well; tests say themselves which answer they want.
            if (said.Type == "error" && !said.Text.StartsWith("Failed to load resource", StringComparison.Ordinal))
            {
                trouble.Add("console: " + said.Text);
            }
        };
        page.PageError += (_, error) => trouble.Add("script: " + error);
        page.Request += (_, asked) =>
        {
            if (!asked.Url.StartsWith(root.ToString(), StringComparison.Ordinal) && !asked.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                trouble.Add("fetched from elsewhere: " + asked.Url);
            }
        };
    }

    public IPage Page { get; }

    public static async Task<Screen> Open(Chromium chromium, ServedShed shed, int width, bool dark = false, string language = "en", bool touch = false)
    {
        IPage page = await chromium.OpenAsync(width, dark, touch: touch);
        await page.SetExtraHTTPHeadersAsync([new("Accept-Language", language)]);
        return new Screen(page, shed.Root);
    }

    public async Task Go(string path) => await Page.GotoAsync(new Uri(root, path).ToString());

    /// <summary>A page of the demo with everything unfolded is <see cref="Sound"/>.</summary>
    public static async Task SoundUnfolded(Chromium chromium, DemoShed demo, string path, int width, bool dark, string language)
    {
        await using Screen screen = await Open(chromium, demo.Shed, width, dark, language);
        await screen.Go(path);
        await screen.Page.EvaluateAsync("document.querySelectorAll('main details').forEach(one => one.open = true)");
        await screen.Sound();
    }

    /// <summary>Axe finds nothing, nothing stands over the edge, no script failed, and nothing came from elsewhere.</summary>
    public async Task Sound()
    {
        // What was unfolded a moment ago is drawn first: until then its links have the browser's own colours.
        await Page.EvaluateAsync("new Promise(drawn => { setTimeout(drawn, 1000); requestAnimationFrame(() => requestAnimationFrame(drawn)); })");
        string found = await Axe.Finds(Page);
        Assert.True(found.Length == 0, $"{Page.Url}\n{found}");
        Assert.True(await Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), $"{Page.Url} is wider than the screen.");
        Assert.Equal([], trouble);
    }

    /// <summary>Presses Tab until what has the focus is this, as somebody without a mouse does.</summary>
    public async Task TabTo(string selector, int most = 60)
    {
        for (int pressed = 0; pressed < most; pressed++)
        {
            if (await Page.EvaluateAsync<bool>("selector => document.activeElement?.matches(selector) ?? false", selector))
            {
                return;
            }

            await Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{most} times Tab does not reach {selector}.");
    }

    /// <summary>Presses Enter until the address is such: a busy browser can lose a key, as a person's can.</summary>
    public async Task EnterTo(string address)
    {
        for (int pressed = 1; ; pressed++)
        {
            await Page.Keyboard.PressAsync("Enter");
            try
            {
                await Page.WaitForURLAsync(address, new() { Timeout = 20_000 });
                return;
            }
            catch (TimeoutException) when (pressed < 3)
            {
                // Once more.
            }
        }
    }

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
