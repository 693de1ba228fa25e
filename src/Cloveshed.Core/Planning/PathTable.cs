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
    internal const int Points = 320;
    internal const double Step = 0.006;
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
        var sheet = new TableSheet(_instance.Weeks, _spots.Length);
        Fill(row, exits, prices, sheet);
        return Start(row, exits, prices, sheet);
    }

    /// <summary>The same, with what the table allows too much taken away again by trying the paths that it leaves in question.</summary>
    internal (double Bound, PricedPath? Path) Exact(int row, PricedExit[][] exits, Prices prices, TableSheet sheet)
    {
        Fill(row, exits, prices, sheet);
        (double bound, PricedPath? path) = Start(row, exits, prices, sheet);
        return path is { } known && bound > known.Value ? PathTrial.Of(_instance, _spots, _keep, _life, row, exits, prices, sheet, bound, known) : (bound, path);
    }

    private void Fill(int row, PricedExit[][] exits, Prices prices, TableSheet sheet)
    {
        InstanceRow r = _instance.Rows[row];
        int weeks = _instance.Weeks, spots = _spots.Length;
        sheet.Begin(r, MostLeft(r, out double[,] stayed), stayed, MostLife(r));
        for (int i = 0; i < Points; i++) sheet.Sound[i] = PathStates.SoundOf(_instance, row, r.LifeAtStart + i * Step);
        Gaps(r, exits, sheet.Gap);
        for (int s = 0; s < spots; s++)
        {
            if (stayed[weeks, s] <= 0) continue;
            double end = _instance.EndPrice * (r.Fresh + r.Crack), outPrice = r.BinsPerMass * prices.Out[s, weeks] / stayed[weeks, s];
            Span<double> v = sheet.OpenAtStart(weeks, s);
            for (int i = 0; i < v.Length; i++) v[i] = end * sheet.Sound[i] - outPrice;
        }
        for (int t = weeks - 1; t >= r.Start; t--)
        {
            ExitHull hull = sheet.Hulls[t] = ExitHull.Of(r, exits[t]);
            for (int s = 0; s < spots; s++)
                if (sheet.Most[t, s] > 0) InWeek(r, t, s, hull, prices, sheet, sheet.OpenInWeek(t, s), mayLeave: true);
            if (t == r.Start) break;
            bool moves = t >= r.FirstMove && BestMove(r, t, prices, sheet);
            for (int s = 0; s < spots; s++)
            {
                if (stayed[t, s] <= 0) continue;
                Span<double> v = sheet.OpenAtStart(t, s);
                if (sheet.InWeek(t, s) is { Length: > 0 } own) own.CopyTo(v);
                else v.Fill(TableSheet.Nothing);
                if (moves && _spots[s].Leave[t]) sheet.Moves.OfferTo(_spots[s].Place, r.BinsPerMass * prices.Out[s, t] / stayed[t, s], v);
            }
        }
    }

    /// <summary>[week] What interpolation may miss of what comes after the week: what bends it is the steepest of the ways out that are left then.</summary>
    private void Gaps(InstanceRow r, PricedExit[][] exits, double[] gap)
    {
        double bendsDown = _bendsDown[Math.Min(_bendsDown.Length - 1, (int)(r.LifeAtStart / Narrow))];
        double bend = _instance.EndPrice * (r.Fresh + r.Crack);
        for (int t = _instance.Weeks - 1; t >= r.Start; t--)
        {
            gap[t] = bend * bendsDown / r.SoundAtStart * Step * Step / 8;
            foreach (PricedExit x in exits[t]) bend = Math.Max(bend, r.Fresh * x.PerFresh + r.Crack * x.PerCrack);
        }
    }

    /// <summary>Leaving in the week, or standing at its end and going on.</summary>
    private void InWeek(InstanceRow r, int t, int s, ExitHull hull, Prices prices, TableSheet sheet, Span<double> v, bool mayLeave)
    {
        double mostLeft = sheet.Most[t, s];
        v.Fill(TableSheet.Nothing);
        if (mayLeave && _spots[s].Leave[t])
        {
            double outPrice = r.BinsPerMass * prices.Out[s, t] / mostLeft;
            foreach ((double level, double slope, _) in hull.Lines) TableSteps.RaiseToLine(v, sheet.Sound, level - outPrice, slope);
        }
        ReadOnlySpan<double> next = sheet.AtStart(t + 1, s);
        if (!_spots[s].Stand[t] || next.Length == 0) return;
        double keep = _keep[r.Table, s][t];
        TableSteps.RaiseToNext(v, next, _life[r.Table, s][t] / Step, keep, keep * sheet.Gap[t] - r.BinsPerMass * prices.Stand[s, t] / mostLeft);
    }

    /// <summary>The best place to move to at a week's start, the move paid; false where there is none.</summary>
    private bool BestMove(InstanceRow r, int t, Prices prices, TableSheet sheet)
    {
        double left = 0;
        for (int s = 0; s < _spots.Length; s++) left = Math.Max(left, sheet.Stayed[t, s]);
        if (left <= 0) return false;
        sheet.Moves.Clear(sheet.Count(t));
        bool any = false;
        for (int s = 0; s < _spots.Length; s++)
        {
            if (!_spots[s].Enter[t] || sheet.Most[t, s] <= 0) continue;
            ReadOnlySpan<double> there = sheet.InWeek(t, s);
            if (_spots[s].WaitsAWeek)
            {
                Span<double> waiting = sheet.Spare(t);
                InWeek(r, t, s, sheet.Hulls[t], prices, sheet, waiting, mayLeave: false);
                there = waiting;
            }
            if (there.Length == 0) continue;
            any = true;
            sheet.Moves.Offer(_spots[s].Place, there, r.BinsPerMass * _instance.Places[_spots[s].Place].MoveInCost / left);
        }
        return any;
    }

    /// <summary>[week] The most life that can have been used by its start, whatever the places.</summary>
    private double[] MostLife(InstanceRow r)
    {
        double[] most = new double[_instance.Weeks + 1];
        for (int t = r.Start; t < _instance.Weeks; t++)
        {
            double used = 0;
            for (int s = 0; s < _spots.Length; s++) used = Math.Max(used, _life[r.Table, s][t]);
            most[t + 1] = most[t] + used;
        }
        return most;
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

    private (double, PricedPath?) Start(int row, PricedExit[][] exits, Prices prices, TableSheet sheet)
    {
        InstanceRow r = _instance.Rows[row];
        double bound = double.NegativeInfinity;
        int home = -1;
        bool already = _instance.Places[r.Place].SealedWeek is { } w && r.Start > w;
        bool moves = r.FirstMove <= r.Start && BestMove(r, r.Start, prices, sheet);
        for (int s = 0; s < _spots.Length; s++)
        {
            if (_spots[s].Place != r.Place || sheet.InWeek(r.Start, s) is not { Length: > 0 } v) continue;
            bool waiting = _spots[s].WaitsAWeek && !already;
            double here = v[0];
            if (waiting)
            {
                Span<double> spare = sheet.Spare(r.Start);
                InWeek(r, r.Start, s, sheet.Hulls[r.Start], prices, sheet, spare, mayLeave: false);
                here = spare[0];
            }
            if (moves && !waiting && _spots[s].Leave[r.Start]) here = Math.Max(here, sheet.Moves.From(r.Place, 0) - r.BinsPerMass * prices.Out[s, r.Start]);
            if (here > TableSheet.Nothing / 2 && here > bound) (bound, home) = (here, s);
        }
        return (bound, home < 0 ? null : PathTrace.Follow(_instance, _spots, _keep, _life, row, home, _spots[home].WaitsAWeek && !already, exits, prices, sheet));
    }
}
