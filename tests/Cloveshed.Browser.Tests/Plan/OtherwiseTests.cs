using Cloveshed.Ledger;
using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Plan;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>A plan that is played through seasons that turn out otherwise, in a real browser: its pictures are drawn, and their legends stand above them.</summary>
public sealed class OtherwiseTests(Chromium chromium)
{
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

        // Three names over the first picture, and the plan's own beside them over the second.
        await ChartLegends.StandAbove(screen, 3, 4);
        await screen.Sound();
    }
}
