using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>What a plan returns and costs, by kind, in the season's currency.</summary>
public sealed record PlanValue(IReadOnlyDictionary<string, double> Revenues, IReadOnlyDictionary<string, double> Costs)
{
    public double Revenue => Revenues.Values.Sum();
    public double Value => Revenue - Costs.Values.Sum();
}

/// <summary>Sums a plan's value from its rows, never from the model that made it.</summary>
public static class Valuation
{
    public static PlanValue Of(Season season, PlanAnswer a)
    {
        SeasonSettings s = season.Settings;
        var products = season.Products.ToDictionary(p => p.Id);
        var orders = season.Orders.ToDictionary(o => (o.Order, o.Number));
        var places = season.Places.ToDictionary(p => p.Id);
        var lines = season.Lines.ToDictionary(l => l.Id);
        var market = season.Market.ToDictionary(m => (m.Product, m.Week), m => m.Price);
        var varietyOf = season.Lots.GroupBy(l => l.Lot).ToDictionary(g => g.Key, g => g.First().Variety);
        var ends = a.Paths.Where(p => p.Week == s.Weeks).ToDictionary(p => p.Path);

        double fills = 0, late = 0;
        var filled = new Dictionary<(OrderId, string), int>();
        foreach (FillRow f in a.Fills)
        {
            OrderLine o = orders[(f.Order, f.Line)];
            fills += f.Units * (double)o.Price;
            late += f.Units * (double)o.LateCost * Math.Max(0, f.Week - s.WeekOf(o.Due));
            filled[(f.Order, f.Line)] = filled.GetValueOrDefault((f.Order, f.Line)) + f.Units;
        }
        double shorts = season.Orders.Where(o => o.Firm).Sum(o => (double)o.ShortCost * (o.Units - filled.GetValueOrDefault((o.Order, o.Number))));
        var cloves = a.Seed.GroupBy(x => (x.Variety, x.By, x.NeedClass)).ToDictionary(g => g.Key, g => g.Sum(x => x.Cloves));
        double seedShort = season.SeedNeeds.Sum(n => (double)n.ShortCost * Math.Max(0, n.Net - cloves.GetValueOrDefault((n.Variety, n.By, n.Class))));
        double AsIsPrice(VarietyId v) => (double)((season.AsIsPrices.FirstOrDefault(p => p.Variety == v) ?? season.AsIsPrices.First(p => p.Variety is null)).Price);

        var revenues = new Dictionary<string, double>
        {
            ["orders"] = fills,
            ["market"] = a.Sales.Sum(x => x.Units * (double)market[(x.Product, x.Week)]),
            ["as_is"] = a.AsIs.Where(x => !x.Discarded).Sum(x => x.Mass * AsIsPrice(varietyOf[x.Lot])),
            ["standing"] = (double)s.EndPrice * a.Keeps.Where(k => k.Week == s.Weeks - 1)
                .Sum(k => ends[k.Path] is var e ? k.MassAtStart * e.MassRatio * (e.FreshShare + e.CrackShare) : 0),
        };
        var costs = new Dictionary<string, double>
        {
            ["making"] = a.Made.Sum(m => m.Units * (double)products[m.Product].UnitCost),
            ["line"] = a.Runs.Sum(r => r.Hours * (double)lines[r.Line].CostPerHour),
            ["overtime"] = a.Runs.Sum(r => r.OvertimeHours * (double)(lines[r.Line].OvertimeCostPerHour ?? lines[r.Line].CostPerHour)),
            ["storage"] = a.Keeps.Sum(k => k.Bins * (double)places[k.Place].CostPerBinWeek),
            ["place"] = a.Keeps.Select(k => (k.Week, k.Place)).Distinct().Sum(k => (double)places[k.Place].CostPerWeek),
            ["moves"] = a.Moves.Sum(m => m.Bins * (double)places[m.To].MoveInCost),
            ["late"] = late,
            ["short"] = shorts,
            ["seed_short"] = seedShort,
        };
        return new PlanValue(revenues, costs);
    }
}
