using Cloveshed.Pictures;
using Cloveshed.Pictures.Look;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests;

public class ColourTests(Chromium chromium)
{
    /// <summary>The tokens as the browser paints them: the referee for the colours that the contrast tests compute.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_browser_takes_every_token_in_both_themes(bool dark)
    {
        using var file = new ReportFile(Language.En);
        IPage page = await chromium.OpenAsync(820, dark);
        await file.ShowAsync(page);
        foreach (Token token in Tokens.All)
        {
            string expected = (dark ? token.Dark : token.Light).ToCss();
            string[] painted = await page.EvaluateAsync<string[]>(
                $$"""
                () => {
                    const seen = colour => {
                        const c = document.createElement('canvas').getContext('2d');
                        c.fillStyle = colour;
                        c.fillRect(0, 0, 1, 1);
                        return c.getImageData(0, 0, 1, 1).data.join();
                    };
                    return [seen(getComputedStyle(document.documentElement).getPropertyValue('--{{token.Name}}').trim()), seen('{{expected}}')];
                }
                """);
            Assert.Equal(painted[1], painted[0]);
            Assert.NotEqual("0,0,0,255", painted[0]);
        }
    }
}
