using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Odd.Oddity;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Odd in products, market, stock, seed and prices.</summary>
internal static class TradeOddities
{
    public static IReadOnlyList<Oddity> All { get; } =
    [
        EachProduct("shelf life of none", p => p with { ShelfWeeks = 0 }, s => s.Products.All(p => p.ShelfWeeks == 0)),
        EachProduct("shelf life of sixty weeks", p => p with { ShelfWeeks = 60 }, s => s.Products.All(p => p.ShelfWeeks == 60)),
        EachProduct("making costs more than any price", p => p with { UnitCost = 4 * (decimal)p.Net + 10 },
            s => s.Products.All(p => s.Orders.All(o => o.Product != p.Id || o.Price < p.UnitCost))),
        EachProduct("bulky units", p => p with { Net = 2000 }, s => s.Products.All(p => p.Net == 2000)),
        EachProduct("units of an ounce", p => p with { Net = 0.0625 }, s => s.Products.All(p => p.Net == 0.0625)),
        OfSeason("the same class in three packs", (s, _) => s with
        {
            Products =
            [
                .. s.Products,
                .. s.Products.Take(3).SelectMany(p => new[] { 1.0, 2.5 }.Select(net =>
                    p with { Id = new($"{p.Id} by {net.ToString(System.Globalization.CultureInfo.InvariantCulture)}"), Net = net, UnitCost = 0.07m })),
            ],
        }, s => s.Products.GroupBy(p => (p.Form, p.From, p.Organic)).Any(g => g.Select(p => p.Net).Distinct().Count() >= 3)),
        OfSeason("the same product twice", (s, _) => s with
        {
            // Alike in form, class, net and organic, and dearer to make: two rows that only their names tell apart.
            Products = [.. s.Products, .. s.Products.Select(p => p with { Id = new(p.Id + " again"), UnitCost = p.UnitCost + 0.5m })],
        }, s => s.Products.GroupBy(p => (p.Form, p.From, p.Organic, p.Net)).All(g => g.Count() >= 2)),
        OfSeason("twins of other cost", (s, _) => s with
        {
            Products =
            [
                .. s.Products,
                .. s.Products.Where(p => !p.Organic && !s.Products.Any(t => t.Organic && (t.Form, t.From, t.Net) == (p.Form, p.From, p.Net)))
                    .Select(p => p with { Id = new(p.Id + " twin"), Organic = true, UnitCost = p.UnitCost * 3 + 1 }),
            ],
            Lots = [.. s.Lots.Select(l => l with { Organic = (l.Lot.Text[^1] & 1) == 0 || l.Organic, Inhibitor = false })],
        }, s => s.Products.Any(p => p.Organic && s.Products.Any(t => !t.Organic && t.UnitCost < p.UnitCost && (t.Form, t.From, t.Net) == (p.Form, p.From, p.Net)))),

        OfSeason("market of less than one", (s, _) => s with
        {
            Market = [.. s.Products.SelectMany(p => Enumerable.Range(0, s.Settings.Weeks).Select(w => new MarketWeek(p.Id, w, 50, 0, w % 2 == 0 ? 0.7 : 0, 1.4)))],
        }, s => s.Market.All(m => m.P50 < 1)),
        OfSeason("market of broken units", (s, _) => s with
        {
            Market = [.. s.Products.SelectMany(p => Enumerable.Range(0, s.Settings.Weeks).Select(w => new MarketWeek(p.Id, w, (decimal)p.Net * 0.5m, null, 3.999 + w / 7.0, null)))],
        }, s => s.Market.Any(m => m.P50 % 1 > 0)),
        OfSeason("market without a floor", (s, _) => s with
        {
            Market = [.. s.Products.SelectMany(p => Enumerable.Range(0, s.Settings.Weeks).Select(w => new MarketWeek(p.Id, w, 0.01m, 0, 5_000_000, 9_000_000)))],
        }, s => s.Market.Count > 0),

        OfSeason("stock about to expire", (s, _) => s with
        {
            Stock = [.. s.Products.Select(p => new StockRow(p.Id, s.Settings.AsOfWeek - p.ShelfWeeks, 100, null))],
        }, s => s.Stock.All(k => k.Made + s.Products.First(p => p.Id == k.Product).ShelfWeeks == s.Settings.AsOfWeek)),
        OfSeason("stock already expired", (s, _) => s with
        {
            Stock = [.. s.Products.Select(p => new StockRow(p.Id, s.Settings.AsOfWeek - p.ShelfWeeks - 1, 100, null))],
        }, s => s.Stock.All(k => k.Made + s.Products.First(p => p.Id == k.Product).ShelfWeeks < s.Settings.AsOfWeek)),
        OfSeason("stock by lot", (s, _) => s with
        {
            Stock =
            [
                .. s.Products.Where(p => !p.Organic).SelectMany(p => s.Lots.Select(l => (LotId?)l.Lot).Distinct().Take(2).Prepend(null)
                    .Select((lot, i) => new StockRow(p.Id, s.Settings.AsOfWeek, 3 + i, lot))),
            ],
        }, s => s.Stock.Select(k => k.Lot).Distinct().Count() > 1 || s.Products.All(p => p.Organic)),

        OfSeason("seed that cannot be had", (s, _) => s with
        {
            SeedNeeds = [.. s.Varieties.Select(v => new SeedNeed(v.Id, 5_000_000, s.Settings.Monday(s.Settings.Weeks).PlusDays(-1), SeedClass.A, 3))],
        }, s => s.SeedNeeds.All(n => n.Net > s.Lots.Where(l => l.SeedClass == SeedClass.A).Sum(l => l.Net))),
        OfSeason("seed due before any is dug", (s, _) => s with
        {
            Lots = [.. s.Lots.Select(l => l with { Harvested = s.Settings.Monday(Math.Min(s.Settings.Weeks - 1, s.Settings.AsOfWeek + 1)), SeedClass = SeedClass.A })],
            SeedNeeds = [.. s.Varieties.Select(v => new SeedNeed(v.Id, 900, s.Settings.Monday(s.Settings.AsOfWeek), SeedClass.B, 2))],
            SealedRooms = [],
        }, s => s.Settings.Weeks == 1 || s.SeedNeeds.All(n => s.Lots.All(l => l.Harvested > n.By))),
        OfSeason("seed of every class at once", (s, _) => s with
        {
            SeedNeeds = [.. s.Varieties.SelectMany(v => Enum.GetValues<SeedClass>().Select((c, i) => new SeedNeed(v.Id, 700 + 100 * i, s.Settings.Monday(s.Settings.Weeks - 1), c, 4 - i)))],
            Lots = [.. s.Lots.Select(l => l with { SeedClass = (SeedClass)(l.Lot.Text[^1] % 3), Inhibitor = false })],
        }, s => s.SeedNeeds.Count == 3 * s.Varieties.Count),
        OfSeason("seed due outside the season", (s, _) => s with
        {
            SeedNeeds = [.. s.Varieties.SelectMany(v => new[] { -10, 7 * s.Settings.Weeks + 40 }.Select(d => new SeedNeed(v.Id, 400, s.Settings.FirstWeek.PlusDays(d), SeedClass.C, 1)))],
        }, s => s.SeedNeeds.Any(n => n.By < s.Settings.FirstWeek) && s.SeedNeeds.Any(n => s.Settings.WeekOf(n.By) >= s.Settings.Weeks)),

        OfSeason("keeping pays best", (s, _) => s with { Settings = s.Settings with { EndPrice = 40 } }, s => s.Settings.EndPrice == 40),
        OfSeason("every variety sold as is by its own price", (s, _) => s with
        {
            AsIsPrices = [.. s.Varieties.Select((v, i) => new AsIsPrice(v.Id, 0.1m * i, i % 2 == 0 ? 0 : null)), new(null, 9, null)],
        }, s => s.AsIsPrices.Count == s.Varieties.Count + 1),
        OfSeason("sold as is by the crumb", (s, _) => s with { AsIsPrices = [new(null, 0.2m, 0.5)] }, s => s.AsIsPrices[0].Limit == 0.5),
    ];

    private static Oddity EachProduct(string name, Func<Product, Product> change, Func<Season, bool> shows) =>
        OfSeason(name, (s, _) =>
        {
            Product[] products = [.. s.Products.Select(change)];
            // Stock older than a new, shorter shelf life may stand; it only cannot ship.
            return s with { Products = products };
        }, shows);
}
