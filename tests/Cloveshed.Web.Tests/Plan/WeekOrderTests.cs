using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Cloveshed.Core.Shift;
using Cloveshed.Ledger;
using Cloveshed.Solver.Shift;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>A week's order on screen: what a hand makes of it is timed, checked, told and taken; a search goes on without its page.</summary>
public sealed partial class WeekOrderTests
{
    private static async Task<(ServedShed Shed, PlanEntry Plan)> Planned()
    {
        ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First plan"));
        shed.Ledger.Append([PlanSeason.Origin.PlanAdopted(plan)]);
        return (shed, plan);
    }

    private static string Read(Got page) => WebUtility.HtmlDecode(page.Text).Replace('\u00A0', ' ');

    private static string Order(Got page) => OrderOf().Match(page.Text).Groups[1].Value;

    [Fact]
    public async Task An_order_by_links_is_taken_as_a_fact_and_is_the_one_from_then_on()
    {
        (ServedShed shed, _) = await Planned();
        await using ServedShed disposed = shed;
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/plan/week?week=2026-08-31");
        Assert.Contains("Every rule holds.", Read(page), StringComparison.Ordinal);
        // Two lots of an hour each; the line's 40 hours are taken as five days from 06:00.
        Assert.Contains("Mon 31 Aug 06:00", Read(page), StringComparison.Ordinal);
        Assert.Contains("Mon 31 Aug 08:00", Read(page), StringComparison.Ordinal);
        string[] was = Order(page).Split('.');
        Assert.Equal(2, was.Length);

        string swapped = $"{was[1]}.{was[0]}";
        Assert.Contains($"order={swapped}", page.Text, StringComparison.Ordinal);
        Got other = await visitor.Get($"/plan/week?week=2026-08-31&order={swapped}");
        Assert.Equal(swapped, Order(other));
        Got taken = await visitor.Send(other, "/plan/week/take");

        Assert.Equal(HttpStatusCode.SeeOther, taken.Status);
        Fact fact = Assert.Single(shed.Ledger.Read(kind: FactKinds.WeekOrdered));
        Assert.Equal(was[1], fact.Body.GetProperty("runs")[0].GetProperty("run").GetString());
        Assert.Equal("2026-08-31T06:00:00", fact.Body.GetProperty("runs")[0].GetProperty("start").GetString());
        Got again = await visitor.Get("/plan/week?week=2026-08-31");
        Assert.Equal(swapped, Order(again));
        Assert.Contains("This is the order that was taken.", Read(again), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_search_is_found_again_and_its_order_proven()
    {
        (ServedShed shed, _) = await Planned();
        await using ServedShed disposed = shed;
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get("/plan/week?week=2026-08-31"), "/plan/week/search");
        Got page = await visitor.Get("/plan/week?week=2026-08-31");
        for (int turn = 0; turn < 300 && !Read(page).Contains("Proven in", StringComparison.Ordinal); turn++)
        {
            await Task.Delay(200, TestContext.Current.CancellationToken);
            page = await visitor.Get("/plan/week?week=2026-08-31");
        }

        Assert.Contains("Proven in", Read(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_search_outlives_the_program_and_says_that_it_began_again_and_what_was_found_is_kept()
    {
        using FirstWaits scheduler = new();
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, shifts: scheduler);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First plan"));
        string week = $"/plan/{plan.Fact}/week?week=2026-08-31";
        using (Visitor before = shed.Visitor())
        {
            await before.Send(await before.Get(week), "/plan/week/search");
        }

        await scheduler.Reached.WaitAsync(TestContext.Current.CancellationToken);
        shed.Clock.Pass(TimeSpan.FromMinutes(3));
        scheduler.HoldNext = true;
        await shed.Restart();
        using Visitor visitor = shed.Visitor();
        await scheduler.Reached.WaitAsync(TestContext.Current.CancellationToken);
        Assert.Contains("The program was started again at 2 Sep 2026", Read(await visitor.Get(week)), StringComparison.Ordinal);
        Assert.Empty(shed.Ledger.Read(kind: FactKinds.WeekFound));
        scheduler.Release();
        await PlanSeason.When(shed.Ledger, _ => shed.Ledger.Read(kind: FactKinds.WeekFound).Any());
        Assert.Contains("Proven in", Read(await visitor.Get(week)), StringComparison.Ordinal);

        await shed.Restart();
        using Visitor later = shed.Visitor();
        Assert.Contains("Proven in", Read(await later.Get(week)), StringComparison.Ordinal);
        Assert.Single(shed.Ledger.Read(kind: FactKinds.WeekFound));
        Assert.Single(shed.Ledger.Read(kind: FactKinds.WeekAsked));
    }

    /// <summary>20 hours of a lot at 8 a day: Monday 8, Tuesday 8, Wednesday 4 of its 10 bins, 1,000 lb and 30 cartons.</summary>
    [Fact]
    public async Task A_run_over_several_shifts_gives_each_its_own_share_and_the_shares_add_up()
    {
        Dictionary<string, string> slow = new(PlanSeason.Files) { ["lines.csv"] = "line,mode,rate_per_hour,hours_per_week,cost_per_hour\npack,fresh,50,40,1\n" };
        await using ServedShed shed = await ServedShed.Open(ledger => PlanSeason.Import(ledger, slow));
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        string sheets = Read(await visitor.Get($"/plan/{plan.Fact}/week/sheets?week=2026-08-31"));
        string[] first = [.. RunSheets().Split(sheets).Skip(1).Take(3)];
        Assert.Equal(["4 of 10 bins from yard", "4 of 10 bins from yard", "2 of 10 bins from yard"], first.Select(sheet => BinsOf().Match(sheet).Value));
        Assert.Equal(["400 of 1,000 lb", "400 of 1,000 lb", "200 of 1,000 lb"], first.Select(sheet => PoundsOf().Match(sheet).Value));
        Assert.Equal(["12 of 30", "12 of 30", "6 of 30"], first.Select(sheet => UnitsOf().Match(sheet).Groups[1].Value));
    }

    [Fact]
    public async Task A_sheet_is_a_page_for_each_line_and_shift_in_the_language_asked_for()
    {
        (ServedShed shed, PlanEntry plan) = await Planned();
        await using ServedShed disposed = shed;
        using Visitor visitor = shed.Visitor();
        Got english = await visitor.Get($"/plan/{plan.Fact}/week/sheets?week=2026-08-31&in=en"), both = await visitor.Get($"/plan/{plan.Fact}/week/sheets?week=2026-08-31&in=both");
        Assert.Contains("10 bins from yard", Read(english), StringComparison.Ordinal);
        Assert.Equal("30", UnitsOf().Match(Read(english)).Groups[1].Value);
        Assert.Contains("each person's own lock on the power", Read(english), StringComparison.Ordinal);
        Assert.Contains("10 bins de yard", Read(both), StringComparison.Ordinal);
        Assert.Equal(2, RunSheets().Count(both.Text));
    }

    [Fact]
    public async Task What_is_not_there_is_said_and_what_is_no_order_is_refused()
    {
        (ServedShed shed, PlanEntry plan) = await Planned();
        await using ServedShed disposed = shed;
        using Visitor visitor = shed.Visitor();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get($"/plan/{Guid.NewGuid()}/week?week=2026-08-31")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get($"/plan/{plan.Fact}/week/sheets?week=2027-08-31")).Status);
        Assert.Contains("No run is planned in this week.", Read(await visitor.Get("/plan/week?week=2026-09-14")), StringComparison.Ordinal);
        JsonObject Body(Guid of, string week, params string[] runs) => new()
        {
            ["plan"] = of.ToString(), ["week"] = week,
            ["runs"] = new JsonArray([.. runs.Select(run => (JsonNode)new JsonObject { ["run"] = run, ["line"] = "pack", ["start"] = "2026-08-31T06:00:00", ["end"] = "2026-08-31T07:00:00" })]),
        };
        foreach ((string rule, JsonObject body) in new[]
            {
                ("plan-unknown", Body(Guid.NewGuid(), "2026-08-31", "R1")), ("hold-week", Body(plan.Fact, "2026-09-01", "R1")), ("body-form", Body(plan.Fact, "2026-08-31")),
                ("body-form", Body(plan.Fact, "2026-08-31", "R1", "R1")),
            })
        {
            Assert.Equal(rule, Assert.Single(Assert.IsType<Appended.Refused>(shed.Ledger.Append([PlanSeason.Origin.Make(FactKinds.WeekOrdered, body)])).Refusals).Rule);
        }
    }

    [GeneratedRegex("data-order=\"([^\"]*)\"")]
    private static partial Regex OrderOf();

    [GeneratedRegex(@"\d+ of \d+ bins from yard")]
    private static partial Regex BinsOf();

    [GeneratedRegex(@"[\d,]+ of [\d,]+ lb")]
    private static partial Regex PoundsOf();

    [GeneratedRegex("<span class=\"n\">([^<]*)</span><span>M30</span>")]
    private static partial Regex UnitsOf();

    /// <summary>A scheduler whose first search does not end by itself, and its second when it is told to.</summary>
    private sealed class FirstWaits : IShiftScheduler, IDisposable
    {
        private readonly CpShiftScheduler real = new();
        private readonly SemaphoreSlim reached = new(0), released = new(0);
        private int searches;

        public SemaphoreSlim Reached => reached;

        public bool HoldNext { get; set; }

        public void Release() => released.Release();

        public ShiftAnswer Schedule(ShiftQuestion question, ShiftSearch search)
        {
            int turn = Interlocked.Increment(ref searches);
            reached.Release();
            if (turn == 1)
            {
                search.Cancel.WaitHandle.WaitOne();
            }
            else if (HoldNext)
            {
                HoldNext = false;
                released.Wait(TestContext.Current.CancellationToken);
            }

            return real.Schedule(question, search);
        }

        public void Dispose()
        {
            reached.Dispose();
            released.Dispose();
        }
    }

    [GeneratedRegex("<article class=\"sheet run-sheet\"")]
    private static partial Regex RunSheets();
}
