namespace Cloveshed.Core.Planning;

/// <summary>A source of packed mass: one class or grade out of one run. Masses scaled.</summary>
internal sealed class Source(int run, int lot, int sort, int supply, int week, double mass)
{
    internal int Run => run;
    internal int Lot => lot;
    internal int Sort => sort;
    internal int Supply => supply;
    internal int Week => week;
    internal double Left { get; set; } = mass;
    internal Dictionary<int, double> MadeByProduct { get; } = [];
}

/// <summary>
/// What the runs give and what stands in stock, to be taken unit by whole unit. Nothing is made that is not taken, so what is
/// made and what is shipped agree exactly.
/// </summary>
internal sealed class SupplyPool
{
    private readonly PlanningInstance _instance;
    private readonly List<Source>[,,] _sources; // [sort, supply, week]
    private readonly double[] _stock;
    private readonly Dictionary<(int Product, int Week), List<SuggestedSource>> _suggested;

    /// <param name="suggested">Where the solved master takes a product shipped in a week from: tried first, so that the plan is followed.</param>
    internal SupplyPool(PlanningInstance instance, IEnumerable<Source> sources, Dictionary<(int Product, int Week), List<SuggestedSource>> suggested)
    {
        (_instance, _suggested) = (instance, suggested);
        _sources = new List<Source>[instance.Sorts.Length, instance.SupplyKinds, instance.Weeks];
        foreach (Source s in sources)
        {
            // Where kinds of supply are not kept apart, all of it is the first kind, as it is to the master.
            List<Source> list = _sources[s.Sort, instance.SortApart[s.Sort] ? s.Supply : 0, s.Week] ??= [];
            list.Add(s);
        }
        _stock = [.. instance.Stock.Select(s => s.Mass)];
    }

    /// <summary>Takes up to so many whole units of a product to ship in a week; the number taken.</summary>
    internal int Take(int product, int week, int units)
    {
        InstanceProduct p = _instance.Products[product];
        double wanted = units * p.Net;
        // A hair of tolerance, in units, so that 99.9999999 counts as 100; what is made stays within what is there by far less than a gram per unit.
        double had = Math.Min(wanted, Had(product, week));
        int whole = (int)Math.Floor(had / p.Net + 1e-7);
        if (whole <= 0) return 0;
        double need = whole * p.Net;
        foreach (SuggestedSource from in _suggested.GetValueOrDefault((product, week)) ?? [])
        {
            double most = Math.Min(need, from.Mass), taken = from.Stock >= 0 ? TakeStock(from.Stock, most) : TakeRuns(p, product, from.Supply, from.Made, most);
            from.Mass -= taken;
            need -= taken;
        }
        if (need > 0) TakeAnywhere(product, week, need);
        return whole;
    }

    private double Had(int product, int week)
    {
        InstanceProduct p = _instance.Products[product];
        double had = 0;
        for (int s = 0; s < _stock.Length; s++)
            if (_instance.Stock[s].Product == product && _instance.Stock[s].First <= week && week <= _instance.Stock[s].Last) had += _stock[s];
        foreach ((int supply, int made) in Origins(p, week)) had += _sources[p.Sort, supply, made]?.Sum(s => Math.Max(0, s.Left)) ?? 0;
        return had;
    }

    private double TakeAnywhere(int product, int week, double need)
    {
        InstanceProduct p = _instance.Products[product];
        double wanted = need;
        for (int s = 0; s < _stock.Length && need > 0; s++)
            if (_instance.Stock[s].Product == product && _instance.Stock[s].First <= week && week <= _instance.Stock[s].Last) need -= TakeStock(s, need);
        foreach ((int supply, int made) in Origins(p, week))
            if (need > 0) need -= TakeRuns(p, product, supply, made, need);
        return wanted - need;
    }

    private IEnumerable<(int Supply, int Made)> Origins(InstanceProduct p, int week)
    {
        int first = Math.Max(_instance.AsOf, week - p.Shelf);
        for (int made = first; made <= week; made++)
            for (int o = p.Organic && _instance.OrganicApart ? 1 : 0; o < _instance.SupplyKinds; o++) yield return (o, made);
    }

    private double TakeStock(int stock, double most)
    {
        double taken = Math.Min(_stock[stock], most);
        _stock[stock] -= taken;
        return taken;
    }

    private double TakeRuns(InstanceProduct p, int product, int supply, int made, double most)
    {
        double left = most;
        foreach (Source s in _sources[p.Sort, supply, made] ?? [])
        {
            double taken = Math.Min(Math.Max(0, s.Left), left);
            if (taken <= 0) continue;
            s.Left -= taken;
            s.MadeByProduct[product] = s.MadeByProduct.GetValueOrDefault(product) + taken;
            left -= taken;
            if (left <= 0) break;
        }
        return most - left;
    }
}
