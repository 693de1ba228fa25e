using Cloveshed.DemoSeason.Basin;
using Cloveshed.DemoSeason.Lots;
using Cloveshed.DemoSeason.Sales;
using Cloveshed.DemoSeason.Shed;
using Cloveshed.DemoSeason.Truth;
using NodaTime;

namespace Cloveshed.DemoSeason;

/// <summary>
/// The demo season: the invented Quillon Flat Garlic in the invented Sorrel Basin, from Monday 29 June 2026 for 52 weeks. It is
/// a pure function of the seed: files by path, ready to be written. Nothing under demo-season is taken from demo-truth except
/// through the errors of an estimate or a sample.
/// </summary>
public static class Scenario
{
    public const ulong Seed = 2026;
    public const int Weeks = 52;
    public static readonly LocalDate FirstWeek = new(2026, 6, 29);

    public static LocalDate Monday(int week) => FirstWeek.PlusDays(7 * week);

    public static IReadOnlyList<(string Path, string Text)> Files(ulong seed)
    {
        IReadOnlyList<LotKnowledge> known = LotKnowledge.Of([.. CarriedOver.Draw(seed), .. NewCrop.Draw(seed)], seed);
        IReadOnlyList<OrderLine> orders = OrderBook.Draw(seed);
        IReadOnlyList<MarketWeek> market = Market.Draw(seed);
        return
        [
            ("demo-season/season.json", Settings.File()),
            ("demo-season/sizes.csv", Sizes.File()),
            ("demo-season/varieties.csv", Varieties.File()),
            ("demo-season/places.csv", Places.File()),
            ("demo-season/place-weeks.csv", YardYear.File()),
            ("demo-season/rooms.csv", Places.RoomsFile()),
            ("demo-season/lots.csv", LotKnowledge.File(known)),
            ("demo-season/samples.csv", Samples.File(known, seed)),
            ("demo-season/yields.csv", Sizes.YieldsFile()),
            ("demo-season/lines.csv", Lines.File()),
            ("demo-season/line-weeks.csv", Lines.WeeksFile()),
            ("demo-season/people.csv", Lines.PeopleFile()),
            ("demo-season/products.csv", Products.File()),
            ("demo-season/clove-grades.csv", Sizes.GradesFile()),
            ("demo-season/stock.csv", Products.StockFile()),
            ("demo-season/orders.csv", OrderBook.File(orders)),
            ("demo-season/market.csv", Market.File(market)),
            ("demo-season/seed-needs.csv", SeedNeeds.File()),
            ("demo-season/sell-as-is.csv", SeedNeeds.AsIsFile()),
            ("demo-season/setups.csv", Shifts.SetupsFile()),
            ("demo-season/shifts.csv", Shifts.File()),
            ("demo-truth/lots.csv", TruthFiles.Lots([.. known.Select(k => k.Lot)])),
            ("demo-truth/market.csv", Market.TruthFile(market)),
            ("demo-truth/place-weeks.csv", YardYear.TruthFile(seed)),
            ("demo-truth/README.md", TruthFiles.Readme()),
        ];
    }
}
