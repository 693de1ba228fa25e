using Cloveshed.Core.Planning;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>Places: what they hold and cost, and the one way in which each is used.</summary>
internal sealed partial class DirectModel
{
    private int[,] _standing = null!;

    /// <summary>[place][way][week]: what stands in a room that is used in that way; empty where a place has one way only.</summary>
    private int[][][] _standingOfPlan = [];

    /// <summary>[row][place][way]: mass of a row that ever is in a room used in that way.</summary>
    private int[][][] _massOfPlan = [];

    private void Places()
    {
        PlanningInstance at = _instance;
        _standing = new int[at.Places.Length, at.Weeks];
        for (int p = 0; p < at.Places.Length; p++)
        {
            InstancePlace place = at.Places[p];
            for (int t = at.AsOf; t < at.Weeks; t++)
            {
                int standing = _standing[p, t] = _program.AtMost(0), holds = _program.AtMost(0);
                _program.Column(-place.BinWeekCost, double.PositiveInfinity, false, (standing, -1), (holds, 1));
                // A bin more than none, and the place is in use: its weekly cost is paid whole.
                _program.Column(-place.WeekCost, 1, _mixed && place.WeekCost > 0, (holds, -place.Capacity));
            }
        }
        _standingOfPlan = [.. _plans.Select(plans => plans.Length == 1 ? [] : plans.Select(_ => Rows(at.Weeks, _ => _program.AtMost(0))).ToArray())];
        _massOfPlan = [.. at.Rows.Select(_ => _plans.Select(plans => plans.Length == 1 ? [] : Rows(plans.Length, _ => _program.AtMost(0))).ToArray())];
        for (int p = 0; p < at.Places.Length; p++)
        {
            if (_plans[p].Length == 1) continue;
            int one = _program.Equal(1);
            for (int k = 0; k < _plans[p].Length; k++)
                _program.Column(0, 1, _mixed,
                    [
                        (one, 1), .. _standingOfPlan[p][k].Select(row => (row, -at.Places[p].Capacity)),
                        .. at.Rows.Select((r, row) => (_massOfPlan[row][p][k], -r.Mass)),
                    ]);
        }
    }

    /// <summary>Where a path stands at the end of each week, and the ways in which it uses places.</summary>
    private List<(int, double)> Standing(Way way)
    {
        InstanceRow r = _instance.Rows[way.Row];
        var entries = new List<(int, double)>();
        for (int p = 0; p < _plans.Length; p++)
            if (way.Plans[p] >= 0 && _plans[p].Length > 1) entries.Add((_massOfPlan[way.Row][p][way.Plans[p]], 1));
        for (int t = r.Start; t < way.Week; t++)
        {
            int p = way.Stood[t - r.Start];
            entries.Add((_standing[p, t], r.BinsPerMass));
            if (_plans[p].Length > 1) entries.Add((_standingOfPlan[p][way.Plans[p]][t], r.BinsPerMass));
            if (_finish.TryGetValue((way.Row, t), out int finish)) entries.Add((finish, 1));
        }
        return entries;
    }
}
