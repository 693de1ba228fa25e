using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// sorted.csv: no more than the fresh run leaves unpacked and sound; and the cracker takes sorted-out bulbs of a lot only in the
/// week in which they were sorted out or the next two, the oldest first.
/// </summary>
internal static class SortedRules
{
    private const int WeeksToWait = 2;

    public static void Check(SeasonData season, AnswerData answer, RunSums runs, Findings findings)
    {
        var packed = new Dictionary<(string, string), double>();
        foreach (MadeRow row in answer.Made)
        {
            packed[(row.Run, row.Lot)] = packed.GetValueOrDefault((row.Run, row.Lot)) + row.Mass;
        }

        var waiting = new Dictionary<string, SupplyFlow>();
        foreach (IGrouping<(string Run, string Lot), SortedRow> group in answer.Sorted.GroupBy(row => (row.Run, row.Lot)))
        {
            SortedRow row = group.First();
            if (runs.Find(row.Run, row.Lot) is not { Mode: "fresh" } run || group.Any(other => other.Week != run.Week))
            {
                findings.Add(RuleNames.SortedRun, row.Where, $"run {row.Run}, lot {row.Lot}, week {season.Calendar.Show(row.Week)}", "a fresh run of runs.csv with that lot in that week");
                continue;
            }

            double mass = group.Sum(other => other.Mass);
            double most = (run.Fresh * season.Kept("fresh")) + run.Crack - packed.GetValueOrDefault(group.Key);
            if (!Tolerance.AtMost(mass, most, run.MassIn))
            {
                findings.Over(RuleNames.SortedAmount, row.Where, "mass", mass, most);
            }

            Waiting(season, waiting, row.Lot).Add(run.Week, run.Week + WeeksToWait, mass);
        }

        foreach (RunRow row in answer.Runs.Where(row => row.Sorted))
        {
            Waiting(season, waiting, row.Lot).Take(row.Week, row.MassIn);
        }

        foreach ((string lot, SupplyFlow flow) in waiting)
        {
            if (flow.FirstShort() is (int week, double missing, _))
            {
                findings.Add(
                    RuleNames.SortedTime, $"runs.csv sorted-out bulbs of lot {lot}, week {season.Calendar.Show(week)}",
                    $"{Figures.Show(missing)} more than is waiting", "what was sorted out in that week or the two before, and not yet run");
            }
        }
    }

    private static SupplyFlow Waiting(SeasonData season, Dictionary<string, SupplyFlow> waiting, string lot) =>
        waiting.TryGetValue(lot, out SupplyFlow? flow) ? flow : waiting[lot] = new SupplyFlow(season.Weeks);
}
