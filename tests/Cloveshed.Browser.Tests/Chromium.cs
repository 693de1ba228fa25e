using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Cloveshed.Browser.Tests.Chromium))]

namespace Cloveshed.Browser.Tests;

/// <summary>
/// One real browser for all tests: the Chromium of the system, since a browser of the test library's own would have to be
/// downloaded. CHROMIUM names another path.
/// </summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string Executable = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium";

    /// <summary>Milliseconds.</summary>
    private const float Patience = 30_000;

    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(Executable))
        {
            return;
        }
        playwright = await Playwright.CreateAsync();
        // What fails waits this long, what passes does not: a busy machine is no fault of a page.
        Assertions.SetDefaultExpectTimeout(Patience);
        browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Executable,
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.CloseAsync();
        }
        playwright?.Dispose();
    }

    /// <summary>A fresh page of the given width, or a skipped test where there is no browser.</summary>
    /// <param name="touch">A screen that fingers touch.</param>
    public async Task<IPage> OpenAsync(int width, bool dark = false, bool bypassPolicy = false, bool touch = false)
    {
        Assert.SkipWhen(browser is null, $"There is no browser at {Executable}: install the package chromium, or name one in CHROMIUM.");
        IBrowserContext context = await browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = 900 },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            BypassCSP = bypassPolicy,
            HasTouch = touch,
        });
        context.SetDefaultTimeout(3 * Patience);
        return await context.NewPageAsync();
    }
}
