using System.Runtime.InteropServices;

namespace Cloveshed.Core.Planning;

/// <summary>How closely two half-built paths must agree to be treated as one, and how often a bin may move.</summary>
/// <param name="MassTolerance">Of the mass ratio.</param>
/// <param name="LifeTolerance">Of the life used.</param>
/// <param name="MovesAtMost">Null: as often as it pays, which is what a bound over the whole problem needs.</param>
/// <param name="HalfBuiltAtMost">How many half-built paths to keep for a spot and week: beyond that the tolerances are widened until so many are left.</param>
public sealed record SearchDepth(double MassTolerance, double LifeTolerance, int? MovesAtMost, int HalfBuiltAtMost)
{
    /// <summary>Every sequence of places, none merged: for small seasons, and the referee of the table.</summary>
    public static SearchDepth Exact { get; } = new(0, 0, null, int.MaxValue);

    /// <summary>Paths with one move by search; the bound, and the best path with more moves, by the table.</summary>
    public static SearchDepth Fine { get; } = new(1e-6, 1e-6, 1, int.MaxValue);

    /// <summary>Whether the search alone bounds the whole problem.</summary>
    public bool BoundsAll => MovesAtMost is null;
}

/// <summary>A path worth having and its value per scaled start mass, before the row's own dual.</summary>
public readonly record struct PricedPath(double Value, Stay[] Stays, Exit Exit);

/// <summary>The most that a unit of a row can be worth at the prices (never too low), and good paths, best first.</summary>
public sealed record RowSearch(double Bound, IReadOnlyList<PricedPath> Paths);

/// <summary>
/// The best path of a row at given prices, over every sequence of places. Week by week it keeps, for each spot, the half-built
/// paths that no other beats in money so far, mass left and life used at once: with free disposal a path that is behind in all
/// three can never end better. Paths that agree within the tolerances are merged into one that is as good as the better in each
/// respect; such a merged path may not exist, so it counts for the bound only, and the real one behind it is what is returned.
/// </summary>
public sealed class PathSearch
{
    private readonly PlanningInstance _instance;
    private readonly Spot[] _spots;
    private readonly double[,][] _keepMass; // [table, spot][week]: 1 - loss
    private readonly double[,][] _life;

    public PathSearch(PlanningInstance instance, Spot[] spots)
    {
        _instance = instance;
        _spots = spots;
        (_keepMass, _life) = PathStates.Weekly(instance, spots);
    }

    private struct Label
    {
        public double Money, Mass, Life, Sound;
        public double BestMoney, BestMass, BestLife, BestSound;
        public int Node;
        public int Moves;
        public bool Waiting;
    }

    private readonly record struct Node(int Parent, int Spot, int Week);

    /// <param name="exits">[week] of the row's lot.</param>
    /// <param name="pathsAtMost">How many paths to return; 0 for the bound alone.</param>
    /// <param name="worthMoreThan">Paths of at most this value are not returned.</param>
    public RowSearch Best(int row, PricedExit[][] exits, Prices prices, SearchDepth depth, int pathsAtMost, double worthMoreThan)
    {
        InstanceRow r = _instance.Rows[row];
        int weeks = _instance.Weeks, spots = _spots.Length;
        double perBin = r.BinsPerMass;
        var nodes = new List<Node>();
        var now = new List<Label>[spots];
        for (int s = 0; s < spots; s++) now[s] = [];
        double bound = double.NegativeInfinity;
        var best = new (double Value, int Node, Exit Exit)[weeks + 1];
        for (int t = 0; t <= weeks; t++) best[t].Value = double.NegativeInfinity;

        for (int s = 0; s < spots; s++)
        {
            if (_spots[s].Place != r.Place) continue;
            nodes.Add(new Node(-1, s, r.Start));
            bool already = _instance.Places[r.Place].SealedWeek is { } w && r.Start > w;
            now[s].Add(new Label
            {
                Mass = 1, BestMass = 1, Life = r.LifeAtStart, BestLife = r.LifeAtStart, Sound = 1, BestSound = 1, Node = nodes.Count - 1,
                Waiting = _spots[s].WaitsAWeek && !already,
            });
        }

        for (int t = r.Start; t < weeks; t++)
        {
            if (t >= r.FirstMove) Move(now, nodes, t, perBin, prices, depth.MovesAtMost ?? int.MaxValue);
            for (int s = 0; s < spots; s++)
            {
                List<Label> labels = now[s];
                if (labels.Count == 0) continue;
                Prune(labels, depth);
                Spot spot = _spots[s];
                double[] keep = _keepMass[r.Table, s], life = _life[r.Table, s];
                double outPrice = perBin * prices.Out[s, t], stand = perBin * prices.Stand[s, t];
                Span<Label> span = CollectionsMarshal.AsSpan(labels);
                for (int i = 0; i < span.Length; i++)
                {
                    ref Label label = ref span[i];
                    if (spot.Leave[t] && !label.Waiting)
                        Leave(ref label, exits[t], r, t, outPrice, ref bound, ref best[t]);
                    label.Waiting = false;
                    label.Money -= stand;
                    label.BestMoney -= stand;
                    label.Mass *= keep[t];
                    label.BestMass *= keep[t];
                    bool same = label.Life == label.BestLife;
                    label.Life += life[t];
                    label.BestLife += life[t];
                    label.Sound = PathStates.SoundOf(_instance, row, label.Life);
                    label.BestSound = same ? label.Sound : PathStates.SoundOf(_instance, row, label.BestLife);
                }
                if (!spot.Stand[t]) labels.Clear();
            }
        }

        for (int s = 0; s < spots; s++)
            foreach (Label label in now[s])
            {
                double end = _instance.EndPrice * (r.Fresh + r.Crack), outPrice = perBin * prices.Out[s, weeks];
                bound = Math.Max(bound, label.BestMoney + label.BestMass * label.BestSound * end - outPrice);
                double value = label.Money + label.Mass * label.Sound * end - outPrice;
                if (value > best[weeks].Value) best[weeks] = (value, label.Node, new Exit(ExitKind.Stand, weeks, -1, 0, -1, -1, -1));
            }

        var paths = new List<PricedPath>();
        if (pathsAtMost > 0)
            foreach ((double value, int node, Exit exit) in best.Where(b => b.Value > worthMoreThan).OrderByDescending(b => b.Value).Take(pathsAtMost))
                paths.Add(new PricedPath(value, StaysOf(nodes, node), exit));
        return new RowSearch(bound, paths);
    }

    private static void Leave(ref Label label, PricedExit[] exits, InstanceRow r, int week, double outPrice, ref double bound,
        ref (double Value, int Node, Exit Exit) best)
    {
        double optimistic = 0, real = 0;
        int which = -1;
        double fresh = r.Fresh * label.Sound, crack = r.Crack * label.Sound;
        double bestFresh = r.Fresh * label.BestSound, bestCrack = r.Crack * label.BestSound;
        for (int e = 0; e < exits.Length; e++)
        {
            ref readonly PricedExit x = ref exits[e];
            double v = label.Mass * (x.PerMass + fresh * x.PerFresh + crack * x.PerCrack);
            if (v > real)
            {
                real = v;
                which = e;
            }
            double o = label.BestMass * (x.PerMass + bestFresh * x.PerFresh + bestCrack * x.PerCrack);
            if (o > optimistic) optimistic = o;
        }
        bound = Math.Max(bound, label.BestMoney + optimistic - outPrice);
        double value = label.Money + real - outPrice;
        if (value > best.Value)
            best = (value, label.Node, which >= 0 ? exits[which].Exit : new Exit(ExitKind.Discard, week, -1, 0, -1, -1, -1));
    }

    private void Move(List<Label>[] now, List<Node> nodes, int week, double perBin, Prices prices, int movesAtMost)
    {
        int spots = now.Length;
        Span<int> before = stackalloc int[spots];
        for (int s = 0; s < spots; s++) before[s] = now[s].Count;
        for (int from = 0; from < spots; from++)
        {
            if (!_spots[from].Leave[week]) continue;
            for (int i = 0; i < before[from]; i++)
            {
                Label label = now[from][i];
                if (label.Moves >= movesAtMost || label.Waiting) continue;
                for (int to = 0; to < spots; to++)
                {
                    // Within a room there is nothing to move: both ways of using it start when the bin enters.
                    if (to == from || _spots[to].Place == _spots[from].Place || !_spots[to].Enter[week]) continue;
                    Label moved = label;
                    double cost = perBin * (_instance.Places[_spots[to].Place].MoveInCost + prices.Out[from, week]);
                    moved.Money -= cost;
                    moved.BestMoney -= cost;
                    moved.Moves++;
                    moved.Waiting = _spots[to].WaitsAWeek;
                    nodes.Add(new Node(label.Node, to, week));
                    moved.Node = nodes.Count - 1;
                    now[to].Add(moved);
                }
            }
        }
    }

    private static void Prune(List<Label> labels, SearchDepth depth)
    {
        double mass = depth.MassTolerance, life = depth.LifeTolerance;
        Prune(labels, mass, life);
        while (labels.Count > depth.HalfBuiltAtMost)
        {
            mass = Math.Max(1e-5, mass * 2.5);
            life = Math.Max(5e-5, life * 2.5);
            Prune(labels, mass, life);
        }
    }

    private static void Prune(List<Label> labels, double massTolerance, double lifeTolerance)
    {
        if (labels.Count < 2) return;
        labels.Sort(static (a, b) => b.BestMoney.CompareTo(a.BestMoney));
        int kept = 0;
        Span<Label> span = CollectionsMarshal.AsSpan(labels);
        for (int i = 0; i < span.Length; i++)
        {
            ref Label candidate = ref span[i];
            bool beaten = false;
            for (int k = 0; k < kept; k++)
            {
                ref Label other = ref span[k];
                // The real state is the anchor: measured from the merged one, merging would run on down a chain of near neighbours.
                if (other.Mass < candidate.BestMass - massTolerance || other.Life > candidate.BestLife + lifeTolerance
                    || (other.Waiting && !candidate.Waiting)) continue;
                other.BestMass = Math.Max(other.BestMass, candidate.BestMass);
                if (candidate.BestLife < other.BestLife)
                {
                    other.BestLife = candidate.BestLife;
                    other.BestSound = candidate.BestSound;
                }
                beaten = true;
                break;
            }
            if (!beaten) span[kept++] = candidate;
        }
        labels.RemoveRange(kept, labels.Count - kept);
    }

    private static Stay[] StaysOf(List<Node> nodes, int node)
    {
        var stays = new List<Stay>();
        for (int n = node; n >= 0; n = nodes[n].Parent) stays.Add(new Stay(nodes[n].Spot, nodes[n].Week));
        stays.Reverse();
        return [.. stays];
    }
}
