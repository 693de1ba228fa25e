namespace Cloveshed.Core.Planning;

/// <summary>
/// The best that any path of a row can be worth, over every sequence of places, by one backward table: week by week, spot by
/// spot, over a grid of life used. Never too low, and too high by little:
/// - Value is counted per mass as weighed, which makes it a function of life used alone. What is charged per mass at the start
///   (standing, moving) is divided by the most that could be left by then, so it is charged at its least.
/// - Between grid points the value is interpolated. It is a maximum of exits, each a multiple of the sound share S, so its
///   curvature is bounded below by that of S; half the bound times the largest interpolation gap of a parabola, K h^2 / 8, is added.
/// </summary>
public sealed class PathTable
{
    private const int Points = 320;
    private const double Step = 0.006;
    private readonly PlanningInstance _instance;
    private readonly Spot[] _spots;
    private readonly double[,][] _keep;
    private readonly double[,][] _life;
    private readonly double[] _bendsDown;

    public PathTable(PlanningInstance instance, Spot[] spots)
    {
        _instance = instance;
        _spots = spots;
        (_keep, _life) = PathStates.Weekly(instance, spots);
        _bendsDown = BendsDown(instance.SoundShare);
    }

    private const double Narrow = 0.002;

    /// <summary>
    /// How far S bends down at most from a life used of [k] x Narrow on (its second derivative, as a positive number), with a margin
    /// of a tenth: lots that are past their life bend far less than fresh ones, and what they keep of their share is divided by little.
    /// </summary>
    private static double[] BendsDown(Func<double, double> sound)
    {
        double[] most = new double[(int)(4 / Narrow)];
        for (int k = most.Length - 2; k >= 0; k--)
        {
            double u = (k + 1) * Narrow;
            most[k] = Math.Max(most[k + 1], -1.1 * (sound(u + Narrow) - 2 * sound(u) + sound(u - Narrow)) / (Narrow * Narrow));
        }
        return most;
    }

    /// <summary>The bound of a row at the prices, and the path that the table points to with its real value (null where there is none).</summary>
    public (double Bound, PricedPath? Path) Best(int row, PricedExit[][] exits, Prices prices)
    {
        InstanceRow r = _instance.Rows[row];
        int weeks = _instance.Weeks, spots = _spots.Length;
        double[,] most = MostLeft(r, out double[,] stayed);
        double[] sound = new double[Points];
        for (int i = 0; i < Points; i++) sound[i] = PathStates.SoundOf(_instance, row, r.LifeAtStart + i * Step);
        double[] gap = Gaps(r, exits);
        // [week][spot]: in the week, before and after the choice of moving at its start; null where nothing can be.
        double[]?[][] inWeek = new double[weeks + 1][][], atStart = new double[weeks + 1][][];
        atStart[weeks] = new double[spots][];
        for (int s = 0; s < spots; s++)
        {
            if (stayed[weeks, s] <= 0) continue;
            double end = _instance.EndPrice * (r.Fresh + r.Crack), outPrice = r.BinsPerMass * prices.Out[s, weeks] / stayed[weeks, s];
            double[] v = atStart[weeks][s] = new double[Points];
            for (int i = 0; i < Points; i++) v[i] = end * sound[i] - outPrice;
        }
        var moved = new Moved();
        for (int t = weeks - 1; t >= r.Start; t--)
        {
            inWeek[t] = new double[spots][];
            atStart[t] = new double[spots][];
            for (int s = 0; s < spots; s++)
                if (most[t, s] > 0) inWeek[t][s] = InWeek(r, t, s, exits[t], prices, most[t, s], atStart[t + 1][s], sound, gap, mayLeave: true);
            if (t == r.Start) break;
            bool moves = t >= r.FirstMove && BestMove(r, t, prices, inWeek[t], atStart[t + 1], exits[t], most, stayed, sound, gap, moved);
            for (int s = 0; s < spots; s++)
            {
                if (stayed[t, s] <= 0) continue;
                double[] v = atStart[t][s] = inWeek[t][s] is { } own ? (double[])own.Clone() : Nothing();
                if (!moves || !_spots[s].Leave[t]) continue;
                double outPrice = r.BinsPerMass * prices.Out[s, t] / stayed[t, s];
                for (int i = 0; i < Points; i++) v[i] = Math.Max(v[i], moved.From(_spots[s].Place, i) - outPrice);
            }
        }
        return Start(row, r, exits, prices, inWeek, atStart, most, stayed, sound, gap);
    }

    /// <summary>[week] What interpolation may miss of what comes after the week: what bends it is the steepest of the ways out that are left then.</summary>
    private double[] Gaps(InstanceRow r, PricedExit[][] exits)
    {
        double bendsDown = _bendsDown[Math.Min(_bendsDown.Length - 1, (int)(r.LifeAtStart / Narrow))];
        double[] gap = new double[_instance.Weeks];
        double bend = _instance.EndPrice * (r.Fresh + r.Crack);
        for (int t = _instance.Weeks - 1; t >= r.Start; t--)
        {
            gap[t] = bend * bendsDown / r.SoundAtStart * Step * Step / 8;
            foreach (PricedExit x in exits[t]) bend = Math.Max(bend, r.Fresh * x.PerFresh + r.Crack * x.PerCrack);
        }
        return gap;
    }

    private static double[] Nothing()
    {
        double[] v = new double[Points];
        Array.Fill(v, double.NegativeInfinity);
        return v;
    }

    /// <summary>Leaving in the week, or standing at its end and going on.</summary>
    private double[] InWeek(InstanceRow r, int t, int s, PricedExit[] exits, Prices prices, double mostLeft, double[]? next, double[] sound, double[] gap, bool mayLeave)
    {
        double[] v = Nothing();
        if (mayLeave && _spots[s].Leave[t])
        {
            double outPrice = r.BinsPerMass * prices.Out[s, t] / mostLeft;
            for (int i = 0; i < Points; i++) v[i] = -outPrice;
            foreach (PricedExit x in exits)
            {
                double slope = r.Fresh * x.PerFresh + r.Crack * x.PerCrack, level = x.PerMass - outPrice;
                for (int i = 0; i < Points; i++) v[i] = Math.Max(v[i], level + slope * sound[i]);
            }
        }
        if (!_spots[s].Stand[t] || next is null) return v;
        double stand = r.BinsPerMass * prices.Stand[s, t] / mostLeft;
        double keep = _keep[r.Table, s][t], shift = _life[r.Table, s][t] / Step;
        int whole = (int)Math.Floor(shift);
        double part = shift - whole;
        for (int i = 0; i < Points; i++)
        {
            double a = next[Math.Min(i + whole, Points - 1)], b = next[Math.Min(i + whole + 1, Points - 1)];
            double onward = keep * ((1 - part) * a + part * b + gap[t]) - stand;
            if (onward > v[i]) v[i] = onward;
        }
        return v;
    }

    /// <summary>The best place to move to, and the best of the other places for what stands there already.</summary>
    private sealed class Moved
    {
        private readonly double[] _best = Nothing(), _second = Nothing();
        private readonly int[] _place = new int[Points];

        internal void Clear()
        {
            Array.Fill(_best, double.NegativeInfinity);
            Array.Fill(_second, double.NegativeInfinity);
        }

        internal void Offer(int place, double[] there, double cost)
        {
            for (int i = 0; i < Points; i++)
            {
                double value = there[i] - cost;
                if (value > _best[i])
                {
                    if (_place[i] != place) _second[i] = _best[i];
                    (_best[i], _place[i]) = (value, place);
                }
                else if (value > _second[i] && _place[i] != place)
                {
                    _second[i] = value;
                }
            }
        }

        internal double From(int place, int point) => _place[point] == place ? _second[point] : _best[point];
    }

    /// <summary>The best place to move to at a week's start, the move paid; false where there is none.</summary>
    private bool BestMove(InstanceRow r, int t, Prices prices, double[]?[] inWeek, double[]?[] after, PricedExit[] exits, double[,] most, double[,] stayed, double[] sound, double[] gap, Moved moved)
    {
        double left = 0;
        for (int s = 0; s < _spots.Length; s++) left = Math.Max(left, stayed[t, s]);
        moved.Clear();
        if (left <= 0) return false;
        bool any = false;
        for (int s = 0; s < _spots.Length; s++)
        {
            if (!_spots[s].Enter[t] || most[t, s] <= 0) continue;
            double[]? there = _spots[s].WaitsAWeek ? InWeek(r, t, s, exits, prices, most[t, s], after[s], sound, gap, mayLeave: false) : inWeek[s];
            if (there is null) continue;
            any = true;
            moved.Offer(_spots[s].Place, there, r.BinsPerMass * _instance.Places[_spots[s].Place].MoveInCost / left);
        }
        return any;
    }

    /// <summary>The most of a row's mass that can be left in a spot in a week, after moves, and (stayed) at its start before moves.</summary>
    private double[,] MostLeft(InstanceRow r, out double[,] stayed)
    {
        int weeks = _instance.Weeks, spots = _spots.Length;
        double[,] most = new double[weeks + 1, spots];
        stayed = new double[weeks + 1, spots];
        for (int s = 0; s < spots; s++) if (_spots[s].Place == r.Place) stayed[r.Start, s] = 1;
        for (int t = r.Start; t <= weeks; t++)
        {
            double leaving = 0;
            for (int s = 0; s < spots; s++)
            {
                most[t, s] = stayed[t, s];
                if (t < weeks && t >= r.FirstMove && _spots[s].Leave[t]) leaving = Math.Max(leaving, stayed[t, s]);
            }
            if (t == weeks) break;
            for (int s = 0; s < spots; s++)
            {
                if (_spots[s].Enter[t]) most[t, s] = Math.Max(most[t, s], leaving);
                stayed[t + 1, s] = _spots[s].Stand[t] ? most[t, s] * _keep[r.Table, s][t] : 0;
            }
        }
        return most;
    }

    private (double, PricedPath?) Start(int row, InstanceRow r, PricedExit[][] exits, Prices prices, double[]?[][] inWeek, double[]?[][] atStart,
        double[,] most, double[,] stayed, double[] sound, double[] gap)
    {
        double bound = double.NegativeInfinity;
        int home = -1;
        bool already = _instance.Places[r.Place].SealedWeek is { } w && r.Start > w;
        var moved = new Moved();
        bool moves = r.FirstMove <= r.Start && BestMove(r, r.Start, prices, inWeek[r.Start], atStart[r.Start + 1], exits[r.Start], most, stayed, sound, gap, moved);
        for (int s = 0; s < _spots.Length; s++)
        {
            if (_spots[s].Place != r.Place || inWeek[r.Start][s] is not { } v) continue;
            bool waiting = _spots[s].WaitsAWeek && !already;
            double here = waiting ? InWeek(r, r.Start, s, exits[r.Start], prices, 1, atStart[r.Start + 1][s], sound, gap, mayLeave: false)[0] : v[0];
            if (moves && !waiting && _spots[s].Leave[r.Start]) here = Math.Max(here, moved.From(r.Place, 0) - r.BinsPerMass * prices.Out[s, r.Start]);
            if (here > bound) (bound, home) = (here, s);
        }
        return (bound, home < 0 ? null : PathTrace.Follow(_instance, _spots, _keep, _life, row, home, _spots[home].WaitsAWeek && !already, exits, prices, inWeek, Step));
    }
}
