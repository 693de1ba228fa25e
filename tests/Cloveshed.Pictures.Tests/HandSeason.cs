using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Pictures.Tests;

/// <summary>
/// A small season and an answer to it made by hand from the rules of the season files: twenty weeks, nine lots in an open
/// yard, a cold room and a room to be sealed, three lines. Every amount follows from the runs listed in HandAnswer.
/// </summary>
public static class HandSeason
{
    public static readonly LocalDate Monday = new(2026, 7, 6);
    public const double KeptFresh = 0.86;
    public const double KeptCrack = 0.82;
    public const double KeptSeed = 0.84;

    /// <summary>Shares by mass of the three classes and of what is under them, alike for all lots.</summary>
    public static readonly (string Class, double Share)[] Classes = [("Medium", .30), ("Large", .42), ("Jumbo", .20)];
    public static readonly (string Grade, double Share)[] Grades = [("Small clove", .35), ("Big clove", .55)];

    public static Season Make() => new(
        new SeasonSettings("Quillon Flat Garlic <hand season>", Monday, 20, MassUnit.Pound, "USD", Monday, 0.05m, 7),
        [new(new("Medium"), "M", 45, 55), new(new("Large"), "L", 55, 65), new(new("Jumbo"), "J", 65, null)],
        [new(new("Early Pale"), new(-6.5, 2.6, .12), KeepClass.Medium, 12, .3, new(-4, 2, .2)), new(new("Late Pale"), new(-6.5, 2.6, .12), KeepClass.Long, 11, .3, new(-4, 2, .2))],
        [new(new("Yard"), PlaceKind.Open, 2000, 24, 50, null, null, .1m, 0, 0, null), new(new("Cold 2"), PlaceKind.Cold, 600, 0, 65, null, null, .4m, 500, 2, null),
            new(new("Room 1"), PlaceKind.Sealed, 500, 0, 65, 1, 5, .5m, 900, 2, 4)],
        [], Lots(), [], [new(LineMode.Fresh, KeptFresh), new(LineMode.Crack, KeptCrack), new(LineMode.Seed, KeptSeed)],
        [new(new("Pack A"), LineMode.Fresh, 12000, 40, 8, 300, 420, 24, 5000, 1), new(new("Cracker"), LineMode.Crack, 8000, 30, 0, 200, null, 10, 3000, 1),
            new(new("Seed line"), LineMode.Seed, 6000, 30, 0, 180, null, 8, 3000, 1)],
        [new(new("Pack A"), 5, 0, null)], [],
        [new(new("JUMBO 30"), ProductForm.Bulb, "Jumbo", 30, 3, 3, false), new(new("LARGE 30"), ProductForm.Bulb, "Large", 30, 3, 3, false),
            new(new("MEDIUM 30"), ProductForm.Bulb, "Medium", 30, 3, 3, false), new(new("PEELED BIG"), ProductForm.Clove, "Big clove", 20, 2, 1, false),
            new(new("CHOPPED"), ProductForm.Clove, "Small clove", 40, 2, 1, false)],
        [new(new("Small clove"), 8, 16), new(new("Big clove"), 16, null)],
        [new(new("LARGE 30"), -1, 120, null)], [], HandAnswer.Orders(), HandAnswer.Market(),
        [new(new("Early Pale"), 9000, new(2026, 9, 25), SeedClass.B, 2.5m)], [new(null, .12m, null)]);

    private static LotRow[] Lots() =>
    [
        Lot("Reedbank 1", "Yard", "Early Pale", 240_000, 0, .78, .15), Lot("Sorrel 3", "Yard", "Early Pale", 414_000, 0, .80, .14),
        Lot("Sorrel 5", "Yard", "Early Pale", 224_000, 1, .76, .18), Lot("Reedbank 2", "Cold 2", "Early Pale", 386_000, 0, .82, .12),
        Lot("Heron 3", "Cold 2", "Late Pale", 335_000, 0, .81, .13), Lot("Old Kiln 4", "Yard", "Late Pale", 419_000, 2, .83, .11),
        Lot("Old Kiln 7", "Room 1", "Late Pale", 298_000, 0, .84, .10), Lot("Heron 2", "Room 1", "Late Pale", 413_000, 0, .85, .10),
        Lot("Tannery & Sons 1", "Yard", "Late Pale", 180_000, 3, .70, .20),
    ];

    private static LotRow Lot(string id, string place, string variety, double net, int week, double fresh, double crack) => new(
        new(id), new(place), new(variety), id.Split(' ')[0], Monday.PlusDays(7 * week - 10 * (week == 0 ? 1 : 0)), net / 1600, net, LotState.Weighed, null, null, false, true, false,
        fresh, crack, variety == "Early Pale" ? SeedClass.B : null, 62, .3, null, false);
}
