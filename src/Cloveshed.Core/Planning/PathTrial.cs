namespace Cloveshed.Core.Planning;

/// <summary>
/// What a path table leaves in question: it allows a little too much, so some path may be worth more than the one that it points to. Every
/// half-built path that the table does not rule out is followed with its real mass, life and money, which are few.
/// </summary>
internal sealed class PathTrial
{
    /// <summary>Half-built paths in one week at most: beyond that the table's word is taken.</summary>
    private const int AtMost = 4000;

    /// <summary>What may be left in question, as a share of the row's worth.</summary>
    private const double Near = 1e-5;

    private readonly record struct Label(double Money, double Mass, double Life, int Node, bool Waiting);

    private readonly record struct Node(int Parent, int Spot, int Week);

    private readonly PlanningInstance _instance;
    private readonly Spot[] _spots;
    private readonly double[,][] _keep, _life;
    private readonly InstanceRow _row;
    private readonly int _index;
    private readonly PricedExit[][] _exits;
    private readonly Prices _prices;
    private readonly TableSheet _sheet;
    private readonly List<Node> _nodes = [];
    private PricedPath _best;
    private double _enough;

    private PathTrial(PlanningInstance instance, Spot[] spots, double[,][] keep, double[,][] life, int row, PricedExit[][] exits, Prices prices, TableSheet sheet, PricedPath known)
    {
        (_instance, _spots, _keep, _life, _index, _row, _exits, _prices, _sheet) = (instance, spots, keep, life, row, instance.Rows[row], exits, prices, sheet);
        _best = known;
        _enough = Enough(known.Value);
    }

    internal static (double Bound, PricedPath? Path) Of(PlanningInstance instance, Spot[] spots, double[,][] keep, double[,][] life, int row, PricedExit[][] exits, Prices prices, TableSheet sheet, double bound, PricedPath known)
    {
        var trial = new PathTrial(instance, spots, keep, life, row, exits, prices, sheet, known);
        bool all = trial.Run();
        return (all ? Math.Min(bound, trial._enough) : bound, trial._best);
    }

    private static double Enough(double value) => value + Near * Math.Max(1e-3, Math.Abs(value));

    /// <summary>False where there were too many.</summary>
    private bool Run()
    {
        List<Label>[] now = [.. _spots.Select(_ => new List<Label>())], next = [.. _spots.Select(_ => new List<Label>())];
        bool already = _instance.Places[_row.Place].SealedWeek is { } w && _row.Start > w;
        for (int s = 0; s < _spots.Length; s++)
            if (_spots[s].Place == _row.Place) now[s].Add(new Label(0, 1, _row.LifeAtStart, Add(-1, s, _row.Start), _spots[s].WaitsAWeek && !already));
        for (int t = _row.Start; t < _instance.Weeks; t++)
        {
            if (t >= _row.FirstMove) Move(now, t);
            int count = 0;
            for (int s = 0; s < _spots.Length; s++)
            {
                next[s].Clear();
                foreach (Label label in now[s])
                {
                    if (_spots[s].Leave[t] && !label.Waiting) Leave(label, s, t);
                    if (_spots[s].Stand[t]) Stand(label, s, t, next[s]);
                }
                count += next[s].Count;
            }
            if (count > AtMost) return false;
            (now, next) = (next, now);
        }
        for (int s = 0; s < _spots.Length; s++)
            foreach (Label label in now[s])
            {
                double value = label.Money + label.Mass * PathStates.SoundOf(_instance, _index, label.Life) * (_row.Fresh + _row.Crack) * _instance.EndPrice - _row.BinsPerMass * _prices.Out[s, _instance.Weeks];
                Note(value, label, new Exit(ExitKind.Stand, _instance.Weeks, -1, 0, -1, -1, -1));
            }
        return true;
    }

    private void Move(List<Label>[] now, int week)
    {
        int[] before = [.. now.Select(labels => labels.Count)];
        for (int from = 0; from < _spots.Length; from++)
        {
            if (!_spots[from].Leave[week]) continue;
            for (int k = 0; k < before[from]; k++)
            {
                Label label = now[from][k];
                if (label.Waiting) continue;
                for (int to = 0; to < _spots.Length; to++)
                {
                    if (_spots[to].Place == _spots[from].Place || !_spots[to].Enter[week]) continue;
                    double money = label.Money - _row.BinsPerMass * (_instance.Places[_spots[to].Place].MoveInCost + _prices.Out[from, week]);
                    if (money + label.Mass * _sheet.InWeek(week, to, label.Life) > _enough)
                        now[to].Add(new Label(money, label.Mass, label.Life, Add(label.Node, to, week), _spots[to].WaitsAWeek));
                }
            }
        }
    }

    private void Leave(Label label, int spot, int week)
    {
        double sound = PathStates.SoundOf(_instance, _index, label.Life), best = 0;
        int exit = -1;
        foreach ((double level, double slope, int e) in _sheet.Hulls[week].Lines)
            if (level + slope * sound is var v && v > best) (best, exit) = (v, e);
        Note(label.Money + label.Mass * best - _row.BinsPerMass * _prices.Out[spot, week], label, exit < 0 ? new Exit(ExitKind.Discard, week, -1, 0, -1, -1, -1) : _exits[week][exit].Exit);
    }

    private void Stand(Label label, int spot, int week, List<Label> next)
    {
        double money = label.Money - _row.BinsPerMass * _prices.Stand[spot, week], mass = label.Mass * _keep[_row.Table, spot][week], life = label.Life + _life[_row.Table, spot][week];
        if (money + mass * (_sheet.AtStart(week + 1, spot, life) + _sheet.Gap[week]) > _enough) next.Add(new Label(money, mass, life, label.Node, false));
    }

    private void Note(double value, Label label, Exit exit)
    {
        if (value <= _best.Value) return;
        var stays = new List<Stay>();
        for (int n = label.Node; n >= 0; n = _nodes[n].Parent) stays.Add(new Stay(_nodes[n].Spot, _nodes[n].Week));
        stays.Reverse();
        _best = new PricedPath(value, [.. stays], exit);
        _enough = Enough(value);
    }

    private int Add(int parent, int spot, int week)
    {
        _nodes.Add(new Node(parent, spot, week));
        return _nodes.Count - 1;
    }
}
