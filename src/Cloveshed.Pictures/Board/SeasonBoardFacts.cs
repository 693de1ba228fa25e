using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Paths;
using NodaTime;

namespace Cloveshed.Pictures.Board;

/// <summary>What a season board shows. Masses in the season's unit as weighed, weeks as indices.</summary>
public sealed record SeasonBoardFacts(
    SeasonSettings Settings, IReadOnlyList<LotThread> Lots, IReadOnlyList<LineLane> Lines, IReadOnlyList<RoomWindow> Rooms)
{
    public static SeasonBoardFacts From(Season season, PlanAnswer answer)
    {
        var book = new PathBook(season, answer);
        Dictionary<PlaceId, PlaceKind> kinds = season.Places.ToDictionary(p => p.Id, p => p.Kind);
        ILookup<LotId, LotRow> rows = season.Lots.ToLookup(l => l.Lot);
        ILookup<LotId, PathLine> paths = book.All.ToLookup(p => p.Lot);
        Dictionary<string, double> worths = answer.Worths.Where(w => w.Kind == "lot")
            .GroupBy(w => w.Name).ToDictionary(g => g.Key, g => g.Max(w => w.Value));
        ILookup<LotId, RunRow> runs = answer.Runs.ToLookup(r => r.Lot);
        ILookup<LotId, AsIsRow> asIs = answer.AsIs.ToLookup(r => r.Lot);
        Dictionary<PlaceId, RoomRow> rooms = answer.Rooms.ToDictionary(r => r.Place);
        List<LotThread> threads = [.. rows.Where(g => paths.Contains(g.Key))
            .Select(g => LotThread.From(g, [.. paths[g.Key]], kinds, worths.GetValueOrDefault(g.Key.Text), [.. runs[g.Key]], [.. asIs[g.Key]], season.Settings))];
        return new SeasonBoardFacts(
            season.Settings, [.. threads.OrderBy(t => Rank(t, rooms)).ThenBy(t => t.LastWeek).ThenBy(t => t.Lot.Text, StringComparer.Ordinal)],
            [.. season.Lines.Select(l => LineLane.From(l, season, answer))],
            [.. answer.Rooms.Select(r => RoomWindow.From(r, season))]);
    }

    /// <summary>The lots that are worth most, in the board's order: what a page shows before "the rest".</summary>
    public SeasonBoardFacts Top(int count)
    {
        HashSet<LotId> top = [.. Lots.OrderByDescending(l => l.Worth * l.Net).ThenByDescending(l => l.Net).Take(count).Select(l => l.Lot)];
        return this with { Lots = [.. Lots.Where(l => top.Contains(l.Lot))] };
    }

    // Open yard first, then cold, then sealed rooms as they open: the order in which a shed empties.
    private static int Rank(LotThread thread, Dictionary<PlaceId, RoomRow> rooms)
    {
        PlaceKind kind = thread.MainKind;
        int opens = rooms.TryGetValue(thread.MainPlace, out RoomRow? room) ? room.Opened ?? thread.StartWeek + 1000 : 0;
        return (int)kind * 10_000 + (kind == PlaceKind.Sealed ? opens : 0);
    }
}

/// <summary>A room's weeks as planned: the last with loading, the one of opening, the last with anything in it (null: no limit).</summary>
public sealed record RoomWindow(PlaceId Place, int SealedWeek, int? OpenedWeek, int? LastWeek)
{
    internal static RoomWindow From(RoomRow room, Season season)
    {
        int? runOut = season.Places.FirstOrDefault(p => p.Id == room.Place)?.RunOutWeeks;
        // Ends included: a room opened in week 10 with 4 weeks to empty holds nothing at the end of week 13.
        return new RoomWindow(room.Place, room.Sealed, room.Opened, room.Opened is { } o && runOut is { } r ? o + r - 1 : null);
    }
}
