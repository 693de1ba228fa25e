using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>That the legends of a page's pictures stand above them and leave no empty band.</summary>
internal static class ChartLegends
{
    /// <summary>Pixels: half a label of the axis and a line of the legend, which other letters might need.</summary>
    private const int MostFree = 35;

    /// <summary>Pixels: where a picture begins under a legend of one line.</summary>
    private const int UnderOneLine = 40;

    /// <summary>Of each picture: how many names its legend has, how low they come, and where the grid begins, its topmost line across; pixels from the picture's top.</summary>
    private const string Measured = """
        () => [...document.querySelectorAll(".chart-ground")].map(ground => {
            const above = ground.getBoundingClientRect().top, boxes = found => [...ground.querySelectorAll(found)].map(one => ({ one, box: one.getBoundingClientRect() }));
            const names = boxes("text").filter(text => /\p{L}{3}/u.test(text.one.textContent) && text.box.top - above < ground.clientHeight / 2);
            const lines = boxes("path").filter(line => line.box.width > ground.clientWidth / 2 && line.box.height < 3);
            return [names.length, Math.max(...names.map(name => name.box.bottom)) - above, Math.min(...lines.map(line => line.box.top)) - above];
        })
        """;

    /// <summary>From a small phone to a desk, as somebody turns a phone or draws a window wider.</summary>
    /// <param name="names">In the legend of each picture, in the page's order.</param>
    public static async Task StandAbove(Screen screen, params double[] names)
    {
        foreach (ILocator chart in await screen.Page.Locator("shed-chart").AllAsync())
        {
            await chart.ScrollIntoViewIfNeededAsync();
            await Assertions.Expect(chart).ToHaveAttributeAsync("data-drawn", "");
        }

        foreach (int width in (int[])[Screen.Phone, 320, 360, 480, 600, Screen.Tablet, 1280, Screen.Phone])
        {
            await screen.Page.SetViewportSizeAsync(width, 900);
            await screen.Page.WaitForFunctionAsync("() => [...document.querySelectorAll('.chart-ground')].every(ground => Number(ground.querySelector('svg')?.getAttribute('width')) === ground.clientWidth)");
            double[][] pictures = await screen.Page.EvaluateAsync<double[][]>(Measured);
            Assert.Equal(names, pictures.Select(picture => picture[0]));
            Assert.All(pictures, picture => Assert.True(picture[2] >= picture[1] && picture[2] <= picture[1] + MostFree, $"{width}: the legend ends at {picture[1]}, the grid begins at {picture[2]}."));
            Assert.True(width < 1280 || pictures.All(picture => picture[2] <= UnderOneLine), $"{width}: the grid begins at {string.Join(", ", pictures.Select(picture => picture[2]))}.");
        }
    }
}
