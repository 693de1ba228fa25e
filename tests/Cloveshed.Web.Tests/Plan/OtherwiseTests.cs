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

    /// <summary>
    /// A forecast of 3 cartons at $100, of garlic for 30 of which the mass is known, on a line that costs nothing. What is really ordered is 3 times a lognormal of mean 1 whose logarithm's sd is the forecast's 0.25 and the product's 0.1
    /// together, 0.269, in whole cartons: 4 or more from 3.5 up, z = (ln(3.5 / 3) + 0.269² / 2) / 0.269 = 0.71, which is 24 of 100 seasons, and 5 or more, z = 1.64, 5 of 100; 2 or fewer under 2.5,
    /// z = −0.54, 29 of 100, and 1 or none, z = −2.44, 1 of 100. So a tenth of the seasons ends among those of 2 and a tenth begins among those of 4.
    /// </summary>
    [Fact]
    public async Task One_season_in_ten_is_below_the_first_figure_half_below_the_second_and_one_in_ten_above_the_third()
    {
        Dictionary<string, string> files = new(PlanSeason.Files);
        files["lines.csv"] = files["lines.csv"].Replace("1000,40,10", "1000,40,0", StringComparison.Ordinal);
        files["lots.csv"] = "lot,place,variety,field,harvested,bins,net,net_low,net_high,fresh_share,crack_share,mean_g,cv\nA,yard,plain,north,2026-08-20,10,1000,999.9999,1000.0001,1,0,50,0.02\n";
        files["orders.csv"] = "order,line,customer,product,due,units,price,firm\nlast,1,Tollen Market,M30,2026-09-17,3,100,no\n";
        await using ServedShed shed = await ServedShed.Open(ledger => PlanSeason.Import(ledger, files));
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        string page = (await Played(visitor, $"/plan/{plan.Fact}/otherwise")).Read();
        Assert.Equal(
            "As planned $300 P10: one in ten below $200 P50: half below $300 P90: one in ten above $400",
            page[page.IndexOf("As planned", StringComparison.Ordinal)..page.IndexOf("Worst tenth", StringComparison.Ordinal)].Trim());
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
