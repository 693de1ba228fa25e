using System.Net;
using Cloveshed.Ledger;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>The page that plays a plan through seasons that turn out otherwise.</summary>
public sealed class OtherwiseTests
{
    [Fact]
    public async Task The_page_says_how_far_it_is_then_what_the_plan_returns_in_both_languages()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First plan"));
        using Visitor visitor = shed.Visitor();
        string path = $"/plan/{plan.Fact}/otherwise";
        Got first = await visitor.Get(path);
        // 200 small seasons may be played before the page is written; if not, it says how far they are.
        Assert.True(first.Text.Contains($"data-progress=\"{path}/progress\"", StringComparison.Ordinal) || first.Text.Contains("Where it breaks first", StringComparison.Ordinal));
        Got played = await Played(visitor, path);
        string page = played.Read();
        Assert.Contains("If it turns out otherwise", page, StringComparison.Ordinal);
        // As planned: the plan's own value, 60 of 70 cartons.
        Assert.Contains("<strong class=\"big\">$1,160</strong>", played.Text, StringComparison.Ordinal);
        // Nothing is moved in vain, so nothing is said of it.
        Assert.DoesNotContain("The plan itself says", page, StringComparison.Ordinal);
        Assert.Contains("Of all that is ordered 85.7% ships as planned", page, StringComparison.Ordinal);
        Assert.Contains("200 seasons, seed 1.", page, StringComparison.Ordinal);
        Assert.Contains($"href=\"{path}\"", (await visitor.Get($"/plan/{plan.Fact}")).Text, StringComparison.Ordinal);
        Assert.Contains("De todo lo pedido sale 85.7% según el plan", await Spanish(visitor, path), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_play_that_is_stopped_says_so_and_a_plan_that_is_not_there_is_none()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First plan"));
        using Visitor visitor = shed.Visitor();
        string path = $"/plan/{plan.Fact}/otherwise";
        Got first = await visitor.Get(path);
        if (first.Text.Contains("/stop\"", StringComparison.Ordinal))
        {
            await visitor.Send(first, path + "/stop");
            Got stopped = await visitor.Get(path);
            if (stopped.Text.Contains("/again\"", StringComparison.Ordinal))
            {
                Assert.Contains("It was stopped.", stopped.Read(), StringComparison.Ordinal);
                await visitor.Send(stopped, path + "/again");
            }
        }

        Assert.Contains("Where it breaks first", (await Played(visitor, path)).Read(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get($"/plan/{Guid.NewGuid()}/otherwise")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get($"/plan/{Guid.NewGuid()}/otherwise/progress")).Status);
    }

    private static async Task<string> Spanish(Visitor visitor, string path)
    {
        await visitor.Send(await visitor.Get(path), "/view", ("lang", "es"), ("unit", "kg"), ("theme", "dark"), ("day", ""), ("known", "now"));
        return (await visitor.Get(path)).Read();
    }

    /// <summary>The page once the seasons are played, as its script waits for it.</summary>
    private static async Task<Got> Played(Visitor visitor, string path)
    {
        _ = await visitor.Get(path);
        using CancellationTokenSource late = new(TimeSpan.FromMinutes(3));
        while (!(await visitor.Get(path + "/progress")).Text.Contains("\"ended\":true", StringComparison.Ordinal))
        {
            await Task.Delay(50, late.Token);
        }

        return await visitor.Get(path);
    }
}
