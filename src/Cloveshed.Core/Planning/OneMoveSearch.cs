namespace Cloveshed.Core.Planning;

/// <summary>
/// The best paths of a row at given prices with at most one move: every place, every week to move in, every week to leave in. What the
/// rounds of column generation live on; paths with more moves, and the bound, come from the table.
/// </summary>
internal sealed class OneMoveSearch
{
    private const double LeastForGrid = 0.05;
    private readonly PlanningInstance _instance;
    private readonly Spot[] _spots;
    private readonly double[,][] _keep;
    private readonly double[,][] _life;

    internal OneMoveSearch(PlanningInstance instance, Spot[] spots)
    {
        _instance = instance;
        _spots = spots;
        (_keep, _life) = PathStates.Weekly(instance, spots);
    }

    /// <summary>The best way found for each week to leave in.</summary>
    private sealed class Found(int weeks)
    {
        internal readonly double[] Value = Filled(weeks + 1);
        internal readonly int[] Home = new int[weeks + 1], Spot = new int[weeks + 1], Enter = new int[weeks + 1], Exit = new int[weeks + 1];

        private static double[] Filled(int count)
        {
            double[] values = new double[count];
            Array.Fill(values, double.NegativeInfinity);
            return values;
        }
    }

    private readonly record struct Walk(int Home, int Spot, int Enter, double Mass, double Life, double Money, bool Waiting);

    /// <param name="exits">[week] of the row's lot.</param>
    /// <param name="worthMoreThan">Paths of at most this value are not returned.</param>
    internal RowSearch Best(int row, PricedExit[][] exits, Prices prices, StandingCharges charges, int pathsAtMost, double worthMoreThan)
    {
        InstanceRow r = _instance.Rows[row];
        int weeks = _instance.Weeks;
        var found = new Found(weeks);
        var hulls = new ExitHull[weeks];
        for (int t = r.Start; t < weeks; t++) hulls[t] = ExitHull.Of(r, exits[t]);
        bool already = _instance.Places[r.Place].SealedWeek is { } w && r.Start > w;
        for (int h = 0; h < _spots.Length; h++)
        {
            if (_spots[h].Place != r.Place) continue;
            bool waits = _spots[h].WaitsAWeek && !already;
            Leave(r, new Walk(h, -1, r.Start, 1, r.LifeAtStart, 0, waits), h, hulls, prices, charges, found);
            double mass = 1, life = r.LifeAtStart;
            double[] stood = charges.Of(h);
            for (int t = r.Start; t < weeks; t++)
            {
                if (t >= r.FirstMove && _spots[h].Leave[t] && !(t == r.Start && waits))
                    for (int s = 0; s < _spots.Length; s++)
                    {
                        if (_spots[s].Place == r.Place || !_spots[s].Enter[t]) continue;
                        double money = -r.BinsPerMass * (stood[t] - stood[r.Start] + _instance.Places[_spots[s].Place].MoveInCost + prices.Out[h, t]);
                        Leave(r, new Walk(h, s, t, mass, life, money, _spots[s].WaitsAWeek), s, hulls, prices, charges, found);
                    }
                if (!_spots[h].Stand[t]) break;
                mass *= _keep[r.Table, h][t];
                life += _life[r.Table, h][t];
            }
        }
        return Told(r, found, exits, pathsAtMost, worthMoreThan);
    }

    private void Leave(InstanceRow r, Walk walk, int spot, ExitHull[] hulls, Prices prices, StandingCharges charges, Found found)
    {
        Spot s = _spots[spot];
        double[] keep = _keep[r.Table, spot], used = _life[r.Table, spot], stood = charges.Of(spot);
        double mass = walk.Mass, life = walk.Life, perSound = 1 / r.SoundAtStart;
        int weeks = _instance.Weeks, t = walk.Enter;
        for (; t < weeks; t++)
        {
            if (s.Leave[t] && !(walk.Waiting && t == walk.Enter))
            {
                double sound = Sound(r, life) * perSound, best = 0;
                int exit = -1;
                foreach ((double level, double slope, int e) in hulls[t].Lines)
                    if (level + slope * sound is var v && v > best) (best, exit) = (v, e);
                double value = walk.Money + mass * best - r.BinsPerMass * (stood[t] - stood[walk.Enter] + prices.Out[spot, t]);
                if (value > found.Value[t]) Note(found, t, value, walk, exit);
            }
            if (!s.Stand[t]) return;
            mass *= keep[t];
            life += used[t];
        }
        double end = walk.Money + mass * Sound(r, life) * perSound * _instance.EndPrice * (r.Fresh + r.Crack) - r.BinsPerMass * (stood[weeks] - stood[walk.Enter] + prices.Out[spot, weeks]);
        if (end > found.Value[weeks]) Note(found, weeks, end, walk, -1);
    }

    private static void Note(Found found, int week, double value, Walk walk, int exit) =>
        (found.Value[week], found.Home[week], found.Spot[week], found.Enter[week], found.Exit[week]) = (value, walk.Home, walk.Spot, walk.Enter, exit);

    private double Sound(InstanceRow r, double life)
    {
        // What was nearly all lost at the start is a share of nearly nothing: the grid is too coarse for that.
        if (r.SoundAtStart < LeastForGrid) return _instance.SoundShare(life);
        return _instance.SoundNear[life];
    }

    private RowSearch Told(InstanceRow r, Found found, PricedExit[][] exits, int pathsAtMost, double worthMoreThan)
    {
        int weeks = _instance.Weeks;
        double best = found.Value.Max();
        var paths = new List<PricedPath>();
        if (pathsAtMost > 0)
            foreach (int t in Enumerable.Range(0, weeks + 1).Where(t => found.Value[t] > worthMoreThan).OrderByDescending(t => found.Value[t]).Take(pathsAtMost))
            {
                Stay[] stays = found.Spot[t] < 0 ? [new Stay(found.Home[t], r.Start)] : [new Stay(found.Home[t], r.Start), new Stay(found.Spot[t], found.Enter[t])];
                Exit exit = t == weeks ? new Exit(ExitKind.Stand, weeks, -1, 0, -1, -1, -1)
                    : found.Exit[t] < 0 ? new Exit(ExitKind.Discard, t, -1, 0, -1, -1, -1) : exits[t][found.Exit[t]].Exit;
                paths.Add(new PricedPath(found.Value[t], stays, exit));
            }
        return new RowSearch(best, paths);
    }
}
