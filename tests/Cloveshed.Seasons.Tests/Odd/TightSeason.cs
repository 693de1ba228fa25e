using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// A season unlike the demo's: small lots of few bins, of several varieties and partly organic; a yard, and a cold place and a room that hold too little;
/// least runs and set-ups that are large beside a lot; people short; many small orders that cost when late, of which some ship whole and some take the larger
/// class; a thin market; seed wanted of the best class. What is asked for is much of what the lots could give.
/// </summary>
internal static class TightSeason
{
    private static readonly LocalDate Monday = new(2031, 7, 7);

    internal static Season Draw(ulong seed, int lots, int weeks, bool room)
    {
        Pcg pcg = new(seed, 71);
        SeasonSettings settings = new($"tight season {seed}", Monday, weeks, MassUnit.Pound, "USD", Monday, 0.03m, 1);
        SizeClass[] sizes = [new(new("c1"), null, 30, 40), new(new("c2"), null, 40, 48), new(new("c3"), null, 48, 56), new(new("c4"), null, 56, 66), new(new("c5"), null, 66, null)];
        CloveGrade[] grades = [new(new("g1"), 8, 13), new(new("g2"), 13, 18)];
        Variety[] varieties = [.. Enumerable.Range(1, 3).Select(v => new Variety(
            new($"v{v}"), new(-7 + (0.1 * v), 2.8, 0.1), (KeepClass)(v - 1), 8 + (2 * v), 0.3, new(-6, 2.6, 0.1)))];
        LotRow[] rows = [.. Enumerable.Range(1, lots).Select(l => Lot(l, varieties[(l - 1) % varieties.Length], weeks, pcg))];
        double mass = rows.Sum(row => row.Net), bins = rows.Sum(row => row.Bins), mean = mass / lots;
        Place[] places =
        [
            new(new("yard"), PlaceKind.Open, bins, 30, 40, null, null, 0.1m, 0, 0, null),
            new(new("cold"), PlaceKind.Cold, Math.Ceiling(0.25 * bins), 0, 65, null, null, 0.5m, Money(0.003 * mass), 2, null),
            .. room ? new[] { new Place(new("room"), PlaceKind.Sealed, Math.Ceiling(0.25 * bins), -0.5, 65, 1, 8, 0.7m, Money(0.004 * mass), 3, 2) } : [],
        ];
        // All that there is takes about 16 of 20 hours a week of the packing line, set-ups not counted.
        Line[] lines =
        [
            new(new("pack"), LineMode.Fresh, Math.Round(mass / weeks / 16), 20, 4, 25, 38, 6, Math.Round(0.4 * mean), 0.7),
            new(new("crack"), LineMode.Crack, Math.Round(mass / weeks / 16), 12, 0, 18, null, 4, Math.Round(0.4 * mean), 0.7),
            new(new("seed"), LineMode.Seed, Math.Round(mass / weeks / 8), 12, 0, 16, null, 4, Math.Round(0.3 * mean), 0.7),
        ];
        Product[] products =
        [
            .. sizes.Select(size => new Product(new(size.Id.Text), ProductForm.Bulb, size.Id.Text, 25, 1, 1, false)),
            .. sizes.Skip(1).Select(size => new Product(new($"{size.Id} organic"), ProductForm.Bulb, size.Id.Text, 25, 1.2m, 1, true)),
            .. grades.Select(grade => new Product(new($"{grade.Id} cloves"), ProductForm.Clove, grade.Id.Text, 10, 0.8m, 0, false)),
        ];
        return new Season(
            settings, sizes, varieties, places, [], rows, [], [new(LineMode.Fresh, 0.9), new(LineMode.Crack, 0.8), new(LineMode.Seed, 0.75)],
            lines, [], [.. Enumerable.Range(0, weeks).Select(week => new PeopleWeek(week, 150 + pcg.Whole(-30, 30)))], products, grades, [], [],
            Orders(products, mass, weeks, pcg), Market(products, mass, weeks, pcg),
            [.. varieties.Select(v => new SeedNeed(v.Id, Math.Round(0.03 * mass), Monday.PlusDays((7 * pcg.Whole(weeks / 3, weeks - 1)) + 4), v.Id.Text == "v1" ? SeedClass.A : SeedClass.B, 2.5m))],
            [new(null, 0.08m, Math.Round(0.1 * mass))]);
    }

    private static LotRow Lot(int number, Variety variety, int weeks, Pcg pcg)
    {
        double net = pcg.Whole(1500, 6000);
        bool organic = pcg.Chance(0.3);
        return new(
            new($"L{number:000}"), new("yard"), variety.Id, $"field {pcg.Whole(1, 5)}", Monday.PlusDays(pcg.Chance(0.5) ? -14 : pcg.Whole(0, (7 * weeks / 2) - 1)),
            Math.Round(net / 1000, 1), net, LotState.Weighed, null, null, organic, true, false, Math.Round(pcg.Between(0.55, 0.85), 3), 0.12,
            pcg.Pick<SeedClass?>([SeedClass.A, SeedClass.B, null]), pcg.Whole(35, 85), Math.Round(pcg.Between(0.25, 0.45), 2), null, false);
    }

    private static OrderLine[] Orders(Product[] products, double mass, int weeks, Pcg pcg)
    {
        double left = 0.55 * mass;
        List<OrderLine> lines = [];
        for (int order = 1; left > 0; order++)
        {
            int due = pcg.Whole(0, weeks - 1);
            bool whole = pcg.Chance(0.3);
            for (int line = pcg.Whole(1, 3), number = 1; line > 0; line--, number++)
            {
                Product product = pcg.Pick(products);
                int units = pcg.Whole(4, 40);
                left -= units * product.Net;
                LocalDate monday = Monday.PlusWeeks(due);
                decimal price = Money((product.Form == ProductForm.Bulb ? pcg.Between(1.4, 2.4) : pcg.Between(1.6, 2.6)) * product.Net * (product.Organic ? 1.3 : 1));
                lines.Add(new(
                    new($"O{order:000}"), $"{number}", $"buyer {pcg.Whole(1, 9)}", product.Id, monday, monday.PlusDays(3), units, price, pcg.Chance(0.6),
                    pcg.Money(0.5, 3), pcg.Money(1, 5), product.Form == ProductForm.Bulb && pcg.Chance(0.6), whole));
            }
        }

        return [.. lines];
    }

    private static MarketWeek[] Market(Product[] products, double mass, int weeks, Pcg pcg) =>
    [
        .. products.SelectMany(product => Enumerable.Range(0, weeks).Where(_ => pcg.Chance(0.3)).Select(week => new MarketWeek(
            product.Id, week, Money(pcg.Between(0.8, 1.2) * product.Net), null, Math.Round(pcg.Between(0.002, 0.006) * mass / product.Net * 12 / weeks), null))),
    ];

    private static decimal Money(double amount) => Math.Round((decimal)amount, 2);
}
