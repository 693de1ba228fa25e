using Cloveshed.Core;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// What season-files.md asks of sound input, written against the records alone and independent of the reader: a season of
/// these tests that breaks it would test nothing.
/// </summary>
internal static class Soundness
{
    public static IEnumerable<string> Faults(Season s)
    {
        HashSet<string> lots = [.. s.Lots.Select(l => l.Lot.Text)], varieties = [.. s.Varieties.Select(v => v.Id.Text)],
            places = [.. s.Places.Select(p => p.Id.Text)], products = [.. s.Products.Select(p => p.Id.Text)];
        return
        [
            .. Only(s.Settings.FirstWeek.DayOfWeek == NodaTime.IsoDayOfWeek.Monday && s.Settings.Weeks > 0, "first week"),
            .. Only(s.Sizes.Count > 0 && s.Lots.Count > 0 && s.Places.Count > 0 && s.Lines.Count > 0 && s.Products.Count > 0, "something"),
            .. Only(s.Yields.Select(y => y.Mode).Distinct().Count() == 3, "yields"),
            .. Enumerable.Range(1, s.Sizes.Count - 1).SelectMany(i => Only(s.Sizes[i].MinMm == s.Sizes[i - 1].MaxMm, $"size gap {i}")),
            .. s.Sizes.SelectMany(c => Only(c.MaxMm is null || c.MaxMm > c.MinMm, $"size {c}")),
            .. Unique(s.Sizes, c => c.Id), .. Unique(s.CloveGrades, c => c.Id), .. Unique(s.Varieties, c => c.Id), .. Unique(s.Places, c => c.Id),
            .. Unique(s.Lines, c => c.Id), .. Unique(s.Products, c => c.Id), .. Unique(s.Lots, l => (l.Lot, l.Place)),
            .. Unique(s.PlaceWeeks, p => (p.Place, p.Week)), .. Unique(s.LineWeeks, p => (p.Line, p.Week)), .. Unique(s.People, p => p.Week),
            .. Unique(s.Stock, k => (k.Product, k.Made, k.Lot)), .. Unique(s.Orders, o => (o.Order, o.Number)),
            .. Unique(s.Market, m => (m.Product, m.Week)), .. Unique(s.SeedNeeds, n => (n.Variety, n.By, n.Class)),
            .. Unique(s.AsIsPrices, a => a.Variety?.Text ?? ""), .. Unique(s.SealedRooms, r => r.Place),
            .. s.Lots.SelectMany(l => Only(varieties.Contains(l.Variety.Text) && places.Contains(l.Place.Text), $"reference {l}")),
            .. s.Lots.SelectMany(l => Only(l.Net > 0 && l.Bins > 0, $"mass {l}")),
            .. s.Lots.SelectMany(l => Only((l.FreshShare ?? 0) >= 0 && (l.CrackShare ?? 0) >= 0 && (l.FreshShare ?? 0) + (l.CrackShare ?? 0) <= 1 + 1e-9, $"shares {l}")),
            .. s.Lots.SelectMany(l => Only((l.NetLow ?? l.Net) <= l.Net && (l.NetHigh ?? l.Net) >= l.Net, $"bounds {l}")),
            .. s.Lots.SelectMany(l => Only(!(l.Organic && l.Inhibitor), $"treated organic {l}")),
            .. s.Lots.GroupBy(l => l.Lot).SelectMany(g => Only(g.Select(Shared).Distinct().Count() == 1, $"rows of {g.Key} differ")),
            .. s.Samples.SelectMany(b => Only(lots.Contains(b.Lot.Text) && b.WeightG > 0, $"sample {b}")),
            .. s.Products.SelectMany(p => Only(p.Net > 0 && (p.Form == ProductForm.Bulb
                ? s.Sizes.Any(c => c.Id.Text == p.From) : s.CloveGrades.Any(c => c.Id.Text == p.From)), $"from {p}")),
            .. s.Orders.SelectMany(o => Only(products.Contains(o.Product.Text) && o.Units > 0 && o.Price >= 0 && double.TryParse(o.Number, System.Globalization.CultureInfo.InvariantCulture, out _), $"order {o}")),
            .. s.Orders.SelectMany(o => Only(s.Settings.WeekOf(o.ShipFrom) <= s.Settings.WeekOf(o.Due), $"ships after due {o}")),
            .. s.Market.SelectMany(m => Only(products.Contains(m.Product.Text) && Within(m.Week) && (m.P10 ?? 0) <= m.P50 && (m.P90 ?? m.P50) >= m.P50, $"market {m}")),
            .. s.Stock.SelectMany(k => Only(products.Contains(k.Product.Text) && k.Made <= s.Settings.AsOfWeek && k.Units >= 0 && k.Units % 1 == 0, $"stock {k}")),
            .. s.Stock.Where(k => k.Lot is not null).SelectMany(k => Only(s.Lots.Any(l => l.Lot == k.Lot
                && (l.Organic || !s.Products.First(p => p.Id == k.Product).Organic)), $"stock of lot {k}")),
            .. s.SeedNeeds.SelectMany(n => Only(varieties.Contains(n.Variety.Text) && n.Net > 0, $"seed {n}")),
            .. s.AsIsPrices.SelectMany(a => Only(a.Variety is null || varieties.Contains(a.Variety.Value.Text), $"as is {a}")),
            .. s.PlaceWeeks.SelectMany(p => Only(places.Contains(p.Place.Text) && Within(p.Week), $"place week {p}")),
            .. s.LineWeeks.SelectMany(l => Only(s.Lines.Any(x => x.Id == l.Line) && Within(l.Week) && l.Hours >= 0, $"line week {l}")),
            .. s.People.SelectMany(p => Only(Within(p.Week) && p.Hours >= 0, $"people {p}")),
            .. s.Places.SelectMany(p => Only(OddSeasons.LeastCapacity(s, p.Id) <= p.CapacityBins + 1e-9, $"{p.Id} overfull at a start")),
            .. s.Places.SelectMany(p => Only(p.Kind == PlaceKind.Sealed || p.RunOutWeeks is null, $"runs out {p}")),
            .. s.SealedRooms.SelectMany(r => Only(s.Places.Any(p => p.Id == r.Place && p.Kind == PlaceKind.Sealed) && s.Settings.WeekOf(r.Sealed) < Math.Max(1, s.Settings.AsOfWeek), $"sealed {r}")),
            .. s.SealedRooms.SelectMany(r => s.Lots.Where(l => l.Place == r.Place).SelectMany(l => Only(l.Harvested <= r.Sealed, $"{l.Lot} in after sealing"))),
        ];

        bool Within(int week) => week >= 0 && week < s.Settings.Weeks;
    }

    /// <summary>What the rows of one lot must have in common.</summary>
    private static object Shared(LotRow l) => l with
    {
        Place = default, Bins = 0, Net = 0, NetLow = null, NetHigh = null, Harvested = default, FreshShare = null, CrackShare = null,
    };

    private static IEnumerable<string> Only(bool holds, string fault) => holds ? [] : [fault];

    private static IEnumerable<string> Unique<T, TKey>(IEnumerable<T> rows, Func<T, TKey> key) =>
        rows.GroupBy(key).Where(g => g.Count() > 1).Select(g => $"{typeof(T).Name} twice: {g.Key}");
}
