using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Release;

/// <summary>
/// Lanes side by side, their mouths at the bottom. Each block is stacks of one lot that are needed together: the number in it is the weeks until
/// then, and the lines across it are the denser the sooner that is.
/// </summary>
internal static class ReachPicture
{
    /// <summary>Lanes that are drawn; all are in the table.</summary>
    public const int MostLanes = 96;

    private const double LaneWidth = 88, Gap = 10, StackHeight = 17, Top = 22, LanesInRow = 12;

    /// <summary>Weeks until need, up to and with which each density of lines holds; ours.</summary>
    private static readonly (int Weeks, double Every, string Kind)[] Patterns = [(1, 4, "reach-now"), (4, 8, "reach-soon"), (12, 16, "reach-later"), (int.MaxValue, 0, "reach-last")];

    public static Picture Draw(ReachPlan plan, SeasonSettings settings, int week, string place, Reader reader, Words<ReleaseWord> words)
    {
        IReadOnlyList<LotStack>[] lanes = [.. plan.Lanes.Where(lane => lane.Count > 0).Take(MostLanes)];
        int rows = Math.Max(1, (int)Math.Ceiling(lanes.Length / LanesInRow));
        double rowHeight = Top + plan.Deep * StackHeight + 26;
        Drawing plot = new(LanesInRow * (LaneWidth + Gap) + Gap, rows * rowHeight);
        foreach ((int at, IReadOnlyList<LotStack> lane) in lanes.Index())
        {
            double x = Gap + at % LanesInRow * (LaneWidth + Gap), top = (int)(at / LanesInRow) * rowHeight;
            double bottom = top + Top + plan.Deep * StackHeight;
            plot.Text(x + LaneWidth / 2, top + 15, words.Say(ReleaseWord.LaneName, at + 1), "axis", "middle");
            plot.Rect(x, top + Top, LaneWidth, plan.Deep * StackHeight, "reach-lane");
            plot.Line(x - 2, bottom + 2, x + LaneWidth + 2, bottom + 2, "reach-mouth");
            // The first in the list is at the back, which is at the top.
            double y = bottom - lane.Count * StackHeight;
            foreach ((LotStack stack, int count, double bins) in Blocks(lane))
            {
                Block(plot, x, y, count * StackHeight, stack, bins, settings, week, reader, words);
                y += count * StackHeight;
            }
        }

        string summary = words.Say(
            ReleaseWord.ReachSummary, place, reader.Number(plan.Bins, 0), reader.Number(plan.Lanes.Count(lane => lane.Count > 0), 0), reader.Number(plan.Digs, 0), reader.Number(plan.DigsAsCame, 0));
        return new Picture(words.Say(ReleaseWord.ReachName, place), plot, null, [], summary, Links: true);
    }

    private static void Block(Drawing plot, double x, double y, double height, LotStack stack, double bins, SeasonSettings settings, int week, Reader reader, Words<ReleaseWord> words)
    {
        bool never = stack.Week >= settings.Weeks;
        (int _, double every, string kind) = never ? Patterns[^1] : Patterns.First(pattern => stack.Week - week <= pattern.Weeks);
        string when = never ? words[ReleaseWord.NotThisSeason] : reader.Week(stack.Week);
        plot.Link(Paths.Of(stack.Lot), stack.Lot.Text, "lot-link", null, into =>
        {
            into.Rect(x, y, LaneWidth, height, kind, words.Say(ReleaseWord.BlockTitle, stack.Lot, reader.Number(bins, 0), when));
            if (every > 0)
            {
                into.Path(string.Concat(Enumerable.Range(1, (int)(height / every)).Select(line => $"M{MarkupText.Number(x)} {MarkupText.Number(y + line * every - 2)}h5M{MarkupText.Number(x + LaneWidth - 5)} {MarkupText.Number(y + line * every - 2)}h5")), "reach-lines");
            }

            into.Text(x + 8, y + Math.Min(height / 2 + 5, height - 4), Drawing.Fit(stack.Lot.Text, LaneWidth - 34, 12), "reach-name");
            into.Text(x + LaneWidth - 8, y + Math.Min(height / 2 + 5, height - 4), never ? "–" : reader.Number(Math.Max(0, stack.Week - week), 0), "reach-weeks", "end");
        });
    }

    private static IEnumerable<(LotStack Stack, int Count, double Bins)> Blocks(IReadOnlyList<LotStack> lane)
    {
        for (int first = 0; first < lane.Count;)
        {
            int end = first;
            while (end < lane.Count && lane[end].Lot == lane[first].Lot && lane[end].Week == lane[first].Week)
            {
                end++;
            }

            yield return (lane[first], end - first, lane.Skip(first).Take(end - first).Sum(stack => stack.Bins));
            first = end;
        }
    }
}
