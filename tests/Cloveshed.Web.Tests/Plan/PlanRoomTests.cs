using System.Net;
using Cloveshed.Check;
using Cloveshed.Core.Answers;
using Cloveshed.Ledger;
using Cloveshed.Solver.Highs;
using Cloveshed.Web.Plan.Jobs;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>Jobs: asked, made, stopped, refused, and taken up again. The worth is reckoned by hand in <see cref="PlanSeason"/>.</summary>
public sealed class PlanRoomTests
{
    [Fact]
    public async Task A_job_that_is_asked_ends_as_a_plan_that_holds_in_the_check()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        Guid job = PlanSeason.Ask(shed.Ledger);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, job);
        Assert.Equal(PlanSeason.Worth, plan.Value, 0.01);
        Assert.True(plan.Bound >= plan.Value);
        Assert.Equal(shed.Ledger.Read(kind: FactKinds.PlanAsked).Single().Body.GetProperty("basis").GetInt64(), plan.Basis);
        byte[] document = shed.Ledger.Document(plan.Document)!;
        PlanAnswer answer = PlanDocument.Read(document);
        Assert.Equal(plan.Value, answer.Summary.Value, 1e-6);
        CheckResult check = PlanTrial.Of(shed.Ledger.Now().Files(), PlanDocument.Files(document));
        Assert.True(check.Holds);
        Assert.Equal(PlanSeason.Worth, check.Value!.Value, 0.01);
    }

    [Fact]
    public async Task Jobs_are_done_one_at_a_time_in_the_order_in_which_they_were_asked()
    {
        Guid first = default, second = default;
        await using ServedShed shed = await ServedShed.Open(ledger =>
        {
            PlanSeason.Import(ledger);
            (first, second) = (PlanSeason.Ask(ledger, "first"), PlanSeason.Ask(ledger, "second"));
        });
        await PlanSeason.Made(shed.Ledger, second);
        Assert.Equal([first, second], shed.Ledger.Now().Plans.Select(plan => plan.Asked));
    }

    [Fact]
    public async Task A_job_that_is_stopped_keeps_the_best_plan_so_far_and_says_that_it_was_stopped()
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid job = PlanSeason.Ask(shed.Ledger);
        await solver.Reached.WaitAsync(TestContext.Current.CancellationToken);
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get($"/plan/jobs/{job}");
        Got stopped = await visitor.Send(page, $"/plan/jobs/{job}/stop");
        Assert.Equal((HttpStatusCode.SeeOther, $"/plan/jobs/{job}"), (stopped.Status, stopped.Header("Location")));
        Assert.Contains("It is ending with what it has.", (await visitor.Get($"/plan/jobs/{job}")).Text, StringComparison.Ordinal);
        solver.Open();
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, job);
        Assert.Equal("cancelled", plan.Status);
        Assert.Contains("It was stopped by hand.", (await visitor.Get($"/plan/jobs/{job}")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_that_is_stopped_before_it_began_ends_without_a_plan_and_does_not_wait_for_its_turn()
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid first = PlanSeason.Ask(shed.Ledger, "first"), second = PlanSeason.Ask(shed.Ledger, "second");
        await solver.Reached.WaitAsync(TestContext.Current.CancellationToken);
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get($"/plan/jobs/{second}"), $"/plan/jobs/{second}/stop");
        solver.Open();
        ShedState state = await PlanSeason.Ended(shed.Ledger, second);
        Assert.True(Assert.Single(state.Ended, end => end.Asked == second).Stopped);
        await PlanSeason.Made(shed.Ledger, first);
        Assert.Contains("was stopped", (await visitor.Get($"/plan/jobs/{second}")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_planner_that_fails_is_told_and_the_job_does_not_come_up_again()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: new BrokenSolver());
        Guid job = PlanSeason.Ask(shed.Ledger);
        PlanEnd end = Assert.Single((await PlanSeason.Ended(shed.Ledger, job)).Ended);
        Assert.False(end.Stopped);
        Assert.Contains("The solver's library is not there.", end.Why, StringComparison.Ordinal);
        using Visitor visitor = shed.Visitor();
        Assert.Contains("The solver&#x27;s library is not there.", (await visitor.Get($"/plan/jobs/{job}")).Text, StringComparison.Ordinal);
        Assert.Empty(shed.Ledger.Now().Plans);
    }

    /// <summary>An answer with a run made longer by hand: more goes in than the lot has.</summary>
    [Fact]
    public async Task A_plan_that_the_check_does_not_let_pass_is_kept_as_refused_with_its_breaches()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry good = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        ShedState state = shed.Ledger.Now();
        PlanAnswer answer = PlanDocument.Read(shed.Ledger.Document(good.Document)!);
        PlanAnswer spoilt = answer with { Runs = [answer.Runs[0] with { MassIn = answer.Runs[0].MassIn * 1.5 }, .. answer.Runs.Skip(1)] };
        PlanDocument document = PlanDocument.Of(spoilt, state.Season!);
        PlanJob job = new(good.Asked, "Trial", 1, 0, null, good.Basis, "en", default);
        PlanMeans means = new(new HighsSolver(), "test", () => 0, 1, shed.Clock);
        PlanOutcome outcome = PlanMaking.Judged(job, document, spoilt.Summary, PlanTrial.Of(state.Files(), PlanDocument.Files(document.Bytes)), means);
        Assert.Equal(("refused", FactKinds.PlanRefused), (outcome.Outcome, outcome.Fact.Kind));
        Assert.NotEmpty(outcome.Fact.Body.GetProperty("breaches").EnumerateArray());
        Assert.Equal(document.Sha256, Assert.Single(outcome.Documents).Key);
    }

    [Fact]
    public async Task A_stop_of_the_program_leaves_the_job_asked_and_the_next_process_makes_the_plan()
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid job = PlanSeason.Ask(shed.Ledger);
        await solver.Reached.WaitAsync(TestContext.Current.CancellationToken);
        Task restarting = shed.Restart();
        await Task.Delay(200, TestContext.Current.CancellationToken);
        solver.Open();
        await restarting;
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, job);
        Assert.Equal(PlanSeason.Worth, plan.Value, 0.01);
        Assert.NotEqual("cancelled", plan.Status);
        Assert.Empty(shed.Ledger.Read(kind: FactKinds.PlanStopped));
        Assert.True(shed.Ledger.Verify().Ok);
    }

    [Fact]
    public async Task A_job_plans_from_the_facts_up_to_its_basis_and_not_from_what_came_after()
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid job = PlanSeason.Ask(shed.Ledger);
        SeasonRow order = shed.Ledger.Now().Rows!.Of("orders.csv").First();
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([PlanSeason.Origin.RowDropped(order)]));
        solver.Open();
        Assert.Equal(PlanSeason.Worth, (await PlanSeason.Made(shed.Ledger, job)).Value, 0.01);
    }
}
