using System.Net;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Plan;
using Cloveshed.Web.Plan.Actual;
using NodaTime;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>
/// What was adopted against what ran: the plan of <see cref="PlanSeason"/> packs 1,000 lb of A and of B in the first week. 453.59237 kg are 1,000 lb
/// (NIST SP 811, 2008, appendix B.8).
/// </summary>
public sealed class ActualTests
{
    private static readonly LocalDate First = new(2026, 8, 31);

    private static async Task<(ServedShed Shed, PlanSight Sight)> Adopted()
    {
        ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "First plan"));
        shed.Ledger.Append([PlanSeason.Origin.PlanAdopted(plan)]);
        return (shed, new PlanSight(plan, shed.Ledger.Now().Season!, PlanDocument.Read(shed.Ledger.Document(plan.Document)!)));
    }

    private static DoneRun Ran(string lot, LocalDate day, double mass, MassUnit unit = MassUnit.Pound) => new(Guid.NewGuid(), new LotId(lot), new LineId("pack"), day, false, 1, mass, unit, null);

    [Fact]
    public async Task Pounds_are_held_lot_by_lot_and_one_lot_does_not_make_up_for_another()
    {
        (ServedShed shed, PlanSight sight) = await Adopted();
        await using ServedShed disposed = shed;
        DoneRun[] done = [Ran("A", First.PlusDays(1), 226.796185, MassUnit.Kilogram), Ran("A", First.PlusDays(6), 100), Ran("C", First.PlusDays(2), 300), Ran("B", First.PlusDays(7), 40)];
        IReadOnlyList<DoneWeek> weeks = PlannedAgainstDone.Of([new(First.PlusDays(-3), sight)], done, First, First.PlusWeeks(1), MassUnit.Pound);

        Assert.Equal([("A", 1000, 600), ("B", 1000, 0), ("C", 0, 300)], weeks[0].Rows.Select(row => (row.Lot.Text, Math.Round(row.Planned), Math.Round(row.Ran))).OrderBy(row => row.Text));
        Assert.Equal((2000, 900, 600), (Math.Round(weeks[0].Planned), Math.Round(weeks[0].Ran), Math.Round(weeks[0].AsPlanned)));
        Assert.Equal((1, 1), (weeks[0].NotRun, weeks[0].Unplanned));
        Assert.Equal([("B", 0, 40)], weeks[1].Rows.Select(row => (row.Lot.Text, Math.Round(row.Planned), Math.Round(row.Ran))));
    }

    [Fact]
    public async Task A_week_goes_by_the_plan_that_was_adopted_when_it_began()
    {
        (ServedShed shed, PlanSight one) = await Adopted();
        await using ServedShed disposed = shed;
        PlanSight other = new(one.Entry, one.Season, one.Answer);
        // Adopted in the middle of the second week, the other is in force from the third; before the first adoption the first one stands.
        Adopted[] adoptions = [new(First, one), new(First.PlusDays(9), other)];
        Assert.Same(one, PlannedAgainstDone.InForce(adoptions, First));
        Assert.Same(one, PlannedAgainstDone.InForce(adoptions, First.PlusWeeks(1)));
        Assert.Same(other, PlannedAgainstDone.InForce(adoptions, First.PlusWeeks(2)));
        Assert.Same(one, PlannedAgainstDone.InForce([new(First.PlusDays(4), one), new(First.PlusDays(9), other)], First));
        Assert.Null(PlannedAgainstDone.InForce(adoptions, First.PlusWeeks(3)));
    }

    [Fact]
    public async Task What_ran_is_told_put_right_and_refused_where_it_is_none()
    {
        (ServedShed shed, _) = await Adopted();
        await using ServedShed disposed = shed;
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/plan/actual");
        Assert.Contains("nothing told", page.Text, StringComparison.Ordinal);
        Got sent = await visitor.Send(page, "/plan/actual/done", ("day", "2026-09-01"), ("bins", "9"), ("mass", "880"));
        Assert.Contains("A on pack, 1 Sep: taken down.", WebUtility.HtmlDecode((await visitor.Get(sent.Header("Location").Split('#')[0])).Text).Replace('\u00A0', ' '), StringComparison.Ordinal);
        Fact fact = Assert.Single(shed.Ledger.Read(kind: FactKinds.RunDone));
        Assert.Equal((9.0, 880.0, "lb"), (fact.Body.GetProperty("bins").GetDouble(), fact.Body.GetProperty("mass").GetDouble(), fact.Body.GetProperty("unit").GetString()));

        Got told = await visitor.Get("/plan/actual");
        Assert.Contains(">less<", told.Text, StringComparison.Ordinal);
        Assert.Contains($"name=\"corrects\" value=\"{fact.Id}\"", told.Text, StringComparison.Ordinal);
        string form = told.Text[..told.Text.IndexOf($"name=\"corrects\" value=\"{fact.Id}\"", StringComparison.Ordinal)];
        Assert.Equal(HttpStatusCode.SeeOther, (await visitor.Send(new Got(told.Status, told.Text[form.LastIndexOf("<form", StringComparison.Ordinal)..], told.Answer), "/plan/actual/done", ("day", "2026-09-01"), ("bins", "10"), ("mass", "1000"))).Status);
        Assert.Equal(2, shed.Ledger.Read(kind: FactKinds.RunDone).Count());
        DoneRun now = Assert.Single(shed.Part<DoneShelf>().All(shed.Ledger.Head().Seq));
        Assert.Equal((10.0, 1000.0), (now.Bins, now.Mass));
        Assert.Contains(">as planned<", (await visitor.Get("/plan/actual")).Text, StringComparison.Ordinal);

        foreach ((string rule, NewFact wrong) in new[]
            {
                ("hold-unknown", PlanSeason.Origin.RunDone(new("no such"), new("pack"), First, false, 1, 1, MassUnit.Pound, null)), ("hold-unknown", PlanSeason.Origin.RunDone(new("A"), new("no such"), First, false, 1, 1, MassUnit.Pound, null)),
                ("body-form", PlanSeason.Origin.RunDone(new("A"), new("pack"), First, false, 1, -1, MassUnit.Pound, null)), ("corrects-unknown", PlanSeason.Origin.RunDone(new("A"), new("pack"), First, false, 1, 1, MassUnit.Pound, null, corrects: shed.Ledger.Read(kind: FactKinds.PlanAdopted).First().Id)),
            })
        {
            Assert.Equal(rule, Assert.Single(Assert.IsType<Appended.Refused>(shed.Ledger.Append([wrong])).Refusals).Rule);
        }
    }

    [Fact]
    public async Task Without_an_adopted_plan_the_page_says_so()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        using Visitor visitor = shed.Visitor();
        Assert.Contains("No plan has been adopted yet.", (await visitor.Get("/plan/actual")).Text, StringComparison.Ordinal);
    }
}
