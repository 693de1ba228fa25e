using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>Lines, people, runs and what comes out of a run.</summary>
internal sealed partial class DirectModel
{
    /// <summary>Rows that a run of a lot, line and week stands in: its mass against its set-up, its least mass, and what finishes one of the lot's rows.</summary>
    private sealed record RunRows(int Mass, int Least, Dictionary<int, int> Taken);

    /// <summary>Share of a row that a run must take at the least to finish it.</summary>
    private const double LeastTaken = 1e-5;

    private int[,] _hours = null!;
    private double[,] _most = null!;
    private readonly Dictionary<(int Lot, int Line, int Week), RunRows> _runs = [];
    private int[,] _sortedRuns = null!;
    private readonly Dictionary<(int Row, int Week), int> _finish = [];
    private readonly Dictionary<(int Row, int Week), int[]> _ending = [];
    private readonly Dictionary<(int Lot, int Week), (int[] Classes, int SortedOut)> _freshOut = [];

    private void Lines()
    {
        PlanningInstance at = _instance;
        _hours = new int[at.Lines.Length, at.Weeks];
        _most = new double[at.Lines.Length, at.Weeks];
        _sortedRuns = new int[at.Lines.Length, at.Weeks];
        int[] people = Rows(at.Weeks, t => _program.AtMost(at.People[t]));
        for (int i = 0; i < at.Lines.Length; i++)
            for (int t = 0; t < at.Weeks; t++)
            {
                InstanceLine line = at.Lines[i];
                int hours = _hours[i, t] = _program.AtMost(0);
                _program.Column(-line.Cost, line.Hours[t], false, (hours, -1), (people[t], line.Heads));
                _program.Column(-line.OvertimeCost, line.Overtime[t], false, (hours, -1), (people[t], line.Heads));
                double most = line.Hours[t] + line.Overtime[t];
                if (line.Heads > 0) most = Math.Min(most, at.People[t] / line.Heads);
                _most[i, t] = t < at.AsOf ? 0 : Math.Max(0, most - line.SetUp) * line.Rate;
                _sortedRuns[i, t] = -1;
                if (line.Mode != LineMode.Crack || _most[i, t] <= 0) continue;
                _sortedRuns[i, t] = _program.AtMost(0);
                _program.Column(0, 1, _mixed, (_sortedRuns[i, t], -_most[i, t]), (hours, line.SetUp));
            }
    }

    private void Lots()
    {
        for (int l = 0; l < _instance.Lots.Length; l++)
            for (int i = 0; i < _instance.Lines.Length; i++)
                for (int t = Math.Max(_instance.AsOf, _instance.Lots[l].ReadyWeek); t < _instance.Weeks; t++)
                    if (!_instance.Lots[l].Hold && _most[i, t] > 0 && !Barred(l, i, t)) Run(l, i, t);
        foreach (((int row, int week), int[] ends) in _ending)
            _program.Column(0, 1, true, [(FinishRow(row, week), _instance.Rows[row].Mass), .. ends.Select(end => (end, -1.0))]);
        // A pin is kept by what runs, and what of it is missed is paid for.
        foreach (PinnedRun pin in _instance.Wishes.Pinned)
        {
            int lot = Array.FindIndex(_instance.Lots, x => x.Id == pin.Lot), line = Array.FindIndex(_instance.Lines, x => x.Id == pin.Line);
            if (lot < 0) continue; // it is dug after the season
            double mass = Math.Min(_instance.Lots[lot].Mass, pin.Mass!.Value / _instance.MassScale);
            int row = _pins[(lot, line, pin.Week)] = _program.AtMost(-mass);
            _program.Column(-RunWishes.MissedPin, mass, false, (row, -1));
        }
    }

    private readonly Dictionary<(int Lot, int Line, int Week), int> _pins = [];

    private bool Barred(int lot, int line, int week) =>
        _instance.Wishes.Barred.Contains(new BarredRun(_instance.Lots[lot].Id, _instance.Lines[line].Id, week));

    private void Run(int lot, int i, int week)
    {
        InstanceLine line = _instance.Lines[i];
        InstanceRow[] rows = [.. _instance.Rows.Where(r => r.Lot == lot)];
        double most = Math.Min(rows.Sum(r => r.Mass), _most[i, week]);
        int mass = _program.AtMost(0);
        bool least = _mixed && line.MinRun > 0;
        int leastRow = least ? _program.AtMost(0) : -1;
        List<(int, double)> setUp = [(mass, -most), (_hours[i, week], line.SetUp)];
        var taken = new Dictionary<int, int>();
        if (least)
        {
            setUp.Add((leastRow, line.MinRun));
            foreach (int row in _instance.Lots[lot].Rows)
            {
                double whole = _instance.Rows[row].Mass;
                taken[row] = _program.AtMost(0);
                // The run may be small where it takes something of a row of which nothing is left afterwards, whatever else takes of it in that week.
                int ends = _program.AtMost(0);
                _ending[(row, week)] = [.. _ending.GetValueOrDefault((row, week), []), ends];
                _program.Column(0, 1, true, (leastRow, -line.MinRun), (taken[row], LeastTaken * whole), (ends, 1));
            }
        }
        _program.Column(0, 1, _mixed, [.. setUp]);
        _runs[(lot, i, week)] = new RunRows(mass, leastRow, taken);
    }

    private RunRows? RunRowOf(int lot, int line, int week) => _runs.GetValueOrDefault((lot, line, week));

    private int FinishRow(int row, int week) =>
        _finish.TryGetValue((row, week), out int known) ? known : _finish[(row, week)] = _program.AtMost(_instance.Rows[row].Mass);

    /// <summary>
    /// Fit bulbs fall into classes, of which any part is packed; all that is not packed, and what is sound but not fit, is sorted
    /// out and cracked in the same or the next two weeks, or lost.
    /// </summary>
    private IEnumerable<(int, double)> FreshOut(int lot, int week, double fit, double crack)
    {
        if (!_freshOut.TryGetValue((lot, week), out var rows))
        {
            InstanceLot l = _instance.Lots[lot];
            int sortedOut = _program.AtMost(0);
            int[] classes = [.. _instance.Season.Sizes.Select(_ => _program.AtMost(0))];
            for (int k = 0; k < classes.Length; k++)
                _program.Column(0, double.PositiveInfinity, false, (classes[k], 1), (sortedOut, 1), (_supply[k, l.Organic ? 1 : 0, week], -1));
            for (int t = week; t <= week + 2 && t < _instance.Weeks; t++)
                for (int j = 0; j < _instance.Lines.Length; j++)
                    if (_sortedRuns[j, t] >= 0)
                        _program.Column(0, double.PositiveInfinity, false,
                            [(sortedOut, 1), (_sortedRuns[j, t], 1), (_hours[j, t], 1 / _instance.Lines[j].Rate), .. Cloves(lot, t, _instance.KeptCrack)]);
            rows = _freshOut[(lot, week)] = (classes, sortedOut);
        }
        double[] shares = _instance.Lots[lot].Known.ClassShares;
        return rows.Classes.Select((row, k) => (row, -fit * shares[k])).Append((rows.SortedOut, -fit - crack));
    }

    private IEnumerable<(int, double)> Cloves(int lot, int week, double cloves)
    {
        InstanceLot l = _instance.Lots[lot];
        return l.Known.GradeShares.Select((share, g) => (_supply[_instance.Season.Sizes.Count + g, l.Organic ? 1 : 0, week], -cloves * share));
    }
}
