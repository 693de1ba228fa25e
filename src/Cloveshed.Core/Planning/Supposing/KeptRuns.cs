namespace Cloveshed.Core.Planning.Supposing;

/// <summary>
/// A small gain for each mass that is run as it was, so that of plans worth nearly the same the one is told in which least moves. Of a model that has many
/// plans of one worth any may come out of a solver, and most of what it moves it need not have moved.
/// </summary>
internal sealed class KeptRuns
{
    private readonly Master _master;
    private readonly int[] _columns;
    private double _gain;

    /// <param name="runs">Scaled mass of each run as it was, by lot, line and week; the master has a row for each, made with it (<see cref="Rows"/>).</param>
    internal KeptRuns(Master master, IReadOnlyDictionary<(LotId Lot, LineId Line, int Week), double> runs)
    {
        _master = master;
        PlanningInstance instance = master.Instance;
        _columns = [.. master.Rows.LeastRun.OrderBy(row => row.Value).Select(row => master.AddChoice(0, runs[(instance.Lots[row.Key.Lot].Id, instance.Lines[row.Key.Line].Id, row.Key.Week)], [(row.Value, 1)]))];
    }

    /// <summary>What a mass kept gains from here on, scaled money per scaled mass (the median price is 1): a season that moved a tenth of its mass would lose a tenth of it.</summary>
    internal void Count(double gain)
    {
        _gain = gain;
        _master.Program.SetColumnCosts(_columns, [.. _columns.Select(_ => gain)]);
    }

    /// <summary>What the master's value has too much.</summary>
    internal double Gains => _gain * _columns.Sum(k => _master.Values[k]);

    /// <summary>Rows that keep what is said to be kept of a run at no more than what is run, for a master that is to be made of the instance.</summary>
    internal static DecidedRuns Rows(PlanningInstance instance, IReadOnlyDictionary<(LotId Lot, LineId Line, int Week), double> runs)
    {
        Dictionary<LotId, int> lots = instance.Lots.Select((lot, k) => (lot.Id, k)).ToDictionary(one => one.Id, one => one.k);
        Dictionary<LineId, int> lines = instance.Lines.Select((line, k) => (line.Id, k)).ToDictionary(one => one.Id, one => one.k);
        return new DecidedRuns(new double[instance.Lines.Length, instance.Weeks], runs.Keys.Where(run => lots.ContainsKey(run.Lot)).ToDictionary(run => (lots[run.Lot], lines[run.Line], run.Week), _ => 0.0));
    }
}
