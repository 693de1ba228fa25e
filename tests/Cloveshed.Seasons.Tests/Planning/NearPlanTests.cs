using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// A plan in which little moves, held to its meaning: no plan of the changed model, with what it runs more than before taken off at the loss for each mass, is better. Checked against the plan that the model
/// comes to without it, whose moves are added up here.
/// </summary>
public sealed class NearPlanTests
{
    private const double Loss = 1e-3;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 40)];

    [Theory, MemberData(nameof(Seeds))]
    public void It_is_worth_as_much_less_its_moves_as_any_and_the_plan_stays_as_it_was(int seed)
    {
        if (SupposeTests.Drawn(seed) is not var (season, rooms)) return;
        PlanningInstance instance = SmallSeasons.Instance(season);
        using Master master = new RoomSearch(instance, new HighsSolver()).NewMaster(rooms, RunCharges.ForBound(instance), []);
        ColumnGeneration.Run(master, new GenerationLimits(1e-8, 1e6, 400, SearchDepth.Exact, () => 0, 1, default));
        Assert.Equal(LinearStatus.Optimal, master.Solve(LinearMethod.WarmSimplex, 60));
        (LinearBasis basis, MasterStand stand, double value, double slack) = (master.Program.Basis()!, master.Stand(), master.Value, 1e-7 * Math.Max(1, Math.Abs(master.Value)));
        Dictionary<int, double> taken = NearPlan.Taken(master);
        NearStand near = NearPlan.Stand(master, basis, Loss);
        Assert.True(near.IsOf(master, Loss));
        Assert.Equal(stand.Columns, master.ColumnCount);
        foreach (SeasonChange change in Changes(season))
        {
            var put = new ChangePutting(master);
            if (put.Put(change) is not null) continue;
            int columns = master.ColumnCount;
            Assert.Equal(LinearStatus.Optimal, master.Solve(LinearMethod.DualSimplex, 60));
            (double plain, double moved, LinearBasis here, double[] values) = (master.Value, Moved(master, taken), master.Program.Basis()!, master.Values);
            master.BackTo(stand, basis, columns);
            var plan = new NearPlan(master, taken, Loss);
            double[] told = [.. new[] { (near.With(columns), LinearMethod.DualSimplex), (plan.Split(here, values), LinearMethod.WarmSimplex) }.Select(from =>
            {
                master.Program.Restore(from.Item1);
                Assert.Equal(LinearStatus.Optimal, master.Solve(from.Item2, 60));
                return master.Value;
            })];
            Assert.All(told, one => Assert.InRange(one, plain - Loss * moved - slack, plain + slack));
            Assert.Equal(told[0], told[1], slack);
            plan.Undo();
            put.Undo();
            master.BackTo(stand, basis);
            Assert.Equal(LinearStatus.Optimal, master.Solve(LinearMethod.WarmSimplex, 60));
            Assert.Equal(value, master.Value, slack);
            master.BackTo(stand, basis);
        }
    }

    private static IEnumerable<SeasonChange> Changes(Season season)
    {
        foreach (OrderLine line in season.Orders.Take(3))
        {
            yield return new SeasonChange.OrderCancelled(line.Order, null);
            yield return new SeasonChange.OrderMoved(line.Order, line.Number, season.Settings.Monday(season.Settings.Weeks - 1));
        }
        foreach (Line line in season.Lines) yield return new SeasonChange.LineStopped(line.Id, season.Settings.AsOf, season.Settings.AsOf.PlusWeeks(1));
    }

    /// <summary>Scaled mass-in that ways to run take beyond what they took.</summary>
    private static double Moved(Master master, Dictionary<int, double> taken) =>
        Enumerable.Range(0, master.ColumnCount).Where(k => master.Columns[k].Path is { Exit.Line: >= 0 }).Sum(k => Math.Max(0, master.Values[k] - taken.GetValueOrDefault(k)) * master.Columns[k].Path!.MassRatio);
}
