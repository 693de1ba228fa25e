using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>The runs of a week as they are made: what goes in, what each gives, what is packed of it, what is sorted out, and what that costs.</summary>
internal sealed class RunsMade
{
    private readonly PlanningInstance instance;
    private readonly Scenario scenario;
    private readonly Yard yard;
    private readonly Till till;
    private readonly bool[] seen;
    private readonly double[] seedMade;
    private int number;

    public RunsMade(PlanningInstance instance, Scenario scenario, Yard yard, Till till)
    {
        (this.instance, this.scenario, this.yard, this.till) = (instance, scenario, yard, till);
        seen = new bool[instance.Lots.Length];
        seedMade = new double[instance.SeedNeeds.Length];
    }

    /// <summary>Sorted-out bulbs that may still be cracked.</summary>
    public List<Waiting> Waiting { get; } = [];

    /// <summary>[need] scaled cloves for planting made so far.</summary>
    public IReadOnlyList<double> SeedMade => seedMade;

    /// <summary>Runs of the week, in the order in which they were decided.</summary>
    public List<WeekRun> Runs { get; private set; } = [];

    public void Begin(int week)
    {
        Runs = [];
        Waiting.RemoveAll(w => w.Week < week - FreshRuns.WeeksToCrack || w.Mass <= 0);
    }

    /// <summary>The shares of a lot that a person would count on: what was believed, until the lot was first run.</summary>
    public double[] Believed(int lot) => seen[lot] ? scenario.Sorts[lot] : instance.Lots[lot].SortShares;

    /// <summary>Makes a run of a batch; a mass at start.</summary>
    public void Run(Batch b, int line, double mass, double[] packFirst, int need, int week, LineBook book)
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

    /// <summary>Cracks sorted-out bulbs of a lot, as much as waits and the line has hours for. False where that is nothing.</summary>
    public bool CrackSorted(int line, int lot, double mass, double[] packFirst, int week, LineBook book)
    {
        double there = 0;
        foreach (Waiting w in Waiting) if (w.Lot == lot && w.Week >= week - FreshRuns.WeeksToCrack) there += w.Mass;
        double massIn = Math.Min(Math.Min(mass, there), book.Room(line, -1));
        if (massIn * instance.MassScale < 1e-6) return false;
        double left = massIn;
        foreach (Waiting w in Waiting)
        {
            if (w.Lot != lot || w.Week < week - FreshRuns.WeeksToCrack || left <= 0) continue;
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
    public void Pack(LineMode mode, int week, WeekNeeds needs, int passes = 2)
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
