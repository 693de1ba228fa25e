using Cloveshed.Ledger;
using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Plan;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>A plan that is played through seasons that turn out otherwise, in a real browser: its pictures are drawn, and their legends stand above them.</summary>
public sealed class OtherwiseTests(Chromium chromium)
{
    /// <summary>In the legends: three names over the first picture, and the plan's own beside them over the second.</summary>
    private static readonly double[] Names = [3, 4];

    /// <summary>Pixels: half a label of the axis and a line of the legend, which other letters might need.</summary>
    private const int MostFree = 35;

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
    [Theory]
    [InlineData("en", false)]
    [InlineData("es", true)]
    public async Task Legends_stand_above_their_pictures_and_leave_no_empty_band(string language, bool dark)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Phone, dark, language);
        await screen.Go($"/plan/{plan.Fact}/otherwise");
        await Assertions.Expect(screen.Page.Locator("shed-chart")).ToHaveCountAsync(2, new() { Timeout = 60_000 });
        foreach (ILocator chart in await screen.Page.Locator("shed-chart").AllAsync())
        {
            await chart.ScrollIntoViewIfNeededAsync();
            await Assertions.Expect(chart).ToHaveAttributeAsync("data-drawn", "");
        }

        await screen.Sound();
        foreach (int width in (int[])[Screen.Phone, 320, 360, 480, 600, Screen.Tablet, 1280, Screen.Phone])
        {
            await screen.Page.SetViewportSizeAsync(width, 900);
            await screen.Page.WaitForFunctionAsync("() => [...document.querySelectorAll('.chart-ground')].every(ground => Number(ground.querySelector('svg')?.getAttribute('width')) === ground.clientWidth)");
            double[][] pictures = await screen.Page.EvaluateAsync<double[][]>(Measured);
            Assert.Equal(Names, pictures.Select(picture => picture[0]));
            Assert.All(pictures, picture => Assert.True(picture[2] >= picture[1] && picture[2] <= picture[1] + MostFree, $"{width}: the legend ends at {picture[1]}, the grid begins at {picture[2]}."));
            Assert.True(width < 1280 || pictures.All(picture => picture[2] <= 40), $"{width}: the grid begins at {string.Join(", ", pictures.Select(picture => picture[2]))}.");
        }
    }
}
