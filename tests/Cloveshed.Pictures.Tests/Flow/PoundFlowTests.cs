using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Flow;
using Cloveshed.Pictures.Reading;
using CsCheck;

namespace Cloveshed.Pictures.Tests.Flow;

public class PoundFlowTests
{
    private static PoundFlowFacts Flow(PlanAnswer answer, MassUnit show = MassUnit.Pound) =>
        PoundFlowFacts.From(HandSeason.Make(), answer, new Reader(HandSeason.Make().Settings, new ReportOptions(Language.En, show)));

    private static void Balances(PoundFlowFacts flow)
    {
        foreach (FlowNode node in flow.Nodes)
        {
            long into = flow.Links.Where(l => l.To == node.Id).Sum(l => l.Whole);
            long outOf = flow.Links.Where(l => l.From == node.Id).Sum(l => l.Whole);
            Assert.Equal(node.Whole, node.Stage == FlowStage.Source ? outOf : into);
            Assert.True(node.Stage == FlowStage.Source || outOf == 0 || outOf == into, $"{node.Id}: {into} in, {outOf} out");
        }
        Assert.Equal(flow.WholeTotal, flow.Ends.Sum(e => e.Whole));
    }

    [Theory]
    [InlineData(MassUnit.Pound, 2_909_000)]
    [InlineData(MassUnit.Kilogram, 1_319_500)]
    public void What_came_in_goes_out_to_the_last_unit(MassUnit show, long total)
    {
        PoundFlowFacts flow = Flow(HandAnswer.Make(), show);
        Balances(flow);
        // The hand season's lots weigh 2,909,000 lb, 1,319,500 kg at 0.45359237; stood and dug are rounded each.
        Assert.InRange(flow.WholeTotal, total - 1, total + 1);
        Assert.DoesNotContain(flow.Nodes, n => n.Stage == FlowStage.Unexplained);
        Assert.Equal(0, flow.Unexplained, 3);
    }

    [Fact]
    public void A_row_that_is_missing_shows_as_unexplained()
    {
        PlanAnswer answer = HandAnswer.Make();
        MadeRow lost = answer.Made.First(m => m.Product.Text == "LARGE 30");
        PoundFlowFacts flow = Flow(answer with { Made = [.. answer.Made.Where(m => m != lost)] });
        Balances(flow);
        Assert.Equal(lost.Mass, flow.Unexplained, 3);
        Assert.Equal((long)Math.Round(lost.Mass), flow.Nodes.Single(n => n.Stage == FlowStage.Unexplained).Whole, 1.0);
    }

    [Fact]
    public void Any_set_of_rows_balances_at_every_node() =>
        Gen.Select(Gen.Bool.Array[40], Gen.Bool.Array[10], Gen.Double[0.2, 1.7]).Sample(
            (made, sorted, scale) =>
            {
                PlanAnswer answer = HandAnswer.Make();
                Balances(Flow(answer with
                {
                    Made = [.. answer.Made.Where((_, i) => made[i % 40]).Select(m => m with { Mass = m.Mass * scale })],
                    Sorted = [.. answer.Sorted.Where((_, i) => sorted[i % 10])],
                }));
            },
            iter: 200);

    /// <summary>By hand from the rules of the season files: of 144,000 lb run fresh, 0.78 makes grade, 0.86 of that is kept, 0.20 of that is jumbo.</summary>
    [Fact]
    public void A_run_gives_what_the_rules_say()
    {
        PlanAnswer all = HandAnswer.Make();
        PlanAnswer one = all with
        {
            Runs = [.. all.Runs.Where(r => r.Run == "R1")], Made = [.. all.Made.Where(m => m.Run == "R1")], Sorted = [.. all.Sorted.Where(s => s.Run == "R1")], AsIs = [], Keeps = [], Seed = [],
            Paths = [.. all.Paths.Where(p => p.Lot.Text == "Reedbank 1")],
        };
        PoundFlowFacts flow = Flow(one);
        // The other 96,000 lb of the lot have no row: they are unexplained, not lost in silence.
        Assert.Equal(240_000, flow.WholeTotal);
        Assert.Equal(96_000, flow.Nodes.Single(n => n.Stage == FlowStage.Unexplained).Whole);
        Assert.Equal(Math.Round(144_000 * .78 * .86 * .20), flow.Nodes.Single(n => n.Id == "packed0").Whole, 1.0);
        Assert.Equal(Math.Round(144_000 * .78 * .14), flow.Nodes.Single(n => n.Id == "skins").Whole, 1.0);
        Assert.Equal(Math.Round(144_000 * (1 - .78 - .15)), flow.Nodes.Single(n => n.Id == "waste").Whole, 1.0);
        Assert.Equal(Math.Round(144_000 * (.78 * .86 * .08 + .15)), flow.Nodes.Single(n => n.Id == "sorted").Whole, 1.0);
    }
}
