using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Draws products, orders, market, stock, seed needs and prices as is.</summary>
internal static class OddTrade
{
    public static Product[] Products(OddShape shape, IReadOnlyList<SizeClass> sizes, IReadOnlyList<CloveGrade> grades, Pcg pcg)
    {
        double[] nets = shape.Unit == MassUnit.Pound ? [30, 5] : [10, 0.5];
        List<Product> products = [];
        void Add(ProductForm form, string from, double net)
        {
            string id = $"{from} {net.ToString(CultureInfo.InvariantCulture)}";
            decimal cost = pcg.Money(0, 0.1 * net);
            int shelf = pcg.Pick([0, 0, 1, 2, 4, 9]);
            if (shape.Organic != OrganicMix.All) products.Add(new(new(id), form, from, net, cost, shelf, false));
            if (shape.Organic == OrganicMix.All || (shape.Organic == OrganicMix.Some && pcg.Chance(0.5)))
            {
                products.Add(new(new(id + " org"), form, from, net, cost + pcg.Money(0, 1), shelf, true));
            }
        }
        foreach (SizeClass size in sizes)
        {
            if (pcg.Chance(0.85)) Add(ProductForm.Bulb, size.Id.Text, nets[0]);
            if (pcg.Chance(0.3)) Add(ProductForm.Bulb, size.Id.Text, nets[1]);
        }
        foreach (CloveGrade grade in grades.Where(_ => pcg.Chance(0.85))) Add(ProductForm.Clove, grade.Id.Text, nets[0]);
        if (products.Count == 0) Add(ProductForm.Bulb, sizes[^1].Id.Text, nets[0]);
        return [.. products];
    }

    public static OrderLine[] Orders(OddShape shape, SeasonSettings settings, IReadOnlyList<Product> products, double mass, Pcg pcg)
    {
        if (shape.Demand is not (Demand.OrdersAndMarket or Demand.OrdersOnly)) return [];
        int count = 3 + 2 * shape.Lots;
        double each = mass * shape.Asked * 0.6 / (count * 1.5);
        List<OrderLine> lines = [];
        for (int i = 1; i <= count; i++)
        {
            LocalDate due = settings.FirstWeek.PlusDays(pcg.Whole(0, 7 * shape.Weeks - 1));
            LocalDate monday = settings.Monday(settings.WeekOf(due));
            LocalDate from = pcg.Chance(0.7) ? monday : due.PlusDays(-pcg.Whole(0, 40));
            string customer = $"customer {pcg.Whole(1, 7)}";
            bool whole = pcg.Chance(0.15), firm = pcg.Chance(0.8);
            for (int n = 1, of = pcg.Pick([1, 1, 1, 2, 4]); n <= of; n++)
            {
                Product product = pcg.Pick(products);
                int units = Math.Max(1, (int)Math.Min(1_000_000, each * pcg.Factor(0.3, 3) / product.Net));
                lines.Add(new(new($"o{i}"), n.ToString(CultureInfo.InvariantCulture), customer, product.Id, from, due, units,
                    pcg.Money(0.3 * product.Net, 1.6 * product.Net), firm, pcg.Chance(0.6) ? pcg.Money(0, 0.2 * product.Net) : 0,
                    pcg.Chance(0.7) ? pcg.Money(0, 0.6 * product.Net) : 0, pcg.Chance(0.3), whole && n == 1));
            }
        }
        return [.. lines];
    }

    public static MarketWeek[] Market(OddShape shape, IReadOnlyList<Product> products, double mass, Pcg pcg)
    {
        if (shape.Demand is not (Demand.OrdersAndMarket or Demand.MarketOnly)) return [];
        return
        [
            .. products.Where(_ => pcg.Chance(0.6)).SelectMany(p => Enumerable.Range(0, shape.Weeks).Where(_ => pcg.Chance(0.7)).Select(w =>
            {
                double units = Math.Round(mass * 0.3 / (shape.Weeks * products.Count * p.Net) * pcg.Factor(0.2, 4), 1);
                bool band = pcg.Chance(0.5);
                return new MarketWeek(p.Id, w, pcg.Money(0.2 * p.Net, 0.9 * p.Net), band ? Math.Round(units * 0.6, 1) : null, units,
                    band ? Math.Round(units * 1.7, 1) : null);
            })),
        ];
    }

    public static StockRow[] Stock(SeasonSettings settings, IReadOnlyList<Product> products, IReadOnlyList<LotRow> lots, Pcg pcg) =>
    [
        .. products.Where(_ => pcg.Chance(0.3)).Select(p => new StockRow(
            p.Id, settings.AsOfWeek - pcg.Whole(0, p.ShelfWeeks), pcg.Whole(1, 300), Of(p.Organic, lots, pcg))),
    ];

    private static LotId? Of(bool organic, IReadOnlyList<LotRow> lots, Pcg pcg)
    {
        LotRow[] fit = [.. lots.Where(l => l.Organic || !organic)];
        return fit.Length > 0 && pcg.Chance(0.5) ? pcg.Pick(fit).Lot : null;
    }

    public static SeedNeed[] SeedNeeds(OddShape shape, SeasonSettings settings, IReadOnlyList<Variety> varieties, double mass, Pcg pcg) =>
        !shape.SeedNeeds ? [] :
    [
        .. varieties.SelectMany(v => Enum.GetValues<SeedClass>().Where(_ => pcg.Chance(0.5)).Select(c => new SeedNeed(
            v.Id, Math.Round(mass * pcg.Between(0.005, 0.05)), settings.FirstWeek.PlusDays(pcg.Whole(7, 7 * shape.Weeks - 1)), c, pcg.Money(0.5, 6)))),
    ];

    public static AsIsPrice[] AsIs(OddShape shape, IReadOnlyList<Variety> varieties, double mass, Pcg pcg)
    {
        if (shape.Demand == Demand.Nothing || (shape.Demand != Demand.AsIsOnly && pcg.Chance(0.3))) return [];
        List<AsIsPrice> prices = [new(null, pcg.Money(0.02, 0.3), pcg.Chance(0.5) ? Math.Round(mass / shape.Weeks) : null)];
        if (pcg.Chance(0.4)) prices.Add(new(varieties[0].Id, pcg.Money(0.02, 0.5), pcg.Chance(0.5) ? Math.Round(mass / 20) : null));
        return [.. prices];
    }
}
