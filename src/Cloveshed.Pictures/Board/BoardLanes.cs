using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Board;

/// <summary>The lines beneath the threads: in each week blocks as wide as their share of the hours that the line has.</summary>
internal static class BoardLanes
{
    public const double Pitch = 46;
    private const double BlockHeight = 24;

    /// <summary>Blocks stand side by side from the week's left edge; the full width is regular and overtime hours together.</summary>
    public static Dictionary<(LineId, int, LotId), BlockPlace> Place(SeasonBoardFacts facts, WeekAxis axis, double top)
    {
        var places = new Dictionary<(LineId, int, LotId), BlockPlace>();
        for (int i = 0; i < facts.Lines.Count; i++)
        {
            foreach (LaneWeek week in facts.Lines[i].Weeks)
            {
                double x = axis.X(week.Week) + 1;
                foreach (LanePart part in week.Parts)
                {
                    double width = Width(part.Hours, week, axis);
                    if (!part.FromSorted)
                    {
                        places.TryAdd((facts.Lines[i].Line, week.Week, part.Lot), new BlockPlace(x, width, top + i * Pitch));
                    }
                    x += width;
                }
            }
        }
        return places;
    }

    public static void Draw(
        Drawing plot, Drawing names, SeasonBoardFacts facts, WeekAxis axis, double top, Reader reader, BoardLinks? links)
    {
        HashSet<LotId> shown = [.. facts.Lots.Select(l => l.Lot)];
        for (int i = 0; i < facts.Lines.Count; i++)
        {
            LineLane lane = facts.Lines[i];
            double y = top + i * Pitch;
            plot.Line(0, y + BlockHeight + .5, axis.Width, y + BlockHeight + .5, "lane-rule");
            foreach (LaneWeek week in lane.Weeks)
            {
                DrawWeek(plot, lane, week, axis, y, shown, reader, links);
            }
            double used = lane.Weeks.Sum(w => w.Hours + w.OvertimeHours);
            names.Text(SeasonBoard.NamesWidth - 10, y + 13, Drawing.Fit(lane.Line.Text, 170, 13), "name", "end");
            names.Text(SeasonBoard.NamesWidth - 10, y + 27,
                reader.Say(Say.LaneHours, reader.Say(lane.Mode switch { LineMode.Fresh => Say.LaneFresh, LineMode.Crack => Say.LaneCrack, _ => Say.LaneSeed }), reader.Number(used, 0), reader.Number(lane.Weeks.Sum(w => w.Available + w.OvertimeAvailable), 0)),
                "under-name", "end");
        }
    }

    private static void DrawWeek(
        Drawing plot, LineLane lane, LaneWeek week, WeekAxis axis, double y, HashSet<LotId> shown, Reader reader, BoardLinks? links)
    {
        double x = axis.X(week.Week) + 1;
        double whole = axis.Step - 2;
        if (week.Available + week.OvertimeAvailable <= 0)
        {
            return;
        }
        string kind = BoardThreads.Name(lane.Mode);
        string title = reader.Say(Say.LaneWeekTitle, lane.Line, reader.Week(week.Week), reader.Hours(week.Hours + week.OvertimeHours),
            reader.Hours(week.Available), reader.Hours(week.OvertimeAvailable));
        void Hit()
        {
            if (week.Parts.Count > 0)
            {
                plot.Rect(axis.X(week.Week), y, axis.Step, BlockHeight + 9, "hit", title);
            }
        }

        // Blocks that lead somewhere lie on top; else the week as a whole says itself wherever it is touched.
        if (links is not null)
        {
            Hit();
        }

        double at = x;
        foreach (LanePart part in week.Parts)
        {
            double width = Width(part.Hours, week, axis);
            bool other = part.FromSorted || !shown.Contains(part.Lot);
            (double left, double wide, string look) = (at, Math.Max(0.6, width - (width > 2.5 ? 0.6 : 0)), (part.FromSorted ? "of-sorted " : "") + (other ? "other b-" : "b-") + kind);
            if (links?.Run(part.Lot, lane.Line, week.Week, part.FromSorted) is { } link)
            {
                string run = reader.Say(part.FromSorted ? Say.SortedTurnTitle : Say.TurnTitle, part.Lot, lane.Line, reader.Week(week.Week), reader.Mass(part.Mass));
                plot.Link(link.Href, link.Key, "to-run", null, inside => inside.Rect(left, y, wide, BlockHeight, look, run));
            }
            else
            {
                plot.Rect(left, y, wide, BlockHeight, look);
            }

            at += width;
        }
        double regular = whole * week.Available / (week.Available + week.OvertimeAvailable);
        double used = Math.Min(regular, whole * week.Hours / (week.Available + week.OvertimeAvailable));
        plot.Rect(x, y + BlockHeight + 4, regular, 3, "hours-free");
        plot.Rect(x, y + BlockHeight + 4, used, 3, week.Full ? "hours-full" : "hours-used");
        plot.Rect(x + regular, y + BlockHeight + 2.5, whole * week.OvertimeHours / (week.Available + week.OvertimeAvailable), 6, "hours-over");
        if (links is null)
        {
            Hit();
        }
    }

    private static double Width(double hours, LaneWeek week, WeekAxis axis) =>
        week.Available + week.OvertimeAvailable <= 0 ? 0 : (axis.Step - 2) * hours / (week.Available + week.OvertimeAvailable);
}
