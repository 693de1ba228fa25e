using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>Makes the runs of a week that the plan has, as far as lots, hours and people are there.</summary>
internal sealed class PlannedRuns
{
    private readonly ReplayShed shed;
    private readonly PlanningInstance instance;
    private readonly Scenario scenario;
    private readonly Yard yard;
    private readonly RunsMade made;
    private readonly Troubles troubles;
    private readonly SmallRuns small;
    private readonly WishTrimming trimming;

    // Planned ways out of this week that are made, or given up.
    private readonly HashSet<PolicyExit> decided = new(ReferenceEqualityComparer.Instance);

    // Rows that a small run of this week counts on being finished.
    private readonly HashSet<int> finishing = [];

    public PlannedRuns(ReplayShed shed, Scenario scenario, Yard yard, RunsMade made, Troubles troubles, SmallRuns small)
    {
        (this.shed, instance, this.scenario, this.yard, this.made, this.troubles, this.small) = (shed, shed.Instance, scenario, yard, made, troubles, small);
        trimming = new WishTrimming(shed, yard, made);
    }

    public void Begin()
    {
        decided.Clear();
        finishing.Clear();
    }

    public void Seed(int week, LineBook book, WeekNeeds needs) => Planned(LineMode.Seed, week, book, needs);

    public void Fresh(int week, LineBook book, WeekNeeds needs) => Planned(LineMode.Fresh, week, book, needs);

    public void Crack(int week, LineBook book, WeekNeeds needs)
    {
        foreach (PolicySorted sorted in shed.Policy.Sorted)
            if (sorted.Week == week) made.CrackSorted(sorted.Line, sorted.Lot, sorted.Mass, sorted.Packed, week, book);
        made.Pack(LineMode.Crack, week, needs, 1);
        Planned(LineMode.Crack, week, book, needs);
    }

    private void Planned(LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        var wishes = new List<Wish>();
        for (int p = 0; p < shed.Policy.Paths.Length; p++)
            foreach (PolicyExit exit in shed.Policy.Paths[p].Exits)
                if (exit.Week == week && exit.Line >= 0 && instance.Lines[exit.Line].Mode == mode) Wished(p, exit, week, wishes);
        if (mode != LineMode.Seed) trimming.Trim(wishes, mode, week, needs, finishing);
        foreach (var run in wishes.GroupBy(w => (w.Exit.Line, Lot: instance.Rows[shed.Policy.Paths[w.Path].Row].Lot)).OrderByDescending(g => shed.Brings(g.Key.Lot, mode, week)))
        {
            Least(run.Key.Line, run.Key.Lot, [.. run], week, book);
            foreach (Wish wish in run)
            {
                Make(wish, mode, week, book, needs);
                decided.Add(wish.Exit);
            }
        }
        made.Pack(mode, week, needs);
    }

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
        foreach (Batch b in yard.OfPath[p]) if (yard.MayRun(b, week)) there += b.Left;
        if (exit.Need >= 0 && there > 0)
        {
            // A seed run is as large as the cloves that the need still wants by now.
            Batch first = yard.OfPath[p].First(b => yard.MayRun(b, week));
            double per = first.Ratio * yard.Sound(first).Fresh * instance.KeptSeed;
            double due = shed.Policy.SeedBy[exit.Need][week] - made.SeedMade[exit.Need] - wishes.Where(w => w.Exit.Need == exit.Need).Sum(w => w.Exit.SeedCloves);
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

    /// <summary>A run under its line's least mass that does not finish a row is filled up with what the lot has, or, where that is not enough, left out.</summary>
    private void Least(int line, int lot, List<Wish> wishes, int week, LineBook book)
    {
        double least = instance.Lines[line].MinRun;
        if (least <= 0) return;
        SmallRun how = small.How(week, line, lot);
        double massIn = wishes.Sum(w => w.Mass * RatioOf(w.Path, week));
        if (how == SmallRun.LeftOut)
        {
            double cut = massIn - book.Room(line, lot);
            if (cut > massIn * Wish.Trifle) troubles.Add(TroubleKind.Line, instance.Lines[line].Id.Text, week, cut);
            foreach (Wish w in wishes) w.Mass = 0;
            return;
        }
        var spare = wishes.GroupBy(w => w.Path).Select(g => (Wish: g.First(), Mass: Math.Max(0, yard.OfPath[g.Key].Where(b => yard.MayRun(b, week)).Sum(b => b.Left) - g.Sum(w => w.Mass)), Ratio: RatioOf(g.Key, week))).ToArray();
        double room = spare.Sum(s => s.Mass * s.Ratio);
        if (massIn >= least * (1 - 1e-7) || massIn <= 0) return;
        int[] finished = how == SmallRun.Filled ? [] : [.. wishes.Select(w => shed.Policy.Paths[w.Path].Row).Distinct().Where(row => LeftOf(row, week, wishes) <= 1e-7 * yard.RowMass(row))];
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

    private double RatioOf(int path, int week) => yard.OfPath[path].FirstOrDefault(b => yard.MayRun(b, week))?.Ratio ?? 0;

    private void Make(Wish wish, LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        double left = wish.Mass;
        for (int k = 0; k < yard.OfPath[wish.Path].Count && left > 0; k++)
        {
            Batch b = yard.OfPath[wish.Path][k];
            if (!yard.MayRun(b, week)) continue;
            double wanted = Math.Min(left, b.Left), room = book.Room(wish.Exit.Line, b.Lot) / b.Ratio, mass = Math.Min(wanted, room);
            if (mass < wanted * (1 - Wish.Trifle)) troubles.Add(TroubleKind.Line, instance.Lines[wish.Exit.Line].Id.Text, week, (wanted - mass) * b.Ratio);
            // What hours cut to less than a run is not begun.
            if (mass < wanted && mass * b.Ratio < instance.Lines[wish.Exit.Line].MinRun && !book.IsSetUp(wish.Exit.Line, b.Lot)) return;
            left -= wanted;
            if (mass > b.Dust) made.Run(b, wish.Exit.Line, mass, wish.Exit.Packed, wish.Exit.Need, week, book);
        }
    }
}
