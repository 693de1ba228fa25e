using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>
/// The pieces of tiny seasons. Everything costs nothing until a feature says what it costs. Bulbs of one lot are so alike
/// (2%) that a lot falls into one class: 20 g bulbs are small, 50 g medium, 100 g large, each more than ten standard deviations
/// of ln mm from the next limit: ln mm = (ln g + 7) / 2.8 gives 35.5, 49.3 and 63.1 mm against limits at 25, 42 and 56.
/// Cloves, ten to a bulb and with the cracker keeping 0.8, weigh 1.6, 4 and 8 g: by ln mm = (ln g + 6) / 2.6 they are 12.0,
/// 17.1 and 22.4 mm wide against grade limits at 5 and 14.
/// Fresh keeps 0.9, so that 1000 lb of fit bulbs make 30 cartons of 30 lb; seed keeps 0.75.
/// </summary>
internal static class Tiny
{
    public static readonly LocalDate Monday = new(2030, 7, 1);

    /// <summary>A yard, a free packing line that is never short, cartons of three classes, two grades of cloves in boxes of 10.</summary>
    public static Season Shed(int weeks, params LotRow[] lots) => new(
        new("tiny", Monday, weeks, MassUnit.Pound, "USD", Monday, 0, 1),
        [new(new("S"), null, 25, 42), new(new("M"), null, 42, 56), new(new("L"), null, 56, null)],
        [new(new("plain"), new(-7, 2.8, 0.02), KeepClass.Long, 10, 0.02, new(-6, 2.6, 0.02))],
        [Yard], [], lots, [],
        [new(LineMode.Fresh, 0.9), new(LineMode.Crack, 0.8), new(LineMode.Seed, 0.75)],
        [Pack], [], [], [Carton("S"), Carton("M"), Carton("L"), Cloves("g1"), Cloves("g2")],
        [new(new("g1"), 5, 14), new(new("g2"), 14, null)], [], [], [], [], [], []);

    public static readonly Place Yard = new(new("yard"), PlaceKind.Open, 1000, 15, 60, null, null, 0, 0, 0, null);
    public static readonly Place Cold = new(new("cold"), PlaceKind.Cold, 1000, -0.5, 65, null, null, 0, 0, 0, null);
    public static readonly Place Room = new(new("room"), PlaceKind.Sealed, 1000, -0.5, 65, 0.5, 5, 0, 0, 0, null);

    public static readonly Line Pack = new(new("pack"), LineMode.Fresh, 1000, 40, 0, 0, null, 1, 0, 0);
    public static readonly Line Crack = Pack with { Id = new("crack"), Mode = LineMode.Crack };
    public static readonly Line SeedLine = Pack with { Id = new("seed"), Mode = LineMode.Seed };

    /// <summary>100 lb an hour at 10 an hour.</summary>
    public static Line Paid(Line line) => line with { RatePerHour = 100, CostPerHour = 10 };

    /// <summary>A line's weeks without hours: all of the season but the one.</summary>
    public static IEnumerable<LineWeek> Only(Line line, int week, int weeks) =>
        Enumerable.Range(0, weeks).Where(w => w != week).Select(w => new LineWeek(line.Id, w, 0, null));

    /// <summary>A lot that stood in the yard before the season, all of it fit, 100 lb to the bin, medium bulbs.</summary>
    public static LotRow Lot(string id, double net, double grams = 50) => new(
        new(id), Yard.Id, new("plain"), "field", Monday.PlusDays(-10), net / 100, net, LotState.Weighed, null, null,
        false, true, false, 1, 0, null, grams, 0.02, null, false);

    public const double Small = 20, Large = 100;

    public static Product Carton(string size, double net = 30) => new(new($"{size}{net:0}"), ProductForm.Bulb, size, net, 0, 0, false);
    public static Product Cloves(string grade, double net = 10) => new(new($"{grade} {net:0}"), ProductForm.Clove, grade, net, 0, 0, false);

    /// <summary>Units at 20, due on the week's Thursday, firm, 2 for each unit short.</summary>
    public static OrderLine Order(string id, string product, int units, int week = 0, decimal price = 20)
    {
        LocalDate monday = Monday.PlusWeeks(week);
        return new(new(id), "1", "customer", new(product), monday, monday.PlusDays(3), units, price, true, 0, 2, false, false);
    }

    public static Season Asked(this Season season, params OrderLine[] orders) => season with { Orders = orders };
}
