using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Features.Feature;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>Seed kept back for planting.</summary>
internal static class SeedFeatures
{
    private static LotRow Fit(SeedClass? seedClass) => Lot("A", 1000) with { FreshShare = 0.6, CrackShare = 0.3, SeedClass = seedClass };

    /// <summary>300 lb of cloves by the Sunday of the week, 3 for each pound short.</summary>
    private static SeedNeed Need(SeedClass least, int week = 0) => new(new("plain"), 300, Monday.PlusWeeks(week).PlusDays(6), least, 3);

    private static Season With(Season shed, params SeedNeed[] needs) => shed with { Lines = [SeedLine], SeedNeeds = needs };

    public static IReadOnlyList<Feature> All { get; } =
    [
        Exactly("seed is run", With(Shed(1, Fit(SeedClass.B)), Need(SeedClass.B)) with { Lines = [SeedLine with { RatePerHour = 100, CostPerHour = 12 }] },
            -80, "cloves are 0.6 x 0.75 = 0.45 of the mass: 300 / 0.45 = 666.67 lb = 6.6667 h x 12; short would cost 900"),
        Exactly("a better class serves", With(Shed(1, Fit(SeedClass.A)), Need(SeedClass.C)), 0, "A is better than C; the line is free"),
        Exactly("a worse class does not serve", With(Shed(1, Fit(SeedClass.C)), Need(SeedClass.B)), -900, "300 lb short x 3"),
        Exactly("a lot without a class is not seed", With(Shed(1, Fit(null)), Need(SeedClass.C)), -900, "300 lb short x 3"),
        Exactly("a treated lot is not seed", With(Shed(1, Fit(SeedClass.A) with { Inhibitor = true }), Need(SeedClass.A)), -900, "300 lb short x 3"),
        Exactly("a seed lot of another variety does not serve", With(Shed(1, Fit(SeedClass.A)), Need(SeedClass.A) with { Variety = new("other") }) with
        {
            Varieties = [.. Shed(1).Varieties, Shed(1).Varieties[0] with { Id = new("other") }],
        }, -900, "300 lb short x 3"),
        Exactly("seed due before the lot is dug", With(Shed(2, Fit(SeedClass.A) with { Harvested = Monday.PlusDays(8) }), Need(SeedClass.A)), -900, "300 lb short x 3"),
        Exactly("part of a need is served", With(Shed(1, Fit(SeedClass.A)), Need(SeedClass.A) with { Net = 500 }), -150, "1000 x 0.45 = 450 lb; 50 short x 3"),
        Exactly("two needs of one lot", With(Shed(1, Fit(SeedClass.A)), Need(SeedClass.B), Need(SeedClass.A) with { ShortCost = 2 }),
            -300, "450 lb: 300 where short costs 3, 150 where it costs 2; 150 short x 2"),
        Exactly("seed competes with sales", With(Shed(1, Lot("A", 1010) with { SeedClass = SeedClass.A }), Need(SeedClass.A) with { ShortCost = 1 }) with
        {
            Lines = [Pack, SeedLine], Orders = [Order("o", "M30", 27) with { ShortCost = 0 }],
        }, 362.5, "a lb saves 0.75 as seed, makes 0.60 as cartons; 400 lb to seed leave 610 lb for 18.3 cartons; the 19th takes 23.3 lb from seed, 17.5 of cloves: 19 x 20 - 17.5"),
    ];
}
