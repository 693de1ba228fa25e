using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Board;

/// <summary>How a board is drawn: the few lots of a page large with their turns down to the lines, many with theirs close together, or all of them as thin threads.</summary>
/// <param name="PlotWidth">At natural size, beside the names; a page with something else at its side has less room than a sheet.</param>
public sealed record BoardSize(double Pitch, double Thickest, bool Turns, bool PlacesNamed, double PlotWidth = SeasonBoard.PlotWidth)
{
    public static readonly BoardSize Page = new(38, 24, true, true);
    public static readonly BoardSize Close = new(21, 14, true, false);
    public static readonly BoardSize Thin = new(17, 11, false, false);
}

/// <summary>
/// The season board: each lot a thread as thick as the pounds that are left, coloured and patterned by the kind of place,
/// turning down into the runs that it feeds; the lines beneath with hours used of those available.
/// </summary>
public static class SeasonBoard
{
    internal const double NamesWidth = 188;
    internal const double PlotWidth = 1150;
    internal const double Top = 48;

    public static Picture Draw(SeasonBoardFacts facts, BoardSize size, Reader reader, BoardLinks? links = null)
    {
        double bottom = Top + facts.Lots.Count * size.Pitch;
        double lanesTop = bottom + (size.Turns ? 56 : 10);
        double height = size.Turns ? lanesTop + facts.Lines.Count * BoardLanes.Pitch + 4 : bottom + 8;
        var axis = new WeekAxis(0, facts.Settings.Weeks, size.PlotWidth);
        var plot = new Drawing(size.PlotWidth, height);
        var names = new Drawing(NamesWidth, height);

        DrawRooms(plot, facts, size, axis, reader);
        axis.Draw(plot, Top, height - 4, facts.Settings, reader);
        Dictionary<(LineId, int, LotId), BlockPlace> blocks = BoardLanes.Place(facts, axis, lanesTop);
        double thickest = Math.Max(1, facts.Lots.Select(l => l.Weeks.Count == 0 ? 0 : l.Weeks.Max(w => w.Total)).DefaultIfEmpty(1).Max());
        var threads = new BoardThreads(axis, size, thickest, reader);
        if (size.Turns)
        {
            for (int i = 0; i < facts.Lots.Count; i++)
            {
                threads.DrawTurns(plot, facts.Lots[i], Top + i * size.Pitch, blocks, links);
            }
        }
        for (int i = 0; i < facts.Lots.Count; i++)
        {
            (LotThread lot, double y) = (facts.Lots[i], Top + i * size.Pitch);
            if (links is null)
            {
                threads.DrawThread(plot, lot, y);
            }
            else
            {
                plot.Link(links.Lot(lot.Lot), lot.Lot.Text, "to-lot", null, inside => threads.DrawThread(inside, lot, y));
            }
            Name(names, facts.Lots[i], Top + i * size.Pitch, size, reader);
        }
        if (size.Turns)
        {
            BoardLanes.Draw(plot, names, facts, axis, lanesTop, reader, links);
        }
        return new Picture(reader.Say(Say.BoardName), plot, names, BoardTables.Of(facts, reader), BoardTables.Summary(facts, reader), links is not null);
    }

    private static void Name(Drawing names, LotThread lot, double y, BoardSize size, Reader reader)
    {
        if (size.PlacesNamed)
        {
            names.Names(NamesWidth - 10, y + 13, lot.Lot.Text, lot.Variety.Text, "name", NamesWidth - 12, 13);
            names.Text(NamesWidth - 10, y + 27, Drawing.Fit($"{reader.Mass(lot.Net)} · {lot.MainPlace}", NamesWidth - 12, 11.5), "under-name", "end");
        }
        else
        {
            names.Text(NamesWidth - 10, y + 7, Drawing.Fit($"{lot.Lot} · {reader.Mass(lot.Net)}", NamesWidth - 12, 11.5), "small-name", "end");
        }
    }

    // The weeks in which an opened room must be emptied: a shade behind the lots that stand in it.
    private static void DrawRooms(Drawing plot, SeasonBoardFacts facts, BoardSize size, WeekAxis axis, Reader reader)
    {
        var said = new RoomWords(plot, size.PlotWidth);
        foreach (RoomWindow room in facts.Rooms)
        {
            if (room.OpenedWeek is not { } opened)
            {
                continue;
            }
            int last = Math.Min(room.LastWeek ?? facts.Settings.Weeks - 1, facts.Settings.Weeks - 1);
            List<double> baselines = [];
            for (int i = 0; i < facts.Lots.Count; i++)
            {
                if (!facts.Lots[i].Stays.Any(s => s.Place == room.Place && s.To >= room.SealedWeek))
                {
                    continue;
                }
                double y = Top + i * size.Pitch;
                plot.Rect(axis.X(opened), y - 3, axis.X(last + 1) - axis.X(opened), size.Pitch, "room-window",
                    reader.Say(Say.RoomWindowTitle, room.Place, reader.Week(opened), last - opened + 1));
                plot.Line(axis.X(opened), y - 3, axis.X(opened), y - 3 + size.Pitch, "room-opens");
                baselines.Add(y + 35);
            }
            if (size.Turns)
            {
                string words = room.LastWeek is null ? reader.Say(Say.RoomOpens, room.Place) : reader.Say(Say.RoomOpensToEmpty, room.Place, last - opened + 1);
                said.Write(words, axis.X(opened), axis.X(last + 1), baselines);
            }
        }
    }
}
