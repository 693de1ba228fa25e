using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using CsCheck;
using NodaTime;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// Seasons that no planner's author has seen: drawn from a seed, sound by the contract, and odd on purpose. A season is a
/// shape (how many, how long, of which kinds), a draw at that shape, and any number of <see cref="Oddity"/> changes. Nothing
/// here knows how a plan is made.
/// </summary>
public static class OddSeasons
{
    /// <summary>A season at large: a drawn shape and up to five oddities.</summary>
    public static Season Mixed(ulong seed)
    {
        Pcg pcg = new(seed, 1);
        Oddity[] some = [.. pcg.Shuffled(Oddity.All).Take(pcg.Whole(0, 5))];
        // No draw at large is of the largest size: those are planned by their own names.
        return Make(OddShape.Draw(pcg), [.. some.Where(o => !o.Large)], pcg);
    }

    /// <summary>A small plain season with one oddity.</summary>
    public static Season Make(Oddity oddity, ulong seed) => Make(new OddShape(), [oddity], new(seed, 2));

    /// <summary>Seasons at large for CsCheck.</summary>
    public static Gen<Season> Any { get; } = Gen.ULong.Select(Mixed);

    /// <summary>The draw at a shape, with the oddities applied in order.</summary>
    public static Season Make(OddShape shape, IReadOnlyList<Oddity> oddities, Pcg pcg)
    {
        foreach (Oddity oddity in oddities) shape = oddity.Shape(shape, pcg);
        Season season = Plain(shape, pcg);
        foreach (Oddity oddity in oddities) season = Fit(oddity.Change(season, pcg));
        return season;
    }

    private static Season Plain(OddShape shape, Pcg pcg)
    {
        LocalDate first = new LocalDate(2030, 7, 1).PlusWeeks(pcg.Whole(-40, 40));
        SeasonSettings settings = new("an odd season", first, shape.Weeks, shape.Unit,
            pcg.Pick(["USD", "EUR", "ARS", "JPY"]), first.PlusDays(Math.Min(shape.AsOfDay, 7 * shape.Weeks - 1)), pcg.Chance(0.5) ? 0 : pcg.Money(0.01, 0.2),
            pcg.Chance(0.5) ? null : pcg.Whole(0, int.MaxValue));
        SizeClass[] sizes = OddGarlic.Sizes(shape.Chart);
        CloveGrade[] grades = OddGarlic.CloveGrades(shape.Grades);
        Variety[] varieties = OddGarlic.Varieties(shape.Varieties, pcg);
        Place[] places = OddShed.Places(shape.Places, pcg);
        LotRow[] lots = OddGarlic.Lots(shape, settings, varieties, places, pcg);
        double mass = lots.Sum(l => l.Net);
        Line[] lines = OddShed.Lines(shape, mass, pcg);
        Product[] products = OddTrade.Products(shape, sizes, grades, pcg);
        Season season = new(
            settings, sizes, varieties, places, OddShed.PlaceWeeks(places, shape.Weeks, pcg), lots,
            OddGarlic.Samples(lots, varieties, pcg),
            [new(LineMode.Fresh, 0.87), new(LineMode.Crack, 0.78), new(LineMode.Seed, 0.7)],
            lines, OddShed.LineWeeks(lines, shape.Weeks, pcg), pcg.Chance(0.5) ? OddShed.People(lines, shape.Weeks, pcg) : [],
            products, grades, OddTrade.Stock(settings, products, lots, pcg), [],
            OddTrade.Orders(shape, settings, products, mass, pcg), OddTrade.Market(shape, products, mass, pcg),
            OddTrade.SeedNeeds(shape, settings, varieties, mass, pcg), OddTrade.AsIs(shape, varieties, mass, pcg));
        return Fit(season, pcg.Between(1, 1.5));
    }

    /// <summary>
    /// Makes every place hold what must stand in it, since less would be a fault of the input; slack is how much more than that.
    /// </summary>
    private static Season Fit(Season season, double slack = 1) => season with
    {
        Places =
        [
            .. season.Places.Select(p => p with
            {
                CapacityBins = Math.Max(p.CapacityBins, Math.Round(slack * LeastCapacity(season, p.Id) + 0.05, 1)),
            }),
        ],
    };

    /// <summary>
    /// The bins that a place must hold for the input to be sound: those of each row alone, and those of all rows together that
    /// start with the plan. What arrives together in later weeks may be more: there the plan has had its say.
    /// </summary>
    internal static double LeastCapacity(Season season, PlaceId place)
    {
        LotRow[] rows = [.. season.Lots.Where(l => l.Place == place)];
        double first = rows.Where(l => StartWeek(season.Settings, l) == season.Settings.AsOfWeek).Sum(l => l.Bins);
        return rows.Select(l => l.Bins).Append(first).Max();
    }

    /// <summary>The week in which a row's path starts: that of its harvest, never before as_of or the first week.</summary>
    internal static int StartWeek(SeasonSettings settings, LotRow row) => Math.Max(settings.AsOfWeek, settings.WeekOf(row.Harvested));
}
