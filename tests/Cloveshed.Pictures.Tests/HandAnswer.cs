using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures.Tests;

/// <summary>The answer to the hand season: a list of what is taken off each lot, and everything that follows from it.</summary>
public static class HandAnswer
{
    private const int Weeks = 20;

    // Lot, week, what: a line, "sale", "discard"; and the share of the lot's mass at start that it takes. The rest stands at the end.
    private static readonly (string Lot, int Week, string To, double Share)[] Taken =
    [
        ("Reedbank 1", 0, "Pack A", .6), ("Reedbank 1", 1, "Cracker", .4), ("Sorrel 3", 1, "Pack A", .5), ("Sorrel 3", 2, "Pack A", .5),
        ("Sorrel 5", 3, "Pack A", .7), ("Sorrel 5", 4, "Cracker", .25), ("Sorrel 5", 4, "discard", .05),
        ("Reedbank 2", 6, "Pack A", .8), ("Reedbank 2", 7, "Seed line", .05), ("Reedbank 2", 7, "sale", .15),
        ("Heron 3", 8, "Pack A", .5), ("Heron 3", 9, "Pack A", .5), ("Old Kiln 4", 4, "Pack A", .3), ("Old Kiln 4", 10, "Pack A", .6),
        ("Old Kiln 7", 12, "Pack A", 1), ("Heron 2", 13, "Pack A", .5), ("Heron 2", 14, "Pack A", .5), ("Tannery & Sons 1", 11, "Cracker", .7),
    ];

    public static OrderLine[] Orders() =>
    [
        Order("101", "JUMBO 30", 1, 900, 44), Order("102", "LARGE 30", 2, 4000, 38), Order("103", "MEDIUM 30", 4, 3000, 30), Order("104", "LARGE 30", 7, 2500, 38),
        Order("105", "JUMBO 30", 9, 1500, 46), Order("106", "PEELED BIG", 5, 3500, 42), Order("107", "LARGE 30", 13, 3600, 40), Order("108", "JUMBO 30", 14, 6000, 48),
    ];

    public static MarketWeek[] Market() => [.. Enumerable.Range(0, Weeks).Select(w => new MarketWeek(new("MEDIUM 30"), w, 22, 100, 300, 600))];

    public static PlanAnswer Make()
    {
        Season season = HandSeason.Make();
        var paths = new List<PathWeek>();
        var runs = new List<RunRow>();
        var sorted = new List<SortedRow>();
        var made = new List<MadeRow>();
        var asIs = new List<AsIsRow>();
        var keeps = new List<KeepRow>();
        var seed = new List<SeedRow>();
        foreach (LotRow lot in season.Lots)
        {
            int start = Math.Max(0, season.Settings.WeekOf(lot.Harvested));
            string path = lot.Lot + "/a";
            paths.AddRange(PathOf(lot, path, start));
            PathWeek At(int week) => paths.First(p => p.Path == path && p.Week == week);
            foreach ((string _, int week, string to, double share) in Taken.Where(t => t.Lot == lot.Lot.Text))
            {
                double atStart = share * lot.Net;
                double mass = atStart * At(week).MassRatio;
                if (to is "sale" or "discard")
                {
                    asIs.Add(new AsIsRow(to == "discard", week, lot.Lot, path, At(week).Place, mass, atStart));
                    continue;
                }
                Line line = season.Lines.First(l => l.Id.Text == to);
                string run = $"R{runs.Count + 1}";
                double hours = mass / line.RatePerHour + line.SetupHours;
                runs.Add(new RunRow(run, week, line.Id, line.Mode, false, lot.Lot, path, At(week).Place, mass, atStart, Math.Min(40, hours), Math.Max(0, hours - 40),
                    $"Serves orders due soon from {lot.Lot}; its clock runs out first."));
                Yield(lot, run, week, line.Mode, mass, At(week), sorted, made, seed);
            }
            for (int w = start; w < Weeks; w++)
            {
                double left = 1 - Taken.Where(t => t.Lot == lot.Lot.Text && t.Week <= w).Sum(t => t.Share);
                if (left > 1e-9)
                {
                    keeps.Add(new KeepRow(w, lot.Lot, path, At(w).Place, lot.Bins * left, lot.Net * left));
                }
            }
        }
        // Sorted-out bulbs of the first fresh run of Reedbank 1 are cracked in the next week; all others are lost.
        SortedRow first = sorted[0];
        runs.Add(new RunRow("R90", first.Week + 1, new("Cracker"), LineMode.Crack, true, first.Lot, null, null, first.Mass, 0, first.Mass / 8000, 0, "Sorted-out bulbs wait two weeks at most."));
        made.AddRange(Cloves("R90", first.Week + 1, first.Lot, first.Mass * HandSeason.KeptCrack));

        (List<FillRow> fills, List<ShortRow> shorts, List<SaleRow> sales) = HandTrade.Ship(season, made);
        return new PlanAnswer(
            HandTrade.Summary(season, fills, sales, asIs, runs), paths, [], runs, sorted, made, fills, sales, asIs, shorts, keeps, [new(4, new("Old Kiln 4"), new("Yard"), new("Cold 2"), 180)],
            [new(new("Room 1"), 1, 12)], seed,
            [
                new("line", "Pack A", 1, 412), new("line", "Pack A", 2, 180.5), new("place", "Cold 2", 3, 9.6), new("people", "people", 2, 14.25), new("lot", "Heron 2", null, .61), new("lot", "Reedbank 1", null, .22),
                new("product", "JUMBO 30", 1, 44), new("product", "JUMBO 30", 13, 58.5), new("product", "JUMBO 30", 14, 58.5), new("product", "LARGE 30", 2, 29), new("product", "LARGE 30", 3, 24.5),
            ]);
    }

    // Open: 0.8% of weight and a fourteenth of its life a week; cold 0.3% and a 26th; sealed 0.15% and a 40th.
    private static IEnumerable<PathWeek> PathOf(LotRow lot, string path, int start)
    {
        double ratio = 1;
        double life = 0.04;
        for (int w = start; w <= Weeks; w++)
        {
            string place = lot.Lot.Text == "Old Kiln 4" && w >= 4 ? "Cold 2" : lot.Place.Text;
            double soft = 1 - 0.002 * (w - start);
            yield return new PathWeek(path, lot.Lot, lot.Place, w, new(place), ratio, lot.FreshShare!.Value * soft, lot.CrackShare!.Value * soft, life);
            (double loss, double used) = place switch { "Yard" => (.008, 1 / 14.0), "Cold 2" => (.003, 1 / 26.0), _ => (.0015, 1 / 40.0) };
            ratio *= 1 - loss;
            life += used;
        }
    }

    private static void Yield(
        LotRow lot, string run, int week, LineMode mode, double mass, PathWeek state, List<SortedRow> sorted, List<MadeRow> made, List<SeedRow> seed)
    {
        double kept = mass * state.FreshShare * HandSeason.KeptFresh;
        switch (mode)
        {
            case LineMode.Fresh:
                made.AddRange(HandSeason.Classes.Select(c => new MadeRow(run, week, new(c.Class.ToUpperInvariant() + " 30"), lot.Lot, kept * c.Share / 30, kept * c.Share)));
                sorted.Add(new SortedRow(run, lot.Lot, week, kept * (1 - HandSeason.Classes.Sum(c => c.Share)) + mass * state.CrackShare));
                break;
            case LineMode.Crack:
                made.AddRange(Cloves(run, week, lot.Lot, mass * (state.FreshShare + state.CrackShare) * HandSeason.KeptCrack));
                break;
            default:
                seed.Add(new SeedRow(run, week, lot.Variety, lot.Lot, SeedClass.B, SeedClass.B, new(2026, 9, 25), Math.Min(9000, mass * state.FreshShare * HandSeason.KeptSeed)));
                break;
        }
    }

    private static IEnumerable<MadeRow> Cloves(string run, int week, LotId lot, double mass) =>
    [
        new(run, week, new("PEELED BIG"), lot, mass * .55 / 20, mass * .55), new(run, week, new("CHOPPED"), lot, mass * .35 / 40, mass * .35),
    ];

    private static OrderLine Order(string id, string product, int dueWeek, int units, decimal price) => new(
        new(id), "1", id == "103" ? "<b>Bold</b> & Co" : "Customer " + id[^1], new(product), HandSeason.Monday.PlusDays(7 * dueWeek - 14), HandSeason.Monday.PlusDays(7 * dueWeek + 4), units, price,
        id != "106", 1, 5, false, false);
}
