using Cloveshed.Pictures.Markup;

namespace Cloveshed.Pictures.Board;

/// <summary>The words at opened rooms, each beneath a lot that stands in its room, where no other word is.</summary>
internal sealed class RoomWords(Drawing plot, double width)
{
    private const double Em = 11.5, High = 13, Gap = 5;

    private readonly List<(double Left, double Right, double Y)> taken = [];

    /// <summary>Beside a room's weeks, from <paramref name="left"/> to <paramref name="right"/>: before them or else after, at the first baseline where there is room.</summary>
    /// <returns>False where there is none: then no word is written, for two over each other tell nothing. The shade's title and the table say it.</returns>
    public bool Write(string words, double left, double right, IEnumerable<double> baselines)
    {
        double wide = Drawing.WidthOf(words, Em);
        foreach (double y in baselines)
        {
            foreach ((double from, double at, string anchor) in new[] { (left - Gap - wide, left - Gap, "end"), (right + Gap, right + Gap, "start") })
            {
                if (from < 0 || from + wide > width || taken.Any(one => Math.Abs(one.Y - y) < High && one.Left < from + wide + Gap && from < one.Right + Gap))
                {
                    continue;
                }
                taken.Add((from, from + wide, y));
                plot.Text(at, y, words, "room-word", anchor);
                return true;
            }
        }
        return false;
    }
}
