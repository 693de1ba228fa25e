using Cloveshed.Core;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Ledger.Yard;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Keep;

/// <summary>What the clocks of lots rest on: rows and where they stood, air that was read, looks.</summary>
/// <param name="Stays">Where a row stood, from harvest on.</param>
public sealed record ClockMeans(Season Season, YardLog Yard, PlaceLog Places, Func<LotRow, IReadOnlyList<LotStay>> Stays);

/// <summary>
/// The clocks of every row that was looked at, or whose air was read, or that stood elsewhere before, for plans and pages: the belief is of the lot, the life used
/// of the row. Rows that nobody looked at, that never moved and whose places nobody read go by the law and are not in it.
/// </summary>
public sealed class ClockBook
{
    private readonly ClockMeans means;
    private readonly Dictionary<(PlaceId, int), Climate> airs = [];
    private readonly Dictionary<PlaceId, IReadOnlyList<ClimateReading>> readings;
    private readonly Dictionary<(LotId Lot, PlaceId Place), SeenClock> clocks = [];

    public ClockBook(ClockMeans means)
    {
        this.means = means;
        readings = means.Places.PlacesRead.ToDictionary(place => place, means.Places.ClimateOf);
        SeasonSettings settings = means.Season.Settings;
        foreach (LotRow row in means.Season.Lots)
        {
            IReadOnlyList<LotStay> stays = means.Stays(row);
            if (means.Yard.LooksOf(row.Lot).Count == 0 && stays.Count == 1 && !readings.ContainsKey(row.Place))
            {
                continue;
            }

            LotSeen seen = SeenOf(row, settings.Monday(settings.StartWeekOf(row)).AtMidnight());
            if (seen.Looks > 0 || seen.HoursRead > 0 || stays.Count > 1)
            {
                // Injuries count for a plan from the first look on: before it a plan goes by the published lives, which are of sound bulbs.
                clocks[(row.Lot, row.Place)] = SeenClock.Of(seen, seen.Looks > 0 ? Condition(row.Lot) : LotCondition.Good, means.Yard.LooksOf(row.Lot) is [.., var last] ? last.At.Date : null);
            }
        }
    }

    /// <summary>By row, as of the day on which its path starts.</summary>
    public IReadOnlyDictionary<(LotId Lot, PlaceId Place), SeenClock> Clocks => clocks;

    /// <summary>A row's clock; null where it goes by the law.</summary>
    public SeenClock? Of(LotRow row) => clocks.GetValueOrDefault((row.Lot, row.Place));

    /// <summary>Bulbs cut, bruised or shattered by the lot's samples. How well it was cured no fact says: it is taken as well.</summary>
    public LotCondition Condition(LotId lot)
    {
        SampleBulb[] bulbs = [.. means.Season.Samples.Where(bulb => bulb.Lot == lot)];
        return new LotCondition(1, bulbs.Length == 0 ? 0 : bulbs.Count(bulb => bulb.Defect is Defect.Mechanical or Defect.Shatter) / (double)bulbs.Length);
    }

    /// <summary>What is believed of a row's clocks at a moment.</summary>
    public LotSeen SeenOf(LotRow row, LocalDateTime until)
    {
        HistoryQuestion History(LotRow of) => new(
            LotTraits.Of(means.Season, of), of.Harvested, means.Stays(of), readings, (place, at) => Air(place, means.Season.Settings.WeekOf(at.Date)), KeepingParameters.Default);
        LotLook[] looks = [.. means.Yard.LooksOf(row.Lot).Select(look => new LotLook(
            look.At, look.Said.Looked, look.Said.Sprouted, look.Said.Decayed, look.Said.Weighed is { } weighed ? weighed.Now / weighed.Then : null, look.Said.Weighed?.Since))];
        LotSeen here = LotSight.Of(new LotSeenQuestion(History(row), looks, Condition(row.Lot), ClockPrior.Default, until));
        LotRow[] others = [.. means.Season.Lots.Where(one => one.Lot == row.Lot && one.Place != row.Place)];
        if (looks.Length == 0 || others.Length == 0)
        {
            return here;
        }

        // A lot that stands in two places: each look meets the clocks of the place in which it was made.
        List<Inspection> inspections = [];
        foreach (IGrouping<LotRow, Told<LookSaid>> group in means.Yard.LooksOf(row.Lot).GroupBy(look => others.FirstOrDefault(one => one.Place == look.Said.Place) ?? row))
        {
            foreach (LotLook look in group.Select(told => looks[means.Yard.LooksOf(row.Lot).ToList().IndexOf(told)]))
            {
                inspections.AddRange(LotSight.Inspections(History(group.Key), look));
            }
        }

        return here with { Belief = InspectionUpdate.Of(new InspectionQuestion(inspections, KeepingParameters.Default, Condition(row.Lot), ClockPrior.Default)) };
    }

    /// <summary>The air of a place in a week by the season's files; a room that is sealed has its own.</summary>
    public Climate Air(PlaceId place, int week)
    {
        if (!airs.TryGetValue((place, week), out Climate air))
        {
            Season season = means.Season;
            int? shut = season.SealedRooms.FirstOrDefault(room => room.Place == place) is { } room ? season.Settings.WeekOf(room.Sealed) : null;
            Place there = season.Places.FirstOrDefault(one => one.Id == place) ?? season.Places[0];
            airs[(place, week)] = air = PlaceClimate.Of(season, there, week, shut is { } w && week > w, ClimateDefaults.Default);
        }

        return air;
    }
}

/// <summary>Clock books of the last few states, by what they rest on.</summary>
public sealed class ClockShelf(ShedLedger ledger, TimeProvider clock)
{
    private const int Room = 4;

    private readonly Shelf<ClockBook> shelf = new(Room);
    // Where rows stood changes with the season's rows alone, and is read fact by fact: readings by the minute must not read it again.
    private readonly Shelf<IReadOnlyDictionary<(LotId Lot, PlaceId Place), IReadOnlyList<LotStay>>> seats = new(Room);

    public ClockBook Of(ShedState state, YardLog yard, PlaceLog places) => shelf.Of(
        Key(state, yard, places), () => Made(state, yard, places, seats.Of($"{state.InputDigest} {LastRow(state)}", () => RowSeats.All(ledger, state.Rows, Open(state), clock.LocalTimeZone))));

    /// <summary>What clocks rest on: the season as it reads, the last fact of a lot's row (bins that went away and came back read alike), looks and readings.</summary>
    public static string Key(ShedState state, YardLog yard, PlaceLog places) => $"{state.InputDigest} {LastRow(state)} {yard.LastSeq} {places.LastSeq}";

    private static long LastRow(ShedState state) => (state.Rows?.Of("lots.csv") ?? []).Select(row => row.Seq).DefaultIfEmpty(0).Max();

    /// <summary>For a plan: by the facts up to its basis and by no later one.</summary>
    internal static ClockBook Upto(ShedLedger ledger, ShedState state, long basis, TimeZoneInfo here) => Made(
        state, new YardLog([.. ledger.YardRecords().TakeWhile(record => record.Seq <= basis)], here), new PlaceLog([.. ledger.RoomRecords().TakeWhile(record => record.Seq <= basis)], here),
        RowSeats.All(ledger, state.Rows, Open(state), here));

    private static ClockBook Made(ShedState state, YardLog yard, PlaceLog places, IReadOnlyDictionary<(LotId Lot, PlaceId Place), IReadOnlyList<LotStay>> seats) =>
        new(new ClockMeans(Open(state), yard, places, row => seats[(row.Lot, row.Place)]));

    private static Season Open(ShedState state) => state.Season ?? throw new InvalidOperationException("No season is open.");
}
