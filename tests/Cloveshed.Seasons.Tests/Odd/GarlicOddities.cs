using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Odd.Oddity;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Odd in the lots.</summary>
internal static class GarlicOddities
{
    public static IReadOnlyList<Oddity> All { get; } =
    [
        OfSeason("a tiny and a huge lot", (s, _) =>
        {
            LotRow like = s.Lots[0] with { Place = s.Places[0].Id, State = null, NetLow = null, NetHigh = null, Hold = false, Ready = null };
            return s with
            {
                Lots = [.. s.Lots, like with { Lot = new("tiny"), Net = 5, Bins = 0.1 }, like with { Lot = new("huge"), Net = 900_000, Bins = 640 }],
            };
        }, s => s.Lots.Any(l => l.Net <= 5) && s.Lots.Any(l => l.Net >= 900_000)),

        OfSeason("lots in every place", (s, pcg) =>
        {
            Place[] open = [.. s.Places.Where(p => s.SealedRooms.All(r => r.Place != p.Id))];
            LotRow[] shut = [.. s.Lots.Where(l => open.All(p => p.Id != l.Place))];
            return s with
            {
                Lots =
                [
                    .. shut,
                    .. s.Lots.Where(l => shut.All(x => x.Lot != l.Lot)).DistinctBy(l => l.Lot).SelectMany(l => open.Select(p => l with
                    {
                        Place = p.Id, Bins = Math.Max(0.1, Math.Round(l.Bins / open.Length, 1)), Net = Math.Round(l.Net / open.Length, 2), NetLow = null, NetHigh = null,
                        Harvested = l.Harvested.PlusDays(-pcg.Whole(0, 5)),
                        FreshShare = l.FreshShare is null ? null : OddGarlic.Round(pcg.Between(0.2, 0.6)),
                        CrackShare = l.CrackShare is null ? null : OddGarlic.Round(pcg.Between(0, 0.4)),
                    })),
                ],
            };
        }, s => s.Lots.Count == s.Places.Count * s.Lots.DistinctBy(l => l.Lot).Count()),

        EachLot("all on hold", (l, _) => l with { Hold = true }, s => s.Lots.All(l => l.Hold)),
        OfSeason("half on hold", (s, _) => s with { Lots = [.. s.Lots.Select(l => l with { Hold = (l.Lot.Text[^1] & 1) == 1 })] },
            s => s.Lots.Any(l => l.Hold)),
        OfSeason("ready after the season", (s, _) => s with
        {
            Lots = [.. s.Lots.Select((l, i) => l with { Ready = (l.Lot.Text[^1] & 1) == 1 ? s.Settings.Monday(s.Settings.Weeks + 2) : s.Settings.AsOf.PlusDays(15) })],
        }, s => s.Lots.Any(l => l.Ready > s.Settings.Monday(s.Settings.Weeks))),
        EachLot("all sound, some fresh, some crack", (l, pcg) =>
        {
            double fresh = OddGarlic.Round(pcg.Between(0, 1));
            return l with { FreshShare = fresh, CrackShare = OddGarlic.Round(1 - fresh) };
        }, s => s.Lots.All(l => Math.Abs(l.FreshShare!.Value + l.CrackShare!.Value - 1) < 1e-9)),
        EachLot("nothing fit", (l, _) => l with { FreshShare = 0, CrackShare = 0 }, s => s.Lots.All(l => l.FreshShare + l.CrackShare == 0)),
        EachLot("all fresh", (l, _) => l with { FreshShare = 1, CrackShare = 0 }, s => s.Lots.All(l => l.FreshShare == 1)),
        EachLot("only for the cracker", (l, _) => l with { FreshShare = 0, CrackShare = 0.9 }, s => s.Lots.All(l => l.FreshShare == 0)),
        EachLot("bulbs all alike", (l, _) => l with { Cv = 0.01, MeanG = 55 }, s => s.Lots.All(l => l.Cv == 0.01)),
        EachLot("bulbs of every size", (l, _) => l with { Cv = 1.2, MeanG = 45 }, s => s.Lots.All(l => l.Cv == 1.2)),
        EachLot("smaller than any class", (l, _) => l with { Cv = 0.1, MeanG = 4 }, s => s.Lots.All(l => l.MeanG == 4)),
        EachLot("all from treated fields", (l, _) => l with { Inhibitor = true, Organic = false }, s => s.Lots.All(l => l.Inhibitor)),
        OfSeason("nothing known", (s, _) => s with
        {
            Lots =
            [
                .. s.Lots.Select(l => l with
                {
                    State = null, NetLow = null, NetHigh = null, Cured = null, FreshShare = null, CrackShare = null, MeanG = null, Cv = null,
                    SeedClass = null, Ready = null,
                }),
            ],
            Samples = [],
            Varieties = [.. s.Varieties.Select(v => v with { Keeps = null, ClovesPerBulb = null, CloveCv = null, CloveLaw = null })],
        }, s => s.Samples.Count == 0 && s.Lots.All(l => l.MeanG is null && l.FreshShare is null)),
        OfSeason("one bulb sampled", (s, _) => s with
        {
            Lots = [.. s.Lots.Select(l => l with { MeanG = null, Cv = null, FreshShare = null, CrackShare = null })],
            Samples = [.. s.Lots.DistinctBy(l => l.Lot).Select(l => new SampleBulb(l.Lot, l.Harvested, 61.5, null, Defect.Mold))],
        }, s => s.Samples.Count == s.Lots.DistinctBy(l => l.Lot).Count()),
        EachLot("wide estimates", (l, _) => l with { State = LotState.Estimated, NetLow = l.Net * 0.25, NetHigh = l.Net * 3 },
            s => s.Lots.All(l => l.NetLow < l.Net && l.NetHigh > l.Net)),
        OfSeason("lots dug after the season", (s, _) => s with
        {
            Lots = [.. s.Lots, s.Lots[0] with { Lot = new("late"), Place = s.Places[0].Id, Harvested = s.Settings.Monday(s.Settings.Weeks).PlusDays(1) }],
        }, s => s.Lots.Any(l => s.Settings.WeekOf(l.Harvested) >= s.Settings.Weeks)),
        OfSeason("every lot dug after the season", (s, _) => s with
        {
            Lots = [.. s.Lots.Select(l => l with { Harvested = s.Settings.Monday(s.Settings.Weeks), Ready = null })],
            Samples = [], Stock = [], SealedRooms = [],
        }, s => s.Lots.All(l => s.Settings.WeekOf(l.Harvested) >= s.Settings.Weeks)),
        OfSeason("names that need quotes", (s, _) => OddNames.Quoted(s), s => s.Lots.Any(l => l.Lot.Text.Contains('"', StringComparison.Ordinal))),
    ];

    private static Oddity EachLot(string name, Func<LotRow, Pcg, LotRow> change, Func<Season, bool> shows) =>
        OfSeason(name, (s, pcg) =>
        {
            // A lot's rows may differ only in a few cells: one lot, one draw.
            Dictionary<string, LotRow> changed = s.Lots.DistinctBy(l => l.Lot).ToDictionary(l => l.Lot.Text, l => change(l, pcg));
            LotRow[] lots =
            [
                .. s.Lots.Select(l => changed[l.Lot.Text] with
                {
                    Place = l.Place, Bins = l.Bins, Net = l.Net, Harvested = l.Harvested,
                    NetLow = Of(changed[l.Lot.Text].NetLow, l, changed), NetHigh = Of(changed[l.Lot.Text].NetHigh, l, changed),
                }),
            ];
            // An organic product's stock cannot name a lot that is organic no longer.
            return s with
            {
                Lots = lots,
                Stock = [.. s.Stock.Where(k => k.Lot is null || lots.First(l => l.Lot == k.Lot).Organic || !s.Products.First(p => p.Id == k.Product).Organic)],
            };

            // A bound in proportion to the row's own net, so that it stays around it.
            static double? Of(double? bound, LotRow row, Dictionary<string, LotRow> changed) => bound * row.Net / changed[row.Lot.Text].Net;
        }, shows);
}
