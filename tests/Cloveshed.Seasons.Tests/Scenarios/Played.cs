using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Planning;

namespace Cloveshed.Seasons.Tests.Scenarios;

/// <summary>A season planned by the shipped planner, ready to be played.</summary>
internal sealed class Played
{
    private Played(Season season, PlanAnswer plan)
    {
        Plan = plan;
        Instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        Shed = new ReplayShed(Instance, PlanPolicy.Of("plan", Instance, plan));
    }

    public PlanAnswer Plan { get; }
    public PlanningInstance Instance { get; }
    public ReplayShed Shed { get; }

    public static Played Of(Season season) => new(season, new EnginePlanner().Plan(season, new PlanEffort(3, 1e-3)));

    public Scenario Draw(ScenarioAssumptions assumed, int number, long seed = 3) => new ScenarioDraw(Instance, LotDefaults.Default, assumed, seed).Draw(number);

    /// <summary>
    /// What the plan pays to move bins in the week in which they leave by a run or a sale all the same: a replay runs them from where they
    /// stand. From the plan's rows alone, in the season's currency.
    /// </summary>
    public double MovedInVain()
    {
        Season season = Instance.Season;
        double vain = 0;
        foreach (IGrouping<string, PathWeek> path in Plan.Paths.GroupBy(p => p.Path))
        {
            PathWeek[] weeks = [.. path.OrderBy(p => p.Week)];
            LotRow row = season.Lots.First(r => r.Lot == weeks[0].Lot && r.Place == weeks[0].FromPlace);
            for (int k = 0; k < weeks.Length && weeks[k].Week < season.Settings.Weeks; k++)
            {
                PlaceId from = k == 0 ? row.Place : weeks[k - 1].Place;
                if (weeks[k].Place == from) continue;
                double left = Plan.Runs.Where(r => r.Path == path.Key && r.Week == weeks[k].Week).Sum(r => r.MassAtStart) + Plan.AsIs.Where(a => a.Path == path.Key && a.Week == weeks[k].Week).Sum(a => a.MassAtStart);
                vain += left * row.Bins / row.Net * (double)season.Places.First(p => p.Id == weeks[k].Place).MoveInCost;
            }
        }
        return vain;
    }
}
