using NodaTime;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>What each run takes in a solved master, by lot, line and week; scaled mass. Parts of a lot count as the lot.</summary>
internal sealed class RunMasses
{
    /// <summary>A shift under this share of the larger of the two is the model's way of sharing, no change that anyone would see.</summary>
    private const double Seen = 0.02;

    private readonly PlanningInstance _instance;
    private readonly Dictionary<(LotId Lot, LineId Line, int Week), double> _masses = [];

    internal RunMasses(Master master, IReadOnlyDictionary<LotId, LotId> parts)
    {
        _instance = master.Instance;
        for (int k = 0; k < master.ColumnCount; k++)
        {
            if (master.Columns[k].Path is not { Exit.Line: >= 0 } path || master.Values[k] <= 1e-9) continue;
            LotId lot = _instance.Lots[_instance.Rows[path.Row].Lot].Id;
            (LotId, LineId, int) run = (parts.GetValueOrDefault(lot, lot), _instance.Lines[path.Exit.Line].Id, path.Exit.Week);
            _masses[run] = _masses.GetValueOrDefault(run) + master.Values[k] * path.MassRatio;
        }
    }

    /// <summary>What another outcome runs otherwise, largest first.</summary>
    internal IReadOnlyList<RunShift> To(RunMasses after)
    {
        double scale = _instance.MassScale;
        return [.. _masses.Keys.Union(after._masses.Keys)
            .Select(run => (Run: run, Before: _masses.GetValueOrDefault(run), After: after._masses.GetValueOrDefault(run)))
            .Where(one => Math.Abs(one.After - one.Before) > Math.Max(1e-4, Seen * Math.Max(one.Before, one.After)))
            .OrderByDescending(one => Math.Abs(one.After - one.Before)).ThenBy(one => one.Run.Week).ThenBy(one => one.Run.Lot.Text, StringComparer.Ordinal).ThenBy(one => one.Run.Line.Text, StringComparer.Ordinal)
            .Select(one => new RunShift(one.Run.Lot, one.Run.Line, Monday(one.Run.Week), one.Before * scale, one.After * scale))];
    }

    private LocalDate Monday(int week) => _instance.Season.Settings.Monday(week);
}
