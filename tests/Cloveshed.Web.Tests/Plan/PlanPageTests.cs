using System.Net;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>The plan's page shows what the answer's files give, and what a hand does on it becomes a fact.</summary>
public sealed class PlanPageTests
{
    private static async Task<(ServedShed Shed, PlanEntry Plan, PlanAnswer Answer)> Planned(bool adopted = true)
    {
        ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First plan"));
        if (adopted)
        {
            shed.Ledger.Append([PlanSeason.Origin.PlanAdopted(plan)]);
        }

        return (shed, plan, PlanDocument.Read(shed.Ledger.Document(plan.Document)!));
    }

    private static string Read(Got page) => WebUtility.HtmlDecode(page.Text).Replace('\u00A0', ' ');

    [Fact]
    public async Task Without_a_plan_the_page_asks_for_the_first_one_and_making_it_leads_to_its_job()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/plan");
        Assert.Contains("No plan has been made yet.", page.Text, StringComparison.Ordinal);
        Got asked = await visitor.Send(page, "/plan/jobs", ("name", "Friday"), ("seconds", "30"), ("gap", "0.1"));
        Assert.Equal(HttpStatusCode.SeeOther, asked.Status);
        Fact fact = Assert.Single(shed.Ledger.Read(kind: FactKinds.PlanAsked));
        Assert.Equal($"/plan/jobs/{fact.Id}", asked.Header("Location"));
        Assert.Equal(("Friday", 30.0, 0.001), (fact.Body.GetProperty("name").GetString(), fact.Body.GetProperty("seconds").GetDouble(), fact.Body.GetProperty("gap").GetDouble()));
        shed.Clock.Pass(TimeSpan.FromSeconds(5));
        Got again = await visitor.Send(page, "/plan/jobs", ("name", "Friday"), ("seconds", "30"), ("gap", "0.1"));
        Assert.Equal(asked.Header("Location"), again.Header("Location"));
        Assert.Single(shed.Ledger.Read(kind: FactKinds.PlanAsked));
        await PlanSeason.Made(shed.Ledger, fact.Id);
        Assert.Contains("It is worth $1,160", (await visitor.Get($"/plan/jobs/{fact.Id}")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_moved_to_another_week_is_held_there_and_barred_where_it_was_and_the_next_plan_keeps_to_it()
    {
        (ServedShed shed, _, PlanAnswer answer) = await Planned();
        await using ServedShed disposed = shed;
        using Visitor visitor = shed.Visitor();
        RunRow run = answer.Runs.First(row => row.Lot.Text == "A");
        Got page = await visitor.Get($"/plan?run={run.Run}&to=2026-09-14");
        Assert.Matches("<option value=\"2026-09-14\"[^>]*selected", page.Text);
        Assert.Equal(HttpStatusCode.SeeOther, (await visitor.Send(page, "/plan/holds/move", ("week", "2026-09-14"), ("mass", "900"), ("bar", "yes"))).Status);
        Assert.Equal(
            [(true, "2026-09-14", 900.0), (false, "2026-08-31", null)],
            shed.Ledger.Now().Holds.Select(hold => (hold.Pinned, hold.Week.ToString("uuuu-MM-dd", null), hold.MassIn(MassUnit.Pound))));

        PlanEntry next = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "Next"));
        RunRow[] runs = [.. PlanDocument.Read(shed.Ledger.Document(next.Document)!).Runs.Where(row => row.Lot.Text == "A")];
        Assert.DoesNotContain(runs, row => row.Week == 0);
        RunRow moved = Assert.Single(runs, row => row.Week == 2);
        Assert.True(moved.MassIn >= 900 - 1e-6);

        // Moved once more the hold goes with it: no hold is left on the week between.
        Got there = await visitor.Get($"/plan/{next.Fact}?run={moved.Run}");
        await visitor.Send(there, "/plan/holds/move", ("week", "2026-09-07"), ("mass", ""));
        Assert.Equal([(false, "2026-08-31"), (true, "2026-09-07")], shed.Ledger.Now().Holds.Select(hold => (hold.Pinned, hold.Week.ToString("uuuu-MM-dd", null))));
        Assert.Contains("That is no week of the season.", Read(await visitor.Get((await visitor.Send(there, "/plan/holds/move", ("week", "soon"))).Header("Location"))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "30", "0.1", "Give the plan a name")]
    [InlineData("x", "0", "0.1", "Give the seconds as a number from 1")]
    [InlineData("x", "soon", "0.1", "Give the seconds as a number from 1")]
    [InlineData("x", "30", "101", "Give how near is near enough")]
    public async Task A_form_with_a_fault_is_shown_again_as_it_was_sent_and_nothing_is_written(string name, string seconds, string gap, string fault)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        using Visitor visitor = shed.Visitor();
        Got refused = await visitor.Send(await visitor.Get("/plan/again"), "/plan/jobs", ("name", name), ("seconds", seconds), ("gap", gap));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains(fault, refused.Text, StringComparison.Ordinal);
        Assert.Contains($"value=\"{gap}\"", refused.Text, StringComparison.Ordinal);
        Assert.Empty(shed.Ledger.Read(kind: FactKinds.PlanAsked));
    }

    [Fact]
    public async Task The_figures_are_those_of_the_answer()
    {
        (ServedShed shed, _, PlanAnswer answer) = await Planned();
        await using ServedShed open = shed;
        using Visitor visitor = shed.Visitor();
        string page = Read(await visitor.Get("/plan"));
        Assert.Contains("<strong data-figure=\"value\">$1,160</strong>", page, StringComparison.Ordinal);
        Assert.Contains("<strong data-figure=\"short\">10</strong>", page, StringComparison.Ordinal);
        // 60 of 70 cartons, all on time.
        Assert.Contains("<strong data-figure=\"on-time\">85.7%</strong>", page, StringComparison.Ordinal);
        Assert.Contains("First plan", page, StringComparison.Ordinal);
        foreach (RunRow run in answer.Runs)
        {
            Assert.Contains($"data-key=\"{run.Run}\"", page, StringComparison.Ordinal);
        }

        string spanish = Read(await shed.Visitor("es").Get("/plan"));
        Assert.Contains("Tablero de la temporada", spanish, StringComparison.Ordinal);
        Assert.Contains("<strong data-figure=\"value\">$1,160</strong>", spanish, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_that_is_chosen_explains_itself()
    {
        (ServedShed shed, _, PlanAnswer answer) = await Planned();
        await using ServedShed open = shed;
        using Visitor visitor = shed.Visitor();
        RunRow run = answer.Runs.First(one => one.Lot.Text == "A");
        string page = Read(await visitor.Get($"/plan?run={run.Run}"));
        Assert.Contains("<h2 id=\"chosen-head\">A, week of 31 Aug</h2>", page, StringComparison.Ordinal);
        Assert.Contains("Serves ", page, StringComparison.Ordinal);
        Assert.Contains("<dt>In</dt><dd>1,000 lb</dd>", page, StringComparison.Ordinal);
        Assert.Contains("<dt>M30</dt><dd>30</dd>", page, StringComparison.Ordinal);
        Assert.Contains("Hold this run here", page, StringComparison.Ordinal);
        Assert.Contains($"data-key=\"{run.Run}\" aria-current=\"true\"", page, StringComparison.Ordinal);
        string lot = Read(await visitor.Get("/plan?lot=B"));
        Assert.Contains("<h2 id=\"chosen-head\">B, plain</h2>", lot, StringComparison.Ordinal);
        Assert.Contains("31 Aug, pack: 1,000 lb", lot, StringComparison.Ordinal);
        Assert.Contains("What was chosen is not in this plan.", (await visitor.Get("/plan?run=R99999")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_is_held_the_hold_shows_and_is_lifted_again()
    {
        (ServedShed shed, _, PlanAnswer answer) = await Planned();
        await using ServedShed open = shed;
        using Visitor visitor = shed.Visitor();
        string path = $"/plan?run={answer.Runs.First(one => one.Lot.Text == "A").Run}";
        Got page = await visitor.Get(path);
        Got pinned = await visitor.Send(page, "/plan/holds/pin", ("mass", "900"));
        Assert.Equal((HttpStatusCode.SeeOther, path), (pinned.Status, pinned.Header("Location")));
        await visitor.Send(page, "/plan/holds/pin", ("mass", "900"));
        RunHold hold = Assert.Single(shed.Ledger.Now().Holds);
        Assert.Equal((true, "A", "pack", 900.0), (hold.Pinned, hold.Lot.Text, hold.Line.Text, hold.Mass));
        Got held = await visitor.Get(path);
        Assert.Contains("A on pack, week of 31 Aug: at least 900 lb", Read(held), StringComparison.Ordinal);
        Assert.Contains("kept in this plan", held.Text, StringComparison.Ordinal);
        Assert.Contains("1 thing changed since this plan was asked for", held.Text, StringComparison.Ordinal);
        await visitor.Send(held, "/plan/holds/lift");
        await visitor.Send(held, "/plan/holds/lift");
        Assert.Empty(shed.Ledger.Now().Holds);
        Assert.Single(shed.Ledger.Read(kind: FactKinds.HoldLifted));
        Assert.Contains("The hold is lifted.", (await visitor.Get(path)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_that_is_barred_is_not_in_the_next_plan()
    {
        (ServedShed shed, PlanEntry before, PlanAnswer answer) = await Planned();
        await using ServedShed open = shed;
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get($"/plan?run={answer.Runs.First(one => one.Lot.Text == "A").Run}"), "/plan/holds/bar");
        Assert.Contains("set since: not in this plan yet", (await visitor.Get("/plan")).Text, StringComparison.Ordinal);
        PlanEntry after = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "Without A"));
        PlanAnswer next = PlanDocument.Read(shed.Ledger.Document(after.Document)!);
        Assert.DoesNotContain(next.Runs, run => run.Lot.Text == "A" && run.Week == 0);
        Assert.True(after.Value < before.Value);
        Assert.Contains("kept in this plan", (await visitor.Get($"/plan/{after.Fact}")).Text, StringComparison.Ordinal);
        string compared = Read(await visitor.Get($"/plan/compare?a={before.Fact}&b={after.Fact}"));
        Assert.Contains("What \"Without A\" does otherwise than \"First plan\".", compared, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"row\">31 Aug</th><td>pack</td>", compared.Replace(" data-head=\"Line\"", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Got page = await visitor.Get($"/plan/{after.Fact}");
        Assert.Contains("Adopting it changes", page.Text, StringComparison.Ordinal);
        await visitor.Send(page, "/plan/adopt");
        Assert.Equal(after.Fact, shed.Ledger.Now().Adopted?.Fact);
        Assert.Contains("The shed now works by \"Without A\".", Read(await visitor.Get("/plan")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_changed_since_is_told_by_kind_and_the_plan_stays_what_it_was()
    {
        (ServedShed shed, _, _) = await Planned();
        await using ServedShed open = shed;
        SeasonRow order = shed.Ledger.Now().Rows!.Of("orders.csv").First();
        shed.Ledger.Append([PlanSeason.Origin.RowDropped(order)]);
        using Visitor visitor = shed.Visitor();
        string page = Read(await visitor.Get("/plan"));
        Assert.Contains("Order lines: 1 dropped", page, StringComparison.Ordinal);
        // On the orders that it was made for, not on those that are left.
        Assert.Contains("<strong data-figure=\"on-time\">85.7%</strong>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_a_past_day_the_plan_of_that_day_is_shown_without_what_came_later_and_nothing_can_be_done()
    {
        (ServedShed shed, _, PlanAnswer answer) = await Planned();
        await using ServedShed open = shed;
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get("/plan"), "/view", ("lang", "en"), ("unit", "season"), ("theme", "system"), ("day", "2026-09-02"), ("known", "now"));
        shed.Clock.Pass(TimeSpan.FromDays(3));
        SeasonRow order = shed.Ledger.Now().Rows!.Of("orders.csv").First();
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([FactOrigin.Now(shed.Clock, "test").RowDropped(order)]));
        Got then = await visitor.Get($"/plan?run={answer.Runs[0].Run}");
        Assert.Contains("<strong data-figure=\"value\">$1,160</strong>", then.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("changed since this plan was asked for", then.Text, StringComparison.Ordinal);
        Assert.Contains("<fieldset class=\"bare\" disabled>", then.Text, StringComparison.Ordinal);
        await visitor.Send(then, "/plan/holds/bar");
        await visitor.Send(await visitor.Get("/plan/again"), "/plan/jobs", ("name", "x"), ("seconds", "5"), ("gap", "1"));
        Assert.Empty(shed.Ledger.Now().Holds);
        Assert.Empty(shed.Ledger.Now().Jobs);
    }

    [Fact]
    public async Task All_plans_are_listed_and_those_without_a_plan_say_why()
    {
        (ServedShed shed, PlanEntry plan, _) = await Planned();
        await using ServedShed open = shed;
        NewFact asked = PlanSeason.Origin.PlanAsked("Gone", 1, 0, null, "en", shed.Ledger.Head().Seq);
        shed.Ledger.Append([asked, PlanSeason.Origin.PlanRefused(asked.Id, null, ["hours, runs.csv line 2: 50; at most 40"], plan.Document)]);
        using Visitor visitor = shed.Visitor();
        string page = Read(await visitor.Get("/plan/all"));
        Assert.Contains($"<a href=\"/plan/{plan.Fact}\">First plan</a> · adopted", page, StringComparison.Ordinal);
        Assert.Contains("hours, runs.csv line 2: 50; at most 40", page, StringComparison.Ordinal);
        Assert.Contains("must not be used", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/plan/00000000-0000-7000-8000-000000000000")]
    [InlineData("/plan/jobs/00000000-0000-7000-8000-000000000000")]
    [InlineData("/plan/00000000-0000-7000-8000-000000000000/tables")]
    public async Task What_is_not_there_is_said_with_404(string path)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        using Visitor visitor = shed.Visitor();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get(path)).Status);
    }
}
