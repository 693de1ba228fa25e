using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>A plan's rows in an instance's indices, in parts of what they are taken from.</summary>
internal sealed class PolicyReading
{
    private readonly PlanningInstance instance;
    private readonly PlanAnswer plan;
    private readonly Dictionary<LotId, int> lots;
    private readonly Dictionary<PlaceId, int> places;
    private readonly Dictionary<LineId, int> lines;
    private readonly Dictionary<ProductId, int> products;
    private readonly Dictionary<(OrderId, string), int> orders;
    private readonly Dictionary<(int Lot, int Place), int> rows;
    private readonly ILookup<(string Run, LotId Lot), MadeRow> made;
    private readonly Dictionary<(string Path, int Week), PathWeek> states;

    public PolicyReading(PlanningInstance instance, PlanAnswer plan)
    {
        (this.instance, this.plan) = (instance, plan);
        lots = instance.Lots.Index().ToDictionary(x => x.Item.Id, x => x.Index);
        places = instance.Places.Index().ToDictionary(x => x.Item.Id, x => x.Index);
        lines = instance.Lines.Index().ToDictionary(x => x.Item.Id, x => x.Index);
        products = instance.Products.Index().ToDictionary(x => x.Item.Id, x => x.Index);
        orders = instance.OrderLines.Index().ToDictionary(x => (x.Item.Line.Order, x.Item.Line.Number), x => x.Index);
        rows = instance.Rows.Index().ToDictionary(x => (x.Item.Lot, x.Item.Place), x => x.Index);
        made = plan.Made.ToLookup(m => (m.Run, m.Lot));
        states = plan.Paths.ToDictionary(p => (p.Path, p.Week));
    }

    public PolicyPath[] Paths()
    {
        ILookup<string, RunRow> runs = plan.Runs.Where(r => r.Path is not null).ToLookup(r => r.Path!);
        ILookup<string, AsIsRow> asIs = plan.AsIs.ToLookup(r => r.Path);
        Dictionary<string, double> standing = plan.Keeps.Where(k => k.Week == instance.Weeks - 1).GroupBy(k => k.Path).ToDictionary(g => g.Key, g => g.Sum(k => k.MassAtStart));
        ILookup<(string, LotId), SeedRow> seed = plan.Seed.ToLookup(s => (s.Run, s.Lot));
        var found = new List<(PolicyPath Path, double Mass)>();
        foreach (IGrouping<string, PathWeek> path in plan.Paths.GroupBy(p => p.Path))
        {
            PathWeek first = path.First();
            if (!lots.TryGetValue(first.Lot, out int lot) || !rows.TryGetValue((lot, places[first.FromPlace]), out int row)) continue;
            double mass = runs[path.Key].Sum(r => r.MassAtStart) + asIs[path.Key].Sum(r => r.MassAtStart) + standing.GetValueOrDefault(path.Key);
            if (mass <= 0) continue;
            int[] at = new int[instance.Weeks];
            Array.Fill(at, instance.Rows[row].Place);
            foreach (PathWeek week in path) if (week.Week < at.Length) at[week.Week] = places[week.Place];
            List<PolicyExit> exits =
            [
                .. runs[path.Key].SelectMany(r => Exits(r, r.MassAtStart / mass, [.. seed[(r.Run, r.Lot)]])),
                .. asIs[path.Key].Select(r => new PolicyExit(r.Week, -1, r.Discarded, r.MassAtStart / mass, [], -1, 0)),
            ];
            exits.Sort((a, b) => a.Week.CompareTo(b.Week));
            found.Add((new PolicyPath(path.Key, row, 0, at, exits), mass));
        }
        // Parts of a row sum to 1 exactly, whatever the digits written.
        double[] whole = new double[instance.Rows.Length];
        foreach ((PolicyPath path, double mass) in found) whole[path.Row] += mass;
        var list = found.ConvertAll(f => f.Path with { Part = f.Mass / whole[f.Path.Row] });
        for (int r = 0; r < whole.Length; r++)
            if (whole[r] <= 0) list.Add(new PolicyPath($"row {r}", r, 1, [.. Enumerable.Repeat(instance.Rows[r].Place, instance.Weeks)], []));
        return [.. list];
    }

    // Part of what a run gives of each sort that the plan packs.
    private double[] Packed(RunRow run)
    {
        double[] packed = new double[instance.Sorts.Length];
        if (run.Mode == LineMode.Seed || run.MassIn <= 0) return packed;
        double fit = run.MassIn;
        if (!run.FromSorted)
        {
            PathWeek state = states[(run.Path!, run.Week)];
            fit *= run.Mode == LineMode.Fresh ? state.FreshShare : state.FreshShare + state.CrackShare;
        }
        fit *= run.Mode == LineMode.Fresh ? instance.KeptFresh : instance.KeptCrack;
        InstanceLot lot = instance.Lots[lots[run.Lot]];
        foreach (MadeRow row in made[(run.Run, run.Lot)])
            if (products.TryGetValue(row.Product, out int q) && fit * lot.SortShares[instance.Products[q].Sort] is > 0 and var gives)
                packed[instance.Products[q].Sort] += row.Mass / gives;
        return packed;
    }

    // A seed run that serves several needs is as many ways out, by their cloves.
    private IEnumerable<PolicyExit> Exits(RunRow run, double part, SeedRow[] seed)
    {
        double cloves = seed.Sum(s => s.Cloves);
        return cloves > 0
            ? seed.Select(s => new PolicyExit(run.Week, lines[run.Line], false, part * s.Cloves / cloves, Packed(run), NeedOf(s), s.Cloves / instance.MassScale))
            : [new PolicyExit(run.Week, lines[run.Line], false, part, Packed(run), -1, 0)];
    }

    private int NeedOf(SeedRow s) => Array.FindIndex(instance.SeedNeeds, n => n.Need.Variety == s.Variety && n.Need.By == s.By && n.Class == s.NeedClass);

    public PolicySorted[] Sorted() =>
        [.. plan.Runs.Where(r => r.FromSorted && lots.ContainsKey(r.Lot)).Select(r => new PolicySorted(r.Week, lines[r.Line], lots[r.Lot], r.MassIn / instance.MassScale, Packed(r))).OrderBy(r => r.Week)];

    public PolicySlot[] Slots() =>
    [
        .. plan.Fills.Where(f => orders.ContainsKey((f.Order, f.Line))).GroupBy(f => (orders[(f.Order, f.Line)], products[f.Product])).Select(g =>
        {
            int[] by = new int[instance.Weeks];
            foreach (FillRow f in g) for (int t = f.Week; t < by.Length; t++) by[t] += f.Units;
            return new PolicySlot(g.Key.Item1, g.Key.Item2, by, g.Min(f => f.Week));
        }),
    ];

    public int[] WholeWeeks()
    {
        var week = plan.Fills.Where(f => f.Units > 0).GroupBy(f => f.Order).ToDictionary(g => g.Key, g => g.Min(f => f.Week));
        return [.. instance.WholeOrders.Select(o => week.GetValueOrDefault(o.Id, -1))];
    }

    public int[] Sales()
    {
        var sold = plan.Sales.GroupBy(s => (s.Product, s.Week)).ToDictionary(g => g.Key, g => g.Sum(s => s.Units));
        return [.. instance.Market.Select(m => sold.GetValueOrDefault((instance.Products[m.Product].Id, m.Week)))];
    }

    /// <summary>The stock that the plan's makings and shipments leave, first to spoil first out.</summary>
    public double[][] StockAfter()
    {
        var shelf = new FinishedStock(instance);
        double[][] after = [.. instance.Products.Select(_ => new double[instance.Weeks])];
        ILookup<int, MadeRow> makes = plan.Made.ToLookup(m => m.Week);
        ILookup<int, FillRow> fills = plan.Fills.ToLookup(f => f.Week);
        ILookup<int, SaleRow> sales = plan.Sales.ToLookup(s => s.Week);
        for (int t = instance.AsOf; t < instance.Weeks; t++)
        {
            shelf.Begin(t);
            foreach (MadeRow m in makes[t]) shelf.Add(products[m.Product], t, m.Mass / instance.MassScale);
            foreach (FillRow f in fills[t]) shelf.TakeUnits(products[f.Product], f.Units);
            foreach (SaleRow s in sales[t]) shelf.TakeUnits(products[s.Product], s.Units);
            for (int q = 0; q < after.Length; q++) after[q][t] = shelf.Usable(q, t);
        }
        return after;
    }

    public double[][] ClassOut()
    {
        double[][] gives = [.. instance.Sorts.Select(_ => new double[instance.Weeks])];
        foreach (RunRow run in plan.Runs.Where(r => r.Mode == LineMode.Fresh && r.Path is not null && lots.ContainsKey(r.Lot)))
            for (int k = 0; k < gives.Length; k++)
                if (!instance.Sorts[k].Clove)
                    gives[k][run.Week] += run.MassIn / instance.MassScale * states[(run.Path!, run.Week)].FreshShare * instance.KeptFresh * instance.Lots[lots[run.Lot]].SortShares[k];
        return gives;
    }

    /// <summary>[week] person-hours that the plan's cracker runs take.</summary>
    public double[] CrackPeople()
    {
        double[] hours = new double[instance.Weeks];
        foreach (RunRow run in plan.Runs.Where(r => r.Mode == LineMode.Crack)) hours[run.Week] += (run.Hours + run.OvertimeHours) * instance.Lines[lines[run.Line]].Heads;
        return hours;
    }

    public double[][] SeedBy()
    {
        double[][] by = [.. instance.SeedNeeds.Select(_ => new double[instance.Weeks])];
        for (int n = 0; n < by.Length; n++)
            foreach (SeedRow s in plan.Seed.Where(s => s.Variety == instance.SeedNeeds[n].Need.Variety && s.By == instance.SeedNeeds[n].Need.By && s.NeedClass == instance.SeedNeeds[n].Class))
                for (int t = s.Week; t < instance.Weeks; t++) by[n][t] += s.Cloves / instance.MassScale;
        return by;
    }

    public double[][] Worths()
    {
        double[][] worth = [.. instance.Products.Select(_ => new double[instance.Weeks])];
        foreach (WorthRow w in plan.Worths.Where(w => w.Kind == "product" && w.Week is >= 0 && w.Week < instance.Weeks))
            if (products.TryGetValue(new ProductId(w.Name), out int q)) worth[q][w.Week!.Value] = w.Value / (instance.Products[q].Net * instance.MoneyScale);
        return worth;
    }

    public double[][] HourWorths()
    {
        double[][] worth = [.. instance.Lines.Select(_ => new double[instance.Weeks])];
        foreach (WorthRow w in plan.Worths.Where(w => w.Week is >= 0 && w.Week < instance.Weeks))
        {
            if (w.Kind == "line" && lines.TryGetValue(new LineId(w.Name), out int i)) worth[i][w.Week!.Value] += w.Value / instance.MoneyScale;
            if (w.Kind == "people")
                for (int j = 0; j < worth.Length; j++) worth[j][w.Week!.Value] += w.Value / instance.MoneyScale * instance.Lines[j].Heads;
        }
        return worth;
    }
}
