using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Draws places, lines and people.</summary>
internal static class OddShed
{
    public static Place[] Places(PlaceMix mix, Pcg pcg)
    {
        // Capacities are set once the lots are known (OddSeasons.Fit).
        Place yard = new(new("yard"), PlaceKind.Open, 1, pcg.Chance(0.5) ? 18 : null, null, null, null, pcg.Money(0, 0.4), 0, 0, null);
        Place shade = yard with { Id = new("shade"), TempC = 22, Rh = 45, CostPerBinWeek = 0 };
        Place cold = new(new("cold"), PlaceKind.Cold, 1, -0.5, 65, null, null, pcg.Money(0.2, 2), pcg.Money(0, 60), pcg.Money(0, 3), null);
        Place bare = new(new("cold bare"), PlaceKind.Cold, 1, null, null, null, null, 0, 0, 0, null);
        Place room = new(new("room"), PlaceKind.Sealed, 1, -0.5, 65, 1, 5, pcg.Money(0.2, 2), pcg.Money(0, 90), pcg.Money(0, 3), pcg.Whole(1, 4));
        Place room2 = room with { Id = new("room 2"), O2 = null, Co2 = null, RunOutWeeks = null };
        return mix switch
        {
            PlaceMix.YardOnly => [yard],
            PlaceMix.YardAndCold => [yard, cold, bare],
            PlaceMix.YardAndRooms => [yard, room],
            PlaceMix.RoomsOnly => [room, room2],
            _ => [yard, shade, cold, room, room2],
        };
    }

    public static PlaceWeek[] PlaceWeeks(IReadOnlyList<Place> places, int weeks, Pcg pcg) =>
    [
        .. places.Where(p => p.Kind == PlaceKind.Open).SelectMany(p => Enumerable.Range(0, weeks)
            .Where(_ => pcg.Chance(0.5))
            .Select(w => new PlaceWeek(p.Id, w, Math.Round(22 - 14 * Math.Sin(Math.PI * w / 52), 1), pcg.Chance(0.5) ? pcg.Whole(35, 90) : null))),
    ];

    public static Line[] Lines(OddShape shape, double mass, Pcg pcg)
    {
        Line Of(string id, LineMode mode)
        {
            double hours = pcg.Pick([20.0, 40, 45, 80, 100]);
            double rate = Math.Max(1, Math.Round(mass * shape.LineRoom / (hours * shape.Weeks), 2));
            return new(new(id), mode, rate, hours, pcg.Pick([0.0, 0, 8, 20]), pcg.Money(0, 250),
                pcg.Chance(0.5) ? pcg.Money(100, 400) : null, pcg.Pick([1.0, 4, 11.5]),
                pcg.Chance(0.4) ? Math.Round(rate * pcg.Between(1, 6)) : 0, pcg.Pick([0, 0, 0.25, 0.6]));
        }
        return shape.Lines switch
        {
            LineMix.FreshOnly => [Of("pack", LineMode.Fresh)],
            LineMix.CrackOnly => [Of("crack", LineMode.Crack)],
            LineMix.SeedOnly => [Of("seed", LineMode.Seed)],
            LineMix.TwoOfEach => [.. Enum.GetValues<LineMode>().SelectMany(m => new[] { Of($"{m} 1", m), Of($"{m} 2", m) })],
            _ => [Of("pack", LineMode.Fresh), Of("crack", LineMode.Crack), Of("seed", LineMode.Seed)],
        };
    }

    public static LineWeek[] LineWeeks(IReadOnlyList<Line> lines, int weeks, Pcg pcg) =>
    [
        .. lines.SelectMany(l => Enumerable.Range(0, weeks).Where(_ => pcg.Chance(0.1)).Select(w =>
            new LineWeek(l.Id, w, pcg.Pick([0.0, 0, 10, 60]), pcg.Pick<double?>([null, 0, 5])))),
    ];

    public static PeopleWeek[] People(IReadOnlyList<Line> lines, int weeks, Pcg pcg) =>
    [
        .. Enumerable.Range(0, weeks).Where(_ => pcg.Chance(0.3)).Select(w =>
            new PeopleWeek(w, Math.Round(pcg.Between(0.4, 1.2) * lines.Sum(l => l.Heads * l.HoursPerWeek)))),
    ];
}
