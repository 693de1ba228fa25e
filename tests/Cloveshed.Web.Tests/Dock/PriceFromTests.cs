using System.Net;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Web.Tests.Plan;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Dock;

/// <summary>A season of contract 2 at the dock: where the price of a line comes from, the weeks of a program, and orders by a list.</summary>
public sealed class PriceFromTests
{
    private static Task<ServedShed> Open() => ServedShed.Open(ledger => Assert.True(SeasonImport.Import(ledger, new SmallSeason().WithTerms().Files, SmallShed.Origin).Taken));

    /// <summary>44 by the list, less 2 of the fair, less 3 of freight: <see cref="TermsSeason"/>.</summary>
    [Fact]
    public async Task A_programs_week_says_how_its_price_came_to_be_and_leads_to_the_program()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        Got dock = await visitor.Get("/dock");
        Assert.Contains("Weekly, Fall", dock.Read(), StringComparison.Ordinal);
        Got page = await visitor.Get("/dock/Weekly%202026-09-28");

        string text = page.Read();
        Assert.Contains("$44.00 by the list Fall, less $2.00, promotion Fair, less $3.00 freight to Port, $39.00 at the dock", text, StringComparison.Ordinal);
        Assert.Contains("program Weekly, the least; units of a later week do not count", text, StringComparison.Ordinal);
        Assert.Contains("program Weekly, beyond the least", text, StringComparison.Ordinal);
        Assert.DoesNotContain("/dock-orders/change", page.Text, StringComparison.Ordinal);
        Assert.Contains("Weekly 1", (await visitor.Get("/setup/programs?find=Weekly&in=program")).Read().Replace("Weekly Brask", "Weekly 1 Brask", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("$50.00 by the list Fall", (await visitor.Get("/dock/O1")).Read(), StringComparison.Ordinal);
    }

    /// <summary>The season of <see cref="PlanSeason"/> with its last order by a list, delivered: 23 less 3 is its 20, and the plan is worth what it was, by the check's own reading too.</summary>
    [Fact]
    public async Task A_season_with_a_list_and_freight_is_planned_and_passes_the_check()
    {
        Dictionary<string, string> files = new(PlanSeason.Files)
        {
            ["season.json"] = PlanSeason.Files["season.json"].Replace("\"contract\": 1", "\"contract\": 2", StringComparison.Ordinal),
            ["orders.csv"] = "order,line,customer,product,due,units,price,short_cost,price_list,destination\nfirst,1,Brask Foods,M30,2026-09-03,30,20,2,,\nlast,1,Tollen Market,M30,2026-09-17,40,,2,fall,port\n",
            ["price-lists.csv"] = "list,product,from,price\nfall,M30,2026-08-31,23\n",
            ["freight.csv"] = "destination,product,cost\nport,,3\n",
        };
        await using ServedShed shed = await ServedShed.Open(ledger => Assert.True(SeasonImport.Import(
            ledger, files.ToDictionary(file => file.Key, file => (ReadOnlyMemory<byte>)System.Text.Encoding.UTF8.GetBytes(file.Value)), PlanSeason.Origin).Taken));

        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));

        Assert.Equal(PlanSeason.Worth, plan.Value, 0.01);
    }

    /// <summary>After the plan: the promotion that took 2 off the program's weeks is dropped. What no longer stands is seen by what it made, and the plan's page names it.</summary>
    [Fact]
    public async Task A_dropped_row_of_terms_marks_the_lines_that_it_priced()
    {
        await using ServedShed shed = await Open();
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([SmallShed.Origin.PlanAdopted(plan)]));
        using Visitor visitor = shed.Visitor();
        const string told = "changed since the plan";
        Assert.DoesNotContain(told, (await visitor.Get("/dock/Weekly%202026-09-28")).Read(), StringComparison.OrdinalIgnoreCase);
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([SmallShed.Origin.RowDropped(shed.Ledger.Now().Rows!.Of("promotions.csv").First(row => row.Cells["promotion"] == "Fair"))]));
        Assert.Contains(told, (await visitor.Get("/dock/Weekly%202026-09-28")).Read(), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(told, (await visitor.Get("/dock/O1")).Read(), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Promotions: 1 dropped", (await visitor.Get("/plan")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_order_by_a_list_is_entered_and_its_list_can_be_changed()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        Got taken = await visitor.Fill(
            await visitor.Get("/dock"), "/dock-orders/add", ("order", "O9"), ("customer", "Quail Foods"), ("due", "2026-10-02"), ("product-1", "M30"), ("units-1", "60"), ("price-1", ""), ("price_list-1", "Fall"), ("destination-1", "Port"));
        Assert.Equal(HttpStatusCode.SeeOther, taken.Status);
        OrderLine line = shed.Ledger.Now().Season!.Orders.Single(one => one.Order.Text == "O9");
        Assert.Equal(41m, line.Price); // 44 - 3; the fair is another buyer's

        Got page = await visitor.Get("/dock/O9");
        await visitor.Fill(page, "/dock-orders/change", ("price", "40"), ("price_list", ""), ("destination", ""), ("reason", "Agreed"));
        Assert.Equal(40m, shed.Ledger.Now().Season!.Orders.Single(one => one.Order.Text == "O9").Price);
        Assert.DoesNotContain("Where the price comes from", (await visitor.Get("/dock/O9")).Read(), StringComparison.Ordinal);
    }

    /// <summary>By contract 1 the forms are as they were; a row of terms is refused, with what to do, and contract 2 is a field of the season.</summary>
    [Fact]
    public async Task A_season_becomes_one_of_contract_2_by_a_hand()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Assert.DoesNotContain("price_list", (await visitor.Get("/dock")).Text, StringComparison.Ordinal);
        Got refused = await visitor.Fill(await visitor.Get("/setup/freight/new"), "/setup/freight/enter", ("c.destination", "Port"), ("c.cost", "2"), ("reason", "counted"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains("\"contract\": 2", refused.Read(), StringComparison.Ordinal);

        await visitor.Fill(await visitor.Get("/setup/season"), "/setup/season/change", ("c.contract", "2"), ("reason", "news"));
        Assert.Equal(2, shed.Ledger.Now().Season!.Settings.Contract);
        Got entered = await visitor.Fill(await visitor.Get("/setup/freight/new"), "/setup/freight/enter", ("c.destination", "Port"), ("c.cost", "2"), ("reason", "counted"));
        Assert.Equal(HttpStatusCode.SeeOther, entered.Status);
        Assert.Contains("price_list", (await visitor.Get("/dock")).Text, StringComparison.Ordinal);
    }
}
