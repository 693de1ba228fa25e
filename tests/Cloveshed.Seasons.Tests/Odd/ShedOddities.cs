using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Odd.Oddity;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Odd in places, lines and people.</summary>
internal static class ShedOddities
{
    public static IReadOnlyList<Oddity> All { get; } =
    [
        OfSeason("places just full", (s, _) => s with
        {
            // What stands at the start fits exactly; what arrives later has to find room by then.
            Places = [.. s.Places.Select(p => p with { CapacityBins = Math.Max(0.1, OddSeasons.LeastCapacity(s, p.Id)) })],
        }, s => s.Places.All(p => p.CapacityBins <= OddSeasons.LeastCapacity(s, p.Id) + 0.11)),

        OfSeason("more dug than places hold", (s, _) =>
        {
            // Each week brings a lot as large as the yard, and every week but the first another one with it.
            Place yard = s.Places[0] with { Id = new("small yard"), Kind = PlaceKind.Open, RunOutWeeks = null, CapacityBins = 10 };
            int from = s.Settings.AsOfWeek, weeks = Math.Min(6, s.Settings.Weeks - from);
            LotRow[] arriving =
            [
                .. Enumerable.Range(1, 2 * weeks - 1).Select(i => (Number: i, Week: from + i / 2)).Select(x => s.Lots[0] with
                {
                    Lot = new($"dug {x.Number}"), Place = yard.Id, Bins = 10, Net = 12_000, NetLow = null, NetHigh = null,
                    Harvested = s.Settings.Monday(x.Week).PlusDays(x.Number % 7), Ready = null,
                }),
            ];
            return s with { Places = [.. s.Places, yard], Lots = [.. s.Lots, .. arriving] };
        }, s => s.Settings.Weeks == 1 || s.Lots.Where(l => l.Place.Text == "small yard").Sum(l => l.Bins) > s.Places.First(p => p.Id.Text == "small yard").CapacityBins),

        OpeningRoom("a sealed room that runs out in one week", 1, s => s.Places.Any(p => p.Id == s.SealedRooms[0].Place && p.RunOutWeeks == 1)),
        OpeningRoom("a sealed room without an end", null, s => s.Places.Any(p => p.Id == s.SealedRooms[0].Place && p.RunOutWeeks is null)),
        OpeningRoom("a sealed room that outlasts the season", 99, s => s.Places.Any(p => p.RunOutWeeks > s.Settings.Weeks)),

        OfSeason("storage that nothing pays for", (s, _) => s with
        {
            Places = [.. s.Places.Select(p => p with { CostPerBinWeek = 900, CostPerWeek = 5000, MoveInCost = 100 })],
        }, s => s.Places.All(p => p.CostPerBinWeek == 900)),
        OfSeason("storage free", (s, _) => s with
        {
            Places = [.. s.Places.Select(p => p with { CostPerBinWeek = 0, CostPerWeek = 0, MoveInCost = 0 })],
        }, s => s.Places.All(p => p.CostPerBinWeek + p.CostPerWeek + p.MoveInCost == 0)),
        OfSeason("climates unknown", (s, _) => s with
        {
            PlaceWeeks = [], Places = [.. s.Places.Select(p => p with { TempC = null, Rh = null, O2 = null, Co2 = null })],
        }, s => s.Places.All(p => p.TempC is null)),
        OfSeason("hot and dry", (s, _) => s with
        {
            PlaceWeeks = [], Places = [.. s.Places.Select(p => p with { TempC = 41, Rh = 12 })],
        }, s => s.Places.All(p => p.TempC == 41)),

        EachLine("a least run above any lot", (s, l) => l with { MinRun = Math.Ceiling(s.Lots.Max(r => r.Net) * 3) },
            s => s.Lines.All(l => l.MinRun > s.Lots.Max(r => r.Net))),
        EachLine("set-up eats the week", (_, l) => l with { SetupHours = l.HoursPerWeek + l.OvertimeHours, OvertimeHours = 0 },
            s => s.Lines.All(l => l.SetupHours >= l.HoursPerWeek)),
        EachLine("set-up leaves minutes", (_, l) => l with { SetupHours = l.HoursPerWeek + l.OvertimeHours - 0.25 },
            s => s.Lines.All(l => l.SetupHours < l.HoursPerWeek + l.OvertimeHours)),
        EachLine("no regular hours", (_, l) => l with { HoursPerWeek = 0, OvertimeHours = 30, OvertimeCostPerHour = 25 },
            s => s.Lines.All(l => l.HoursPerWeek == 0)),
        EachLine("overtime cheaper than regular", (_, l) => l with { CostPerHour = 300, OvertimeCostPerHour = 20, OvertimeHours = 20 },
            s => s.Lines.All(l => l.OvertimeCostPerHour < l.CostPerHour)),
        EachLine("lines without people", (_, l) => l with { Heads = 0 }, s => s.Lines.All(l => l.Heads == 0)),
        OfSeason("no hours at all", (s, _) => s with
        {
            LineWeeks = [.. s.Lines.SelectMany(l => Enumerable.Range(0, s.Settings.Weeks).Select(w => new LineWeek(l.Id, w, 0, null)))],
        }, s => s.LineWeeks.All(l => l.Hours == 0)),
        OfSeason("every other week shut", (s, _) => s with
        {
            LineWeeks = [.. s.Lines.SelectMany(l => Enumerable.Range(0, s.Settings.Weeks).Where(w => w % 2 == 1).Select(w => new LineWeek(l.Id, w, 0, null)))],
        }, s => s.Settings.Weeks == 1 || s.LineWeeks.Count > 0),
        OfSeason("no people some weeks", (s, _) => s with
        {
            People = [.. Enumerable.Range(0, s.Settings.Weeks).Select(w => new PeopleWeek(w, w % 3 == 0 ? 0 : w % 3 == 1 ? 2.5 : 60))],
        }, s => s.People.Any(p => p.Hours == 0)),
        OfSeason("kept shares at their ends", (s, _) => s with
        {
            Yields = [new(LineMode.Fresh, 1), new(LineMode.Crack, 1), new(LineMode.Seed, 0.01)],
        }, s => s.Yields.Any(y => y.KeptShare == 1)),
    ];

    private static Oddity EachLine(string name, Func<Season, Line, Line> change, Func<Season, bool> shows) =>
        OfSeason(name, (s, _) => s with { Lines = [.. s.Lines.Select(l => change(s, l))] }, shows);

    private static Oddity OpeningRoom(string name, int? runOut, Func<Season, bool> shows) => OfSeason(name, (s, pcg) =>
    {
        // Its own room, loaded with its own lots weeks before as_of, so that nothing else can be in it.
        PlaceId id = new($"old room {runOut?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "open"}");
        NodaTime.LocalDate stands = s.Settings.AsOf < s.Settings.FirstWeek ? s.Settings.AsOf : s.Settings.Monday(s.Settings.AsOfWeek);
        Place room = new(id, PlaceKind.Sealed, 40, -0.5, 65, 1, 5, 1, 25, 2, runOut);
        LotRow[] inside =
        [
            .. Enumerable.Range(1, 2).Select(i => s.Lots[0] with
            {
                Lot = new($"{id} {i}"), Place = id, Harvested = stands.PlusDays(-60), Bins = 20, Net = 24_000, NetLow = null, NetHigh = null,
                Ready = null, Hold = false,
            }),
        ];
        return s with
        {
            Places = [.. s.Places, room], Lots = [.. s.Lots, .. inside], SealedRooms = [.. s.SealedRooms, new(id, stands.PlusDays(-pcg.Whole(8, 40)))],
        };
    }, shows);
}
