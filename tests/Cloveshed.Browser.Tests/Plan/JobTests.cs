using Cloveshed.Solver.Highs;
using Cloveshed.Web.Tests;
using Cloveshed.Web.Tests.Plan;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>The picture of a plan that is being made, in a real browser: drawn again with each event, its legend stays above it.</summary>
public sealed class JobTests(Chromium chromium)
{
    [Theory]
    [InlineData("en", true)]
    [InlineData("es", false)]
    public async Task The_legend_stands_above_the_picture_and_leaves_no_empty_band(string language, bool dark)
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid job = PlanSeason.Ask(shed.Ledger, seconds: 600);
        await using Screen screen = await Screen.Open(chromium, shed, Screen.Phone, dark, language);
        await screen.Go($"/plan/jobs/{job}");
        solver.LetOne();
        await Assertions.Expect(screen.Page.Locator("#job-value")).ToHaveTextAsync("$1,160", new() { Timeout = 20_000 });
        await ChartLegends.StandAbove(screen, 2);
        solver.Open();
        await PlanSeason.Made(shed.Ledger, job);
    }
}
