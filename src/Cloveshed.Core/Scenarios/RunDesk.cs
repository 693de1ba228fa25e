using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>
/// Decides and makes the runs of a week: those of the plan, as far as lots, hours and people are there; less where all that they give is
/// more than is wanted; and for what is still missing others, by what they bring now against what the lot is worth kept.
/// </summary>
internal sealed class RunDesk
{
    private const int MoreRunsAtMost = 10;
    private const double Trifle = 0.02;

    private readonly ReplayShed shed;
    private readonly PlanningInstance instance;
    private readonly Scenario scenario;
    private readonly Yard yard;
    private readonly Till till;
    private readonly Troubles troubles;
    private readonly bool[] seen;
    private readonly double[] seedMade;
    private int number;

    public RunDesk(ReplayShed shed, Scenario scenario, Yard yard, Till till, Troubles troubles)
    {
        (this.shed, instance, this.scenario, this.yard, this.till, this.troubles) = (shed, shed.Instance, scenario, yard, till, troubles);
        seen = new bool[instance.Lots.Length];
        seedMade = new double[instance.SeedNeeds.Length];
    }

    /// <summary>Sorted-out bulbs that may still be cracked.</summary>
    public List<Waiting> Waiting { get; } = [];

    /// <summary>[need] scaled cloves for planting made so far.</summary>
    public IReadOnlyList<double> SeedMade => seedMade;

    // Planned ways out of this week that are made, or given up.
    private readonly HashSet<PolicyExit> decided = new(ReferenceEqualityComparer.Instance);

    // Rows that a small run of this week counts on being finished.
    private readonly HashSet<int> finishing = [];

    /// <summary>Runs of the week, in the order in which they were decided.</summary>
    public List<WeekRun> Runs { get; private set; } = [];

    public void Begin(int week)
    {
        Runs = [];
        Waiting.RemoveAll(w => w.Week < week - 2 || w.Mass <= 0);
        decided.Clear();
        finishing.Clear();
    }

    /// <summary>The shares of a lot that a person would count on: what was believed, until the lot was first run.</summary>
    private double[] Believed(int lot) => seen[lot] ? scenario.Sorts[lot] : instance.Lots[lot].SortShares;

    private bool MayRun(Batch b, int week) => b.Left > b.Dust && !instance.Lots[b.Lot].Hold && week >= instance.Lots[b.Lot].ReadyWeek && yard.MayLeave(b, week);

    public void FreshPlanned(int week, LineBook book, WeekNeeds needs) => Planned(LineMode.Fresh, week, book, needs);

    public void CrackPlanned(int week, LineBook book, WeekNeeds needs)
    {
        foreach (PolicySorted sorted in shed.Policy.Sorted)
            if (sorted.Week == week) CrackSorted(sorted.Line, sorted.Lot, sorted.Mass, sorted.Packed, week, book);
        Pack(LineMode.Crack, week, needs, 1);
        Planned(LineMode.Crack, week, book, needs);
    }

    /// <summary>A run that the plan has this week, as it is meant to be made. Masses at start.</summary>
    private sealed class Wish(int path, PolicyExit exit, double mass)
    {
        public int Path => path;
        public PolicyExit Exit => exit;
        public double Mass { get; set; } = mass;
    }

    private void Planned(LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        var wishes = new List<Wish>();
        for (int p = 0; p < shed.Policy.Paths.Length; p++)
            foreach (PolicyExit exit in shed.Policy.Paths[p].Exits)
                if (exit.Week == week && exit.Line >= 0 && instance.Lines[exit.Line].Mode == mode) Wished(p, exit, week, wishes);
        if (mode != LineMode.Seed) Trim(wishes, mode, week, needs);
        foreach (var run in wishes.GroupBy(w => (w.Exit.Line, Lot: instance.Rows[shed.Policy.Paths[w.Path].Row].Lot)).OrderByDescending(g => Brings(g.Key.Lot, mode, week)))
        {
            Least(run.Key.Line, run.Key.Lot, [.. run], week);
            foreach (Wish wish in run)
            {
                Make(wish, mode, week, book, needs);
                decided.Add(wish.Exit);
            }
        }
        Pack(mode, week, needs);
    }

    private double Brings(int lot, LineMode mode, int week) => mode switch
    {
        LineMode.Fresh => shed.RunWorth[lot][week],
        LineMode.Crack => shed.CloveWorth[lot][week],
        _ => 0,
    };

    private void Wished(int p, PolicyExit exit, int week, List<Wish> wishes)
    {
        double whole = yard.PathWhole[p], intended = exit.Part * whole;
        string lot = instance.Lots[instance.Rows[shed.Policy.Paths[p].Row].Lot].Id.Text;
        if (whole <= 0)
        {
            if (scenario.StartWeek[shed.Policy.Paths[p].Row] > week)
                troubles.Add(TroubleKind.LotLate, lot, week, exit.Part * shed.Policy.Paths[p].Part * yard.RowMass(shed.Policy.Paths[p].Row));
            return;
        }
        double there = 0;
        foreach (Batch b in yard.OfPath[p]) if (MayRun(b, week)) there += b.Left;
        if (exit.Need >= 0 && there > 0)
        {
            // A seed run is as large as the cloves that the need still wants by now.
            Batch first = yard.OfPath[p].First(b => MayRun(b, week));
            double per = first.Ratio * yard.Sound(first).Fresh * instance.KeptSeed;
            double due = shed.Policy.SeedBy[exit.Need][week] - seedMade[exit.Need] - wishes.Where(w => w.Exit.Need == exit.Need).Sum(w => w.Exit.SeedCloves);
            if (per > 0) intended = Math.Max(0, Math.Min(due, Math.Max(exit.SeedCloves, due - OtherSeed(exit, week)))) / per;
        }
        if (there < intended * 0.95) troubles.Add(TroubleKind.LotSpent, lot, week, intended - there);
        double mass = Math.Min(intended, there);
        if (mass > 0) wishes.Add(new Wish(p, exit, mass));
    }

    // Cloves that other planned seed runs of the same week give.
    private double OtherSeed(PolicyExit exit, int week)
    {
        double cloves = 0;
        foreach (PolicyPath path in shed.Policy.Paths)
            foreach (PolicyExit e in path.Exits) if (e.Need == exit.Need && e.Week == week && !ReferenceEquals(e, exit)) cloves += e.SeedCloves;
        return cloves;
    }

    private double PerStart(int path, int week, LineMode mode)
    {
        foreach (Batch b in yard.OfPath[path])
        {
            if (!MayRun(b, week)) continue;
            (double fresh, double crack) = yard.Sound(b);
            return b.Ratio * (mode == LineMode.Crack ? (fresh + crack) * instance.KeptCrack : fresh * instance.KeptFresh);
        }
        return 0;
    }

    private void Trim(List<Wish> wishes, LineMode mode, int week, WeekNeeds needs)
    {
        double[][] gives = [.. wishes.Select(w =>
        {
            int lot = instance.Rows[shed.Policy.Paths[w.Path].Row].Lot;
            double per = PerStart(w.Path, week, mode);
            double[] believed = Believed(lot), out_ = new double[believed.Length];
            for (int k = 0; k < out_.Length; k++)
                if (instance.Sorts[k].Clove == (mode == LineMode.Crack) && instance.Sorts[k].Packed)
                    out_[k] = w.Mass * per * believed[k] * Math.Min(1, w.Exit.Packed[k]);
            return out_;
        })];
        double[] all = new double[instance.Sorts.Length];
        foreach (double[] g in gives) for (int k = 0; k < all.Length; k++) all[k] += g[k];
        int[] order = [.. Enumerable.Range(0, wishes.Count).OrderBy(i => Brings(instance.Rows[shed.Policy.Paths[wishes[i].Path].Row].Lot, mode, week))];
        foreach (int i in order)
        {
            double spare = gives[i].Any(g => g > 0) ? 1 : 0;
            for (int k = 0; k < all.Length && spare > 0; k++)
            {
                if (gives[i][k] <= 0) continue;
                (double organic, double any) = needs.Of(k);
                double over = all[k] - (organic + any);
                spare = Math.Min(spare, over <= Trifle * all[k] ? 0 : over / gives[i][k]);
            }
            Spot spot = shed.Policy.Places[yard.OfPath[wishes[i].Path].FirstOrDefault(b => b.Left > 0)?.Place ?? instance.Rows[shed.Policy.Paths[wishes[i].Path].Row].Place];
            if (spare <= Trifle || !spot.Stand[week] || finishing.Contains(shed.Policy.Paths[wishes[i].Path].Row)) continue;
            wishes[i].Mass *= 1 - spare;
            for (int k = 0; k < all.Length; k++) all[k] -= spare * gives[i][k];
        }
    }

    /// <summary>A run under its line's least mass is filled up with what the lot has, or, where that is not enough and does not finish a row, left out.</summary>
    private void Least(int line, int lot, List<Wish> wishes, int week)
    {
        double least = instance.Lines[line].MinRun;
        if (least <= 0) return;
        double massIn = wishes.Sum(w => w.Mass * RatioOf(w.Path, week));
        var spare = wishes.GroupBy(w => w.Path).Select(g => (Wish: g.First(), Mass: Math.Max(0, yard.OfPath[g.Key].Where(b => MayRun(b, week)).Sum(b => b.Left) - g.Sum(w => w.Mass)), Ratio: RatioOf(g.Key, week))).ToArray();
        double room = spare.Sum(s => s.Mass * s.Ratio);
        if (massIn >= least * (1 - 1e-7) || massIn <= 0) return;
        int[] finished = [.. wishes.Select(w => shed.Policy.Paths[w.Path].Row).Distinct().Where(row => LeftOf(row, week, wishes) <= 1e-7 * yard.RowMass(row))];
        finishing.UnionWith(finished);
        if (finished.Length > 0) return;
        if (massIn + room < least)
        {
            foreach (Wish w in wishes) w.Mass = 0;
            return;
        }
        double part = Math.Min(1, (least - massIn) / room * (1 + 1e-6));
        foreach ((Wish wish, double mass, _) in spare) wish.Mass += part * mass;
    }

    // Of a row when these runs are made and all else that the plan means to take of it this week.
    private double LeftOf(int row, int week, List<Wish> wishes)
    {
        double left = -wishes.Where(w => shed.Policy.Paths[w.Path].Row == row).Sum(w => w.Mass);
        foreach (Batch b in yard.Batches) if (b.Row == row) left += b.Left;
        foreach (int p in shed.PathsOfRow[row])
            foreach (PolicyExit e in shed.Policy.Paths[p].Exits)
                if (e.Week == week && !decided.Contains(e) && wishes.All(w => !ReferenceEquals(w.Exit, e))) left -= e.Part * yard.PathWhole[p];
        return left;
    }

    private double RatioOf(int path, int week) => yard.OfPath[path].FirstOrDefault(b => MayRun(b, week))?.Ratio ?? 0;

    private void Make(Wish wish, LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        double left = wish.Mass;
        for (int k = 0; k < yard.OfPath[wish.Path].Count && left > 0; k++)
        {
            Batch b = yard.OfPath[wish.Path][k];
            if (!MayRun(b, week)) continue;
            double wanted = Math.Min(left, b.Left), room = book.Room(wish.Exit.Line, b.Lot) / b.Ratio, mass = Math.Min(wanted, room);
            if (mass < wanted * (1 - Trifle)) troubles.Add(TroubleKind.Line, instance.Lines[wish.Exit.Line].Id.Text, week, (wanted - mass) * b.Ratio);
            // What hours cut to less than a run is not begun.
            if (mass < wanted && mass * b.Ratio < instance.Lines[wish.Exit.Line].MinRun && !book.IsSetUp(wish.Exit.Line, b.Lot)) return;
            left -= wanted;
            if (mass > b.Dust) Run(b, wish.Exit.Line, mass, wish.Exit.Packed, wish.Exit.Need, week, book);
        }
    }

    private void Run(Batch b, int line, double mass, double[] packFirst, int need, int week, LineBook book)
    {
        double taken = b.Take(mass, week, line, false), massIn = taken * b.Ratio;
        (double fresh, double crack) = yard.Sound(b);
        double hours = book.Run(line, b.Lot, massIn);
        double[] gives = new double[instance.Sorts.Length];
        LineMode mode = instance.Lines[line].Mode;
        double fit = mode == LineMode.Crack ? massIn * (fresh + crack) * instance.KeptCrack : massIn * fresh * instance.KeptFresh;
        if (mode != LineMode.Seed)
            for (int k = 0; k < gives.Length; k++)
                if (instance.Sorts[k].Clove == (mode == LineMode.Crack)) gives[k] = fit * scenario.Sorts[b.Lot][k];
        var run = new WeekRun(number++, line, b.Lot, b, massIn, taken, hours)
        {
            Gives = gives, PackFirst = packFirst, SortedOut = mode == LineMode.Fresh ? fit + massIn * crack : 0,
        };
        if (mode == LineMode.Seed && need >= 0)
        {
            run.Seed[need] = massIn * fresh * instance.KeptSeed;
            seedMade[need] += run.Seed[need];
        }
        if (mode == LineMode.Fresh) seen[b.Lot] = true;
        Runs.Add(run);
    }

    private bool CrackSorted(int line, int lot, double mass, double[] packFirst, int week, LineBook book)
    {
        double there = 0;
        foreach (Waiting w in Waiting) if (w.Lot == lot && w.Week >= week - 2) there += w.Mass;
        double massIn = Math.Min(Math.Min(mass, there), book.Room(line, -1));
        if (massIn * instance.MassScale < 1e-6) return false;
        double left = massIn;
        foreach (Waiting w in Waiting)
        {
            if (w.Lot != lot || w.Week < week - 2 || left <= 0) continue;
            double some = Math.Min(left, w.Mass);
            w.Mass -= some;
            left -= some;
        }
        double[] gives = new double[instance.Sorts.Length];
        for (int k = 0; k < gives.Length; k++) if (instance.Sorts[k].Clove) gives[k] = massIn * instance.KeptCrack * scenario.Sorts[lot][k];
        Runs.Add(new WeekRun(number++, line, lot, null, massIn, 0, book.Run(line, -1, massIn)) { Gives = gives, PackFirst = packFirst });
        return true;
    }

    /// <summary>Packs what the week's runs of a mode give into what is still wanted: first from the classes that the plan packs of each run, then from any.</summary>
    private void Pack(LineMode mode, int week, WeekNeeds needs, int passes = 2)
    {
        for (int pass = 0; pass < passes; pass++)
            foreach (int q in PackOrder())
            {
                if (needs.Wanted[q] <= 0 || instance.Sorts[instance.Products[q].Sort].Clove != (mode == LineMode.Crack)) continue;
                foreach (WeekRun run in Runs)
                {
                    if (needs.Wanted[q] <= 0) break;
                    if (instance.Lines[run.Line].Mode != mode) continue;
                    double most = pass == 1 ? 1 : run.PackFirst.Length > 0 ? run.PackFirst[instance.Products[q].Sort] : 0;
                    needs.Wanted[q] -= PackFrom(run, q, needs.Wanted[q], most);
                }
            }
    }

    private IEnumerable<int> PackOrder() => Enumerable.Range(0, instance.Products.Length).OrderByDescending(q => instance.Products[q].Organic);

    /// <summary>Packs up to a mass of a product from one run, leaving no more of its class packed than a part of what it gives. The mass packed.</summary>
    public double PackFrom(WeekRun run, int product, double mass, double most = 1)
    {
        InstanceProduct p = instance.Products[product];
        if (run.Gives.Length == 0 || run.Gives[p.Sort] <= 0 || p.Organic && instance.OrganicApart && instance.SupplyOf(run.Lot) == 0) return 0;
        double packed = 0;
        foreach ((int q, double m) in run.Made) if (instance.Products[q].Sort == p.Sort) packed += m;
        double some = Math.Min(mass, Math.Min(1, most) * run.Gives[p.Sort] - packed);
        if (some <= 0) return 0;
        run.Made[product] = run.Made.GetValueOrDefault(product) + some;
        return some;
    }

    /// <summary>Runs beyond the plan for what is still wanted.</summary>
    public void More(LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        if (mode == LineMode.Crack)
            foreach (Waiting w in Waiting.OrderBy(w => w.Week).ToArray())
                for (int i = 0; i < instance.Lines.Length; i++)
                    if (instance.Lines[i].Mode == LineMode.Crack && w.Mass > 0) MoreSorted(i, w, week, book, needs);
        for (int n = 0; n < MoreRunsAtMost; n++)
        {
            if (BestMore(mode, week, book, needs) is not { } best) return;
            Run(best.Batch, best.Line, best.Mass, [], -1, week, book);
            Pack(mode, week, needs);
        }
    }

    private void MoreSorted(int line, Waiting w, int week, LineBook book, WeekNeeds needs)
    {
        double[] believed = Believed(w.Lot);
        double mass = 0, brings = 0;
        for (int k = 0; k < believed.Length; k++)
        {
            if (!instance.Sorts[k].Clove || believed[k] <= 0 || !instance.Sorts[k].Packed) continue;
            double missing = Missing(needs, k, instance.SupplyOf(w.Lot));
            if (missing <= Few(k)) continue;
            double per = instance.KeptCrack * believed[k], some = Math.Min(w.Mass, missing / per);
            mass = Math.Max(mass, some);
            brings += Math.Min(missing, some * per) * needs.MarginOf(k, instance.SupplyOf(w.Lot));
        }
        mass = Math.Min(mass, book.Room(line, -1));
        if (mass <= 0 || brings <= (mass / instance.Lines[line].Rate + book.SetUp(line, -1)) * book.NextHour(line)) return;
        if (CrackSorted(line, w.Lot, mass, [], week, book)) Pack(LineMode.Crack, week, needs);
    }

    private static double Missing(WeekNeeds needs, int sort, int supply)
    {
        (double organic, double any) = needs.Of(sort);
        return supply == 1 ? organic + any : any;
    }

    // Less than half a unit is digits.
    private double Few(int sort)
    {
        double net = double.PositiveInfinity;
        foreach (InstanceProduct p in instance.Products) if (p.Sort == sort) net = Math.Min(net, p.Net);
        return net / 2;
    }

    private (Batch Batch, int Line, double Mass)? BestMore(LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        int sorts = instance.Sorts.Length;
        double[][] missing = [new double[sorts], new double[sorts]], margin = [new double[sorts], new double[sorts]];
        bool some = false;
        for (int k = 0; k < sorts; k++)
        {
            if (instance.Sorts[k].Clove != (mode == LineMode.Crack) || !instance.Sorts[k].Packed) continue;
            for (int o = 0; o < instance.SupplyKinds; o++)
            {
                double m = Missing(needs, k, o);
                if (m <= Few(k)) continue;
                (missing[o][k], margin[o][k]) = (m, needs.MarginOf(k, o));
                some |= margin[o][k] > 0;
            }
        }
        if (!some) return null;
        (Batch Batch, int Line, double Mass)? best = null;
        double most = 1e-9;
        double[] per = new double[sorts];
        foreach (Batch b in yard.Batches)
        {
            if (!MayRun(b, week)) continue;
            double spare = b.Left - Promised(b, week);
            if (spare <= 1e-6 * b.Whole) continue;
            int o = instance.SupplyOf(b.Lot);
            (double fresh, double crack) = yard.Sound(b);
            double fit = b.Ratio * (mode == LineMode.Crack ? (fresh + crack) * instance.KeptCrack : fresh * instance.KeptFresh);
            double[] believed = Believed(b.Lot);
            double first = double.PositiveInfinity, last = 0;
            for (int k = 0; k < sorts; k++)
            {
                per[k] = missing[o][k] > 0 ? fit * believed[k] : 0;
                if (per[k] <= 1e-9) continue;
                first = Math.Min(first, missing[o][k] / per[k]);
                last = Math.Max(last, missing[o][k] / per[k]);
            }
            if (last <= 0) continue;
            double kept = yard.KeepWorth(b, week);
            for (int i = 0; i < instance.Lines.Length; i++)
            {
                InstanceLine line = instance.Lines[i];
                if (line.Mode != mode) continue;
                double room = Math.Min(spare, book.Room(i, b.Lot) / b.Ratio), least = book.IsSetUp(i, b.Lot) ? 0 : line.MinRun / b.Ratio * (1 + 1e-6);
                if (least > room) continue;
                foreach (double size in (ReadOnlySpan<double>)[first, last])
                {
                    double mass = Math.Max(Math.Min(size, room), least), brings = 0;
                    for (int k = 0; k < sorts; k++) if (per[k] > 0) brings += Math.Min(missing[o][k], mass * per[k]) * margin[o][k];
                    double gain = brings - (mass * b.Ratio / line.Rate + book.SetUp(i, b.Lot)) * book.NextHour(i) - mass * Math.Max(0, kept);
                    if (gain > most) (most, best) = (gain, (b, i, mass));
                }
            }
        }
        return best;
    }

    // What the path is planned to give for seed later, and as is this week, is not for others.
    private double Promised(Batch b, int week)
    {
        double promised = 0;
        foreach (PolicyExit e in shed.Policy.Paths[b.Path].Exits)
            if (e.Need >= 0 && e.Week > week || e.Line < 0 && e.Week == week) promised += e.Part * yard.PathWhole[b.Path];
        return promised;
    }

    public void SeedPlanned(int week, LineBook book, WeekNeeds needs) => Planned(LineMode.Seed, week, book, needs);

    /// <summary>Other lots for planting cloves that the plan meant to have by now.</summary>
    public void SeedMore(int week, LineBook book)
    {
        for (int n = 0; n < instance.SeedNeeds.Length; n++)
        {
            InstanceSeedNeed need = instance.SeedNeeds[n];
            if (week > need.ByWeek) continue;
            for (int round = 0; round < 4; round++)
            {
                double due = shed.Policy.SeedBy[n][week] - seedMade[n];
                if (due <= 1e-5 * need.Mass) break;
                (Batch Batch, int Line, double Mass)? best = null;
                double most = 1e-9;
                foreach (Batch b in yard.Batches)
                {
                    InstanceLot lot = instance.Lots[b.Lot];
                    if (!MayRun(b, week) || lot.Seed is not { } cls || cls > need.Class || lot.Inhibitor || lot.Variety != need.Variety) continue;
                    double per = b.Ratio * yard.Sound(b).Fresh * instance.KeptSeed;
                    for (int i = 0; i < instance.Lines.Length; i++)
                    {
                        if (instance.Lines[i].Mode != LineMode.Seed) continue;
                        double room = Math.Min(b.Left, book.Room(i, b.Lot) / b.Ratio), least = book.IsSetUp(i, b.Lot) ? 0 : instance.Lines[i].MinRun / b.Ratio * (1 + 1e-6);
                        if (least > room || per <= 0) continue;
                        double mass = Math.Max(Math.Min(due / per, room), least);
                        double gain = Math.Min(due, mass * per) * need.ShortCost - (mass * b.Ratio / instance.Lines[i].Rate + book.SetUp(i, b.Lot)) * book.NextHour(i) - mass * yard.KeepWorth(b, week);
                        if (gain > most) (most, best) = (gain, (b, i, mass));
                    }
                }
                if (best is not { } found) break;
                Run(found.Batch, found.Line, found.Mass, [], n, week, book);
            }
        }
    }

    /// <summary>Pays for the week's hours and makings; what is not packed of fresh runs is sorted out.</summary>
    public void Close(int week, LineBook book)
    {
        for (int i = 0; i < instance.Lines.Length; i++)
        {
            (double hours, double overtime) = book.Split(i);
            till.Add(MoneyKind.Line, week, hours * instance.Lines[i].Cost);
            till.Add(MoneyKind.Overtime, week, overtime * instance.Lines[i].OvertimeCost);
        }
        foreach (WeekRun run in Runs)
            foreach ((int q, double mass) in run.Made) till.Add(MoneyKind.Making, week, mass * instance.Products[q].UnitCost);
    }

    /// <summary>After the fresh runs are packed: the rest of them waits for the cracker.</summary>
    public void SortOut(int week)
    {
        foreach (WeekRun run in Runs)
        {
            if (instance.Lines[run.Line].Mode != LineMode.Fresh) continue;
            run.SortedOut = Math.Max(0, run.SortedOut - run.Made.Values.Sum());
            if (run.SortedOut > 0) Waiting.Add(new Waiting(run.Lot, week, run.SortedOut));
        }
    }
}
