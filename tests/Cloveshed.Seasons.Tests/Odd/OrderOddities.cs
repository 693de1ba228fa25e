using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;
using static Cloveshed.Seasons.Tests.Odd.Oddity;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Odd in what is ordered, when, and on which terms.</summary>
internal static class OrderOddities
{
    public static IReadOnlyList<Oddity> All { get; } =
    [
        OfSeason("orders for a class that no lot holds", (s, _) =>
        {
            // The largest class starts where no bulb reaches.
            double top = s.Sizes[^1].MaxMm ?? s.Sizes[^1].MinMm + 20;
            SizeClass giant = new(new("giant"), null, 400, null);
            SizeClass last = s.Sizes[^1] with { MaxMm = 400 };
            Product crate = new(new("giants"), ProductForm.Bulb, "giant", 20, 1, 2, false);
            return top >= 400 || s.Sizes[^1].MinMm >= 400 ? s : s with
            {
                Sizes = [.. s.Sizes.SkipLast(1), last, giant],
                Products = [.. s.Products, crate],
                Orders = [.. s.Orders, .. Enumerable.Range(0, s.Settings.Weeks).Select(w => Line(s, $"giants {w}", w, crate.Id, 10) with { ShortCost = 5 })],
            };
        }, s => s.Products.Any(p => p.From == "giant")),
        OfSeason("nothing of what is ordered can be had", (s, _) => s with
        {
            // The only class with a product starts at 400 mm.
            Sizes = [new(new("any"), null, 20, 400), new(new("giant"), null, 400, null)],
            Products = [new(new("giants"), ProductForm.Bulb, "giant", 20, 1, 2, false)],
            Stock = [], Market = [],
            Orders = [.. Enumerable.Range(0, s.Settings.Weeks).Select(w => Line(s, $"giants {w}", w, new("giants"), 10) with { ShortCost = w % 2, LargerOk = true })],
        }, s => s.Products.All(p => p.From == "giant") && s.Orders.Count == s.Settings.Weeks),
        OfSeason("zero orders", (s, _) => s with { Orders = [] }, s => s.Orders.Count == 0),
        OfSeason("orders due before the season", (s, pcg) => Dated(s, _ => s.Settings.FirstWeek.PlusDays(-pcg.Whole(1, 30))),
            s => s.Orders.All(o => o.Due < s.Settings.FirstWeek)),
        OfSeason("orders due after the season", (s, pcg) => Dated(s, _ => s.Settings.Monday(s.Settings.Weeks).PlusDays(pcg.Whole(0, 60))),
            s => s.Orders.All(o => s.Settings.WeekOf(o.Due) >= s.Settings.Weeks)),
        OfSeason("orders on both sides of the season's ends", (s, pcg) => Dated(s, _ => s.Settings.FirstWeek.PlusDays(pcg.Whole(-40, 7 * s.Settings.Weeks + 40))),
            s => s.Orders.Count > 0),
        EachOrder("ship_from long before due", (s, o) => o with { ShipFrom = s.Settings.FirstWeek.PlusDays(-100) },
            s => s.Orders.All(o => o.ShipFrom < s.Settings.FirstWeek)),
        EachOrder("everything due the same day", (s, o) => o with
        {
            Due = s.Settings.Monday(s.Settings.Weeks - 1), ShipFrom = s.Settings.Monday(s.Settings.Weeks - 1),
        }, s => s.Orders.Select(o => o.Due).Distinct().Count() == 1),
        EachOrder("every order whole", (_, o) => o with { Whole = true }, s => s.Orders.All(o => o.Whole)),
        OfSeason("whole orders that can and cannot be met", (s, _) =>
        {
            // Ten lines of one unit each, and ten lines of which one alone asks for more than the season grows.
            Product[] products = [.. s.Products.Take(10)];
            int week = s.Settings.Weeks / 2;
            OrderLine Of(string order, int n, int units) => Line(s, order, week, products[n].Id, units) with
            {
                Number = $"{n + 1}", Whole = n == 0, ShortCost = 1, ShipFrom = s.Settings.FirstWeek,
            };
            return s with
            {
                Orders =
                [
                    .. s.Orders,
                    .. Enumerable.Range(0, products.Length).Select(n => Of("can", n, 1)),
                    .. Enumerable.Range(0, products.Length).Select(n => Of("cannot", n, n == products.Length - 1 ? 5_000_000 : 1)),
                ],
            };
        }, s => s.Orders.GroupBy(o => o.Order).Any(g => g.Count() > 1 && g.Count(o => o.Whole) == 1)),
        EachOrder("larger will do", (_, o) => o with { LargerOk = true }, s => s.Orders.All(o => o.LargerOk)),
        OfSeason("a chain of larger classes", (s, _) =>
        {
            // Every class has the same pack; only the smallest is asked for, many times over.
            Product[] chain = [.. s.Sizes.Select(c => new Product(new($"chain {c.Id}"), ProductForm.Bulb, c.Id.Text, 25, 0.5m, 3, false))];
            int units = (int)(s.Lots.Sum(l => l.Net) / 25 / chain.Length / s.Settings.Weeks) + 1;
            return s with
            {
                Products = [.. s.Products, .. chain],
                Orders =
                [
                    .. s.Orders,
                    .. chain.SelectMany((p, i) => Enumerable.Range(0, s.Settings.Weeks).Select(w =>
                        Line(s, $"chain {i} {w}", w, p.Id, units) with { LargerOk = i % 2 == 0, Price = 9 + i, ShortCost = 2 })),
                ],
            };
        }, s => s.Products.Count(p => p.Id.Text.StartsWith("chain", StringComparison.Ordinal)) == s.Sizes.Count),
        EachOrder("no order firm", (_, o) => o with { Firm = false, ShortCost = 50 }, s => s.Orders.All(o => !o.Firm)),
        EachOrder("late costs more than the goods", (_, o) => o with { LateCost = 10 * o.Price + 100 }, s => s.Orders.All(o => o.LateCost > o.Price)),
        EachOrder("late costs nothing", (_, o) => o with { LateCost = 0 }, s => s.Orders.All(o => o.LateCost == 0)),
        EachOrder("short costs ten times the price", (_, o) => o with { Firm = true, ShortCost = 10 * o.Price }, s => s.Orders.All(o => o.ShortCost >= o.Price)),
        EachOrder("given away", (_, o) => o with { Price = 0 }, s => s.Orders.All(o => o.Price == 0)),
        EachOrder("one unit each", (_, o) => o with { Units = 1 }, s => s.Orders.All(o => o.Units == 1)),
        EachOrder("a million each", (_, o) => o with { Units = 1_000_000 }, s => s.Orders.All(o => o.Units == 1_000_000)),
        OfSeason("many small orders", (s, pcg) => s with
        {
            Orders =
            [
                .. Enumerable.Range(0, 400).Select(i => Line(s, $"small {i}", pcg.Whole(0, s.Settings.Weeks - 1), pcg.Pick(s.Products).Id, pcg.Whole(1, 4)) with
                {
                    LateCost = pcg.Money(0, 2), ShortCost = pcg.Money(0, 3), Price = pcg.Money(1, 60),
                }),
            ],
        }, s => s.Orders.Count == 400),
        OfSeason("an order of thirty lines", (s, pcg) => s with
        {
            Orders = [.. s.Orders, .. Enumerable.Range(1, 30).Select(n => Line(s, "long", s.Settings.Weeks - 1, pcg.Pick(s.Products).Id, n) with { Number = $"{n}" })],
        }, s => s.Orders.GroupBy(o => o.Order).Any(g => g.Count() >= 30)),
    ];

    private static OrderLine Line(Season s, string order, int week, ProductId product, int units) => new(
        new(order), "1", "customer", product, s.Settings.Monday(week), s.Settings.Monday(week).PlusDays(4), units, 30, true, 1, 0, false, false);

    private static Oddity EachOrder(string name, Func<Season, OrderLine, OrderLine> change, Func<Season, bool> shows) =>
        OfSeason(name, (s, _) => s with { Orders = [.. s.Orders.Select(o => change(s, o))] }, shows);

    /// <summary>The orders with other due dates, each shipping from the Monday of its due week.</summary>
    private static Season Dated(Season s, Func<OrderLine, LocalDate> due) => s with
    {
        Orders = [.. s.Orders.Select(o => { LocalDate day = due(o); return o with { Due = day, ShipFrom = s.Settings.Monday(s.Settings.WeekOf(day)) }; })],
    };
}
