using Cloveshed.DemoSeason.Basin;
using Cloveshed.DemoSeason.Draws;
using Cloveshed.DemoSeason.Shed;
using NodaTime;

namespace Cloveshed.DemoSeason.Lots;

/// <summary>
/// What still stands of the crop of 2025: treated long keepers in two cold rooms and in the one room that is still sealed.
/// They bridge the first weeks, until enough of the new crop is in. One lot stands in two places.
/// </summary>
public static class CarriedOver
{
    private static readonly (string Id, Variety Variety, string Field, LocalDate Dug, Standing[] Stands, double Mean)[] Lots =
    [
        ("25-063", Varieties.LatePale, "Windbreak", new(2025, 8, 8), [new(Places.FirstCold, 96)], 60),
        ("25-071", Varieties.LatePale, "Sorrel", new(2025, 8, 15), [new(Places.FirstCold, 118), new(Places.FullRoom, 164)], 64),
        ("25-074", Varieties.LatePale, "Poplar Row", new(2025, 8, 19), [new(Places.FullRoom, 232)], 58),
        ("25-080", Varieties.LatePale, "Long Meadow", new(2025, 8, 26), [new(Places.SecondCold, 143)], 66),
        ("25-084", Varieties.BarnWhite, "Saltbush", new(2025, 8, 30), [new(Places.FullRoom, 207)], 53),
    ];

    public static IReadOnlyList<Lot> Draw(ulong seed)
    {
        Draw draw = Draws.Draw.For(seed, "carried over");
        return [.. Lots.Select(l =>
        {
            double waste = 0.09 * draw.Factor(0.25);
            double crack = 0.19 * draw.Factor(0.20);
            return new Lot(
                l.Id, l.Variety, l.Field, l.Dug, l.Stands, draw.Normal(915, 14), NewCrop.Bulbs(draw, l.Mean * draw.Factor(0.03), l.Variety.Cv),
                draw.Normal(0, 0.02), 1 - waste - crack, crack, new KeepingTruth(draw.Factor(0.15), draw.Factor(0.25), draw.Factor(0.08)),
                Organic: false, Cured: true, Inhibitor: true, SeedClass: null, Hold: false, CarriedOver: true);
        })];
    }
}
