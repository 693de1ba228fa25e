using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Planning;

/// <summary>What the planner believes beyond the files: how garlic keeps, and what stands in for empty cells.</summary>
public sealed record Beliefs(LotDefaults Lots, KeepingParameters Keeping, ClimateDefaults Climate)
{
    public static Beliefs Default { get; } = new(LotDefaults.Default, KeepingParameters.Default, ClimateDefaults.Default);

    /// <summary>Clocks of lots that were looked at, or whose places' air was read, by row; a row without one goes by the law.</summary>
    public IReadOnlyDictionary<(LotId Lot, PlaceId Place), SeenClock> Clocks { get; init; } = new Dictionary<(LotId, PlaceId), SeenClock>();
}

/// <summary>Season and beliefs in, planning instance out. Pure.</summary>
public static class InstanceBuilding
{
    /// <param name="scaledAs">An instance of nearly the same season, whose scales are taken, so that the two can be compared number by number; null: the season's own.</param>
    public static PlanningInstance Build(Season season, LotsKnown known, Beliefs beliefs, RunWishes? wishes = null, PlanningInstance? scaledAs = null)
    {
        SeasonSettings s = season.Settings;
        int weeks = s.Weeks;
        double totalNet = season.Lots.Sum(r => r.Net), totalBins = season.Lots.Sum(r => r.Bins);
        double massScale = scaledAs?.MassScale ?? (totalNet > 0 ? totalNet / (100.0 * Math.Max(1, season.Lots.Count)) : 1);
        double moneyScale = scaledAs?.MoneyScale ?? massScale * TypicalPrice(season);
        double binScale = scaledAs?.BinScale ?? (totalNet > 0 && totalBins > 0 ? massScale * totalBins / totalNet : 1);
        double perMass = massScale / moneyScale;

        var placeIndex = season.Places.Select((p, i) => (p.Id, i)).ToDictionary(x => x.Id, x => x.i);
        var varietyIndex = season.Varieties.Select((v, i) => (v.Id, i)).ToDictionary(x => x.Id, x => x.i);
        var sealedWeek = season.SealedRooms.ToDictionary(r => r.Place, r => s.WeekOf(r.Sealed));
        InstancePlace[] places = [.. season.Places.Select(p => new InstancePlace(
            p.Id, p.Kind, p.CapacityBins / binScale, (double)p.CostPerBinWeek * binScale / moneyScale, (double)p.CostPerWeek / moneyScale,
            (double)p.MoveInCost * binScale / moneyScale, p.Kind == PlaceKind.Sealed ? p.RunOutWeeks : null,
            sealedWeek.TryGetValue(p.Id, out int w) ? w : null))];

        InstanceSort[] sorts = Sorts(season);
        (InstanceLot[] lots, InstanceRow[] rows, KeepTable[] tables) =
            LotBuilding.Build(season, known, beliefs, placeIndex, varietyIndex, massScale, binScale);
        // Only organic lots make organic products; where every lot is organic there is nothing to keep apart.
        bool organicApart = season.Products.Any(p => p.Organic) && lots.Any(l => !l.Organic);
        bool allOrganic = lots.All(l => l.Organic);

        InstanceProduct[] products = [.. season.Products.Select(p => new InstanceProduct(
            p.Id, Array.FindIndex(sorts, x => x.Clove == (p.Form == ProductForm.Clove) && x.Name == p.From), p.Net / massScale, p.Net,
            (double)p.UnitCost / p.Net * perMass, Math.Min(p.ShelfWeeks, weeks), p.Organic && !allOrganic))];
        var productIndex = season.Products.Select((p, i) => (p.Id, i)).ToDictionary(x => x.Id, x => x.i);

        OrderBuilding orders = OrderBuilding.Build(season, products, productIndex, massScale, moneyScale);
        InstanceSeedNeed[] needs = [.. season.SeedNeeds.Select(n => new InstanceSeedNeed(
            varietyIndex[n.Variety], n.Class, s.WeekOf(n.By), n.Net / massScale, (double)n.ShortCost * perMass, n))];
        InstanceAsIs[] asIs = [.. season.AsIsPrices.Select(a => new InstanceAsIs(
            (double)a.Price * perMass, a.Limit is { } limit ? limit / massScale : double.PositiveInfinity, a))];
        int any = Array.FindIndex(asIs, a => a.Row.Variety is null);

        return new PlanningInstance
        {
            Season = season, Weeks = weeks, AsOf = s.AsOfWeek, MassScale = massScale, MoneyScale = moneyScale, BinScale = binScale,
            Lots = lots, Rows = rows, Tables = tables, Places = places, Lines = Lines(season, massScale, moneyScale),
            People = People(season), Sorts = sorts, Products = products,
            Stock = StockRows(season, products, productIndex, massScale),
            OrderLines = orders.Lines, WholeOrders = orders.Whole,
            Market = [.. season.Market.Where(m => m.P50 >= 1 && m.Week >= s.AsOfWeek && m.Week < weeks).Select(m =>
            {
                InstanceProduct p = products[productIndex[m.Product]];
                int units = (int)Math.Floor(m.P50 + 1e-9);
                return new InstanceMarket(productIndex[m.Product], m.Week, units * p.Net, (double)m.Price / p.NetInUnit * perMass, units, m.Price);
            })],
            SeedNeeds = needs, AsIs = asIs,
            AsIsOfVariety = [.. season.Varieties.Select(v =>
                Array.FindIndex(asIs, a => a.Row.Variety == v.Id) is var own and >= 0 ? own : any)],
            KeptFresh = Kept(season, LineMode.Fresh), KeptCrack = Kept(season, LineMode.Crack), KeptSeed = Kept(season, LineMode.Seed),
            EndPrice = (double)s.EndPrice * perMass,
            SoundShare = life => KeepingLaw.SoundShare(beliefs.Keeping, life),
            Clocks = beliefs.Clocks, OrganicApart = organicApart, Wishes = wishes ?? RunWishes.None,
            ValueOfNothing = -orders.Lines.Sum(l => l.Short * l.Mass) - needs.Sum(n => n.ShortCost * n.Mass),
        };
    }

    private static double Kept(Season season, LineMode mode) => season.Yields.FirstOrDefault(y => y.Mode == mode)?.KeptShare ?? 0;

    private static InstanceSort[] Sorts(Season season) =>
    [
        .. season.Sizes.Select(c => new InstanceSort(c.Id.Text, false, season.Products.Any(p => p.Form == ProductForm.Bulb && p.From == c.Id.Text))),
        .. season.CloveGrades.Select(g => new InstanceSort(g.Id.Text, true, season.Products.Any(p => p.Form == ProductForm.Clove && p.From == g.Id.Text))),
    ];

    private static double TypicalPrice(Season season)
    {
        var nets = season.Products.ToDictionary(p => p.Id, p => p.Net);
        double[] prices = [.. season.Orders.Select(o => (double)o.Price / nets[o.Product])
            .Concat(season.Market.Select(m => (double)m.Price / nets[m.Product]))
            .Concat(season.AsIsPrices.Select(a => (double)a.Price)).Append((double)season.Settings.EndPrice).Where(p => p > 0).Order()];
        return prices.Length > 0 ? prices[prices.Length / 2] : 1;
    }

    private static InstanceLine[] Lines(Season season, double massScale, double moneyScale) => [.. season.Lines.Select(l =>
    {
        double[] hours = new double[season.Settings.Weeks], overtime = new double[season.Settings.Weeks];
        Array.Fill(hours, l.HoursPerWeek);
        // Overtime without a price is not planned: a plan must not rest on a guess of what it costs (the reader warns).
        double usual = l.OvertimeCostPerHour is null ? 0 : l.OvertimeHours;
        Array.Fill(overtime, usual);
        foreach (LineWeek w in season.LineWeeks.Where(w => w.Line == l.Id && w.Week >= 0 && w.Week < hours.Length))
        {
            hours[w.Week] = w.Hours;
            overtime[w.Week] = l.OvertimeCostPerHour is null ? 0 : w.OvertimeOf(l);
        }
        return new InstanceLine(l.Id, l.Mode, l.RatePerHour / massScale, hours, overtime, (double)l.CostPerHour / moneyScale,
            (double)(l.OvertimeCostPerHour ?? l.CostPerHour) / moneyScale, l.Heads, l.MinRun / massScale, l.SetupHours);
    })];

    private static double[] People(Season season)
    {
        double[] people = new double[season.Settings.Weeks];
        Array.Fill(people, double.PositiveInfinity);
        foreach (PeopleWeek w in season.People.Where(w => w.Week >= 0 && w.Week < people.Length)) people[w.Week] = w.Hours;
        return people;
    }

    private static InstanceStock[] StockRows(Season season, InstanceProduct[] products, Dictionary<ProductId, int> index, double massScale) =>
    [
        .. season.Stock.GroupBy(r => (r.Product, r.Made)).Select(g =>
        {
            int p = index[g.Key.Product];
            double units = g.Sum(r => r.Units);
            int last = Math.Min(season.Settings.Weeks - 1, g.Key.Made + season.Products[p].ShelfWeeks);
            return new InstanceStock(p, g.Key.Made, Math.Max(season.Settings.AsOfWeek, g.Key.Made), last, units * products[p].Net, units);
        }).Where(r => r.First <= r.Last && r.Units > 0),
    ];
}
