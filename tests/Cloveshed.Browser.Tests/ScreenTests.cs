using Cloveshed.Web.Tests;

namespace Cloveshed.Browser.Tests;

/// <summary>That a page which is not sound is told to be so: what finds nothing anywhere else must be able to find.</summary>
public sealed class ScreenTests(Chromium chromium, DemoShed demo)
{
    [Theory]
    [InlineData("document.querySelector('main').insertAdjacentHTML('beforeend', '<img src=\"data:,\">')", "image-alt: ")]
    [InlineData("document.querySelector('main').insertAdjacentHTML('beforeend', '<p style=\"color:#999;background:#fff\">Faint</p>')", "color-contrast: ")]
    [InlineData("document.querySelector('main').insertAdjacentHTML('beforeend', '<input name=\"nameless\">')", "label: ")]
    [InlineData("document.documentElement.removeAttribute('lang')", "html-has-lang: ")]
    [InlineData("document.querySelector('main').insertAdjacentHTML('beforeend', '<div style=\"width:3000px\">Wide</div>')", "is wider than the screen")]
    [InlineData("setTimeout(() => { throw new Error('broken') })", "script: ")]
    [InlineData("document.querySelector('main').insertAdjacentHTML('beforeend', '<iframe title=\"other\" srcdoc=\"other\"></iframe>')", "collection")]
    public async Task What_is_wrong_is_told(string spoil, string told)
    {
        await using Screen screen = await Screen.Open(chromium, demo.Shed, Screen.Phone);
        await screen.Go("/line/count/26-003");
        await screen.Page.EvaluateAsync(spoil);
        Assert.Contains(told, (await Assert.ThrowsAnyAsync<Xunit.Sdk.XunitException>(screen.Sound)).Message, StringComparison.Ordinal);
    }
}
